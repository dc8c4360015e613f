import { expect, test } from 'vitest';
import { assemblyOf, checkFinished, holdingOf } from '../finished/index.ts';
import { arrange } from '../layout/index.ts';
import { awayFrom, layoutOf, mm, paper, part } from '../layout/testing/build.ts';
import { assemblyWords } from './assembly.ts';
import { finishedProblemSentence } from './finishedProblem.ts';
import { holdingSentences } from './holdingSentence.ts';
import { minutesWords } from './minutesWords.ts';
import { orderSentences } from './orderSentence.ts';

const typed = { units: 'mm', glyphs: 'typed' } as const;

/** A ribbon round a mat with two panels, and a bow on it: ten square cards. */
const tulips = (order?: readonly string[]) =>
  layoutOf({
    units: 'mm',
    cards: 10,
    base: [mm(135), mm(135)],
    ...(order === undefined ? {} : { order }),
    parts: [
      part('Mat', { inset: mm(3) }),
      part('Upper', { on: 'Mat', size: [mm(123), mm(88)], place: { top: mm(3) } }),
      part('Lower', { on: 'Mat', size: [mm(123), mm(32)], place: { top: awayFrom('Upper', mm(3)) } }),
      part('Ribbon', {
        on: 'Mat',
        size: [mm(159), mm(20)],
        tuck: { left: mm(15), right: mm(15) },
        place: { top: mm(82.5) },
      }),
      part('Bow', { on: 'Ribbon', size: [mm(60), mm(20)], adhere: 'raised', foam: mm(2) }),
    ],
  });

test('the mat goes down last, and its ribbon is why', () => {
  const layout = tulips();
  expect(orderSentences(assemblyOf(layout, arrange(layout)), layout)).toEqual([
    '1. Upper onto Mat.',
    '2. Lower onto Mat.',
    '3. Ribbon round Mat. Let the glue under Upper and Lower set for 30 minutes before you turn Mat over. Upper and Lower have to be on before, for Ribbon lies over them.',
    '4. Bow onto Ribbon.',
    '5. Mat onto the card front, with Upper, Lower, Ribbon and Bow on it. Take off the tape that holds the ends of Ribbon, or leave it where this covers it. Mat cannot go down before Ribbon is round it, for the ends of Ribbon go behind it.',
    'Upper and Lower are laid to one another: lay both out where they belong, put removable tape across their fronts, and lift them as one to put the glue or foam on; so the gaps stay as they are. Try the tape on a scrap of the paper first, for it may tear the print.',
    'Then let the card dry for 24 hours before it goes into its envelope.',
  ]);
  const words = assemblyWords(layout, arrange(layout), typed);
  expect(words[2]!.lay).toMatch(/hold the ends with removable tape, and turn it back\.$/);
  expect(words[4]!.lay).toMatch(/It goes down with Upper, Lower, Ribbon and Bow on it\.$/);
});

test('gluing the mat first is an error of the check with its reason', () => {
  const layout = tulips(['Mat', 'Ribbon']);
  const found = checkFinished(layout, arrange(layout), { marks: mm(1) }).filter(
    ({ severity }) => severity === 'error',
  );
  expect(found.map((problem) => [problem.where, finishedProblemSentence(problem, layout, typed)])).toEqual([
    [
      'order',
      'The parts cannot be put on in this order: Mat cannot go down before Ribbon is round it, for the ends of Ribbon go behind it.',
    ],
  ]);
});

test('what lies between a band and its mat is to lie on the mat', () => {
  const layout = layoutOf({
    units: 'mm',
    base: [mm(100), mm(100)],
    parts: [
      part('Mat', { size: [mm(80), mm(80)] }),
      part('Strip', { size: [mm(90), mm(10)] }),
      part('Ribbon', { on: 'Mat', size: [mm(100), mm(20)], tuck: { left: mm(10), right: mm(10) } }),
    ],
  });
  const [none] = checkFinished(layout, arrange(layout), { marks: mm(1) }).filter(
    ({ code }) => code === 'orderNone',
  );
  expect(finishedProblemSentence(none!, layout, typed)).toMatch(
    /^There is no order in which the parts can be put on: .*Let Strip lie on Mat, so that both go down together\.$/,
  );
});

test('what cannot be held unseen is said with its lengths', () => {
  const layout = layoutOf({
    units: 'mm',
    base: [mm(100), mm(100)],
    papers: [{ ...paper('vellum', []), seeThrough: true }],
    parts: [
      part('Circle', { diameter: mm(60), papers: ['vellum'] }),
      part('Twig', { size: [mm(50), mm(8)], place: { top: mm(2) }, adhere: 'raised' }),
      part('Flag', { size: [mm(80), mm(20)], place: { left: mm(60), top: mm(78) }, adhere: 'raised' }),
    ],
  });
  const says = checkFinished(layout, arrange(layout), { marks: mm(1) })
    .filter(({ code }) => ['noRoomToHold', 'glueShows', 'hangsFar'].includes(code))
    .map((problem) => finishedProblemSentence(problem, layout, typed));
  expect(says).toEqual([
    'Liquid glue shows through Circle: nothing lies over it that hides any. Lay something over it that is not seen through, hold it there, or use an adhesive that does not show.',
    'There is no room for foam tape behind Twig: it stays 3 mm away from the edges, which leaves about 2 mm at the broadest on what Twig rests on, and it needs about 3 mm. Make the part larger, let the adhesive come nearer to the edges, or lay it flat.',
    expect.stringMatching(
      /^Flag hangs out about 40(\.5)? mm from the nearest foam tape that can lie unseen; 20 mm is the most/,
    ),
  ]);
});

test('supplies are told for a card and the set, with the rolls to have', () => {
  const layout = tulips();
  const says = holdingSentences(holdingOf(layout, arrange(layout)), layout, typed);
  expect(says).toContain(
    'Removable tape, 12 mm wide: 40 mm on a card, 400 mm for all 10: at least 1 roll of 10 m.',
  );
  expect(says.at(-1)).toMatch(/^Liquid glue can be turned over after 30 minutes .*Advice in print disagrees/);
});

test('minutes are told in hours where they are many', () => {
  expect([0, 1, 30, 60, 90, 1440].map(minutesWords)).toEqual([
    '0 minutes',
    '1 minute',
    '30 minutes',
    '1 hour',
    '1 hour 30 minutes',
    '24 hours',
  ]);
});
