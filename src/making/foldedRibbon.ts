import { type Length, lengthOfTicks, type Size, ticksPerMillimetre } from '../measure/index.ts';
import { type Crease, type Facet, foldedStrip, radians } from './foldedStrip.ts';

/**
 * A strip that is folded back at both ends of a slant: its middle runs aslant over two tails that lie level, one above
 * the other, and run back the way the middle came.
 */
export interface Ribbon {
  /** Across the strip. */
  readonly width: Length;
  /** Of the strip before it is folded. */
  readonly length: Length;
  /** How far apart the middles of the two creases are, measured level. */
  readonly template: Length;
  /** How steeply the middle rises to the right in degrees, between -90 and 90; negative: it falls. */
  readonly slant: number;
}

/** What a folded ribbon measures. */
export interface RibbonMeasures {
  /** Where its creases meet the centre line of the flat strip, from either end; to the nearest tick. */
  readonly creases: readonly [Length, Length];
  /**
   * Where the first crease meets the two edges of the strip, from the end it is nearer to; the second meets them as far
   * from the other end, the edges exchanged. To the nearest tick.
   */
  readonly edges: { readonly nearer: Length; readonly further: Length };
  /** Between a crease and the edge of the strip: 90 degrees less half the slant. */
  readonly creaseDegrees: number;
  /** From edge to edge along a crease; to the nearest tick. */
  readonly creaseLength: Length;
  /** From crease to crease along the centre line; to the nearest tick. */
  readonly between: Length;
  /** From the centre line of one tail to that of the other; to the nearest tick. */
  readonly rise: Length;
  /** Between the tails, rounded down; negative where they lie on one another. */
  readonly gap: Length;
  /** Of each along its centre line, rounded down; negative where the strip does not even reach the creases. */
  readonly tail: Length;
  /** How far the end of each tail stands out beyond the other crease's middle, level, rounded down; negative: it ends before. */
  readonly reach: Length;
  /** The box round all of it, its sizes rounded up. */
  readonly overall: Size;
  /** The shortest strip on which both creases lie whole, rounded up. */
  readonly least: Length;
}

/**
 * The measures of a folded ribbon, also of one that cannot be folded (too short, or over itself): its numbers say why.
 *
 * The strip turns by 180 degrees less the slant at each crease, and a fold mirrors, so that the crease lies at half of
 * that to its edge. With creases T apart level, slant s and width w: T / cos s along the middle, rise T tan s, a crease
 * of w / cos(s / 2), which is (w / 2) tan(s / 2) further along one edge than along the centre line.
 */
export function ribbonMeasures({ width, length, template, slant }: Ribbon): RibbonMeasures {
  const steep = Math.abs(slant);
  const between = template / Math.cos(radians(steep));
  const rise = template * Math.tan(radians(steep));
  const tail = (length - between) / 2;
  const lean = leanOf(width, steep);
  return {
    creases: [nearest(tail), nearest(tail + between)],
    edges: { nearer: nearest(tail - lean), further: nearest(tail + lean) },
    creaseDegrees: 90 - steep / 2,
    creaseLength: nearest(width / Math.cos(radians(steep / 2))),
    between: nearest(between),
    rise: nearest(rise),
    gap: down(rise - width),
    tail: down(tail),
    reach: down(tail - template),
    overall: {
      width: up(Math.max(template + 2 * lean, 2 * tail - template)),
      height: up(rise + width),
    },
    least: up(between + 2 * lean),
  };
}

/**
 * The facets of a folded ribbon from the lowest to the highest, the middle last: the tails go behind it and show its
 * other side. The box round it has its top left corner at the origin. `null` where the strip is too short for its creases.
 */
export function ribbonFacets(ribbon: Ribbon): readonly Facet[] | null {
  const { width, length, template, slant } = ribbon;
  // Downwards is positive in the plane, and a slant that rises goes up.
  const turned = -slant;
  const between = template / Math.cos(radians(slant));
  const tail = (length - between) / 2;
  // The first tail runs to the left, to the lower left crease of a ribbon that rises.
  const degrees = 90 + turned / 2;
  const creases: readonly Crease[] = [
    { at: tail, degrees, goes: 'over' },
    { at: tail + between, degrees, goes: 'under' },
  ];
  const { overall } = ribbonMeasures(ribbon);
  const rise = template * Math.tan(radians(slant));
  const facets = foldedStrip({ width, length }, creases, {
    x: overall.width / 2 - template / 2 + tail,
    y: overall.height / 2 + rise / 2,
    degrees: 180,
  });
  return facets === null ? null : facets.map((facet) => ({ ...facet, turned: !facet.turned }));
}

