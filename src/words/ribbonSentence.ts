import type { FoldedMade, RibbonMade } from '../finished/index.ts';
import type { Layout } from '../layout/index.ts';
import type { NoRibbon } from '../making/index.ts';
import {
  type Edge,
  inches,
  type Length,
  lengthOfTicks,
  millimetres,
  roundTo,
  showLengthWithUnit,
  showSize,
  times,
  type Units,
} from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { capital, countedInWords, listed } from './count.ts';
import { shownDegrees } from './degrees.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';

/**
 * A folded strip or a band in sentences: what it measures, then how it is folded. What is worked out is told to the
 * nearest 1/64 in or 0.1 mm.
 */
export function ribbonSentences(made: RibbonMade, layout: Layout, showing: Showing): readonly string[] {
  const measured = ribbonMeasuresSentences(made, layout, showing);
  return made.kind === 'band' ? measured : [...measured, ...foldingSentences(made, layout, showing)];
}

/** How a strip is folded, step by step; of a band there is nothing to fold. */
export function foldingSentences(made: FoldedMade, layout: Layout, showing: Showing): readonly string[] {
  const near = nearIn(showing);
  const up = sideUp(made.part, layout);
  const turned = isUpright(made)
    ? ['Fold it lying from left to right; laid on, it is turned by a quarter, its left end up.']
    : [];
  switch (made.kind) {
    case 'ribbon': {
      const { edges, creaseLength, creaseDegrees } = made.measures;
      const [upper, lower] = made.shape.slant < 0 ? ['upper', 'lower'] : ['lower', 'upper'];
      return [
        `Lay the strip from left to right, ${up}. From its left end mark ${near(edges.nearer)} on the ${upper} edge and ${near(edges.further)} on the ${lower} edge, and score from mark to mark: ${near(creaseLength)} long, ${shownDegrees(creaseDegrees)} to the edge. Turn the strip half round and do the same at its other end.`,
        'Fold both ends behind along the scores: they then lie level and show the other side of the paper.',
        ...turned,
      ];
    }
    case 'loops': {
      const { loops, template } = made.shape;
      const first = `Mark the strip straight across at ${listed(made.creases.map(near))} from one end, and crease it there.`;
      const over =
        made.overlap > 0
          ? `; the last ${near(made.overlap)} lie over the beginning, where they are glued`
          : '; the ends meet, and are held by what goes round them';
      return [
        loops === 1
          ? `${first} Fold it flat round a card ${near(template)} wide, its ends behind${over}.`
          : `${first} Lay it ${up.replace(' up', ' down')} and fold it flat round a card ${near(template)} wide, to the right of the middle and to the left of it in turn, as one winds it up${over}.`,
        ...turned,
      ];
    }
    case 'knot':
      return [
        'Tie the strip in a loose overhand knot, draw it tight slowly while it is kept flat, and crease the five sides only when the two tails are as long as each other.',
        ...turned,
      ];
  }
}

/** Why a ribbon cannot be made as it was asked for, and what would do. */
export function noRibbonSentence(no: NoRibbon, showing: Showing): string {
  const near = nearIn(showing);
  switch (no.cannot) {
    case 'noGap':
      return 'The tails of a ribbon cannot be less than nothing apart: they would lie on one another.';
    case 'level':
      return 'A ribbon that hardly rises leaves no such gap, however long it is: give it more slant.';
    case 'tooShort':
      return `That takes a strip of ${near(no.least)} at least. ${
        no.largest >= 0
          ? `This one leaves a gap of ${near(no.largest)} at most.`
          : 'This one leaves no gap at all.'
      }`;
    case 'tooLow':
      return `A ribbon of this strip is ${near(no.least)} high at least: its two tails, edge to edge.`;
    case 'tooNarrow':
      return 'A ribbon is wider than its strip: let it measure more across, or take a narrower strip.';
  }
}

