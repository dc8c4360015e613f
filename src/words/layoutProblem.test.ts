import { expect, test } from 'vitest';
import { type LayoutCode, layoutCodes } from '../layout/index.ts';
import { inches } from '../measure/index.ts';
import { layoutProblemSentence } from './layoutProblem.ts';

type Told = {
  readonly numbers?: Readonly<Record<string, number>>;
  readonly names?: Readonly<Record<string, string>>;
  readonly part?: string;
};

function said(code: LayoutCode, { numbers = {}, names = {}, part = 'panel' }: Told): string {
  return layoutProblemSentence(
    {
      code,
      severity: layoutCodes[code],
      where: 'parts[0]',
      part,
      numbers,
      names: { name: 'Panel', ...names },
    },
    { units: 'in', glyphs: 'typed' },
  );
}

const onMat = { on: 'Mat' };
const onFront = { face: 'base' };

/** One of each code at least: what it brings, and what is said. */
const sentences: Readonly<Record<LayoutCode, readonly (readonly [Told, string])[]>> = {
  sumOff: [
    [
      {
        numbers: {
          term1: inches(1, 8),
          term2: inches(3),
          term3: inches(1, 4),
          room: inches(13, 4),
          difference: inches(1, 8),
        },
        names: { ...onMat, axis: 'height' },
      },
      'Panel: 1/8 + 3 + 1/4 = 3 3/8 in, but Mat is 3 1/4 in high: 1/8 in too much. Change one of them, or leave one out and it is worked out.',
    ],
    [
      {
        numbers: {
          term1: -inches(1, 8),
          term2: inches(3),
          term3: -inches(1, 4),
          room: inches(3),
          difference: -inches(3, 8),
        },
        names: { ...onMat, axis: 'width' },
      },
      'Panel: -1/8 + 3 - 1/4 = 2 5/8 in, but Mat is 3 in wide: 3/8 in too little. Change one of them, or leave one out and it is worked out.',
    ],
  ],
  noRoom: [
    [
      { numbers: { whole: inches(4), room: -inches(1, 4) }, names: { ...onMat, axis: 'width' } },
      'Panel fills what is left of Mat, which is 4 in wide, but nothing is left: the borders, gaps and parts beside it take 1/4 in more.',
    ],
    [
      { numbers: { whole: inches(4), room: 0 }, names: { ...onMat, axis: 'width' } },
      'Panel fills what is left of Mat, which is 4 in wide, but nothing is left: the borders, gaps and parts beside it take all of it.',
    ],
  ],
  insetTooLarge: [
    [
      { numbers: { inset: inches(2), room: inches(4) }, names: { ...onMat, axis: 'width' } },
      'Panel is inset 2 in on each side, which leaves nothing of Mat: that is 4 in wide.',
    ],
  ],
  roomsDiffer: [
    [
      { numbers: { smallest: inches(1), largest: inches(2) }, names: { axis: 'height' } },
      'Panel fills rooms of different sizes, from 1 in to 2 in high, but all its pieces are cut to one size. Make the rooms alike, or give the size.',
    ],
  ],
  tornAway: [
    [
      { numbers: { cut: inches(1), torn: inches(5, 4) }, names: { axis: 'width' } },
      'Panel is cut 1 in wide and 1 1/4 in of that is torn off: nothing is left to see.',
    ],
  ],
  nothingSeen: [
    [
      { numbers: { cut: inches(1), beyond: inches(5, 4) }, names: { axis: 'height' } },
      'Panel is cut 1 in high and 1 1/4 in of that is torn off, goes behind or is left by the die: nothing is left to see.',
    ],
  ],
  stripTooShort: [
    [
      { numbers: { length: inches(3), least: inches(13, 4) } },
      'Panel is folded of a strip of 3 in, but it takes 3 1/4 in at least. Cut it longer, or make the template smaller or the strip narrower.',
    ],
  ],
  overlapTooLong: [
    [
      { numbers: { overlap: inches(2), template: inches(1) } },
      'The ends of Panel overlap by 2 in, which is more than a loop of 1 in: they would have to be folded once more. Let them overlap by no more than that.',
    ],
  ],
  foldedOverItself: [
    [
      { numbers: { over: inches(1, 8), slant: 18.5, template: inches(4) } },
      'Panel is folded over itself: its tails lie on one another by 1/8 in. A slant of 18.5° or more keeps them apart, or a template of 4 in or more.',
    ],
    [
      { numbers: { over: inches(1, 2), slant: 9.5 } },
      'Panel is folded over itself: its tails lie on one another by 1/2 in. A slant of 9.5° or more keeps them apart.',
    ],
  ],
  loopsOff: [
    [
      {
        numbers: {
          length: inches(5),
          wanted: inches(9, 2),
          difference: inches(1, 2),
          loops: 2,
          template: inches(1),
          overlap: inches(1, 2),
          left: inches(1),
        },
      },
      'Panel is folded of a strip of 5 in, but two loops of 1 in and an overlap of 1/2 in take 4 1/2 in: 1/2 in too much. Cut the strip 4 1/2 in long, or let its ends overlap by 1 in.',
    ],
    [
      {
        numbers: {
          length: inches(7, 2),
          wanted: inches(9, 2),
          difference: inches(-1),
          loops: 2,
          template: inches(1),
          overlap: inches(1, 2),
          left: inches(-1, 2),
        },
      },
      'Panel is folded of a strip of 3 1/2 in, but two loops of 1 in and an overlap of 1/2 in take 4 1/2 in: 1 in too little. Cut the strip 4 1/2 in long.',
    ],
  ],
  neighbourElsewhere: [
    [
      { names: { face: 'inside', neighbour: 'Mat', neighbourFace: 'base' } },
      'Panel lies on the inside and is laid to Mat, which lies on the card front. A neighbour has to lie on the same face.',
    ],
  ],
  noInside: [
    [
      {},
      'Panel lies on the inside, but a flat card has none. Lay it on the front or the back, or give the base a fold.',
    ],
  ],
  largerThanCard: [
    [
      {
        numbers: { size: inches(23, 4), room: inches(11, 2), difference: inches(1, 4) },
        names: { ...onFront, axis: 'height', turned: 'too large' },
      },
      'Panel is 5 3/4 in high, but the card is 5 1/2 in: 1/4 in too much.',
    ],
  ],
  largerThanPart: [
    [
      {
        numbers: { size: inches(5), room: inches(4), difference: inches(1) },
        names: { ...onMat, axis: 'width', turned: 'fits' },
      },
      'Panel is 5 in wide, but it lies on Mat, which is 4 in: 1 in too much. Turned by a quarter it would fit. If it is meant to hang over, say so by a negative distance.',
    ],
  ],
  overCardEdge: [
    [
      { numbers: { over: inches(1, 8) }, names: { ...onFront, edge: 'right' } },
      'Panel hangs 1/8 in over the right edge of the card. If that is meant, say so by a negative distance from that edge.',
    ],
  ],
  negativeBorder: [
    [
      { numbers: { over: inches(1, 8) }, names: { ...onMat, edge: 'left' } },
      'Panel is inset on Mat, but its place moves it 1/8 in over the left edge. Leave the place out, or give a size.',
    ],
  ],
  overPartEdge: [
    [
      { numbers: { over: inches(1, 8) }, names: { ...onMat, edge: 'top' } },
      'Panel hangs 1/8 in over the top edge of Mat.',
    ],
    [
      { numbers: { over: inches(1, 8) }, names: { ...onMat, edge: 'rim' } },
      'Panel hangs 1/8 in over the rim of Mat.',
    ],
  ],
  overhang: [
    [
      { numbers: { over: inches(1, 8) }, names: { ...onMat, edge: 'top' } },
      'Panel hangs 1/8 in over the top edge of Mat, as its place says.',
    ],
    [
      { numbers: { over: inches(1, 8) }, names: { ...onFront, edge: 'top' } },
      'Panel hangs 1/8 in over the top edge of the card front, as its place says. Check that the card still goes into its envelope.',
    ],
  ],
  unevenBorder: [
    [
      { numbers: { across: inches(1, 8), down: inches(1, 4) }, names: { ...onMat, last: 'Panel' } },
      'The borders of Panel are uneven: 1/8 in of Mat at the sides, 1/4 in above and below.',
    ],
    [
      { numbers: { top: inches(1, 8), bottom: inches(1, 4) }, names: { ...onMat, last: 'Strip' } },
      'The borders of Panel and Strip are uneven: 1/8 in of Mat at the top, 1/4 in at the bottom.',
    ],
  ],
  overlap: [
    [{ names: { by: 'Strip' } }, 'Panel lies partly on Strip.'],
    [{}, 'Pieces of Panel lie partly on one another.'],
  ],
  negativeGap: [
    [
      { numbers: { gap: -inches(1, 4) }, names: { neighbour: 'Strip' } },
      'The gap between Panel and Strip is negative: they lie on one another by 1/4 in.',
    ],
  ],
  hidden: [[{ names: { by: 'Strip' } }, 'Nothing of Panel is seen: Strip lies over all of it.']],
  piecesStacked: [
    [
      { numbers: { count: 3 } },
      'Pieces of Panel lie exactly on one another: three for each card. If they are to lie apart, give each its own place.',
    ],
  ],
  foldAcrossGrain: [
    [
      { part: 'base', numbers: { width: inches(17, 2), height: inches(11) }, names: { paper: 'Ivory' } },
      'The base folds across the grain of Ivory (8 1/2 x 11 in), however it is cut from it. Such a fold may crack and spring open: score it well, or take paper whose grain runs along the fold.',
    ],
  ],
  foldMayCrossGrain: [
    [
      {
        part: 'base',
        numbers: { width: inches(17, 2), height: inches(11), across: 2, along: 2 },
        names: { paper: 'Ivory' },
      },
      'The base folds across the grain of Ivory (8 1/2 x 11 in) if it is cut so that a sheet gives two bases; with the grain along the fold it gives two.',
    ],
  ],
  allowanceTooLarge: [
    [
      { part: 'base', numbers: { allowance: inches(2), most: inches(1) } },
      'The base: an allowance of 2 in leaves too little of the panels that lie within the others; it may be up to a quarter of the front, 1 in, and that is reckoned with.',
    ],
  ],
  acrossSlit: [
    [
      { numbers: { first: inches(1), second: inches(2) }, names: { first: 'left', second: 'right' } },
      'Panel lies across the slit between the doors of the front, 1 in of it on the left one and 2 in on the right one. Glued to both it keeps the card shut: glue it to one door only, or make it a band that goes behind at both ends.',
    ],
  ],
  noLeftovers: [
    [
      { numbers: { papers: 1 } },
      'Panel is to be cut from leftovers, but nothing else is cut from its paper, so there are none: it takes a sheet of its own.',
    ],
  ],
  directionFreed: [
    [
      { names: { paper: 'Bees' } },
      'Panel is free to turn, but Bees has a direction: on some cards its print may lie on its side. Lock the turn to keep it upright.',
    ],
  ],
};

test.each(
  Object.entries(sentences).flatMap(([code, cases]) =>
    cases.map(([told, words]) => [code as LayoutCode, told, words] as const),
  ),
)('%s is said with its numbers, and what may be done', (code, told, words) => {
  expect(said(code, told)).toBe(words);
});
