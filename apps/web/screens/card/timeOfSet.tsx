import { type ReactNode, useMemo } from 'react';
import type { Docket } from '../../../../src/finished/index.ts';
import type { Layout } from '../../../../src/layout/index.ts';
import { timeMatter } from '../../../../src/words/index.ts';
import { TimeDrawn } from './timeDrawn.tsx';
import { TimeForm } from './timeForm.tsx';

/** How long the set takes to make, in words and drawn, and what that rests on. */
export default function TimeOfSet({
  docket: { time, assembly },
  layout,
}: {
  readonly docket: Pick<Docket, 'time' | 'assembly'>;
  readonly layout: Layout;
}): ReactNode {
  const { says, rows } = useMemo(() => timeMatter(time, assembly, layout), [time, assembly, layout]);
  return (
    <>
      <ul lang="en">
        {says.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <TimeDrawn rows={rows} />
      <TimeForm time={time} />
    </>
  );
}
