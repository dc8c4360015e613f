import type { Arrangement, Layout } from '../layout/index.ts';
import { assemblyOf } from './assemblySteps.ts';
import { type Task, tasksOf, wholeOf } from './tasks.ts';

/** A line at the bench that is done for all cards: what it was, and how long it took. */
export interface LineTook {
  /** `cut`: a step of cutting, of which it is the given share; `score`: all bases; else a part, made ready and put on. */
  readonly of: { readonly cut: number } | 'score' | { readonly part: string };
  readonly seconds: number;
}

/** Minutes a piece as they were counted, and as they were at the bench. */
export interface MinutesLearnt {
  readonly field: 'cut' | 'score' | 'ready' | 'lay';
  /** The part whose minutes these are; `null`: they are of the whole set. */
  readonly part: string | null;
  readonly was: number;
  readonly now: number;
}

/** The work of such a line by the minutes that count, in seconds of one pair of hands. */
export function workOfLine(layout: Layout, arrangement: Arrangement, of: LineTook['of']): number {
  const work = tasksOfLine(layout, arrangement, of).reduce((sum, task) => sum + wholeOf(task), 0);
  return typeof of === 'object' && 'cut' in of ? work * of.cut : work;
}

/**
 * Whether so long for a line was no work alone: more than three times what was reckoned and ten minutes over. Such lines
 * teach nothing; breaks that are shorter are taken for work.
 */
export function isWithPause(seconds: number, reckoned: number): boolean {
  return seconds > 3 * reckoned + 600;
}

/**
 * What a set that was made teaches of minutes a piece: what was counted, as many times longer or shorter as its lines
 * took, by so many helpers together; lines with a pause left out, and what nobody told of. Only what differs by a
 * twentieth or more is told. To the hundredth of a minute.
 */
export function minutesLearnt(
  layout: Layout,
  arrangement: Arrangement,
  lines: readonly LineTook[],
): readonly MinutesLearnt[] {
  const helpers = layout.making?.helpers ?? 1;
  const groups = new Map<string, { of: LineTook['of']; reckoned: number; took: number }>();
  for (const { of, seconds } of lines) {
    const reckoned = workOfLine(layout, arrangement, of) / helpers;
    if (reckoned === 0 || seconds <= 0 || isWithPause(seconds, reckoned)) continue;
    const key = typeof of === 'string' ? of : 'cut' in of ? 'cut' : `part ${of.part}`;
    const before = groups.get(key) ?? { of, reckoned: 0, took: 0 };
    groups.set(key, { of, reckoned: before.reckoned + reckoned, took: before.took + seconds });
  }
  return [...groups.values()].flatMap(({ of, reckoned, took }) => {
    const ratio = took / reckoned;
    if (Math.abs(ratio - 1) < 0.05) return [];
    const learnt = tasksOfLine(layout, arrangement, of).flatMap(
      ({ kind, of: id, minutes }): MinutesLearnt[] => {
        const now = Math.min(600, Math.max(0.01, Math.round(minutes * ratio * 100) / 100));
        if (minutes === 0 || kind === 'close') return [];
        const part = kind === 'ready' || kind === 'lay' ? id : null;
        return [{ field: kind, part, was: minutes, now }];
      },
    );
    // All papers are cut by one figure.
    return typeof of === 'object' && 'cut' in of ? learnt.slice(0, 1) : learnt;
  });
}

function tasksOfLine(layout: Layout, arrangement: Arrangement, of: LineTook['of']): readonly Task[] {
  const tasks = tasksOf(layout, arrangement);
  if (of === 'score') return tasks.filter(({ kind }) => kind === 'score');
  if ('cut' in of) return tasks.filter(({ kind }) => kind === 'cut');
  const readies = assemblyOf(layout, arrangement).steps.find(({ part }) => part === of.part)?.readies ?? [];
  return tasks.filter(
    ({ kind, of: id }) => (kind === 'lay' && id === of.part) || (kind === 'ready' && readies.includes(id)),
  );
}
