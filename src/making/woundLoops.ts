import { halves, type Length, minus, type Size, sum, times } from '../measure/index.ts';
import { type Crease, type Facet, foldedStrip } from './foldedStrip.ts';

/**
 * A strip that is folded flat round a template so many times: one loop by itself, more of them side by side to the right
 * and to the left of the middle in turn, as the loops of a bow.
 */
export interface Loops {
  /** Across the strip. */
  readonly width: Length;
  /** How wide each loop is when it lies flat. */
  readonly template: Length;
  /** 1 or more. */
  readonly loops: number;
  /** How much of the strip's end lies over its beginning: no more than a template. */
  readonly overlap: Length;
}

/**
 * The strip that loops take: twice the template for each, there and back, and the overlap. The thickness of the paper is
 * left out of account: a template is taken to be as wide as the loops are outside.
 */
export function lengthOfLoops({ template, loops, overlap }: Omit<Loops, 'width'>): Length {
  return sum(times(template, 2 * loops), overlap);
}

/** The overlap that such a strip leaves; negative where it is too short. */
export function overlapOfLoops(
  { template, loops }: Pick<Loops, 'template' | 'loops'>,
  length: Length,
): Length {
  return minus(length, times(template, 2 * loops));
}

/** The box round loops that lie flat: one template wide, two where there is more than one loop. */
export function sizeOfLoops({ width, template, loops }: Loops): Size {
  return { width: times(template, loops === 1 ? 1 : 2), height: width };
}

/**
 * Where a strip is creased for its loops, from its beginning, all straight across; to the tick, but that a single loop
 * begins in the middle of its back, rounded down.
 */
export function creasesOfLoops(loops: Loops): readonly Length[] {
  const { template } = loops;
  return Array.from({ length: loops.loops === 1 ? 2 : loops.loops }, (_, index) =>
    sum(firstOf(loops), times(template, (loops.loops === 1 ? 1 : 2) * index)),
  );
}

/**
 * The facets of loops from the lowest to the highest, the top left corner of the box round them at the origin. What goes
 * from right to left lies over what has been folded, what goes back lies under it; the side that is up is that of what
 * lies over. `null` where the overlap is longer than a template, so that it would need a crease of its own.
 */
export function facetsOfLoops(loops: Loops): readonly Facet[] | null {
  const { width, template, overlap } = loops;
  if (overlap > template) return null;
  const creases = creasesOfLoops(loops).map(
    (at, index): Crease => ({
      at,
      degrees: 90,
      goes: index % 2 === 0 ? 'over' : 'under',
    }),
  );
  const beginsAt = loops.loops === 1 ? template - firstOf(loops) : template;
  const facets = foldedStrip({ width, length: lengthOfLoops(loops) }, creases, {
    x: beginsAt,
    y: width / 2,
    degrees: 0,
  });
  return facets?.map((facet) => ({ ...facet, turned: !facet.turned })) ?? null;
}

/** The first crease of a bow lies a template from its middle; that of one loop so that its ends meet in the middle behind. */
function firstOf({ template, loops, overlap }: Loops): Length {
  return loops > 1 ? template : halves(sum(template, overlap)).smaller;
}
