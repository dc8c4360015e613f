import { createContext, useContext } from 'react';
import type { Face } from '../../../../src/layout/index.ts';

/** How the card lies on the table: which card of the set, which face up. */
export interface LookedAt {
  /** From 0. */
  readonly card: number;
  readonly face: Face;
  readonly lookAt: (change: { readonly card?: number; readonly face?: Face }) => void;
}

const LookedAtContext = createContext<LookedAt | null>(null);

export const LookedAtProvider = LookedAtContext.Provider;

/** What is looked at on the card's screen. */
export function useLookedAt(): LookedAt {
  const lookedAt = useContext(LookedAtContext);
  if (lookedAt === null) throw new Error('The table belongs to the card’s screen');
  return lookedAt;
}
