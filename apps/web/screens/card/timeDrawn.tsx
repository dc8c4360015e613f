import { type ReactNode, useMemo } from 'react';
import { timeChart } from '../../../../src/guide/index.ts';
import type { TimeRows } from '../../../../src/words/index.ts';
import { Drawing } from '../../pictures/drawing.tsx';
import { useTypeface } from '../../pictures/typeface.ts';
import { useWidthRem } from '../../pictures/width.ts';

/** The time of a set, drawn as in the guide. */
export function TimeDrawn({ rows }: { readonly rows: TimeRows }): ReactNode {
  const typeface = useTypeface();
  const [figure, rem] = useWidthRem<HTMLElement>();
  const page = useMemo(
    // A ninth of a rem to a point: its type is then as large as the page's.
    () =>
      rem === null
        ? null
        : timeChart(rows, { widthPt: Math.max(200, Math.min(44, rem) * 9), sizePt: 9, typeface }),
    [rows, rem, typeface],
  );
  return (
    <figure ref={figure} lang="en">
      {page === null ? null : <Drawing page={page} says={rows.caption} />}
      <figcaption>{rows.caption}</figcaption>
    </figure>
  );
}
