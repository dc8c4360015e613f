import { type ReactNode, useMemo } from 'react';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import type { Making } from '../../state/benchState.ts';
import type { Line } from './lines.ts';
import { doneAt, reckonedOf } from './pace.ts';
import { useNow } from './useNow.ts';

/** When all is done, as a time of the clock, if it is gone on with now. */
export default function DoneBy({
  lines,
  making,
}: {
  readonly lines: readonly Line[];
  readonly making: Making;
}): ReactNode {
  const { bench } = useMessages();
  const numbers = useNumbers();
  const now = useNow();
  const reckoned = useMemo(() => reckonedOf(lines, making), [lines, making]);
  const at = doneAt(lines, reckoned, { now, cards: making.set.layout.cards });
  return at === null ? null : <p>{bench.doneBy(numbers.clock(at, now))}</p>;
}
