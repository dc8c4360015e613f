import type { Arrangement } from './arrange.ts';
import { covers, type Outline, touches } from './cover.ts';
import { isFolded } from './foldedShape.ts';
import type { Face, Layout, Part } from './layout.ts';
import { type LayoutProblem, partProblem, placeField } from './layoutProblem.ts';

/**
 * Parts that another part hides, parts that lie partly on one another, and pieces that lie on their like.
 *
 * Lying on one another is how cards are made, so only what is likely a slip is named: two parts on the same
 * thing of which neither lies wholly within the other, the upper one flat, no torn edge (torn edges are laid
 * over others on purpose), no ribbon (folded, or wrapped round) and no negative gap between them (that is named by itself). What is seen through hides nothing.
 */
export function overlaps(layout: Layout, arrangement: Arrangement): readonly LayoutProblem[] {
  const pieces = piecesOf(arrangement);
  const problems = new Map<string, LayoutProblem>();
  const report = (key: string, problem: () => LayoutProblem) => {
    if (!problems.has(key)) problems.set(key, problem());
  };

  pieces.forEach((lower, order) => {
    for (const upper of pieces.slice(order + 1)) {
      if (upper.face !== lower.face || !touches(lower, upper)) continue;
      const names = { by: upper.part.name };
      if (upper.index === lower.index) {
        if (covers(upper, lower) && covers(lower, upper)) {
          const count = lower.part.places.length;
          report(`stacked ${lower.index}`, () =>
            partProblem(layout, lower.index, 'piecesStacked', 'place', { count }),
          );
        } else {
          report(`overlap ${lower.index}`, () => partProblem(layout, lower.index, 'overlap', 'place', {}));
        }
      } else if (covers(upper, lower)) {
        if (isSeenThrough(layout, upper.part)) continue;
        const field = placeField(layout, lower.index, lower.piece);
        report(`hidden ${lower.index}`, () => partProblem(layout, lower.index, 'hidden', field, {}, names));
      } else if (lower.bed === upper.bed && !covers(lower, upper) && !isMeant(lower.part, upper.part)) {
        const field = placeField(layout, upper.index, upper.piece);
        report(`overlap ${lower.index} ${upper.index}`, () =>
          partProblem(layout, upper.index, 'overlap', field, {}, { by: lower.part.name }),
        );
      }
    }
  });
  return [...problems.values()];
}

/** Parts whose gap to a neighbour was typed negative. */
export function negativeGaps(layout: Layout): readonly LayoutProblem[] {
  return layout.parts.flatMap((part, index) => {
    const gaps = part.places.flatMap(({ across, down }, piece) =>
      [across.start, across.end, down.start, down.end].flatMap((anchor) =>
        anchor?.from === 'part' && anchor.gap < 0 ? [{ ...anchor, piece }] : [],
      ),
    );
    const first = gaps[0];
    if (first === undefined) return [];
    const neighbour = layout.parts.find(({ id }) => id === first.part)!.name;
    const field = placeField(layout, index, first.piece);
    return [partProblem(layout, index, 'negativeGap', field, { gap: first.gap }, { neighbour })];
  });
}

interface Piece extends Outline {
  readonly part: Part;
  readonly index: number;
  readonly piece: number;
  readonly face: Face;
  /** Names one piece of what it lies on. */
  readonly bed: string;
}

function piecesOf(arrangement: Arrangement): readonly Piece[] {
  return arrangement.parts.flatMap(({ part, face, pieces }, index) =>
    pieces.flatMap(({ box, onPiece }, piece) =>
      box === null
        ? []
        : [{ part, index, piece, face, bed: `${part.on} ${onPiece}`, shape: part.shape, box }],
    ),
  );
}

/** Whether what lies below it is seen on some card of the set. */
function isSeenThrough(layout: Layout, part: Part): boolean {
  return part.papers.some((paper) => layout.papers.get(paper)?.seeThrough === true);
}

function isMeant(lower: Part, upper: Part): boolean {
  const isTorn = (part: Part) => Object.values(part.torn).some((depth) => depth > 0);
  const isLaidOver = upper.places.some(({ across, down }) =>
    [across.start, across.end, down.start, down.end].some(
      (anchor) => anchor?.from === 'part' && anchor.part === lower.id && anchor.gap < 0,
    ),
  );
  // A ribbon is made to run over others and under them, folded or wrapped round.
  const isRibbon = ({ shape, tuck }: Part) =>
    isFolded(shape) || Object.values(tuck).some((depth) => depth > 0);
  return (
    upper.adhere !== 'flat' ||
    isTorn(lower) ||
    isTorn(upper) ||
    isLaidOver ||
    isRibbon(lower) ||
    isRibbon(upper)
  );
}
