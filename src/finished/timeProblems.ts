import type { Arrangement, Layout } from '../layout/index.ts';
import type { FinishedProblem } from './check.ts';
import { type FinishedCode, finishedCodes } from './codes.ts';
import { setTimeOf } from './setTime.ts';

/** What of the time of a set is worth knowing before it is begun. */
export function timeProblems(layout: Layout, arrangement: Arrangement): readonly FinishedProblem[] {
  const stations = layout.making?.stations ?? null;
  const time = setTimeOf(layout, arrangement);
  const { line, hands } = time;
  if (line === null) {
    const work = hands.finish - hands.idle;
    return hands.idle > work ? [problem('longWait', 'adhesives', { idle: hands.idle, work })] : [];
  }
  const tasks = line.stations.reduce((sum, station) => sum + station.tasks.length, 0);
  const room = layout.making?.dryAtOnce ?? 0;
  return [
    ...(stations !== null && stations > tasks
      ? [problem('stationsEmpty', 'making.stations', { stations, tasks })]
      : []),
    ...(line.withRoom === null
      ? []
      : [problem('roomToDryShort', 'making.dryAtOnce', { room, later: line.finish - line.withRoom })]),
    ...line.stations.flatMap(({ over }, at) =>
      over === 0 ? [] : [problem('stationWaits', 'making.stations', { station: at + 1, over })],
    ),
  ];
}

function problem(
  code: FinishedCode,
  where: string,
  numbers: Readonly<Record<string, number>>,
): FinishedProblem {
  return { code, severity: finishedCodes[code], where, numbers, names: {} };
}
