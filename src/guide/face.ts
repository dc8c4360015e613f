import {
  circle,
  type Fill,
  type Frame,
  fineStroke,
  frameOf,
  type Mark,
  outlineStroke,
  type PathStep,
  polygon,
  rectangle,
  type Stroke,
  tornOutline,
  white,
  wideStroke,
} from '../drawing/index.ts';
import { type Shown, shownOn, sideOfBase } from '../finished/index.ts';
import {
  type ArrangedPart,
  type Arrangement,
  type Dealt,
  type Face,
  type FoldedShape,
  facetRegionsIn,
  foldedBase,
  isFolded,
  type Layout,
  outlineIn,
  type Part,
  paperOfCard,
  regionIn,
  type Shape,
} from '../layout/index.ts';
import { openingAxis, panelsOf, slitOf } from '../making/index.ts';
import { type Box, type Edge, lengthOfTicks, minus, pointsOf, zero } from '../measure/index.ts';
import { intersection, outlineSteps, type Region } from '../shape/index.ts';
import { hatchOf, type Manner, type Wearing } from './matter.ts';

/** A piece of a part as it is drawn on a face. */
export interface DrawnPiece {
  readonly part: ArrangedPart;
  /** From 0, of the pieces of the part on a card. */
  readonly piece: number;
  /** Its seen box, and the frame of that as it is drawn. */
  readonly box: Box;
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
  /** `printed` when absent. */
  readonly manner?: Manner;
}

/** One face of a card, its top left corner at the origin, with everything on it apart, so that each can be taken up. */
export interface DrawnFace {
  /** The card itself. */
  readonly ground: { readonly frame: Frame; readonly mark: Mark };
  /** The other panels that are seen beside the inside when the card is opened flat; none of another face. */
  readonly beside: readonly { readonly frame: Frame; readonly mark: Mark }[];
  /** Bottom of the pile first; of a piece whose place is not known there is nothing. */
  readonly pieces: readonly FacePiece[];
  /** Round the card and all that hangs over it. */
  readonly frame: Frame;
}

/** A piece on a drawn face. */
export interface FacePiece {
  /** The id of its part. */
  readonly part: string;
  /** From 0, of the pieces of the part on a card. */
  readonly piece: number;
  /** Its seen frame. */
  readonly frame: Frame;
  /** Its outline; a torn edge wanders. */
  readonly path: readonly PathStep[];
  readonly mark: Mark;
}

/** The face of a card, each piece apart. */
export function drawnFace(request: FaceRequest): DrawnFace {
  const { layout, arrangement, card, face, scale, manner = 'printed' } = request;
  const frame = frameOfBox({ left: zero, top: zero, ...arrangement.card }, scale);
  const panelMark = (of: Frame): Mark => ({
    kind: 'path',
    path: rectangle(of),
    fill: fillOf(layout, layout.base, card, { manner, side: sideOfBase(layout, face) }),
    stroke: wideStroke,
  });
  const slit = face === 'base' ? slitMark(layout, frame, scale) : null;
  const ground: Mark = slit === null ? panelMark(frame) : { kind: 'group', marks: [panelMark(frame), slit] };
  const beside = face === 'inside' ? framesBeside(layout, frame, scale) : [];
  const veiled = veiledOn(request);
  const pieces = drawnPieces(request).map(({ part: { part }, piece, frame: own, path, box }): FacePiece => {
    const turnDegrees = part.lies === 'sideways' ? 90 : 0;
    const fill = fillOf(layout, part, card, { manner, side: part.side, turnDegrees });
    const paper: Mark = isFolded(part.shape)
      ? { kind: 'group', marks: facetMarks(request, part, part.shape, box) }
      : { kind: 'path', path, fill, stroke: outlineStroke };
    const below = isSeenThrough(layout, part, card) ? veiledUnder(veiled, part.id, piece, scale) : [];
    return {
      part: part.id,
      piece,
      frame: own,
      path,
      mark: below.length === 0 ? paper : { kind: 'group', marks: [paper, ...below] },
    };
  });
  const frames = [frame, ...pieces.map((piece) => piece.frame)];
  return {
    ground: { frame, mark: ground },
    beside: beside.map((of) => ({ frame: of, mark: panelMark(of) })),
    pieces,
    frame: frameOf(
      frames.flatMap(({ xPt, yPt, widthPt, heightPt }) => [
        { xPt, yPt },
        { xPt: xPt + widthPt, yPt: yPt + heightPt },
      ]),
    ),
  };
}

/** Where the doors of the front meet; `null` where it has none. */
function slitMark(layout: Layout, { widthPt, heightPt }: Frame, scale: number): Mark | null {
  const slit = slitOf(foldedBase(layout));
  if (slit === null) return null;
  const at = pointsOf(slit.at) * scale;
  const [from, to] =
    slit.axis === 'width'
      ? [
          { xPt: at, yPt: 0 },
          { xPt: at, yPt: heightPt },
        ]
      : [
          { xPt: 0, yPt: at },
          { xPt: widthPt, yPt: at },
        ];
  return { kind: 'line', from, to, stroke: outlineStroke };
}

/** The panels on both sides of the inside one, whose own frame is given. */
function framesBeside(layout: Layout, frame: Frame, scale: number): readonly Frame[] {
  const base = foldedBase(layout);
  const across = openingAxis(base) === 'width';
  const panels = panelsOf(base);
  const inside = panels.find(({ is }) => is === 'inside');
  return panels
    .filter((panel) => inside !== undefined && panel !== inside)
    .map(({ at, length }) => {
      const [off, long] = [pointsOf(minus(at, inside!.at)) * scale, pointsOf(length) * scale];
      return across ? { ...frame, xPt: off, widthPt: long } : { ...frame, yPt: off, heightPt: long };
    });
}

