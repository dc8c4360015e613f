import { type ReactNode, useMemo, useState } from 'react';
import { type Mark, outlineStroke, type Page, rectangle, white } from '../../../../src/drawing/index.ts';
import { lengthsChanged } from '../../../../src/editing/index.ts';
import { hatchOf } from '../../../../src/guide/index.ts';
import type { Layout } from '../../../../src/layout/index.ts';
import type { Cliff, Enough } from '../../../../src/planning/index.ts';
import { cliffSentence, editSentence, enoughSentences } from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { Drawing } from '../../pictures/drawing.tsx';
import { useEnough } from '../../state/enough.ts';
import { useInHand } from '../../state/inHand.ts';
import { useOpenLayoutStore } from '../../state/layoutContext.ts';
import { SheetSwatch } from '../papers/swatch.tsx';
import { stacksOf } from './stacks.ts';

/** How many cards the papers are enough for, and the small changes that gain from them; asked when it is unfolded. */
export function EnoughFor(): ReactNode {
  const { enough: words } = useMessages().trimming;
  const [isOpen, setOpen] = useState(false);
  const told = useEnough(isOpen);
  return (
    <details className="enough-for" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.heading}</summary>
      {told === null ? (
        <p role="status">{words.reckoning}</p>
      ) : (
        <>
          <Finished enough={told.enough} layout={told.of} />
          <p lang="en">{enoughSentences(told.enough, told.of).join(' ')}</p>
          <Cliffs cliffs={told.cliffs} of={told.of} />
        </>
      )}
    </details>
  );
}

/** The finished cards in stacks, and beside them the sheets that run out. */
function Finished({ enough, layout }: { readonly enough: Enough; readonly layout: Layout }): ReactNode {
  const { enough: words } = useMessages().trimming;
  const { count } = useNumbers();
  if (enough.cards === null) return null;
  const { stacks, full } = stacksOf(enough.cards);
  const limit = enough.limit.flatMap((id) => {
    const sheet = layout.papers.get(id)?.sheets[0];
    return sheet === undefined ? [] : [{ id, size: sheet.size }];
  });
  const longest = Math.max(...limit.map(({ size }) => Math.max(size.width, size.height)));
  return (
    <ul className="finished">
      {stacks.map((cards, index) => (
        // Stacks are told apart by where they stand.
        // biome-ignore lint/suspicious/noArrayIndexKey: see above
        <li key={index}>
          <Stack cards={cards} full={full} layout={layout} />
          <span aria-hidden="true">{count(cards)}</span>
        </li>
      ))}
      {limit.map(({ id, size }) => (
        <li key={id} className="out">
          <SheetSwatch layout={layout} id={id} size={size} longest={longest} says={words.sheet} />
          <span>
            {words.runsOut} <span translate="no">{layout.papers.get(id)?.name}</span>
          </span>
        </li>
      ))}
    </ul>
  );
}

/** In points: the longer side of a card, and how far each card shows below the one that lies on it. */
const cardPt = 54;
const edgePt = 2.4;
/** So many edges has a full stack, however many cards that is. */
const fullEdges = 10;

/** A stack of finished cards, seen from above and a little from the front. */
function Stack({
  cards,
  full,
  layout,
}: {
  readonly cards: number;
  readonly full: number;
  readonly layout: Layout;
}): ReactNode {
  const { enough: words } = useMessages().trimming;
  const { count } = useNumbers();
  const page = useMemo((): Page => {
    const { size, papers } = layout.base;
    const [paper] = papers;
    const scale = cardPt / Math.max(size.width, size.height);
    const [widthPt, heightPt] = [size.width * scale, size.height * scale];
    const edges = Math.max(1, Math.round((cards / full) * fullEdges));
    // Stacks stand on one line, so the room above a low one stays free.
    const topPt = (fullEdges - edges) * edgePt;
    const fill =
      paper === undefined ? { colour: white } : { hatch: hatchOf(layout, paper, { manner: 'coloured' }) };
    const marks = Array.from(
      { length: edges },
      (_, below): Mark => ({
        kind: 'path',
        path: rectangle({ xPt: 1, yPt: topPt + 1 + (edges - 1 - below) * edgePt, widthPt, heightPt }),
        fill,
        stroke: outlineStroke,
      }),
    );
    return { widthPt: widthPt + 2, heightPt: heightPt + fullEdges * edgePt + 2, marks };
  }, [cards, full, layout]);
  return <Drawing page={page} says={words.stack(cards, count(cards))} className="stack" />;
}

/** Of small changes that only give a sheet one piece more there are many: so many are told. */
const mostOfPieces = 3;

function Cliffs({ cliffs, of }: { readonly cliffs: readonly Cliff[]; readonly of: Layout }): ReactNode {
  const { enough: words } = useMessages().trimming;
  const { count } = useNumbers();
  const inHand = useInHand();
  const store = useOpenLayoutStore();
  const showing = { units: of.units, glyphs: 'printed' } as const;
  // The layout may be another already, until the next answer.
  const told = useMemo(() => {
    const saving = cliffs.filter(({ gains }) => gains.some(({ kind }) => kind !== 'piece'));
    const ofPieces = cliffs.filter((cliff) => !saving.includes(cliff));
    return [...saving, ...ofPieces.slice(0, mostOfPieces)].map((cliff) => ({
      cliff,
      edit: inHand.layout === of ? lengthsChanged(inHand, cliff.changes) : null,
    }));
  }, [cliffs, inHand, of]);
  if (told.length === 0) return <p>{words.noCliffs}</p>;
  const more = cliffs.length - told.length;
  return (
    <>
      <h3>{words.cliffs}</h3>
      <ul className="cliffs">
        {told.map(({ cliff, edit }) => {
          const sentence = cliffSentence(cliff, of, showing);
          return (
            <li key={sentence}>
              <p lang="en">{sentence}</p>
              {edit === null ? null : (
                <button type="button" className="say" onClick={() => store.make(edit)}>
                  {words.take} <span lang="en">{editSentence(edit.told, 'printed')}</span>
                </button>
              )}
            </li>
          );
        })}
      </ul>
      {more > 0 ? <p>{words.more(more, count(more))}</p> : null}
    </>
  );
}
