import { startTransition, useCallback, useEffect, useState } from 'react';
import { problemOf, type SavingProblem } from '../../state/saving.ts';
import type { DocumentRecord } from '../../storage/database.ts';
import { useWorld } from '../../world.ts';

/** How long a layout lies in the bin before it goes for good, in milliseconds: 30 days. */
export const timeInBin = 30 * 24 * 60 * 60 * 1000;

/** What is on the shelf, kept up to date; `null`: not known yet. */
export interface ShelfView {
  readonly documents: readonly DocumentRecord[] | null;
  /** Why it cannot be read; `null` unless it cannot. */
  readonly problem: SavingProblem | null;
  readonly readAgain: () => void;
}

export function useShelf(): ShelfView {
  const { shelf, news, now } = useWorld();
  const [documents, setDocuments] = useState<readonly DocumentRecord[] | null>(null);
  const [problem, setProblem] = useState<SavingProblem | null>(null);
  const readAgain = useCallback(() => {
    shelf.documents().then(
      (found) =>
        startTransition(() => {
          setDocuments(found);
          setProblem(null);
        }),
      (reason) => setProblem(problemOf(reason)),
    );
  }, [shelf]);
  useEffect(() => {
    readAgain();
    // What could not be emptied is emptied at another visit.
    shelf.empty(now() - timeInBin).catch(() => {});
    const seen = () => {
      if (document.visibilityState === 'visible') readAgain();
    };
    document.addEventListener('visibilitychange', seen);
    const unsubscribe = news.subscribe(readAgain);
    return () => {
      document.removeEventListener('visibilitychange', seen);
      unsubscribe();
    };
  }, [shelf, news, now, readAgain]);
  return { documents, problem, readAgain };
}