/** The face of a card with its parts in the order of the pile, its top left corner at the origin. */
export function faceMarks(request: FaceRequest): readonly Mark[] {
  const { ground, pieces } = drawnFace(request);
  return [ground.mark, ...pieces.map(({ mark }) => mark)];
}

/**
 * The layers of a folded strip, the lowest first. In colour those that are turned wear the other side of the paper; in
 * print they are bare, so that a fold is seen.
 */
function facetMarks(
  { layout, card, scale, manner = 'printed' }: FaceRequest,
  part: Part,
  shape: FoldedShape,
  box: Box,
): readonly Mark[] {
  const otherSide = part.side === 'front' ? 'back' : 'front';
  return facetRegionsIn(shape, box).flatMap(({ region, turned }) =>
    region.rings.map((ring): Mark => {
      const fill: Fill =
        turned && manner === 'printed'
          ? { colour: white }
          : fillOf(layout, part, card, { manner, side: turned ? otherSide : part.side });
      return { kind: 'path', path: ringPath(ring, scale), fill, stroke: outlineStroke };
    }),
  );
}

/** What is seen on that face only through something; nothing, and no work, where no paper is seen through. */
function veiledOn({ layout, arrangement, card, face }: FaceRequest): readonly Shown[] {
  if (![...layout.papers.values()].some(({ seeThrough }) => seeThrough)) return [];
  return shownOn(layout, arrangement, card).filter((shown) => shown.face === face);
}

/** What a piece that is seen through lets through: the outlines of what lies below it, in broken lines. */
function veiledUnder(shown: readonly Shown[], part: string, piece: number, scale: number): readonly Mark[] {
  const place = shown.findIndex((one) => one.part === part && one.piece === piece);
  const own = shown[place];
  if (own === undefined) return [];
  return shown
    .slice(1, place)
    .flatMap(({ veiled }) =>
      intersection(veiled, own.region).rings.map(
        (ring): Mark => ({ kind: 'path', path: ringPath(ring, scale), stroke: veiledStroke }),
      ),
    );
}

const veiledStroke: Stroke = { ...fineStroke, dashPt: [2, 2] };

function isSeenThrough(layout: Layout, dealt: Dealt, card: number): boolean {
  return layout.papers.get(paperOfCard(dealt, card) ?? '')?.seeThrough === true;
}

/** Every piece whose place is known on that face, bottom of the pile first. */
export function drawnPieces({
  arrangement,
  face,
  scale,
}: Omit<FaceRequest, 'layout' | 'card' | 'manner'>): readonly DrawnPiece[] {
  return arrangement.parts
    .filter((part) => part.face === face)
    .flatMap((part, place) =>
      part.pieces.flatMap(({ box }, index) => {
        if (box === null) return [];
        const frame = frameOfBox(box, scale);
        return [{ part, piece: index, box, frame, path: outlineOf(part, box, scale, place * 97 + index) }];
      }),
    );
}

/** What a dealt thing of that card is filled with: its paper, or white where it is bought. */
export function fillOf(layout: Layout, dealt: Dealt, card: number, wearing: Wearing): Fill {
  const paper = paperOfCard(dealt, card);
  return paper === null ? { colour: white } : { hatch: hatchOf(layout, paper, wearing) };
}

function outlineOf({ part }: ArrangedPart, box: Box, scale: number, seed: number): readonly PathStep[] {
  const frame = frameOfBox(box, scale);
  if (part.shape.kind === 'circle') {
    return circle(
      { xPt: frame.xPt + frame.widthPt / 2, yPt: frame.yPt + frame.heightPt / 2 },
      frame.widthPt / 2,
    );
  }
  if (part.shape.kind !== 'rectangle') return shapePath(part.shape, box, scale);
  const torn = edges
    .filter((edge) => part.torn[edge] > 0)
    .map((edge) => [edge, raggedPt(pointsOf(part.torn[edge]) * scale, frame)] as const);
  return torn.length === 0 ? rectangle(frame) : tornOutline(frame, Object.fromEntries(torn), seed);
}

function ringPath(ring: Region['rings'][number], scale: number): readonly PathStep[] {
  return polygon(ring.map(({ x, y }) => ({ xPt: pointsOf(x) * scale, yPt: pointsOf(y) * scale })));
}

/**
 * A shape as a pen draws it. Where one contour lies in another it is drawn by its region, whose holes run the other
 * way round, so that they stay empty by whichever rule it is filled.
 */
export function shapePath(shape: Shape, box: Box, scale: number): readonly PathStep[] {
  const pt = (ticks: number) => pointsOf(lengthOfTicks(1)) * ticks * scale;
  const outline = outlineIn(shape, box);
  if (outline.contours.length > 1) return regionIn(shape, box).rings.flatMap((ring) => ringPath(ring, scale));
  return outlineSteps(outline).map((step): PathStep => {
    switch (step.to) {
      case 'close':
        return step;
      case 'curve':
        return {
          to: 'curve',
          x1Pt: pt(step.x1),
          y1Pt: pt(step.y1),
          x2Pt: pt(step.x2),
          y2Pt: pt(step.y2),
          xPt: pt(step.x),
          yPt: pt(step.y),
        };
      default:
        return { to: step.to, xPt: pt(step.x), yPt: pt(step.y) };
    }
  });
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
