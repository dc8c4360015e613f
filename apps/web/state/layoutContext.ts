import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { OpenLayout, OpenLayoutStore } from './openLayout.ts';

const LayoutContext = createContext<OpenLayoutStore | null>(null);

export const LayoutProvider = LayoutContext.Provider;

/** What can be done to the layout that lies open; `null`: none does. */
export function useLayoutIfOpen(): OpenLayoutStore | null {
  return useContext(LayoutContext);
}

/** What can be done to the layout that lies open. */
export function useOpenLayoutStore(): OpenLayoutStore {
  const store = useContext(LayoutContext);
  if (store === null) throw new Error('A screen of a layout is shown within it');
  return store;
}

/** Something of the layout that lies open, kept up to date; the very same value as long as nothing changed. */
export function useOpenLayout<Value>(choose: (state: OpenLayout) => Value): Value {
  return useStore(useOpenLayoutStore(), choose);
}
