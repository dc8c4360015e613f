import {
  circle,
  type Frame,
  type Mark,
  outlineStroke,
  type PathStep,
  rectangle,
  tornOutline,
  white,
  wideStroke,
} from '../drawing/index.ts';
import type { ArrangedPart, Arrangement, Dealt, Face, Layout } from '../layout/index.ts';
import { type Box, type Edge, pointsOf, zero } from '../measure/index.ts';
import { hatchOf } from './matter.ts';

/** A piece of a part as it is drawn on a face. */
export interface DrawnPiece {
  readonly part: ArrangedPart;
  /** Its seen frame. */
  readonly frame: Frame;
  readonly path: readonly PathStep[];
}

/** What a drawing of one face of one card is made of. */
export interface FaceRequest {
  readonly layout: Layout;
  readonly arrangement: Arrangement;
  /** From 0; says which of several papers its parts wear. */
  readonly card: number;
  readonly face: Face;
  /** Drawn length over true length. */
  readonly scale: number;
}

/** The face of a card with its parts in the order of the pile, its top left corner at the origin. */
export function faceMarks(request: FaceRequest): readonly Mark[] {
  const { layout, arrangement, card, scale } = request;
  const ground = rectangle(frameOfBox({ left: zero, top: zero, ...arrangement.card }, scale));
  return [
    { kind: 'path', path: ground, fill: fillOf(layout, layout.base, card, 0), stroke: wideStroke },
    ...drawnPieces(request).map(
      ({ part: { part }, path }): Mark => ({
        kind: 'path',
        path,
        fill: fillOf(layout, part, card, part.lies === 'sideways' ? 90 : 0),
        stroke: outlineStroke,
      }),
    ),
  ];
}

/** Every piece whose place is known on that face, bottom of the pile first. */
export function drawnPieces({
  arrangement,
  face,
  scale,
}: Omit<FaceRequest, 'layout' | 'card'>): readonly DrawnPiece[] {
  return arrangement.parts
    .filter((part) => part.face === face)
    .flatMap((part, place) =>
      part.pieces.flatMap(({ box }, index) => {
        if (box === null) return [];
        const frame = frameOfBox(box, scale);
        return [{ part, frame, path: outlineOf(part, frame, scale, place * 97 + index) }];
      }),
    );
}

/** The paper that card number `card` (from 0) gets of those dealt; `null` where none is cut. */
export function paperOfCard(dealt: Dealt, card: number): string | null {
  return dealt.papers[card % Math.max(1, dealt.papers.length)] ?? null;
}

function fillOf(layout: Layout, dealt: Dealt, card: number, turnDegrees: number) {
  const paper = paperOfCard(dealt, card);
  return paper === null ? { colour: white } : { hatch: hatchOf(layout, paper, turnDegrees) };
}

function outlineOf({ part }: ArrangedPart, frame: Frame, scale: number, seed: number): readonly PathStep[] {
  if (part.shape === 'circle') {
    return circle(
      { xPt: frame.xPt + frame.widthPt / 2, yPt: frame.yPt + frame.heightPt / 2 },
      frame.widthPt / 2,
    );
  }
  const torn = edges
    .filter((edge) => part.torn[edge] > 0)
    .map((edge) => [edge, raggedPt(pointsOf(part.torn[edge]) * scale, frame)] as const);
  return torn.length === 0 ? rectangle(frame) : tornOutline(frame, Object.fromEntries(torn), seed);
}

const edges: readonly Edge[] = ['left', 'right', 'top', 'bottom'];

/** How far a drawn tear wanders: a quarter of what is torn off, no more than paper fibres do or the part allows. */
function raggedPt(depthPt: number, frame: Frame): number {
  return Math.min(depthPt / 4, 5, Math.min(frame.widthPt, frame.heightPt) / 4);
}

function frameOfBox(box: Box, scale: number): Frame {
  return {
    xPt: pointsOf(box.left) * scale,
    yPt: pointsOf(box.top) * scale,
    widthPt: pointsOf(box.width) * scale,
    heightPt: pointsOf(box.height) * scale,
  };
}
