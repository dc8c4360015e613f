import type { Step, Track } from '../../../src/editing/index.ts';
import type { At, Shelf } from '../storage/shelf.ts';

export interface SavingState {
  readonly at: At;
  readonly stage: 'saved' | 'saving' | 'failed';
  readonly beside: boolean;
}
export interface Saving {
  add(step: Step, track: Track): void;
  state(): SavingState;
  subscribe(cb: () => void): () => void;
  retry(): void;
}
export function savingOf(shelf: Shelf, at: At): Saving {
  let state: SavingState = { at, stage: 'saved', beside: false };
  const heard = new Set<() => void>();
  let tail = Promise.resolve();
  const tell = (next: Partial<SavingState>) => {
    state = { ...state, ...next };
    for (const h of heard) h();
  };
  return {
    add(step, track) {
      tell({ stage: 'saving' });
      tail = tail.then(async () => {
        const saved = await shelf.save(state.at, step, track);
        tell({ at: saved.at, stage: 'saved', beside: saved.beside || state.beside });
      });
    },
    state: () => state,
    subscribe: (cb) => {
      heard.add(cb);
      return () => heard.delete(cb);
    },
    retry: () => {},
  };
}
