import { createStore, type StoreApi } from 'zustand/vanilla';
import { type KitEdit, type KitHistory, kitEdited, kitStepped } from '../../../src/editing/index.ts';
import type { KitFileProblem } from '../../../src/files/index.ts';
import { type KitReport, kitAtOnce, kitSet } from '../../../src/kits/index.ts';
import type { Planner } from '../../planner/browserPlanner.ts';
import type { KitShelf } from '../storage/kits.ts';
import type { Cutting } from './cutting.ts';

/** A kit that lies open on the page, with all that follows from it. */
export interface OpenKit {
  readonly id: string;
  readonly revision: number;
  readonly history: KitHistory;
  /** What is known at once, and with its plan when that has come. */
  readonly report: KitReport;
  /** How far its planning has come. */
  readonly stage: 'working' | 'done' | { readonly failed: string };
  /** Whether everything is on the disk. */
  readonly saving: 'saved' | 'saving' | 'failed';
  /** Whether it became a second version. */
  readonly beside: boolean;
}

/** The open kit and what can be done to it. */
export interface OpenKitStore extends Pick<StoreApi<OpenKit>, 'getState' | 'getInitialState' | 'subscribe'> {
  /**
   * Does an edit, saves it and works the kit out again; what would be wrong with the file then, and nothing is done.
   * Edits that follow one another and join by one name are one thing to undo.
   */
  make(edit: KitEdit, joins?: string): readonly KitFileProblem[] | null;
  step(which: 'undo' | 'redo'): void;
  saveAgain(): void;
  close(): void;
}

/** Opens a kit as it is on the shelf. */
export function openKit(
  start: { readonly id: string; readonly revision: number; readonly history: KitHistory },
  {
    kits,
    planner,
    cutting,
  }: {
    readonly kits: KitShelf;
    readonly planner: Planner;
    readonly cutting: Pick<StoreApi<Cutting>, 'getState' | 'subscribe'>;
  },
): OpenKitStore {
  const store = createStore<OpenKit>(() => ({
    ...start,
    report: kitAtOnce(start.history.kit, cutting.getState().trimmer),
    stage: 'working',
    saving: 'saved',
    beside: false,
  }));

  let control = new AbortController();
  const work = () => {
    control.abort();
    control = new AbortController();
    const { signal } = control;
    const { kit } = store.getState().history;
    const { trimmer, prefer } = cutting.getState();
    const set = kitSet(kit, trimmer);
    const report = kitAtOnce(kit, trimmer);
    // Where the size of some part is unknown there is nothing to plan; its layout says which.
    store.setState({ report, stage: set === null ? 'done' : 'working' });
    if (set === null) return;
    const { sources: _, ...cards } = set;
    planner.ask({ name: 'kit', set: { ...cards, prefer }, kit }, { signal }).then(
      (told) => {
        if (!signal.aborted) store.setState({ report: told, stage: 'done' });
      },
      (problem: unknown) => {
        if (signal.aborted) return;
        store.setState({ stage: { failed: problem instanceof Error ? problem.message : String(problem) } });
      },
    );
  };
  const leaveCutting = cutting.subscribe(work);
  work();

  let isWriting = false;
  const save = async () => {
    if (isWriting) return;
    isWriting = true;
    store.setState({ saving: 'saving' });
    try {
      // Whatever is done meanwhile is saved with the next.
      for (let saved: KitHistory | null = null; saved !== store.getState().history; ) {
        const { id, revision, history } = store.getState();
        saved = history;
        const { file, done, undone } = history;
        const record = await kits.save({ id, revision }, { file, done, undone });
        store.setState({
          id: record.id,
          revision: record.revision,
          ...(record.id === id ? {} : { beside: true }),
        });
      }
      store.setState({ saving: 'saved' });
    } catch {
      store.setState({ saving: 'failed' });
    } finally {
      isWriting = false;
    }
  };
  let joinsLast: string | undefined;
  const go = (history: KitHistory) => {
    store.setState({ history });
    work();
    void save();
  };
  return {
    getState: store.getState,
    getInitialState: store.getInitialState,
    subscribe: store.subscribe,
    make(edit, joins) {
      if (edit.changes.length === 0) return null;
      const next = kitEdited(store.getState().history, edit, joins !== undefined && joins === joinsLast);
      if ('problems' in next) return next.problems;
      joinsLast = joins;
      go(next);
      return null;
    },
    step(which) {
      const { history } = store.getState();
      const next = kitStepped(history, which);
      joinsLast = undefined;
      if (next !== history) go(next);
    },
    saveAgain: () => void save(),
    close() {
      leaveCutting();
      control.abort();
    },
  };
}
