import { useStore } from 'zustand';
import { useWorld } from '../world.ts';
import type { CuttingSaid } from './cutting.ts';

/** How the person at this page cuts, kept up to date. */
export function useCutting(): CuttingSaid {
  return useStore(useWorld().cutting);
}
