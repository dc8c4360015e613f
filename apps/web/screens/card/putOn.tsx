import { type ReactNode, useMemo, useState } from 'react';
import { assemblyPlates } from '../../../../src/guide/index.ts';
import { arrange } from '../../../../src/layout/index.ts';
import { assemblyWords } from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { Drawing } from '../../pictures/drawing.tsx';
import { useWidthRem } from '../../pictures/width.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';
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
  const made = useOpenLayout((state) => state.made);
  const { card } = useLookedAt();
  const [place, rem] = useWidthRem<HTMLDivElement>();
  const drawn = useMemo(() => {
    if (made.stage !== 'told' || rem === null) return null;
    // As it was when its docket was worked out; a newer one follows in a moment.
    const { of: layout, docket } = made;
    const { assembly, holding } = docket;
    const arrangement = arrange(layout);
    const [plate] = assemblyPlates({
      layout,
      arrangement,
      card: Math.min(card, layout.cards - 1),
      assembly,
      holding,
      only: id,
      manner: 'coloured',
      // A ninth of a rem to a point: its type is then as large as the page's.
      room: { widthPt: Math.max(190, Math.min(44, rem) * 9), heightPt: 170 },
    });
    const showing = { units: layout.units, glyphs: 'printed' } as const;
    const words = assemblyWords(layout, arrangement, showing).find(({ part }) => part === id);
    return { plate, words };
  }, [made, id, card, rem]);
  const { plate, words } = drawn ?? {};
  return (
    <div ref={place} lang="en">
      {plate === undefined ? null : <Drawing page={plate} says={plate.says} />}
      {words === undefined ? null : (
        <p>{[words.first, words.prepare, words.lay].filter((sentence) => sentence !== '').join(' ')}</p>
      )}
    </div>
  );
}
