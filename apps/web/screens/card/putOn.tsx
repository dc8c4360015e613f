import { type ReactNode, useMemo, useState } from 'react';
import { settingOf } from '../../../../src/editing/index.ts';
import { arrange } from '../../../../src/layout/index.ts';
import { assemblyWords } from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useOpenLayout, useOpenLayoutStore } from '../../state/layoutContext.ts';
import { AssemblyPlate } from '../assemblyPlate.tsx';
import { useLookedAt } from './lookedAt.ts';

/** How the part in hand comes onto the card, in a plate and in words; drawn once it is unfolded. */
export function PutOn({ id }: { readonly id: string }): ReactNode {
  const { card } = useMessages();
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="put-on" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{card.pile.putOn}</summary>
      {isOpen ? <Step id={id} /> : null}
    </details>
  );
}

function Step({ id }: { readonly id: string }): ReactNode {
  const { pile } = useMessages().card;
  const store = useOpenLayoutStore();
  const history = useOpenLayout((state) => state.history);
  const made = useOpenLayout((state) => state.made);
  const { card } = useLookedAt();
  // As it was when its docket was worked out; a newer one follows in a moment.
  const known = useMemo(() => {
    if (made.stage !== 'told') return null;
    const { of: layout, docket } = made;
    const arrangement = arrange(layout);
    const showing = { units: layout.units, glyphs: 'printed' } as const;
    const words = assemblyWords(layout, arrangement, showing).find(({ part }) => part === id);
    return { layout, arrangement, assembly: docket.assembly, holding: docket.holding, words };
  }, [made, id]);
  if (known === null) return null;
  const { words, ...drawn } = known;
  // What was asked for, though it cannot be; a part that it does not name stands in its own turn.
  const turns = drawn.assembly.steps.map((step) => step.part);
  const asked = drawn.layout.order ?? [];
  const order = asked.length === turns.length ? asked : turns;
  const at = order.indexOf(id);
  const swapped = (to: number) => {
    const now = [...order];
    [now[at], now[to]] = [now[to]!, now[at]!];
    store.make(settingOf(history.file, ['order'], now));
  };
  return (
    <>
      <AssemblyPlate part={id} card={card} {...drawn} />
      {words === undefined ? null : (
        <p lang="en">
          {[words.first, words.prepare, words.lay].filter((sentence) => sentence !== '').join(' ')}
        </p>
      )}
      <p className="deeds">
        <button type="button" className="say" disabled={at <= 0} onClick={() => swapped(at - 1)}>
          {pile.sooner}
        </button>
        <button
          type="button"
          className="say"
          disabled={at < 0 || at + 1 >= order.length}
          onClick={() => swapped(at + 1)}
        >
          {pile.later}
        </button>
        {asked.length === 0 ? null : (
          <button
            type="button"
            className="say"
            onClick={() => store.make(settingOf(history.file, ['order'], undefined))}
          >
            {pile.orderFreed}
          </button>
        )}
      </p>
    </>
  );
}
