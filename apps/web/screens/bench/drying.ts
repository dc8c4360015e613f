import type { Line } from './lines.ts';

type MadeLine = Extract<Line, { kind: 'made' }>;

/** A moment that something has dried by, and when the last of it was told to be done; milliseconds since 1970. */
export interface Dried {
  readonly at: number;
  readonly since: number;
}

/** When the glue of a line that is done has set so far that the work can be turned over; `null`: it need not, or nobody knows. */
export function setAt({ at, step }: MadeLine): Dried | null {
  return at === null || step === null || step.handle === 0
    ? null
    : { at: at + step.handle * minute, since: at };
}

/** When all has set that the work of a line has to wait for; `null`: it waits for nothing, or nobody knows. */
export function turnAt({ step }: MadeLine, lines: readonly Line[]): Dried | null {
  if (step === null || step.waitsFor.length === 0) return null;
  const waited = lines.filter(
    (line): line is MadeLine =>
      line.kind === 'made' && line.step !== null && step.waitsFor.includes(line.step.number),
  );
  return latest(waited.map(setAt));
}

/** When the cards hold for good once every line is done; `null`: nothing has to dry, or nobody knows. */
export function hardAt(lines: readonly Line[]): Dried | null {
  return latest(
    lines.map((line) =>
      line.kind === 'cut' || line.at === null || line.step === null || line.step.dry === 0
        ? null
        : { at: line.at + line.step.dry * minute, since: line.at },
    ),
  );
}

const minute = 60_000;

function latest(moments: readonly (Dried | null)[]): Dried | null {
  return moments.reduce(
    (last, one) => (one !== null && (last === null || one.at > last.at) ? one : last),
    null,
  );
}
