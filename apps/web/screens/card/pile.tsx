import { type KeyboardEvent, type PointerEvent, type ReactNode, useMemo, useRef, useState } from 'react';
import { partMoved } from '../../../../src/editing/index.ts';
import { type PileTag, pileDrawing } from '../../../../src/guide/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { Marks } from '../../pictures/drawing.tsx';
import { useTypeface } from '../../pictures/typeface.ts';
import { useInHandLater } from '../../state/inHand.ts';
import { useOpenLayout, useOpenLayoutStore } from '../../state/layoutContext.ts';
import { useWidth } from '../../state/useWidth.ts';
import { useLookedAt } from './lookedAt.ts';

/** How far a finger may slip and still tap. */
const slipPx = 5;

/** The pile edge-on under the card: a part is taken up by its tag, and moved in the pile by dragging it or by keys. */
export function Pile(): ReactNode {
  const { card: words } = useMessages();
  const { layout, arrangement } = useInHandLater();
  const { card, face } = useLookedAt();
  const store = useOpenLayoutStore();
  const taken = useOpenLayout((state) => state.taken);
  const box = useRef<HTMLDivElement>(null);
  const typeface = useTypeface();
  const widthPx = useWidth(box);
  // Its type grows with that of the page.
  const remPx = widthPx === 0 ? 0 : Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  const isNarrow = widthPx < 31 * remPx;
  const drawing = useMemo(
    () =>
      widthPx === 0
        ? null
        : pileDrawing({
            layout,
            arrangement,
            card,
            face,
            manner: 'coloured',
            typeface,
            widthPt: widthPx,
            most: { heightPt: isNarrow ? 90 : 140, times: 8 },
            tags: {
              widthPt: Math.min(widthPx * 0.76, isNarrow ? Math.max(widthPx * 0.62, 12 * remPx) : 21 * remPx),
              leadingPt: 2.45 * remPx,
              sizePt: remPx,
            },
          }),
    [layout, arrangement, card, face, typeface, widthPx, remPx, isNarrow],
  );
  const drag = usePileDrag(drawing?.tags ?? []);
  return (
    <section className="pile" aria-label={words.pile.label}>
      <div ref={box}>
        {drawing === null ? null : (
          <svg
            className="pile-picture"
            viewBox={`0 0 ${drawing.widthPt} ${drawing.heightPt}`}
            width={drawing.widthPt}
            height={drawing.heightPt}
            fill="none"
            strokeMiterlimit={10}
            role="group"
            aria-label={words.pile.label}
          >
            {drawing.layers.map(({ part, piece, marks }) => (
              <g
                key={`${part} ${piece}`}
                className={part === taken ? 'layer taken' : 'layer'}
                // The tag beside it does the same for those who do not point.
                {...(part === 'base' ? {} : { onPointerDown: () => store.take(part) })}
              >
                <Marks marks={marks} />
              </g>
            ))}
            {drawing.tags.map((tag) => (
              <Tag key={tag.part} tag={tag} taken={tag.part === taken} drag={drag} />
            ))}
            {drag.at === null ? null : (
              <path className="pile-here" d={`M0 ${drag.at}H${drawing.widthPt}`} aria-hidden="true" />
            )}
          </svg>
        )}
      </div>
      {drawing === null ? null : (
        <p className="caption">
          {words.pile.hint} {words.pile.thickened(drawing.thickened)}
        </p>
      )}
      <p className="unseen" role="status">
        {drag.says}
      </p>
    </section>
  );
}

function Tag({
  tag,
  taken,
  drag,
}: {
  readonly tag: PileTag;
  readonly taken: boolean;
  readonly drag: PileDrag;
}): ReactNode {
  const { frame, thread, swatch, words, part, name, paper } = tag;
  const marks = (
    <>
      <rect className="tag-reach" x={frame.xPt} y={frame.yPt} width={frame.widthPt} height={frame.heightPt} />
      <Marks marks={thread} />
      <Marks marks={swatch} />
      <Marks marks={words} />
    </>
  );
  // The base is where everything lies; it has its words above.
  if (part === 'base')
    return (
      <g aria-hidden="true" lang="en">
        {marks}
      </g>
    );
  return (
    <g
      className={taken ? 'tag taken' : 'tag'}
      role="button"
      tabIndex={0}
      aria-pressed={taken}
      lang="en"
      aria-label={paper === null ? name : `${name}, ${paper}`}
      data-part={part}
      {...drag.tag(part)}
    >
      {marks}
    </g>
  );
}