/** What a folded strip or a band measures. */
export function ribbonMeasuresSentences(
  made: RibbonMade,
  layout: Layout,
  showing: Showing,
): readonly string[] {
  const near = nearIn(showing);
  const it = capital(partName(layout, made.part));
  if (made.kind === 'band') return [bandSentence(made, layout, showing)];
  const strip = `${near(made.strip.length as Length)} by ${near(made.strip.width as Length)}`;
  switch (made.kind) {
    case 'ribbon': {
      const { between, rise, gap, tail, reach, overall, least } = made.measures;
      const { slant, template } = made.shape;
      const way = slant < 0 ? 'falls' : 'rises';
      const ends =
        reach >= 0
          ? `stand out ${near(reach)} beyond the middle of the other crease`
          : `end ${near(lengthOfTicks(-reach))} before the middle of the other crease`;
      const apart =
        gap >= 0
          ? `with a gap of ${near(gap)} between them`
          : `and lie on one another by ${near(lengthOfTicks(-gap))}`;
      return [
        `${it}: a strip of ${strip} on a template of ${near(template)}, which ${way} by ${shownDegrees(Math.abs(slant))}. Its middle is ${near(between)} long from crease to crease and ${way} by ${near(rise)}.`,
        `Its tails lie level, ${apart}; each is ${near(tail)} long, and they ${ends}. Folded, it measures ${showSize(nearSize(overall, showing.units), showing.units, showing.glyphs)}${isUpright(made) ? ' before it is turned' : ''}.`,
        `The strip has to be ${near(least)} long at least; this one is ${near(lengthOfTicks((made.strip.length as Length) - least))} longer.`,
      ];
    }
    case 'loops': {
      const { loops, template } = made.shape;
      return [
        `${it}: a strip of ${strip}. ${capital(countedInWords(loops, 'loop'))} round a template of ${near(template)} take ${loops} x 2 x ${near(template)}, which is ${near(times(template, 2 * loops))}${
          made.overlap >= 0 ? `, and leave an overlap of ${near(made.overlap)}` : ''
        }.`,
      ];
    }
    case 'knot': {
      const { side, least, tail } = made.measures;
      return [
        `${it}: a strip of ${strip} in a flat overhand knot, a pentagon with sides of ${near(side)}. The knot alone takes ${near(least)}, which leaves ${near(tail)} for each tail.`,
      ];
    }
  }
}

function bandSentence(
  { part, on, axis, behind, across, thickness, overlap }: Extract<RibbonMade, { kind: 'band' }>,
  layout: Layout,
  showing: Showing,
): string {
  const near = nearIn(showing);
  const it = capital(partName(layout, part));
  const round = on === 'base' ? 'the closed card' : partName(layout, on);
  const [start, end] = edgesOf[axis];
  const ends =
    behind[0] === behind[1]
      ? `${near(behind[0])} at the ${start} and at the ${end}`
      : `${near(behind[0])} at the ${start} and ${near(behind[1])} at the ${end}`;
  const meets =
    overlap > 0
      ? `There its ends lie over one another by ${near(overlap)}`
      : overlap === 0
        ? 'There its ends just meet'
        : `There ${near(lengthOfTicks(-overlap))} are missing for its ends to meet, so each is held by itself`;
  return `${it} goes round ${round} and behind, ${ends}. ${meets}: once round, ${near(across)} twice and the thickness of ${near(thickness)} twice, takes ${near(times(lengthOfTicks(across + thickness), 2))}.`;
}

const edgesOf = { width: ['left', 'right'], height: ['top', 'bottom'] } as const satisfies Record<
  string,
  readonly [Edge, Edge]
>;

/** Which side of the strip is up while it is marked: the one that its middle shows. */
function sideUp(part: string, layout: Layout): string {
  const own = layout.parts.find(({ id }) => id === part);
  assert(own !== undefined, 'A strip belongs to a part', { part });
  const paper = layout.papers.get(own.papers[0] ?? '');
  const back = paper?.back ?? null;
  if (paper === undefined || back === null) return 'its good side up';
  return `${own.side === 'back' ? back.name : paper.name} side up`;
}

function isUpright({ shape }: FoldedMade): boolean {
  return shape.strip.height > shape.strip.width;
}

/** To the nearest 1/64 in or 0.1 mm: no crease is placed finer. */
function nearIn({ units, glyphs }: Showing): (length: Length) => string {
  return (length) => showLengthWithUnit(roundTo(length, stepOf[units], 'nearest'), units, glyphs);
}

function nearSize({ width, height }: { readonly width: Length; readonly height: Length }, units: Units) {
  return {
    width: roundTo(width, stepOf[units], 'nearest'),
    height: roundTo(height, stepOf[units], 'nearest'),
  };
}

const stepOf = { in: inches(1, 64), mm: millimetres(0.1) } as const satisfies Record<Units, Length>;
