import { type KeyboardEvent, type PointerEvent, type RefObject, useRef, useState } from 'react';
import {
  type InHand,
  type Laid,
  type LayLines,
  laidTo,
  layLines,
  type Moved,
  type PieceAt,
  pieceMoved,
  pieceNudged,
} from '../../../../src/editing/index.ts';
import { type Edge, lengthOfTicks, ticksPerInch } from '../../../../src/measure/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { markingOf } from '../../state/inHand.ts';
import { useOpenLayoutStore } from '../../state/layoutContext.ts';

/** A piece as the drawing names it. */
interface PieceName {
  readonly part: string;
  readonly piece: number;
}

/** A hand that takes pieces up, drags them and moves them by the arrow keys. */
interface Hand {
  /** For the whole picture: a tap on nothing lays down what was taken up. */
  readonly surface: { readonly onPointerDown: (event: PointerEvent) => void };
  /** For a piece of the picture. */
  readonly piece: (name: PieceName) => PointerHandlers;
  /** For the outline of a piece that was taken up. */
  readonly held: (
    name: PieceName,
  ) => PointerHandlers & { readonly onKeyDown: (event: KeyboardEvent) => void };
  /** What the dragged piece is laid to just now. */
  readonly laid: readonly Laid[];
  /** Why something did not move, in a sentence; empty: nothing to say. */
  readonly says: string;
}

interface PointerHandlers {
  readonly onPointerDown: (event: PointerEvent) => void;
  readonly onPointerMove: (event: PointerEvent) => void;
  readonly onPointerUp: () => void;
  readonly onPointerCancel: () => void;
}

interface Drag {
  readonly name: PieceName;
  readonly joins: string;
  readonly from: { readonly xPx: number; readonly yPx: number };
  /** Where the piece lay then, in ticks. */
  readonly start: { readonly across: number; readonly down: number };
  readonly lines: LayLines;
  /** Whether it was moved at all: a tap takes up and moves nothing. */
  readonly moves: boolean;
}

let drags = 0;

/** How far a finger may slip and still tap. */
const slipPx = 5;
/** Within how many pixels a piece is laid to a line. */
const reachPx = 9;

const towards: Readonly<Record<string, Edge>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'top',
  ArrowDown: 'bottom',
};

/** A hand over a picture that is drawn in points. */
export function useHand(picture: RefObject<SVGSVGElement | null>): Hand {
  const store = useOpenLayoutStore();
  const { card: words } = useMessages();
  const drag = useRef<Drag | null>(null);
  const [laid, setLaid] = useState<readonly Laid[]>([]);
  const [says, setSays] = useState('');

  const inHand = (): InHand => {
    const { history, arrangement } = store.getState();
    return { file: history.file, layout: history.layout, arrangement };
  };
  const marks = () => {
    const { history, cutting } = store.getState();
    return markingOf(history.layout, cutting.trimmer).step;
  };
  const atOf = ({ part, piece }: PieceName): PieceAt | null => {
    const index = inHand().layout.parts.findIndex(({ id }) => id === part);
    return index < 0 ? null : { part: index, piece };
  };
  const nameOf = (part: string) => inHand().layout.parts.find(({ id }) => id === part)?.name ?? part;
  const boxOf = (at: PieceAt) => inHand().arrangement.parts[at.part]?.pieces[at.piece]?.box ?? null;
  const tellStays = (name: PieceName, { stays }: Moved) =>
    setSays(stays.map(({ why }) => words.table.stays[why](nameOf(name.part))).join(' '));

  const takeUp = (name: PieceName) => (event: PointerEvent) => {
    if (event.button !== 0) return;
    event.stopPropagation();
    store.take(name.part);
    const at = atOf(name);
    const box = at === null ? null : boxOf(at);
    if (at === null || box === null) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    drags += 1;
    drag.current = {
      name,
      joins: `drag ${drags}`,
      from: { xPx: event.clientX, yPx: event.clientY },
      start: { across: box.left, down: box.top },
      lines: layLines(inHand(), at, marks()),
      moves: false,
    };
  };

  const move = (event: PointerEvent) => {
    const held = drag.current;
    if (held === null) return;
    const [xPx, yPx] = [event.clientX - held.from.xPx, event.clientY - held.from.yPx];
    if (!held.moves && Math.hypot(xPx, yPx) < slipPx) return;
    drag.current = { ...held, moves: true };
    const at = atOf(held.name);
    const box = at === null ? null : boxOf(at);
    const scale = picture.current?.getScreenCTM()?.a;
    if (at === null || box === null || scale === undefined || scale === 0) return;
    const ticksPerPx = ticksPerInch / 72 / scale;
    const wanted = {
      across: Math.round(held.start.across + xPx * ticksPerPx),
      down: Math.round(held.start.down + yPx * ticksPerPx),
    };
    const reach = lengthOfTicks(Math.round(reachPx * ticksPerPx));
    const dragged = { ...box, left: lengthOfTicks(wanted.across), top: lengthOfTicks(wanted.down) };
    const { across, down } = laidTo(held.lines, dragged, reach);
    const moved = pieceMoved(inHand(), at, {
      across: lengthOfTicks(dragged.left + (across?.by ?? 0) - box.left),
      down: lengthOfTicks(dragged.top + (down?.by ?? 0) - box.top),
    });
    tellStays(held.name, moved);
    if (moved.edit !== null) store.make(moved.edit, held.joins);
    setLaid([across, down].flatMap((each) => each ?? []));
  };

  const up = () => {
    drag.current = null;
    setLaid([]);
  };

  const pointer = (name: PieceName): PointerHandlers => ({
    onPointerDown: takeUp(name),
    onPointerMove: move,
    onPointerUp: up,
    onPointerCancel: up,
  });

  return {
    surface: { onPointerDown: () => store.take(null) },
    piece: pointer,
    held: (name) => ({
      ...pointer(name),
      onKeyDown(event) {
        if (event.key === 'Escape') store.take(null);
        const edge = towards[event.key];
        const at = atOf(name);
        if (edge === undefined || at === null) return;
        event.preventDefault();
        // Steps of one kind that follow one another are undone one by one: each is a mark.
        const moved = pieceNudged(inHand(), at, edge, marks());
        tellStays(name, moved);
        if (moved.edit !== null) store.make(moved.edit);
      },
    }),
    laid,
    says,
  };
}
