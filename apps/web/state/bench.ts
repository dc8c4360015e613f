import { createStore, type StoreApi } from 'zustand/vanilla';
import type { BenchLog } from '../storage/bench.ts';
import type { BenchEvent } from '../storage/benchLog.ts';
import { canHappen, type Making, makingOf, planCutBy } from './benchState.ts';
import type { News } from './news.ts';
import { problemOf, type SavingProblem, type SavingWorld } from './saving.ts';

/** The bench of a layout as it stands. */
export interface Bench {
  /** Until it is known what is kept of it, it is looked for. */
  readonly stage: 'looking' | 'there';
  readonly making: Making | null;
  /** How often something was told there. */
  readonly told: number;
  /** Whether the last that was told is on the disk. */
  readonly isKept: boolean;
  /** Why it could not be kept, or looked at; it is tried again by itself. `null`: nothing is the matter. */
  readonly problem: SavingProblem | null;
  /** Whether something was told in another window meanwhile, which stands here now. */
  readonly isFromElsewhere: boolean;
  /**
   * What was told here and is not noted, because it cannot have happened at this table, or another window told something
   * first that it does not go with; until something is told that is.
   */
  readonly notNoted: readonly BenchEvent[];
}

/** The bench of a layout and what can be told there. */
export interface BenchStore extends Pick<StoreApi<Bench>, 'getState' | 'getInitialState' | 'subscribe'> {
  /** Tells what happened. What cannot have happened at this table is not noted, and stands in `notNoted`. */
  tell(event: BenchEvent): void;
  /** Looks again at what is kept, for another window may have told something; or tries again to keep what waits. */
  lookAgain(): void;
}

/** The pause between two tries to keep something. */
const pause = 1_000;

/** The bench of a layout, as its log has it; `news` is told when something more is kept of it. */
export function benchOf(
  log: BenchLog,
  document: string,
  { later, newId }: SavingWorld,
  news: Pick<News, 'tell'> = { tell: () => {} },
): BenchStore {
  const store = createStore<Bench>(() => ({
    stage: 'looking',
    making: null,
    told: 0,
    isKept: true,
    problem: null,
    isFromElsewhere: false,
    notNoted: [],
  }));
  /** What is on the disk, and what is on its way there. */
  let kept: readonly BenchEvent[] = [];
  let waiting: readonly { readonly event: BenchEvent; readonly entry: string }[] = [];
  let isWriting = false;
  let isLookingLater = false;

  const all = () => [...kept, ...waiting.map(({ event }) => event)];
  const show = (also: Partial<Bench> = {}) => {
    const events = all();
    const isKept = waiting.length === 0;
    store.setState({ stage: 'there', making: makingOf(events), told: events.length, isKept, ...also });
  };

  async function write(): Promise<void> {
    if (isWriting) return;
    isWriting = true;
    for (let next = waiting[0]; next !== undefined; next = waiting[0]) {
      try {
        const { events, isAdded } = await log.add(document, kept.length, next.event, next.entry);
        if (isAdded) {
          kept = events;
          waiting = waiting.slice(1);
          news.tell();
        } else {
          // Another window was first. What was told here holds where it still can have happened.
          const held = holding(kept, events, waiting);
          const dropped = waiting.filter((each) => !held.includes(each)).map(({ event }) => event);
          kept = events;
          waiting = held;
          store.setState(({ notNoted }) => ({ isFromElsewhere: true, notNoted: [...notNoted, ...dropped] }));
        }
        show({ problem: null });
      } catch (reason) {
        show({ problem: problemOf(reason) });
        later(pause, () => void write());
        break;
      }
    }
    isWriting = false;
  }

  function lookAgain(): void {
    if (waiting.length > 0) {
      void write();
      return;
    }
    log.events(document).then(
      (events) => {
        if (waiting.length > 0) return;
        const isFirst = store.getState().stage === 'looking';
        // A table that is the same stays the same value, so that nothing is worked out for it again.
        if (!isFirst && isSameLog(kept, events)) {
          store.setState({ problem: null });
          return;
        }
        kept = events;
        show(isFirst ? { problem: null } : { problem: null, isFromElsewhere: true });
      },
      (reason: unknown) => {
        // As long as nothing is known of it, nothing may seem to be there to begin with.
        store.setState({ problem: problemOf(reason) });
        if (!isLookingLater)
          later(pause, () => {
            isLookingLater = false;
            lookAgain();
          });
        isLookingLater = true;
      },
    );
  }
  lookAgain();

  return {
    getState: store.getState,
    getInitialState: store.getInitialState,
    subscribe: store.subscribe,
    tell(event) {
      if (store.getState().stage === 'looking') return;
      if (!canHappen(all(), event)) {
        store.setState({ notNoted: [event] });
        return;
      }
      waiting = [...waiting, { event, entry: newId() }];
      show({ isFromElsewhere: false, notNoted: [] });
      void write();
    },
    lookAgain,
  };
}

/** Of what waits, all that still can have happened where another window has told something since `seen`. */
function holding<Waiting extends { readonly event: BenchEvent }>(
  seen: readonly BenchEvent[],
  kept: readonly BenchEvent[],
  waiting: readonly Waiting[],
): readonly Waiting[] {
  let before = seen;
  let now = kept;
  return waiting.filter(({ event }) => {
    // A step or a workpiece of one number is another by another plan.
    const isSamePlan = JSON.stringify(planCutBy(before)) === JSON.stringify(planCutBy(now));
    before = [...before, event];
    if (!isSamePlan || goesByTheLast.has(event.kind) || !canHappen(now, event)) return false;
    now = [...now, event];
    return true;
  });
}

/**
 * What was told by looking at all that stood there: what is taken back is what was told last, a set is begun where
 * none was or that one is given up, the rest is planned again from the very table. With more told, it is another.
 */
const goesByTheLast: ReadonlySet<BenchEvent['kind']> = new Set(['taken back', 'begun', 'planned again']);

/** Whether nothing was told since. A log grows, but it may be gone with its layout, and another be begun. */
function isSameLog(kept: readonly BenchEvent[], events: readonly BenchEvent[]): boolean {
  return (
    kept.length === events.length &&
    JSON.stringify(kept.at(-1) ?? null) === JSON.stringify(events.at(-1) ?? null)
  );
}
