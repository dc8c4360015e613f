import { useEffect, useMemo, useRef, useState } from 'react';
import type { Edit } from '../../../src/editing/index.ts';
import { fileProblemSentence } from '../../../src/words/index.ts';
import { useOpenLayoutStore } from '../state/layoutContext.ts';

/** Fills a blank: each value is done at once, and all that one opening of the blank did is one thing to undo. */
export interface Fill<Value> {
  /** Sets the value; a sentence where it may not stand there, and nothing is done. */
  set(value: Value): string | null;
  /** Takes back what this opening did. */
  takeBack(): void;
}

/**
 * Fills a blank of the open layout by edits; `editOf` makes the edit that sets a value. Used by what is there only
 * while the blank is open.
 */
export function useFill<Value>(editOf: (value: Value) => Edit): Fill<Value> {
  const store = useOpenLayoutStore();
  const make = useRef(editOf);
  useEffect(() => {
    make.current = editOf;
  });
  const [joins] = useState(nextOpening);
  return useMemo(
    () => ({
      set(value) {
        const problems = store.make(make.current(value), joins);
        return problems === null ? null : problems.map(fileProblemSentence).join(' ');
      },
      takeBack() {
        if (store.getState().history.done.at(-1)?.joins === joins) store.undo();
      },
    }),
    [store, joins],
  );
}

let openings = 0;

/** A name that no other opening of a blank has. */
function nextOpening(): string {
  openings += 1;
  return `blank ${openings}`;
}
