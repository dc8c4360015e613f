import type { LayoutCode, LayoutProblem } from '../layout/index.ts';
import {
  type Length,
  lengthOfTicks,
  showLength,
  showLengthWithUnit,
  showSize,
  sum,
} from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { countedInWords, countWord } from './count.ts';
import { shownDegrees } from './degrees.ts';
import type { Showing } from './showing.ts';

/** What is wrong with a layout and what may be done about it, in one to three sentences. */
export function layoutProblemSentence(problem: LayoutProblem, showing: Showing): string {
  const { units, glyphs } = showing;
  const { part, numbers, names } = problem;
  const number = (key: string): number => {
    const value = numbers[key];
    assert(value !== undefined, 'A problem brings the numbers of its sentence', { problem, key });
    return value;
  };
  const name = (key: string): string => {
    const value = names[key];
    assert(value !== undefined, 'A problem brings the names of its sentence', { problem, key });
    return value;
  };
  const length = (key: string) => showLengthWithUnit(lengthOfTicks(number(key)), units, glyphs);
  return sentences[problem.code]({
    it: part === 'base' ? 'The base' : name('name'),
    bed: names.on ?? faceName(names.face ?? 'base'),
    wide: names.axis === 'height' ? 'high' : 'wide',
    number,
    name,
    has: (key) => numbers[key] !== undefined || names[key] !== undefined,
    length,
    size: () =>
      showSize(
        { width: lengthOfTicks(number('width')), height: lengthOfTicks(number('height')) },
        units,
        glyphs,
      ),
    addition: () => {
      const terms = termsOf(numbers);
      const all = showLengthWithUnit(sum(...terms), units, glyphs);
      const shown = terms.map((term, place) => {
        const extent = showLength(lengthOfTicks(Math.abs(term)), units, glyphs);
        if (place === 0) return showLength(term, units, glyphs);
        return term < 0 ? `${glyphs === 'printed' ? '−' : '-'} ${extent}` : `+ ${extent}`;
      });
      return `${shown.join(' ')} = ${all}`;
    },
    magnitude: (key) => showLengthWithUnit(lengthOfTicks(Math.abs(number(key))), units, glyphs),
  });
}

/** What a sentence may draw on. */
interface Told {
  /** The part it is about. */
  readonly it: string;
  /** What that lies on. */
  readonly bed: string;
  readonly wide: 'wide' | 'high';
  readonly number: (key: string) => number;
  readonly name: (key: string) => string;
  readonly has: (key: string) => boolean;
  readonly length: (key: string) => string;
  /** The length without its sign. */
  readonly magnitude: (key: string) => string;
  readonly size: () => string;
  /** The terms of a sum and what they come to: `1/8 + 3 + 1/8 = 3 1/4 in`. */
  readonly addition: () => string;
}

