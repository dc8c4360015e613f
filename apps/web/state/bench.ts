import { createStore, type StoreApi } from 'zustand/vanilla';
import type { BenchLog } from '../storage/bench.ts';
import type { BenchEvent } from '../storage/benchLog.ts';
import { canHappen, type Making, makingOf } from './benchState.ts';
import { problemOf, type SavingProblem, type SavingWorld } from './saving.ts';

/** The bench of a layout as it stands. */
export interface Bench {
  readonly stage: 'looking' | 'there';
  readonly making: Making | null;
  /** How often something was told there. */
  readonly told: number;
  /** Whether the last that was told is on the disk. */
  readonly isKept: boolean;
  /** Why it could not be kept; it is tried again by itself. `null`: nothing is the matter. */
  readonly problem: SavingProblem | null;
  /** Whether something was told in another window meanwhile, which stands here now. */
  readonly isFromElsewhere: boolean;
}

/** The bench of a layout and what can be told there. */
export interface BenchStore extends Pick<StoreApi<Bench>, 'getState' | 'getInitialState' | 'subscribe'> {
  /** Tells what happened; nothing where that cannot have happened at this table. */
  tell(event: BenchEvent): void;
  /** Looks again at what is kept, for another window may have told something; or tries again to keep what waits. */
  lookAgain(): void;
}

/** The pause between two tries to keep something. */
const pause = 1_000;

/** The bench of a layout, as its log has it. */
export function benchOf(log: BenchLog, document: string, { later, newId }: SavingWorld): BenchStore {
  const store = createStore<Bench>(() => ({
    stage: 'looking',
    making: null,
    told: 0,
    isKept: true,
    problem: null,
    isFromElsewhere: false,
  }));
  /** What is on the disk, and what is on its way there. */
  let kept: readonly BenchEvent[] = [];
  let waiting: readonly { readonly event: BenchEvent; readonly entry: string }[] = [];
  let isWriting = false;

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
        kept = events;
        if (isAdded) waiting = waiting.slice(1);
        else {
          // Another window was first. What was told here holds where it still can have happened.
          waiting = possible(kept, waiting);
          store.setState({ isFromElsewhere: true });
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
        const isNew = kept.length > 0 && events.length > kept.length;
        kept = events;
        show(isNew ? { isFromElsewhere: true } : {});
      },
      (reason: unknown) => show({ problem: problemOf(reason) }),
    );
  }
  lookAgain();

  return {
    getState: store.getState,
    getInitialState: store.getInitialState,
    subscribe: store.subscribe,
    tell(event) {
      if (store.getState().stage === 'looking' || !canHappen(all(), event)) return;
      waiting = [...waiting, { event, entry: newId() }];
      show({ isFromElsewhere: false });
      void write();
    },
    lookAgain,
  };
}

function possible<Waiting extends { readonly event: BenchEvent }>(
  kept: readonly BenchEvent[],
  waiting: readonly Waiting[],
): readonly Waiting[] {
  let before = kept;
  return waiting.filter(({ event }) => {
    // What is taken back is what the person saw last, and that is another now.
    if (event.kind === 'taken back' || !canHappen(before, event)) return false;
    before = [...before, event];
    return true;
  });
}