interface PileDrag {
  /** Handlers for the tag of a part. */
  readonly tag: (part: string) => {
    readonly onPointerDown: (event: PointerEvent<SVGGElement>) => void;
    readonly onPointerMove: (event: PointerEvent<SVGGElement>) => void;
    readonly onPointerUp: () => void;
    readonly onPointerCancel: () => void;
    readonly onKeyDown: (event: KeyboardEvent) => void;
  };
  /** How high in the drawing the dragged part would come to lie; `null`: nothing is dragged. */
  readonly at: number | null;
  readonly says: string;
}

/** Moves parts in the pile: by dragging their tags, by the arrow keys with Alt. */
function usePileDrag(tags: readonly PileTag[]): PileDrag {
  const store = useOpenLayoutStore();
  const { card: words } = useMessages();
  const start = useRef<{ readonly part: string; readonly yPx: number } | null>(null);
  const [over, setOver] = useState<{ readonly part: string; readonly above: boolean } | null>(null);
  const [says, setSays] = useState('');

  /** Lays a part where another one of its face lies in the pile, above or below it. */
  const layAt = (part: string, other: string, above: boolean) => {
    const { history } = store.getState();
    const ids = history.layout.parts.map(({ id }) => id);
    const from = ids.indexOf(part);
    const place = other === 'base' ? 0 : ids.indexOf(other) + (above ? 1 : 0);
    const to = place > from ? place - 1 : place;
    if (from < 0 || to === from) return;
    const problems = store.make(partMoved(history.file, from, to));
    setSays(problems === null ? '' : words.pile.stuck);
  };
  /** The part of the same face that lies next in the pile as it is now, which may not be drawn yet. */
  const beside = (part: string, by: 1 | -1): string | null => {
    const { parts } = store.getState().arrangement;
    const face = parts.find(({ part: { id } }) => id === part)?.face;
    const pile = parts.filter((one) => one.face === face).map(({ part: { id } }) => id);
    return pile[pile.indexOf(part) + by] ?? null;
  };
  const drop = () => {
    if (start.current !== null && over !== null && over.part !== start.current.part) {
      layAt(start.current.part, over.part, over.above);
    }
    start.current = null;
    setOver(null);
  };
  const shown = over === null ? undefined : tags.find(({ part }) => part === over.part);
  return {
    at:
      shown === undefined || over === null ? null : shown.frame.yPt + (over.above ? 0 : shown.frame.heightPt),
    says,
    tag: (part) => ({
      onPointerDown(event) {
        store.take(part);
        event.currentTarget.setPointerCapture(event.pointerId);
        start.current = { part, yPx: event.clientY };
      },
      onPointerMove(event) {
        if (start.current === null || Math.abs(event.clientY - start.current.yPx) < slipPx) return;
        const picture = event.currentTarget.ownerSVGElement!.getBoundingClientRect();
        const y = event.clientY - picture.top;
        const under = tags.find(({ frame }) => y >= frame.yPt && y < frame.yPt + frame.heightPt);
        setOver(
          under === undefined
            ? null
            : {
                part: under.part,
                // The base lies under everything.
                above: under.part === 'base' || y < under.frame.yPt + under.frame.heightPt / 2,
              },
        );
      },
      onPointerUp: drop,
      onPointerCancel() {
        start.current = null;
        setOver(null);
      },
      onKeyDown(event) {
        if (event.key === 'Enter' || event.key === ' ') store.take(part);
        else if (event.altKey && (event.key === 'ArrowUp' || event.key === 'ArrowDown')) {
          const other = beside(part, event.key === 'ArrowUp' ? 1 : -1);
          if (other !== null) layAt(part, other, event.key === 'ArrowUp');
        } else return;
        event.preventDefault();
      },
    }),
  };
}
