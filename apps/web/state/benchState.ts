import { readSavedLayout, type SavedLayout } from '../../../src/files/index.ts';
import { arrange } from '../../../src/layout/index.ts';
import {
  type CardSet,
  dealingIn,
  type SavedPlan,
  settledBy,
  type Tallied,
  type TallyMark,
  tallied,
} from '../../../src/planning/index.ts';
import type { Trimmer } from '../../../src/trimming/index.ts';
import type { BenchEvent } from '../storage/benchLog.ts';

/** A set that is being made: all that happened at the bench, and where it stands now. */
export interface Making {
  /** The layout as it was when the set was begun, or was changed at the bench; it is what is made. */
  readonly file: SavedLayout;
  readonly set: CardSet;
  /** The plan that is cut by, and the table as it is. */
  readonly tallied: Tallied;
  /** The lines of the putting together that are done. */
  readonly made: ReadonlySet<string>;
  /** When each of these was told to be done, in milliseconds since 1970, as far as that was noted. */
  readonly madeAt: ReadonlyMap<string, number>;
  /**
   * What was told one after another with its time: the lines as at the bench (`step 3` of the plan cut by now, `score`,
   * `part mat`), `''`: something else. `null`: nobody noted when.
   */
  readonly moments: readonly { readonly line: string; readonly at: number | null }[];
  /** What was told last and can be taken back; `null`: nothing since the beginning. */
  readonly last: BenchEvent | null;
}

interface Begun {
  readonly file: SavedLayout;
  readonly trimmer: Trimmer | null;
  readonly plan: SavedPlan;
  readonly at?: number;
  /** What was told since, less what was taken back. */
  readonly since: readonly Exclude<BenchEvent, { kind: 'begun' | 'taken back' }>[];
}

/** What the events at a bench come to; `null`: nothing is being made, or what is kept is of a set that is no more. */
export function makingOf(events: readonly BenchEvent[]): Making | null {
  const begun = events.reduce<Begun | null>(after, null);
  if (begun === null) return null;
  const file = begun.since.reduce(fileAfter, begun.file);
  const read = readSavedLayout(file);
  if ('problems' in read) return null;
  const { layout } = read;
  // Of which papers the parts from leftovers are is settled by the plan, and no later one changes it.
  const set = settledBy(
    { layout, arrangement: arrange(layout), trimmer: begun.trimmer },
    dealingIn(begun.plan),
  );
  const marks = begun.since.flatMap(markOf);
  const now = tallied(set, { plan: begun.plan, marks });
  if ('problems' in now) return null;
  return {
    file,
    set,
    tallied: now,
    made: new Set(begun.since.flatMap((event) => (event.kind === 'made' ? [event.line] : []))),
    madeAt: new Map(
      begun.since.flatMap((event) =>
        event.kind === 'made' && event.at !== undefined ? [[event.line, event.at] as const] : [],
      ),
    ),
    moments: momentsOf(begun),
    last: begun.since.at(-1) ?? null,
  };
}

function momentsOf({ at, since }: Begun): Making['moments'] {
  // Steps of one number are others by another plan.
  const planned = since.findLastIndex(({ kind }) => kind === 'planned again');
  const lineOf = (event: Begun['since'][number], index: number): string => {
    if (event.kind === 'made') return event.line;
    return event.kind === 'noted' && event.mark.kind === 'cut' && index > planned
      ? `step ${event.mark.step}`
      : '';
  };
  return [
    { line: '', at: at ?? null },
    ...since.map((event, index) => ({
      line: lineOf(event, index),
      at: ('at' in event ? event.at : null) ?? null,
    })),
  ];
}

function after(before: Begun | null, event: BenchEvent): Begun | null {
  if (event.kind === 'begun') return { ...event, since: [] };
  // Nothing happens at a bench where nothing was begun.
  if (before === null) return null;
  if (event.kind === 'taken back') return { ...before, since: before.since.slice(0, -1) };
  return { ...before, since: [...before.since, event] };
}

function fileAfter(before: SavedLayout, event: BenchEvent): SavedLayout {
  return event.kind === 'planned again' ? (event.file ?? before) : before;
}

function markOf(event: BenchEvent): readonly TallyMark[] {
  if (event.kind === 'noted') return [event.mark];
  return event.kind === 'planned again' ? [{ kind: 'planned again', plan: event.plan }] : [];
}

/** The plan that is cut by after these events, as it was told; `null`: nothing was begun. */
export function planCutBy(events: readonly BenchEvent[]): SavedPlan | null {
  const begun = events.reduce<Begun | null>(after, null);
  if (begun === null) return null;
  return begun.since.reduce(
    (plan, event) => (event.kind === 'planned again' ? event.plan : plan),
    begun.plan,
  );
}

/** Whether a step can be told to be done, or anything else: what would come of it is a table that can be. */
export function canHappen(events: readonly BenchEvent[], event: BenchEvent): boolean {
  return makingOf([...events, event]) !== null;
}