/** That a ribbon cannot be made so, and why. */
export type NoRibbon =
  /** Tails with less than nothing between them lie on one another. */
  | { readonly cannot: 'noGap' }
  /** A middle that rises so little leaves no gap, however long it is: the template would be longer than 10 m. */
  | { readonly cannot: 'level' }
  /** The strip is shorter than the `least` that it takes; the largest gap that it gives, negative where it gives none. */
  | { readonly cannot: 'tooShort'; readonly least: Length; readonly largest: Length }
  /** Less high than two tails on one another: than `least`. */
  | { readonly cannot: 'tooLow'; readonly least: Length }
  /** No wider than the strip itself, which nothing can be folded of: it has to be `least` at least. */
  | { readonly cannot: 'tooNarrow'; readonly least: Length };

/** The slant, in degrees, at which a ribbon leaves that gap between its tails. */
export function slantForGap(
  { width, length, template }: Omit<Ribbon, 'slant'>,
  gap: Length,
): { readonly slant: number } | NoRibbon {
  if (gap < 0) return { cannot: 'noGap' };
  const slant = degreesOf(Math.atan((gap + width) / template));
  const { least } = ribbonMeasures({ width, length, template, slant });
  if (length >= least) return { slant };
  // What a strip takes grows with the slant.
  let [enough, tooSteep] = [0, slant];
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (enough + tooSteep) / 2;
    if (ribbonMeasures({ width, length, template, slant: middle }).least <= length) enough = middle;
    else tooSteep = middle;
  }
  return {
    cannot: 'tooShort',
    least,
    largest: ribbonMeasures({ width, length, template, slant: enough }).gap,
  };
}

/** The template with which a ribbon of that slant leaves that gap, to the next tick up. */
export function templateForGap(
  { width, length, slant }: Omit<Ribbon, 'template'>,
  gap: Length,
): { readonly template: Length } | NoRibbon {
  if (gap < 0) return { cannot: 'noGap' };
  const steep = Math.abs(slant);
  const rising = Math.tan(radians(steep));
  if (gap + width > longestTemplate * rising) return { cannot: 'level' };
  const template = up((gap + width) / rising);
  const { least } = ribbonMeasures({ width, length, template, slant });
  if (length >= least) return { template };
  const longest = (length - 2 * leanOf(width, steep)) * Math.cos(radians(steep));
  return { cannot: 'tooShort', least, largest: down(longest * rising - width) };
}

/** A slant as it is written into a file: to the nearest ten-thousandth of a degree, which moves no crease that can be seen. */
export function writtenSlant(slant: number): number {
  return Math.round(slant * 10_000) / 10_000;
}

/**
 * The template, the slant and the strip of a folded ribbon of that width that measures `overall` in all, its tails as
 * long as they may be without standing out over the creases of the other end.
 *
 * With t = tan(s / 2), H = rise + w and W = T + w t: (3w - H) t² - 2 W t + (H - w) = 0. Template and strip are rounded
 * down, so that it is no larger than was asked for.
 */
export function ribbonOfSize(
  width: Length,
  overall: Size,
): { readonly template: Length; readonly slant: number; readonly length: Length } | NoRibbon {
  const [W, rise, w] = [overall.width, overall.height - width, width];
  if (rise < w) return { cannot: 'tooLow', least: lengthOfTicks(2 * width) };
  // (2w - rise) t² - 2 W t + rise = 0, its root between 0 and 1, written so that no difference of like numbers is taken.
  const square = W * W - (2 * w - rise) * rise;
  const t = rise / (W + Math.sqrt(Math.max(0, square)));
  const slant = degreesOf(2 * Math.atan(t));
  const template = Math.floor(W - w * t);
  // At a slant of 90 degrees, t = 1, nothing is left of the template.
  if (square < 0 || t >= 1 || template <= 0) return { cannot: 'tooNarrow', least: up(w + 1) };
  const between = template / Math.cos(radians(slant));
  return {
    template: lengthOfTicks(template),
    slant,
    length: down(between + 2 * template + w * t),
  };
}

/** 10 m, than which no length of a layout is longer. */
const longestTemplate = 10_000 * ticksPerMillimetre;

/** How much further along one edge of the strip a crease lies than along its centre line. */
function leanOf(width: number, slant: number): number {
  return (width / 2) * Math.tan(radians(slant / 2));
}

function degreesOf(angle: number): number {
  return (angle * 180) / Math.PI;
}

/** What arithmetic may have added to a whole number of ticks, or taken from it. */
const slack = 1e-6;

function nearest(ticks: number): Length {
  return lengthOfTicks(Math.round(ticks));
}

function up(ticks: number): Length {
  return lengthOfTicks(Math.ceil(ticks - slack));
}

function down(ticks: number): Length {
  return lengthOfTicks(Math.floor(ticks + slack));
}
