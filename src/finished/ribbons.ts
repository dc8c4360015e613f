import {
  type ArrangedPart,
  type Arrangement,
  type FoldedShape,
  isFolded,
  type Layout,
  loopsOf,
  type Part,
  paperOfCard,
  ribbonOf,
  stripOf,
} from '../layout/index.ts';
import {
  bandOverlap,
  creasesOfLoops,
  type KnotMeasures,
  knotMeasures,
  overlapOfLoops,
  type RibbonMeasures,
  ribbonMeasures,
  type Strip,
} from '../making/index.ts';
import { type Axis, type Edge, type Length, sum } from '../measure/index.ts';
import { thicknessOfDealt } from './thickness.ts';

/** What is known of one part that is folded of a strip, or wrapped round what it lies on. */
export type RibbonMade =
  | {
      readonly kind: 'ribbon';
      readonly part: string;
      readonly shape: Extract<FoldedShape, { kind: 'ribbon' }>;
      readonly strip: Strip;
      readonly measures: RibbonMeasures;
    }
  | {
      readonly kind: 'loops';
      readonly part: string;
      readonly shape: Extract<FoldedShape, { kind: 'loops' }>;
      readonly strip: Strip;
      /** From one end of the strip, all straight across. */
      readonly creases: readonly Length[];
      /** What the strip as it is cut leaves to lie over its beginning; negative where it is too short. */
      readonly overlap: Length;
    }
  | {
      readonly kind: 'knot';
      readonly part: string;
      readonly shape: Extract<FoldedShape, { kind: 'knot' }>;
      readonly strip: Strip;
      readonly measures: KnotMeasures;
    }
  /** A band that goes round two opposite edges of what it lies on, and behind. */
  | {
      readonly kind: 'band';
      readonly part: string;
      /** The part it goes round, or `base` for the closed card. */
      readonly on: string;
      readonly axis: Axis;
      /** What of it goes behind at the left or the top, and at the right or the bottom. */
      readonly behind: readonly [Length, Length];
      readonly across: Length;
      /** Of what it goes round, where that is thickest as far as is known. */
      readonly thickness: Length;
      /** How far its ends lie over one another behind; negative: so much is missing for them to meet. */
      readonly overlap: Length;
    };

/** What is known of a part that is folded. */
export type FoldedMade = Exclude<RibbonMade, { kind: 'band' }>;

/**
 * Every folded strip and every band of the layout, in the order of the pile. `thickest` is the closed card at its
 * thickest, which a band on a face goes round; one on a part goes round that part, taken without what lies on it.
 */
export function ribbonsMade(
  layout: Layout,
  arrangement: Arrangement,
  thickest: Length,
): readonly RibbonMade[] {
  return arrangement.parts.flatMap((arranged): readonly RibbonMade[] => {
    const folded = foldedMade(arranged.part);
    return folded === null ? bandsOf(layout, arrangement, arranged, thickest) : [folded];
  });
}

/** What is known of a part that is folded of a strip, also of one that cannot be; `null` for any other part. */
export function foldedMade({ id: part, shape }: Part): FoldedMade | null {
  if (!isFolded(shape)) return null;
  const strip = stripOf(shape);
  switch (shape.kind) {
    case 'ribbon':
      return { kind: 'ribbon', part, shape, strip, measures: ribbonMeasures(ribbonOf(shape)) };
    case 'loops':
      return {
        kind: 'loops',
        part,
        shape,
        strip,
        creases: creasesOfLoops(loopsOf(shape)),
        overlap: overlapOfLoops(shape, strip.length),
      };
    case 'knot':
      return { kind: 'knot', part, shape, strip, measures: knotMeasures(strip) };
  }
}

const ends = { width: ['left', 'right'], height: ['top', 'bottom'] } as const satisfies Record<
  Axis,
  readonly [Edge, Edge]
>;

function bandsOf(
  layout: Layout,
  arrangement: Arrangement,
  { part, pieces }: ArrangedPart,
  thickest: Length,
): readonly RibbonMade[] {
  const under = pieces[0]?.under ?? null;
  const bed = arrangement.parts.find((other) => other.part.id === part.on);
  if (under === null) return [];
  const thickness =
    bed === undefined ? thickest : thicknessOfDealt(layout, bed.part, paperOfCard(bed.part, 0)).length;
  return (['width', 'height'] as const).flatMap((axis) => {
    const [start, end] = ends[axis];
    const behind = [part.tuck[start], part.tuck[end]] as const;
    if (behind.some((length) => length === 0)) return [];
    const across = under[axis];
    // What of the band lies in front is as long as what it goes round, wherever its place would have it.
    const length = sum(across, ...behind);
    const overlap = bandOverlap({ across, thickness }, length);
    return [
      { kind: 'band', part: part.id, on: bed?.part.id ?? 'base', axis, behind, across, thickness, overlap },
    ];
  });
}
