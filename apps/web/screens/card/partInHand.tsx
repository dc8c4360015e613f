import { type ReactNode, useState } from 'react';
import { partDuplicated, partMoved, partTaken } from '../../../../src/editing/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useInHand } from '../../state/inHand.ts';
import { useOpenLayoutStore } from '../../state/layoutContext.ts';
import { keyOf, useAgainst } from './mends.tsx';
import { PartForm } from './partForm.tsx';
import { ProblemWords } from './problems.tsx';
import { PutOn } from './putOn.tsx';

/** The part that was taken up, in words, with what can be done with it. */
export function PartInHand({ id }: { readonly id: string }): ReactNode {
  const { card } = useMessages();
  const inHand = useInHand();
  const store = useOpenLayoutStore();
  const against = useAgainst();
  const [says, setSays] = useState('');
  const { file, layout } = inHand;
  const index = layout.parts.findIndex((part) => part.id === id);
  const part = layout.parts[index];
  if (part === undefined) return null;
  const move = (to: number) =>
    setSays(store.make(partMoved(file, index, to)) === null ? '' : card.pile.stuck);
  const own = against.filter(({ problem }) => problem.part === id);
  return (
    <section className="in-words" aria-label={`${card.pile.inHand}: ${part.name}`}>
      <PartForm index={index} />
      {own.map((against) => (
        <div key={keyOf(against)} className="stands-against">
          <ProblemWords against={against} isInHand />
        </div>
      ))}
      <PutOn id={id} />
      <p role="status">{says}</p>
      <div className="says">
        <button
          type="button"
          className="say"
          disabled={index + 1 >= layout.parts.length}
          onClick={() => move(index + 1)}
        >
          {card.pile.up}
        </button>
        <button type="button" className="say" disabled={index === 0} onClick={() => move(index - 1)}>
          {card.pile.down}
        </button>
        <button type="button" className="say" onClick={() => store.make(partDuplicated(inHand, index))}>
          {card.pile.another}
        </button>
        <button
          type="button"
          className="say"
          onClick={() => {
            store.make(partTaken(file, index));
            store.take(null);
          }}
        >
          {card.pile.takeOff}
        </button>
        <button type="button" className="say" onClick={() => store.take(null)}>
          {card.pile.layDown}
        </button>
      </div>
    </section>
  );
}
