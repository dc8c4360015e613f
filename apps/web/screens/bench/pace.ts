import { type LineTook, workOfLine } from '../../../../src/finished/index.ts';
import { passesOn, type Step } from '../../../../src/trimming/index.ts';
import type { Making } from '../../state/benchState.ts';
import { setAt, turnAt } from './drying.ts';
import type { Line } from './lines.ts';

/** How long each line takes as it is reckoned, by its key, in seconds of all helpers together. */
export function reckonedOf(
  lines: readonly Line[],
  { set }: Pick<Making, 'set'>,
): ReadonlyMap<string, number> {
  const { layout, arrangement } = set;
  const helpers = layout.making?.helpers ?? 1;
  return new Map(
    lines.map((line) => [line.key, workOfLine(layout, arrangement, ofLine(line, lines)) / helpers]),
  );
}

/** What a line is, for the reckoning of time: a step of cutting is the share of the plan's passes that it has. */
function ofLine(line: Line, lines: readonly Line[]): LineTook['of'] {
  if (line.kind === 'made') return line.step === null ? 'score' : { part: line.step.part };
  const all = lines.reduce((sum, each) => sum + (each.kind === 'cut' ? passesOf(each.step) : 0), 0);
  return { cut: all === 0 ? 0 : passesOf(line.step) / all };
}

function passesOf(step: Step): number {
  return step.take.reduce((sum, _, index) => sum + passesOn(step, index), 0);
}

/**
 * When all lines are done if they are gone on with now and take as long as is reckoned, in milliseconds since 1970; what
 * has to set before work is turned over is waited for. `null`: nothing is left, or what is left takes no time.
 */
export function doneAt(
  lines: readonly Line[],
  reckoned: ReadonlyMap<string, number>,
  { now, cards }: { readonly now: number; readonly cards: number },
): number | null {
  const left = lines.filter(({ isDone }) => !isDone);
  /** Of each step of the assembly that is done by then: when its first and last cards were, and how long each took. */
  const done = new Map<number, { readonly first: number; readonly last: number; readonly handle: number }>();
  let clock = now;
  for (const line of left) {
    const share = line.kind === 'cut' ? 1 - line.cut / line.step.take.length : 1;
    const whole = 1_000 * share * (reckoned.get(line.key) ?? 0);
    const each = whole / cards;
    let start = clock;
    if (line.kind === 'made' && line.step !== null) {
      start = Math.max(start, turnAt(line, lines)?.at ?? 0);
      for (const number of line.step.waitsFor) {
        const wet = done.get(number);
        if (wet === undefined) continue;
        start = Math.max(start, wet.first + wet.handle, wet.last + wet.handle - (whole - each));
      }
      const handle = 60_000 * line.step.handle;
      done.set(line.step.number, { first: start + each, last: start + whole, handle });
    }
    clock = start + whole;
  }
  return clock === now ? null : clock;
}

/**
 * How long the lines took that are done, as far as it was noted when each was: from what was told before it, or from when
 * its glue had set.
 */
export function tookOf(lines: readonly Line[], moments: Making['moments']): readonly LineTook[] {
  const took = new Map<string, number>();
  let before: number | null = null;
  for (const { line: key, at } of moments) {
    const line = lines.find((each) => each.key === key);
    if (line?.isDone === true && at !== null && before !== null) {
      const set = line.kind === 'made' ? waitedUntil(line, lines) : 0;
      took.set(key, (took.get(key) ?? 0) + Math.max(0, at - Math.max(before, set)) / 1_000);
    }
    before = at;
  }
  return lines.flatMap((line) => {
    const seconds = took.get(line.key);
    return seconds === undefined ? [] : [{ of: ofLine(line, lines), seconds }];
  });
}

function waitedUntil({ step }: Extract<Line, { kind: 'made' }>, lines: readonly Line[]): number {
  return lines.reduce(
    (latest, line) =>
      line.kind === 'made' && line.step !== null && step?.waitsFor.includes(line.step.number) === true
        ? Math.max(latest, setAt(line)?.at ?? 0)
        : latest,
    0,
  );
}
