import { memo, type ReactNode } from 'react';
import type { InHand } from '../../../../src/editing/index.ts';
import { drawnFace } from '../../../../src/guide/index.ts';
import type { Face } from '../../../../src/layout/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { Marks } from '../../pictures/drawing.tsx';
import { useInHandLater } from '../../state/inHand.ts';
import { useLookedAt } from './lookedAt.ts';

/** More than this lie one upon another. */
const mostLaidOut = 48;

/** All cards of the set as they lie on the table, each with its own papers; a tap looks at one. */
export function WholeSet(): ReactNode {
  const { card: words } = useMessages();
  const inHand = useInHandLater();
  const { layout } = inHand;
  const { card, face, lookAt } = useLookedAt();
  const cards = Array.from({ length: Math.min(layout.cards, mostLaidOut) }, (_, index) => index);
  return (
    <section aria-label={words.table.setOnTable(layout.cards)}>
      <h2>{words.table.setOnTable(layout.cards)}</h2>
      <ol className="whole-set">
        {cards.map((index) => (
          <li key={index}>
            <button
              type="button"
              aria-pressed={index === card}
              onClick={() => {
                lookAt({ card: index });
                window.scrollTo({ top: 0 });
              }}
            >
              <SmallCard inHand={inHand} card={index} face={face} />
              <span>{words.table.cardNumber(index + 1)}</span>
            </button>
          </li>
        ))}
      </ol>
      {layout.cards > mostLaidOut ? <p>{words.table.more(layout.cards - mostLaidOut)}</p> : null}
    </section>
  );
}

/** A card of the set as it is small on the table; drawn again only where the layout changed. */
const SmallCard = memo(function SmallCard({
  inHand: { layout, arrangement },
  card,
  face,
}: {
  readonly inHand: InHand;
  readonly card: number;
  readonly face: Face;
}): ReactNode {
  const { frame, ground, pieces } = drawnFace({
    layout,
    arrangement,
    card,
    face,
    scale: 0.4,
    manner: 'coloured',
  });
  return (
    <svg
      viewBox={`${frame.xPt - 1} ${frame.yPt - 1} ${frame.widthPt + 2} ${frame.heightPt + 2}`}
      width={frame.widthPt + 2}
      fill="none"
      strokeMiterlimit={10}
      aria-hidden="true"
    >
      <Marks marks={[ground.mark, ...pieces.map(({ mark }) => mark)]} />
    </svg>
  );
});
