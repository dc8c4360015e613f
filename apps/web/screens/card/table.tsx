import { Fragment, type ReactNode, useDeferredValue, useRef, useState } from 'react';
import { pathData } from '../../../../src/drawing/index.ts';
import { type DrawnFace, drawnFace } from '../../../../src/guide/index.ts';
import type { Base, Face } from '../../../../src/layout/index.ts';
import { hingesOf, openingAxis } from '../../../../src/making/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { Marks } from '../../pictures/drawing.tsx';
import { useInHand } from '../../state/inHand.ts';
import { useOpenLayout, useOpenLayoutStore } from '../../state/layoutContext.ts';
import { Calibration } from './calibration.tsx';
import { LayTicks } from './layTicks.tsx';
import { useLookedAt } from './lookedAt.ts';
import { TearLines } from './tearLines.tsx';
import { useHand } from './useHand.ts';
import { useTrueSize } from './useTrueSize.ts';
import { WholeSet } from './wholeSet.tsx';

/** Room round the card for what stands beside it, in points. */
const roundIt = 42;

/** The card as it lies on the table, with what it takes to open it, turn it and look at the others. */
export function Table(): ReactNode {
  const { card: words } = useMessages();
  const { layout, arrangement } = useInHand();
  const { card, face, lookAt } = useLookedAt();
  const [isTrueSize, setTrueSize] = useState(false);
  const [isMeasuring, setMeasuring] = useState(false);
  const [isLaidOut, setLaidOut] = useState(false);
  // The button answers at once, the cards come as they are drawn.
  const isShown = useDeferredValue(isLaidOut);
  const trueSize = useTrueSize();
  const { pxPerPt, measured } = trueSize;
  const drawn = drawnFace({ layout, arrangement, card, face, scale: 1, manner: 'coloured' });
  const faceNames: Readonly<Record<Face, string>> = {
    base: words.table.frontOf,
    inside: words.table.insideOf,
    back: words.table.backOf,
  };
  const caption = words.table.caption(faceNames[face], card + 1, layout.cards);
  return (
    <section className="table" aria-label={caption}>
      <CardPicture drawn={drawn} widthPx={isTrueSize && measured ? pxPerPt : null} label={caption} />
      <p className="caption">{caption}</p>
      <div className="says">
        {layout.base.fold === 'none' ? null : (
          <button
            type="button"
            className="say"
            onClick={() => lookAt({ face: face === 'inside' ? 'base' : 'inside' })}
          >
            {face === 'inside' ? words.table.close : words.table.open}
          </button>
        )}
        <button
          type="button"
          className="say"
          onClick={() => lookAt({ face: face === 'back' ? 'base' : 'back' })}
        >
          {face === 'back' ? words.table.turnBack : words.table.turnOver}
        </button>
        <button
          type="button"
          className="say"
          disabled={card === 0}
          onClick={() => lookAt({ card: card - 1 })}
        >
          {words.table.before}
        </button>
        <button
          type="button"
          className="say"
          disabled={card + 1 >= layout.cards}
          onClick={() => lookAt({ card: card + 1 })}
        >
          {words.table.next}
        </button>
        {layout.cards === 1 ? null : (
          <button
            type="button"
            className="say"
            aria-expanded={isLaidOut}
            onClick={() => setLaidOut(!isLaidOut)}
          >
            {isLaidOut ? words.table.putTogether : words.table.layOut}
          </button>
        )}
        <button
          type="button"
          className="say"
          onClick={() => {
            setTrueSize(!isTrueSize);
            setMeasuring(!isTrueSize && !measured);
          }}
        >
          {isTrueSize ? words.table.asFits : words.table.trueSize}
        </button>
        {isTrueSize && measured && !isMeasuring ? (
          <button type="button" className="say" onClick={() => setMeasuring(true)}>
            {words.calibrate.again}
          </button>
        ) : null}
      </div>
      {isMeasuring ? <Calibration trueSize={trueSize} onDone={() => setMeasuring(false)} /> : null}
      {isShown && layout.cards > 1 ? <WholeSet /> : null}
    </section>
  );
}

