import { type ReactNode, useMemo } from 'react';
import type { Assembly, Holding } from '../../../src/finished/index.ts';
import { assemblyPlates } from '../../../src/guide/index.ts';
import type { Arrangement, Layout } from '../../../src/layout/index.ts';
import { Drawing } from '../pictures/drawing.tsx';
import { useWidthRem } from '../pictures/width.ts';

/** How one part is put on a card, drawn as in the guide: turned over with what holds it, and from the front. */
export function AssemblyPlate({
  part,
  layout,
  arrangement,
  card = 0,
  assembly,
  holding,
  larger = 1,
}: {
  /** Its id. */
  readonly part: string;
  readonly layout: Layout;
  readonly arrangement: Arrangement;
  /** From 0; says which of several papers its parts wear. */
  readonly card?: number;
  readonly assembly: Assembly;
  readonly holding: Holding;
  /** How many times larger than the page's smallest type that of the plate is. */
  readonly larger?: number;
}): ReactNode {
  const [figure, rem] = useWidthRem<HTMLElement>();
  const plate = useMemo(() => {
    if (rem === null) return undefined;
    const [own] = assemblyPlates({
      layout,
      arrangement,
      card: Math.min(card, layout.cards - 1),
      assembly,
      holding,
      only: part,
      manner: 'coloured',
      // A ninth of a rem to a point: its type is then as large as the page's.
      room: { widthPt: Math.max(170, (Math.min(44, rem) * 9) / larger), heightPt: 170 / larger },
    });
    return own;
  }, [part, layout, arrangement, card, assembly, holding, larger, rem]);
  return (
    <figure ref={figure} lang="en" className="assembly-plate">
      {plate === undefined ? null : <Drawing page={plate} says={plate.says} />}
    </figure>
  );
}
