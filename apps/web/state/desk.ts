import type { Planner } from '../../planner/browserPlanner.ts';
import type { Shelf } from '../storage/shelf.ts';
import type { CuttingStore } from './cutting.ts';
import { type OpenLayoutStore, openLayout } from './openLayout.ts';
import { type Saving, type SavingWorld, savingOf } from './saving.ts';
import type { StandardsStore } from './standards.ts';

/** Where layouts lie open. */
export interface Desk {
  /** A layout from the shelf, or as it lies here already; `null`: there is none of that id. */
  open(id: string): Promise<OpenLayoutStore | null>;
  /** Lays a layout away. One that is not saved yet stays on the desk until it is, so that nothing is lost. */
  layAway(layout: OpenLayoutStore): void;
  /** Whether something that was done is not saved yet. */
  isUnsaved(): boolean;
  /** Tries again now to save what could not be saved. */
  saveAgain(): void;
}

/** A desk before a shelf, of a person who cuts in a way of her own and holds her cards to something. */
export function deskBefore(
  {
    shelf,
    planner,
    cutting,
    standards,
  }: {
    readonly shelf: Shelf;
    readonly planner: Planner;
    readonly cutting: CuttingStore;
    readonly standards: StandardsStore;
  },
  world: SavingWorld,
): Desk {
  const lying = new Map<OpenLayoutStore, Saving>();
  const isSaved = (saving: Saving) => saving.state().stage === 'saved';
  /** Those that were laid away before they were saved, and what calls that off. */
  const leaving = new Map<OpenLayoutStore, () => void>();
  /** The layout that lies here; it stays, though it was being laid away. */
  const takenUp = (id: string) => {
    const layout = [...lying.keys()].find((each) => each.getState().id === id);
    if (layout !== undefined) leaving.get(layout)?.();
    return layout;
  };
  return {
    async open(id) {
      const here = takenUp(id);
      if (here !== undefined) return here;
      // So that it is not planned for another trimmer first, nor held to something else.
      const [found] = await Promise.all([shelf.open(id), cutting.known, standards.known]);
      if (found === null) return null;
      // It may have been opened twice meanwhile.
      const meanwhile = takenUp(id);
      if (meanwhile !== undefined) return meanwhile;
      const saving = savingOf(shelf, { id, revision: found.document.revision }, world);
      const layout = openLayout({ history: found.history, cutting, standards }, { saving, planner });
      lying.set(layout, saving);
      return layout;
    },
    layAway(layout) {
      const saving = lying.get(layout);
      if (saving === undefined) return;
      const goIfSaved = () => {
        if (!isSaved(saving)) return;
        stay();
        lying.delete(layout);
        layout.close();
      };
      const unsubscribe = saving.subscribe(goIfSaved);
      const stay = () => {
        unsubscribe();
        leaving.delete(layout);
      };
      leaving.set(layout, stay);
      goIfSaved();
    },
    isUnsaved: () => [...lying.values()].some((saving) => !isSaved(saving)),
    saveAgain: () => {
      for (const saving of lying.values()) saving.retry();
    },
  };
}