/** The picture of a face: its parts can be taken up, dragged and moved by the arrow keys. */
function CardPicture({
  drawn,
  widthPx,
  label,
}: {
  readonly drawn: DrawnFace;
  /** Pixels to a point at true size; `null`: as large as there is room. */
  readonly widthPx: number | null;
  readonly label: string;
}): ReactNode {
  const { card: words } = useMessages();
  const picture = useRef<SVGSVGElement>(null);
  const { layout } = useInHand();
  const { face, lookAt } = useLookedAt();
  const store = useOpenLayoutStore();
  const taken = useOpenLayout((state) => state.taken);
  const inHand = layout.parts.find(({ id }) => id === taken);
  const hand = useHand(picture);
  const view = {
    x: drawn.frame.xPt - roundIt,
    y: drawn.frame.yPt - roundIt,
    width: drawn.frame.widthPt + 2 * roundIt,
    height: drawn.frame.heightPt + 2 * roundIt,
  };
  const whole = drawn.beside.reduce((all, { frame }) => around(all, frame), view);
  const nameOf = (part: string) => layout.parts.find((each) => each.id === part)?.name ?? part;
  return (
    <div className="table-top">
      <svg
        ref={picture}
        className={widthPx === null ? 'card-picture' : 'card-picture true-size'}
        viewBox={`${whole.x} ${whole.y} ${whole.width} ${whole.height}`}
        style={widthPx === null ? undefined : { width: `${whole.width * widthPx}px` }}
        fill="none"
        strokeMiterlimit={10}
        role="group"
        aria-label={label}
        {...hand.surface}
      >
        <Marks marks={[...drawn.beside.map(({ mark }) => mark), drawn.ground.mark]} />
        {drawn.pieces.map(({ part, piece, mark }) => (
          <g key={`${part} ${piece}`} className="piece" {...hand.piece({ part, piece })}>
            <Marks marks={[mark]} />
          </g>
        ))}
        {drawn.pieces
          .filter(({ part }) => part === taken)
          .map(({ part, piece, path }) => (
            <Fragment key={`${part} ${piece}`}>
              <path className="in-hand-ground" d={pathData(path)} />
              <path
                className="in-hand"
                d={pathData(path)}
                tabIndex={0}
                role="button"
                aria-label={words.table.held(nameOf(part))}
                {...hand.held({ part, piece })}
              />
            </Fragment>
          ))}
        {inHand === undefined ? null : <TearLines part={inHand} pieces={drawn.pieces} />}
        <FoldLines
          lines={foldLines(layout.base, face, drawn)}
          onFold={() => lookAt({ face: face === 'base' ? 'inside' : 'base' })}
        />
        <LayTicks laid={hand.laid} card={drawn.ground.frame} units={layout.units} />
      </svg>
      <p className="unseen" role="status">
        {hand.says}
      </p>
      {taken === null ? null : (
        <p className="unseen">
          <button type="button" onClick={() => store.take(null)}>
            {words.pile.layDown}
          </button>
        </p>
      )}
    </div>
  );
}

interface View {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A view that takes in a frame as well, with the room round it. */
function around(view: View, { xPt, yPt, widthPt, heightPt }: DrawnFace['frame']): View {
  const x = Math.min(view.x, xPt - roundIt);
  const y = Math.min(view.y, yPt - roundIt);
  const right = Math.max(view.x + view.width, xPt + widthPt + roundIt);
  const bottom = Math.max(view.y + view.height, yPt + heightPt + roundIt);
  return { x, y, width: right - x, height: bottom - y };
}

/** Where the folds of a card are seen on a face: at the edges it opens at, of the inside between all its panels. */
function foldLines({ fold, opens }: Base, face: Face, { ground, beside }: DrawnFace): readonly string[] {
  const axis = openingAxis({ fold, opens });
  if (axis === null) return [];
  const { xPt, yPt, widthPt, heightPt } = ground.frame;
  const across = axis === 'width';
  const lineAt = (at: number) => (across ? `M${at} ${yPt}v${heightPt}` : `M${xPt} ${at}h${widthPt}`);
  const [start, end] = across ? [xPt, xPt + widthPt] : [yPt, yPt + heightPt];
  if (face === 'inside') {
    const edges = [ground.frame, ...beside.map(({ frame }) => frame)].map((frame) =>
      across ? frame.xPt : frame.yPt,
    );
    return edges
      .toSorted((one, other) => one - other)
      .slice(1)
      .map(lineAt);
  }
  // Seen from the back, left and right have changed places.
  const isTurned = across && face === 'back';
  return hingesOf(fold).map((hinge) => lineAt((hinge === 'start') === isTurned ? end : start));
}

/** The folds as they are drawn in the trade, dashed; a tap on one opens or closes the card. */
function FoldLines({
  lines,
  onFold,
}: {
  /** Path data. */
  readonly lines: readonly string[];
  readonly onFold: () => void;
}): ReactNode {
  return (
    // The words below the card do the same for those who do not point.
    // biome-ignore lint/a11y/noStaticElementInteractions: see above
    <g className="fold" onClick={onFold}>
      {lines.map((line) => (
        <Fragment key={line}>
          <path className="fold-reach" d={line} />
          <path className="fold-ground" d={line} />
          <path className="fold-line" d={line} />
        </Fragment>
      ))}
    </g>
  );
}
