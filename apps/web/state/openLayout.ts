import { createStore, type StoreApi } from 'zustand/vanilla';
import { type Edit, type History, type Step, stepped } from '../../../src/editing/index.ts';
import type { FileProblem } from '../../../src/files/index.ts';
import { type Arrangement, arrange, checkLayout, type LayoutProblem } from '../../../src/layout/index.ts';
import type { Planner } from '../../planner/browserPlanner.ts';
import type { Cutting } from './cutting.ts';
import { type Made, madeWith, notMade } from './made.ts';
import { notPlanned, type Planned, planWith } from './planned.ts';
import type { Saving, SavingState } from './saving.ts';
import type { Standards } from './standards.ts';

/** The layout that lies open on the page, with all that follows from it. */
export interface OpenLayout {
  /** Its id on the shelf; another one once it has become a second version. */
  readonly id: string;
  readonly history: History;
  readonly arrangement: Arrangement;
  /** What its geometry and its papers' directions tell against it. */
  readonly problems: readonly LayoutProblem[];
  /** How the person cuts now. */
  readonly cutting: Cutting;
  /** How it is cut, as far as that is known; a plan for how she cut before stands until the next. */
  readonly planned: Planned;
  /** What its cards will be like; what was so before an edit stands until it is known anew. */
  readonly made: Made;
  readonly saving: SavingState;
  /** The part that was taken up, by its id; `null`: none. It may be gone from the pile. */
  readonly taken: string | null;
}

/** The open layout and what can be done to it. */
export interface OpenLayoutStore
  extends Pick<StoreApi<OpenLayout>, 'getState' | 'getInitialState' | 'subscribe'> {
  /**
   * Does an edit, saves it and plans again. What would be wrong with the layout then, and nothing is done; or `null`.
   * Edits of one name in `joins` that follow one another are undone as one.
   */
  make(edit: Edit, joins?: string | null): readonly FileProblem[] | null;
  /** Undoes what was done last, or does again what was undone last; nothing where there is nothing. */
  undo(): void;
  redo(): void;
  /** Takes a part up, or with `null` lays it down. */
  take(part: string | null): void;
  /** Keeps in mind that the layout was written to a file as it is now; `when` in milliseconds since 1970. */
  copied(when: number): void;
  /** Saves now what could not be saved. */
  saveAgain(): void;
  /** Lays the layout away: nothing is planned for it any more. What is not saved yet is saved all the same. */
  close(): void;
}

/** What a layout is opened with; what the person says of herself holds for all layouts. */
export interface Opening {
  readonly history: History;
  readonly cutting: Pick<StoreApi<Cutting>, 'getState' | 'subscribe'>;
  readonly standards: Pick<StoreApi<Standards>, 'getState' | 'subscribe'>;
}

/**
 * Opens a layout as it is on the shelf; it is planned again when the person cuts another way, and its cards are worked
 * out again when she holds them to something else.
 */
export function openLayout(
  { history, cutting, standards }: Opening,
  { saving, planner }: { readonly saving: Saving; readonly planner: Planner },
): OpenLayoutStore {
  const store = createStore<OpenLayout>(() => ({
    id: saving.state().at.id,
    ...workedOut(history),
    cutting: cutting.getState(),
    planned: notPlanned,
    made: notMade,
    saving: saving.state(),
    taken: null,
  }));
  const leaveSaving = saving.subscribe(() => {
    const state = saving.state();
    store.setState({ saving: state, id: state.at.id });
  });

  const plans = planWith(planner, (planned) => store.setState({ planned }));
  const cards = madeWith(planner, (made) => store.setState({ made }));
  const work = () => {
    const { history: now, arrangement, cutting: by } = store.getState();
    cards.work({ layout: now.layout, arrangement }, { cutting: by, standards: standards.getState() });
  };
  const plan = () => {
    const { history: now, arrangement, cutting: by } = store.getState();
    work();
    plans.plan({ layout: now.layout, arrangement }, by);
  };
  plan();
  const leaveCutting = cutting.subscribe(() => {
    store.setState({ cutting: cutting.getState() });
    plan();
  });
  const leaveStandards = standards.subscribe(work);

  /** Does a step; what came of it is saved and planned. */
  const go = (step: Step): readonly FileProblem[] | null => {
    const before = store.getState().history;
    const next = stepped(before, step);
    if ('problems' in next) return next.problems;
    if (next === before) return null;
    store.setState(workedOut(next));
    saving.add(step, next);
    plan();
    return null;
  };

  return {
    getState: store.getState,
    getInitialState: store.getInitialState,
    subscribe: store.subscribe,
    make: (edit, joins = null) => (edit.changes.length === 0 ? null : go({ kind: 'edit', edit, joins })),
    undo: () => void go({ kind: 'undo' }),
    redo: () => void go({ kind: 'redo' }),
    take: (taken) => store.setState({ taken }),
    copied: (when) => saving.copied(when),
    saveAgain: () => saving.retry(),
    close() {
      leaveSaving();
      leaveCutting();
      leaveStandards();
      plans.close();
      cards.close();
    },
  };
}

function workedOut(history: History): Pick<OpenLayout, 'history' | 'arrangement' | 'problems'> {
  const arrangement = arrange(history.layout);
  return { history, arrangement, problems: checkLayout(history.layout, arrangement) };
}
