import type { SetTime } from '../finished/index.ts';
import type { Layout } from '../layout/index.ts';
import { shortTask } from './taskWords.ts';

/** A time as it is drawn: who or what, and from when to when, in seconds from the beginning. */
export interface TimeRow {
  readonly says: string;
  readonly from: number;
  readonly to: number;
  /** While what was put on dries, and something waits for that; `null`: nothing does. */
  readonly dries: { readonly from: number; readonly to: number } | null;
}

export interface TimeRows {
  /** What is drawn, in a line. */
  readonly caption: string;
  /** Stations in their order, or tasks in the order in which they are done. */
  readonly rows: readonly TimeRow[];
  readonly finish: number;
}

/** The time of a set as rows to be drawn: its stations, or the tasks of one pair of hands. */
export function timeRows({ hands, line, helpers }: SetTime, layout: Layout): TimeRows {
  if (line !== null) {
    const rows = line.stations.map(({ helpers: those, begins, ends }, at): TimeRow => {
      const lying = line.lying.find(({ station }) => station === at + 1);
      return {
        says: `Station ${at + 1}, ${those} ${those === 1 ? 'helper' : 'helpers'}`,
        from: begins,
        to: ends,
        dries: lying === undefined ? null : { from: lying.from, to: lying.to },
      };
    });
    return { caption: 'The line of stations, once all is cut', rows, finish: line.finish };
  }
  const rows = hands.runs.map(
    ({ task, start, end, dries }): TimeRow => ({
      says: shortTask(task, layout),
      from: start,
      to: end,
      dries,
    }),
  );
  const share = helpers === 1 ? '' : ` of each helper, ${hands.cards} cards`;
  const batch = hands.batch === null ? '' : `, the first ${hands.batch} of them`;
  return {
    caption: `The work${share === '' && hands.batch === null ? ', task by task' : share}${batch}`,
    rows,
    finish: hands.runs.at(-1)?.end ?? 0,
  };
}

/** Where a scale of so many seconds has its ticks, one at its beginning and at most so many, with a word for each. */
export function timeTicks(
  finish: number,
  most: number,
): readonly { readonly at: number; readonly says: string }[] {
  const step = steps.find((minutes) => finish / 60 / minutes < most) ?? steps.at(-1)!;
  const count = Math.floor(finish / 60 / step) + 1;
  return Array.from({ length: count }, (_, at) => ({ at: at * step * 60, says: tickWords(at * step) }));
}

/** Minutes; the last is a week. */
const steps = [1, 5, 10, 15, 30, 60, 120, 240, 480, 1440, 10_080] as const;

function tickWords(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (minutes === 0) return '0';
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest}`;
}

/**
 * The rows as lines of typed text, no wider than `width` characters: strokes for work, dashes for drying, dots where
 * nothing is done.
 */
export function typedTimeChart({ rows, finish }: TimeRows, width = 78): readonly string[] {
  if (rows.length === 0 || finish === 0) return [];
  const last = Math.max(finish, ...rows.map(({ dries }) => dries?.to ?? 0));
  const named = Math.min(28, Math.max(...rows.map(({ says }) => says.length)));
  const wide = width - named - 2;
  const column = (seconds: number) => Math.round((seconds / last) * (wide - 1));
  const scale = timeTicks(last, Math.floor(wide / 9)).reduce((line, { at, says }) => {
    const from = column(at);
    const isRoom = line.length === 0 || line.length < from;
    return isRoom && from + says.length <= wide ? line.padEnd(from) + says : line;
  }, '');
  const bar = ({ from, to, dries }: TimeRow) => {
    const cells = Array.from({ length: wide }, () => ' ');
    if (dries !== null) cells.fill('-', column(dries.from), column(dries.to) + 1);
    cells.fill('/', column(from), Math.max(column(from) + 1, column(to)));
    return cells.join('').trimEnd();
  };
  const name = (says: string) => (says.length > named ? `${says.slice(0, named - 1)}…` : says).padEnd(named);
  return [
    `${' '.repeat(named + 2)}${scale}`,
    ...rows.map((row) => `${name(row.says)}  ${bar(row)}`),
    `${' '.repeat(named + 2)}/ work${rows.some(({ dries }) => dries !== null) ? '   - drying that is waited for' : ''}`,
  ];
}
