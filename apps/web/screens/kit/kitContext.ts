import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { Showing } from '../../../../src/words/index.ts';
import type { OpenKit, OpenKitStore } from '../../state/openKit.ts';

/** The kit that lies open. */
export const KitContext = createContext<OpenKitStore | null>(null);

export function useKit(): OpenKitStore {
  const store = useContext(KitContext);
  if (store === null) throw new Error('What belongs to a kit is shown within one');
  return store;
}

/** What is picked from the open kit, kept up to date. */
export function useOpenKit<Picked>(pick: (kit: OpenKit) => Picked): Picked {
  return useStore(useKit(), pick);
}

/** Lengths of the kit are shown in its own units. */
export function useShowing(): Showing {
  return { units: useOpenKit(({ history }) => history.kit.units), glyphs: 'printed' };
}
