import type { Planner } from '../../planner/browserPlanner.ts';
import type { Shelf } from '../storage/shelf.ts';
import { type OpenLayoutStore, openLayout } from './openLayout.ts';
import { type Saving, type SavingWorld, savingOf } from './saving.ts';

/** Where layouts lie open. */
export interface Desk {
  /** A layout from the shelf, or as it lies here already; `null`: there is none of that id. */
  open(id: string): Promise<OpenLayoutStore | null>;
  /** Lays a layout away. One that is not saved yet stays on the desk until it is, so that nothing is lost. */
  layAway(layout: OpenLayoutStore): void;
  /** Whether something that was done is not saved yet. */
  isUnsaved(): boolean;
}

/** A desk before a shelf. */
export function deskBefore(shelf: Shelf, planner: Planner, world: SavingWorld): Desk {
  const lying = new Map<OpenLayoutStore, Saving>();
  const isSaved = (saving: Saving) => saving.state().stage === 'saved';
  const withId = (id: string) => [...lying.keys()].find((layout) => layout.getState().id === id);
  return {
    async open(id) {
      const here = withId(id);
      if (here !== undefined) return here;
      const found = await shelf.open(id);
      if (found === null) return null;
      // It may have been opened twice meanwhile.
      const meanwhile = withId(id);
      if (meanwhile !== undefined) return meanwhile;
      const saving = savingOf(shelf, { id, revision: found.document.revision }, world);
      const layout = openLayout({ history: found.history, trimmer: null }, { saving, planner });
      lying.set(layout, saving);
      return layout;
    },
    layAway(layout) {
      const saving = lying.get(layout);
      if (saving === undefined) return;
      if (isSaved(saving)) {
        lying.delete(layout);
        layout.close();
        return;
      }
      const unsubscribe = saving.subscribe(() => {
        if (!isSaved(saving)) return;
        unsubscribe();
        lying.delete(layout);
        layout.close();
      });
    },
    isUnsaved: () => [...lying.values()].some((saving) => !isSaved(saving)),
  };
}
