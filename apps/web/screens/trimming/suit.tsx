import { type ReactNode, useState } from 'react';
import { type Edit, lengthsChanged, settingOf, together } from '../../../../src/editing/index.ts';
import type { SuitedSizes } from '../../../../src/planning/index.ts';
import { planSentence, suitSentences } from '../../../../src/words/index.ts';
import { CountBlank } from '../../form/countBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { useAsking } from '../../state/asking.ts';
import { useInHand } from '../../state/inHand.ts';
import { useOpenLayout, useOpenLayoutStore } from '../../state/layoutContext.ts';
import { isDrawn, Rooms, roomsOf } from './rooms.tsx';

/** Which lengths may move and how far, and the sizes within that room that make the cards from the sheets on hand. */
export function Suit(): ReactNode {
  const { suit } = useMessages().trimming;
  return (
    <details className="suit">
      <summary>{suit.heading}</summary>
      <p>{suit.about}</p>
      <Rooms />
      <Look />
    </details>
  );
}

/** Looks for the sizes, and says what was found of the layout as it is. */
function Look(): ReactNode {
  const { suit } = useMessages().trimming;
  const { layout, arrangement } = useInHand();
  const { trimmer } = useOpenLayout((state) => state.cutting);
  const [asking, ask] = useAsking<'suit'>();
  const [wanted, setWanted] = useState<number | null>(null);
  const cards = wanted ?? layout.cards;
  const isUnknown = arrangement.parts.some(({ cut }) => cut === null);
  const isOfNow = asking.stage !== 'told' || asking.question.set.layout === layout;
  const rooms = roomsOf(layout);
  if (rooms.length === 0) return <p>{suit.noRoom}</p>;
  if (rooms.every(({ part, name }) => !isDrawn(layout, part, name))) return <p>{suit.onlyFollows}</p>;
  if (isUnknown) return <p>{suit.unknown}</p>;
  return (
    <>
      <Sentence
        says={suit.look}
        blanks={{
          cards: (
            <CountBlank
              name="cards"
              label={suit.labels.cards}
              value={cards}
              least={1}
              most={100_000}
              onSet={setWanted}
            />
          ),
        }}
      />
      <p className="deeds">
        <button
          type="button"
          className="say"
          disabled={asking.stage === 'asking'}
          onClick={() => ask({ name: 'suit', set: { layout, arrangement, trimmer }, cards })}
        >
          {suit.go}
        </button>
      </p>
      <div role="status">
        {asking.stage === 'asking' ? <p>{suit.looking}</p> : null}
        {asking.stage === 'failed' ? <p className="notice">{suit.failed(asking.message)}</p> : null}
        {asking.stage === 'told' && isOfNow ? (
          <Found told={asking.told} asked={asking.question.cards} />
        ) : null}
      </div>
    </>
  );
}

/** What was found; sizes that differ are made the layout's with a tap. */
function Found({
  told,
  asked,
}: {
  readonly told: Parameters<typeof suitSentences>[0];
  readonly asked: number;
}): ReactNode {
  const { suit } = useMessages().trimming;
  const { count } = useNumbers();
  const inHand = useInHand();
  const store = useOpenLayoutStore();
  const { layout } = inHand;
  // The sentence for that tells of options of the command line.
  if (told.kind === 'no-room') return <p>{suit.onlyFollows}</p>;
  const sentences = suitSentences(told, layout, asked, { units: layout.units, glyphs: 'printed' });
  const edit = told.kind === 'suited' ? sizesEdit(told, inHand) : null;
  return (
    <>
      <div lang="en">
        {sentences.map((sentence) => (
          <p key={sentence} className={sentence.startsWith(' ') ? 'item' : undefined}>
            {sentence.trim()}
          </p>
        ))}
        {told.kind === 'suited' && told.plan !== null
          ? [...told.plan.papers.keys()].map((id) => (
              <p key={id} className="item">
                {planSentence(told.set.layout.papers.get(id)!, told.plan!)}
              </p>
            ))
          : null}
      </div>
      {edit === null || told.kind !== 'suited' ? null : (
        <p className="deeds">
          <button type="button" className="say" onClick={() => store.make(edit)}>
            {suit.take(told.cards, count(told.cards))}
          </button>
        </p>
      )}
    </>
  );
}

/** The layout with the sizes that were found and as many cards as come out, in one edit; `null`: it has them already. */
function sizesEdit(
  { cards, changes }: SuitedSizes,
  inHand: Parameters<typeof lengthsChanged>[0],
): Edit | null {
  if (cards === 0) return null;
  const sizes = changes.length === 0 ? null : lengthsChanged(inHand, changes);
  const many = cards === inHand.layout.cards ? null : settingOf(inHand.file, ['cards'], cards);
  if (sizes === null || many === null) return sizes ?? many;
  return together(sizes, many);
}
