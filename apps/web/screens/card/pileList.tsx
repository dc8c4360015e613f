import { type ReactNode, useMemo } from 'react';
import { letterFor } from '../../../../src/guide/index.ts';
import { showSize } from '../../../../src/measure/index.ts';
import { assemblyWords, dealtWords } from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { useInHandLater } from '../../state/inHand.ts';
import { useOpenLayout, useOpenLayoutStore } from '../../state/layoutContext.ts';
import { useLookedAt } from './lookedAt.ts';

/** The whole pile as a list in words, topmost first: nobody needs the drawing to know it. */
export function PileList(): ReactNode {
  const { card } = useMessages();
  const numbers = useNumbers();
  const { layout, arrangement } = useInHandLater();
  const { lookAt } = useLookedAt();
  const store = useOpenLayoutStore();
  const taken = useOpenLayout((state) => state.taken);
  const lines = useMemo(() => {
    const showing = { units: layout.units, glyphs: 'printed' } as const;
    const words = new Map(assemblyWords(layout, arrangement, showing).map((each) => [each.part, each]));
    return arrangement.parts.toReversed().map(({ part, face, seen }) => ({
      part,
      face,
      letter: letterFor(layout, part.id),
      size: seen === null ? '' : `${numbers.shown(showSize(seen, layout.units, 'printed'))}. `,
      lay: words.get(part.id)?.lay,
      prepare: words.get(part.id)?.prepare,
      dealt: dealtWords(part, layout),
    }));
  }, [layout, arrangement, numbers]);
  return (
    <section className="pile-list">
      <h2>{card.pile.list}</h2>
      {layout.parts.length === 0 ? <p>{card.pile.empty}</p> : null}
      <ol>
        {lines.map(({ part, face, letter, size, lay, prepare, dealt }) => (
          <li key={part.id}>
            <span className="letter">{letter}</span>
            <button
              type="button"
              className="say"
              aria-pressed={part.id === taken}
              onClick={() => {
                lookAt({ face });
                store.take(part.id);
              }}
            >
              <span translate="no">{part.name}</span>
            </button>
            <span className="lies">
              <span lang="en">
                {size}
                {prepare} {lay}
              </span>
              {dealt === '' ? null : <span lang="en"> {dealt}.</span>}
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}