const sentences = {
  sumOff: ({ it, bed, wide, number, length, magnitude, addition }) =>
    `${it}: ${addition()}, but ${bed} is ${length('room')} ${wide}: ${magnitude('difference')} too ${
      number('difference') > 0 ? 'much' : 'little'
    }. Change one of them, or leave one out and it is worked out.`,
  noRoom: ({ it, bed, wide, number, length, magnitude }) =>
    `${it} fills what is left of ${bed}, which is ${length('whole')} ${wide}, but nothing is left: the borders, gaps and parts beside it take ${
      number('room') === 0 ? 'all of it' : `${magnitude('room')} more`
    }.`,
  insetTooLarge: ({ it, bed, wide, length }) =>
    `${it} is inset ${length('inset')} on each side, which leaves nothing of ${bed}: that is ${length('room')} ${wide}.`,
  roomsDiffer: ({ it, wide, length }) =>
    `${it} fills rooms of different sizes, from ${length('smallest')} to ${length('largest')} ${wide}, but all its pieces are cut to one size. Make the rooms alike, or give the size.`,
  tornAway: ({ it, wide, length }) =>
    `${it} is cut ${length('cut')} ${wide} and ${length('torn')} of that is torn off: nothing is left to see.`,
  nothingSeen: ({ it, wide, length }) =>
    `${it} is cut ${length('cut')} ${wide} and ${length('beyond')} of that is torn off, goes behind or is left by the die: nothing is left to see.`,
  stripTooShort: ({ it, length }) =>
    `${it} is folded of a strip of ${length('length')}, but it takes ${length('least')} at least. Cut it longer, or make the template smaller or the strip narrower.`,
  overlapTooLong: ({ it, length }) =>
    `The ends of ${it} overlap by ${length('overlap')}, which is more than a loop of ${length('template')}: they would have to be folded once more. Let them overlap by no more than that.`,
  foldedOverItself: ({ it, length, number, has }) =>
    `${it} is folded over itself: its tails lie on one another by ${length('over')}. A slant of ${shownDegrees(number('slant'))} or more keeps them apart${
      has('template') ? `, or a template of ${length('template')} or more` : ''
    }.`,
  loopsOff: ({ it, number, length, magnitude }) =>
    `${it} is folded of a strip of ${length('length')}, but ${countedInWords(number('loops'), 'loop')} of ${length('template')} and an overlap of ${length('overlap')} take ${length('wanted')}: ${magnitude('difference')} too ${
      number('difference') > 0 ? 'much' : 'little'
    }. Cut the strip ${length('wanted')} long${
      number('left') < 0 ? '' : `, or let its ends overlap by ${length('left')}`
    }.`,
  neighbourElsewhere: ({ it, name }) =>
    `${it} lies on ${faceName(name('face'))} and is laid to ${name('neighbour')}, which lies on ${faceName(name('neighbourFace'))}. A neighbour has to lie on the same face.`,
  allowanceTooLarge: ({ length }) =>
    `The base: an allowance of ${length('allowance')} leaves too little of the panels that lie within the others; it may be up to a quarter of the front, ${length('most')}, and that is reckoned with.`,
  noInside: ({ it }) =>
    `${it} lies on the inside, but a flat card has none. Lay it on the front or the back, or give the base a fold.`,
  largerThanCard: ({ it, wide, length, name }) =>
    `${it} is ${length('size')} ${wide}, but the card is ${length('room')}: ${length('difference')} too much.${turnedWords(name)}`,
  largerThanPart: ({ it, bed, wide, length, name }) =>
    `${it} is ${length('size')} ${wide}, but it lies on ${bed}, which is ${length('room')}: ${length('difference')} too much.${turnedWords(name)} If it is meant to hang over, say so by a negative distance.`,
  overCardEdge: ({ it, length, name }) =>
    `${it} hangs ${length('over')} over the ${name('edge')} edge of the card. If that is meant, say so by a negative distance from that edge.`,
  negativeBorder: ({ it, bed, length, name }) =>
    `${it} is inset on ${bed}, but its place moves it ${length('over')} over the ${name('edge')} edge. Leave the place out, or give a size.`,
  overPartEdge: ({ it, bed, length, name }) =>
    `${it} hangs ${length('over')} over the ${name('edge') === 'rim' ? 'rim' : `${name('edge')} edge`} of ${bed}.`,
  overhang: ({ it, bed, length, name, has }) =>
    `${it} hangs ${length('over')} over the ${name('edge')} edge of ${bed}, as its place says.${
      has('face') ? ' Check that the card still goes into its envelope.' : ''
    }`,
  unevenBorder: ({ it, bed, length, name, has }) => {
    if (has('across')) {
      return `The borders of ${it} are uneven: ${length('across')} of ${bed} at the sides, ${length('down')} above and below.`;
    }
    const [first, last] = has('left') ? ['left', 'right'] : ['top', 'bottom'];
    const whose = name('last') === it ? `of ${it}` : `of ${it} and ${name('last')}`;
    return `The borders ${whose} are uneven: ${length(first)} of ${bed} at the ${first}, ${length(last)} at the ${last}.`;
  },
  overlap: ({ it, name, has }) =>
    has('by') ? `${it} lies partly on ${name('by')}.` : `Pieces of ${it} lie partly on one another.`,
  negativeGap: ({ it, name, magnitude }) =>
    `The gap between ${it} and ${name('neighbour')} is negative: they lie on one another by ${magnitude('gap')}.`,
  hidden: ({ it, name }) => `Nothing of ${it} is seen: ${name('by')} lies over all of it.`,
  piecesStacked: ({ it, number }) =>
    `Pieces of ${it} lie exactly on one another: ${countWord(number('count'))} for each card. If they are to lie apart, give each its own place.`,
  acrossSlit: ({ it, name, length }) =>
    `${it} lies across the slit between the doors of the front, ${length('first')} of it on the ${name('first')} one and ${length('second')} on the ${name('second')} one. Glued to both it keeps the card shut: glue it to one door only, or make it a band that goes behind at both ends.`,
  noLeftovers: ({ it, number }) =>
    `${it} is to be cut from leftovers, but nothing else is cut from ${number('papers') === 1 ? 'its paper' : 'its papers'}, so there are none: it takes a sheet of its own.`,
  foldAcrossGrain: ({ name, size }) =>
    `The base folds across the grain of ${name('paper')} (${size()}), however it is cut from it. Such a fold may crack and spring open: score it well, or take paper whose grain runs along the fold.`,
  foldMayCrossGrain: ({ name, number, size }) =>
    `The base folds across the grain of ${name('paper')} (${size()}) if it is cut so that a sheet gives ${countedInWords(number('across'), 'base')}; with the grain along the fold it gives ${countWord(number('along'))}.`,
  directionFreed: ({ it, name }) =>
    `${it} is free to turn, but ${name('paper')} has a direction: on some cards its print may lie on its side. Lock the turn to keep it upright.`,
} as const satisfies Record<LayoutCode, (told: Told) => string>;

function faceName(face: string): string {
  return { base: 'the card front', inside: 'the inside', back: 'the back' }[face] ?? face;
}

/** The terms of a sum, which a problem numbers from 1. */
function termsOf(numbers: Readonly<Record<string, number>>): readonly Length[] {
  const terms: Length[] = [];
  for (let next = numbers.term1; next !== undefined; next = numbers[`term${terms.length + 1}`]) {
    terms.push(lengthOfTicks(next));
  }
  return terms;
}

function turnedWords(name: (key: string) => string): string {
  return name('turned') === 'fits' ? ' Turned by a quarter it would fit.' : '';
}
