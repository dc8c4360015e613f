import { useEffect, useMemo, useRef, useState } from 'react';
import type { Edit } from '../../../src/editing/index.ts';
import { fileProblemSentence } from '../../../src/words/index.ts';
import { useLayoutIfOpen } from '../state/layoutContext.ts';

/**
 * What a value does that is put into a blank: of the open layout it makes an edit (`null`: there is nothing to do;
 * `refused`: a sentence why it cannot be); of
 * a form that is no layout yet it is set; where that may refuse it, with a sentence, it is tried; what one opening of the
 * blank did `joins` by a name of its own.
 */
export type Filling<Value> =
  | { readonly editOf: (value: Value) => Edit | { readonly refused: string } | null }
  | { readonly onSet: (value: Value) => void }
  | { readonly tries: (value: Value, joins: string) => string | null };

/** Fills a blank: each value is done at once, and all that one opening of the blank did is one thing to undo. */
export interface Fill<Value> {
  /** Sets the value; a sentence where it may not stand there, and nothing is done. */
  set(value: Value): string | null;
  /** Takes back what this opening did. */
  takeBack(): void;
}

/** Fills a blank that stood at `value` when it was opened. Used by what is there only while the blank is open. */
export function useFill<Value>(value: Value, filling: Filling<Value>): Fill<Value> {
  const store = useLayoutIfOpen();
  const how = useRef(filling);
  useEffect(() => {
    how.current = filling;
  });
  const [joins] = useState(nextOpening);
  const [before] = useState(value);
  return useMemo(
    () => ({
      set(now) {
        if ('onSet' in how.current) {
          how.current.onSet(now);
          return null;
        }
        if ('tries' in how.current) return how.current.tries(now, joins);
        const edit = how.current.editOf(now);
        if (edit !== null && 'refused' in edit) return edit.refused;
        const problems = edit === null ? null : (store?.make(edit, joins) ?? null);
        return problems === null ? null : problems.map(fileProblemSentence).join(' ');
      },
      takeBack() {
        if ('onSet' in how.current) how.current.onSet(before);
        else if ('tries' in how.current) how.current.tries(before, joins);
        else if (store?.getState().history.done.at(-1)?.joins === joins) store.undo();
      },
    }),
    [store, joins, before],
  );
}

let openings = 0;

/** A name that no other opening of a blank has. */
function nextOpening(): string {
  openings += 1;
  return `blank ${openings}`;
}
