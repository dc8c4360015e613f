import type { Length } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { type CutAt, settingCuts } from './cutAt.ts';
import { type Needed, neededSettings } from './needed.ts';
import { settingsOf } from './round.ts';
import type { ToCut, Workpieces } from './workpiece.ts';

/** The settings in the order to set them. */
export interface SettingOrder {
  readonly settings: readonly Length[];
  /** No order of measuring off the same parts has fewer settings than this; equal to their number where that is proved. */
  readonly bound: number;
}

/**
 * An order of settings that cuts everything on the table, with the fewest settings that were found; among these with
 * few steps, and then with what has nothing to spare early.
 *
 * At each setting everything is cut that can be: a workpiece that is cut early is only ever sooner apart, so
 * nothing is lost by it and an order of settings is all there is to choose. Tables are gone through level by
 * level, one setting more on each; a level is cut down to its most hopeful tables when it grows wide. The
 * result is proved the best where no table was dropped that could have led to a better one. Work is bounded by
 * counting tables, so that answers do not depend on the machine.
 *
 * With `quick` the first good order is taken as it is.
 */
export function settingOrder(
  table: ReadonlySet<ToCut>,
  kinds: Workpieces,
  { quick = false } = {},
): SettingOrder {
  const needed = neededSettings();
  const cutAt = settingCuts(kinds);
  const start: Stage = { table, wanting: needed(table), set: null, before: null, rounds: 0, late: 0 };
  const narrow = { width: quick ? narrowestLevel : narrowLevel, most: Infinity };
  const { best, droppedBound } = searchLevels(start, cutAt, needed, narrow);
  assert(best !== null, 'Whatever is on the table can be cut', { table: keyOf(table) });
  if (best.length === start.wanting) return { settings: best, bound: best.length };
  if (quick) return { settings: best, bound: Math.min(best.length, droppedBound) };

  const width = Math.max(narrowLevel, Math.floor(tableBudget / (best.length * best.length)));
  const better = searchLevels(start, cutAt, needed, { width, most: best.length - 1 });
  const settings = better.best ?? best;
  return { settings, bound: Math.min(settings.length, better.droppedBound) };
}

/** Tables kept on a level of the first search, and where no other follows. */
const narrowLevel = 24;
const narrowestLevel = 3;
/** Tables looked at by the thorough one, about; with twelve settings a level keeps some seven hundred. */
const tableBudget = 100_000;

interface Stage {
  readonly table: ReadonlySet<ToCut>;
  /** Settings that are still needed at least. */
  readonly wanting: number;
  /** The setting that led here from `before`. */
  readonly set: Length | null;
  readonly before: Stage | null;
  readonly rounds: number;
  /** Rounds with nothing to spare, each counted as often as there were settings before it. */
  readonly late: number;
}

/**
 * `width`: tables kept on a level. `most`: orders with more settings are of no interest. `droppedBound`: no
 * order through a dropped table has fewer settings.
 */
function searchLevels(
  start: Stage,
  cutAt: CutAt,
  needed: Needed,
  { width, most }: { width: number; most: number },
): { best: readonly Length[] | null; droppedBound: number } {
  let droppedBound = Infinity;
  let level: readonly Stage[] = [start];
  for (let depth = 0; level.length > 0; depth += 1) {
    const done = level.filter((stage) => stage.table.size === 0);
    if (done.length > 0) return { best: settingsUpTo(fewestRounds(done)), droppedBound };

    // One setting more.
    const next = new Map<string, Stage>();
    for (const stage of level) {
      for (const set of settingsOf(stage.table)) {
        const { table, rounds, tight } = cutAt(stage.table, set);
        const key = keyOf(table);
        const work = { rounds: stage.rounds + rounds, late: stage.late + tight * depth };
        const known = next.get(key);
        if (known !== undefined && compareRounds(known, work) <= 0) continue;
        const wanting = known?.wanting ?? needed(table);
        if (depth + 1 + wanting > most) continue;
        next.set(key, { table, wanting, set, before: stage, ...work });
      }
    }

    // The most hopeful of them.
    const hopeful = [...next.values()].sort((a, b) => a.wanting - b.wanting || compareRounds(a, b));
    for (const dropped of hopeful.slice(width)) {
      droppedBound = Math.min(droppedBound, depth + 1 + dropped.wanting);
    }
    level = hopeful.slice(0, width);
  }
  return { best: null, droppedBound };
}

function fewestRounds(stages: readonly Stage[]): Stage {
  return stages.reduce((best, stage) => (compareRounds(stage, best) < 0 ? stage : best));
}

/** Fewer rounds first; then what has nothing to spare earlier, so that a sheet that is short spoils least. */
function compareRounds(
  a: { readonly rounds: number; readonly late: number },
  b: { readonly rounds: number; readonly late: number },
): number {
  return a.rounds - b.rounds || a.late - b.late;
}

function settingsUpTo(stage: Stage): readonly Length[] {
  const settings: Length[] = [];
  for (let at: Stage | null = stage; at !== null; at = at.before) if (at.set !== null) settings.push(at.set);
  return settings.reverse();
}

function keyOf(table: ReadonlySet<ToCut>): string {
  return [...table]
    .map((workpiece) => workpiece.kindNumber)
    .sort((a, b) => a - b)
    .join();
}
