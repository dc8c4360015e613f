import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readLayoutFile } from '../files/index.ts';
import { closedCards, postingOf } from '../finished/index.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { inch, layoutOf, mm, paper, part } from '../layout/testing/build.ts';
import { postTableOf } from '../making/index.ts';
import { envelopeSentences } from './envelopeSentence.ts';
import { postSentences } from './postSentence.ts';
import { sectionSentences } from './sectionSentence.ts';
import { weightSentences } from './weightSentence.ts';

const read = readLayoutFile(readFileSync('test/sets/bees-and-dots.card.json', 'utf8'));
if ('problems' in read) throw new Error(JSON.stringify(read.problems));
const bees: Layout = {
  ...read.layout,
  envelope: {
    name: 'A2',
    size: { width: inch('5 3/4'), height: inch('4 3/8') },
    gsm: null,
    thickness: null,
    grams: null,
  },
};
const reason =
  'An envelope goes round the thickness of a card; beside that, 1/8 in or 3 mm in each direction is the least that is usual (common practice, no source), and more slides in more easily.';
const said = (layout: Layout, post: string) => {
  const arrangement = arrange(layout);
  const closed = closedCards(layout, arrangement);
  const showing = { units: layout.units, glyphs: 'typed' } as const;
  return {
    section: sectionSentences(closed.section, layout, showing),
    weight: weightSentences(closed, layout, showing),
    envelope: envelopeSentences(closed, layout, showing),
    post: postSentences(postingOf(layout, arrangement, postTableOf(post)!, closed), layout, showing),
  };
};

describe('birthday cards with bees and dots', () => {
  const { section, weight, envelope, post } = said(bees, 'us');
  test('are so thick', () => {
    expect(section).toEqual([
      'Closed, the card is about 0.14 in at its thickest where sentiment lies; of that 1/16 in is foam.',
      'There lie, from the back up: the back of the base (0.013 in), lining (0.011 in), the front of the base (0.013 in), mat (0.011 in), lower (0.007 in), foam under tag (about 0.063 in), tag (0.011 in) and sentiment (0.011 in).',
      'At its thinnest it is about 0.026 in, and what is nearer to the thickest takes about a seventh of its face. A post may call that uneven.',
      'Estimated, 0.063 in of that: the foam.',
    ]);
  });
  test('weigh so much', () => {
    expect(weight).toEqual([
      'One card weighs about 17 g (0.6 oz) without its envelope, the set of 10 cards about 170 g (6 oz).',
      'Estimated, all of that: the base, mat, upper, lower, lining, tag, sentiment and adhesives. The areas are exact.',
    ]);
  });
  test('go into their envelope', () => {
    expect(envelope).toEqual([
      'It goes into the envelope A2, 5 3/4 x 4 3/8 in, with 1/4 in to spare along its longer side and 1/8 in along its shorter; of each its thickness takes about 0.037 in.',
      reason,
    ]);
    const small = { ...bees.envelope!, name: '', size: { width: inch('5 3/4'), height: inch('4 1/4') } };
    expect(said({ ...bees, envelope: small }, 'us').envelope).toEqual([
      'It does not go into the envelope, 5 3/4 x 4 1/4 in.',
      'The smallest usual envelope that takes it is A2, 5 3/4 x 4 3/8 in.',
      'The largest card as thick that goes into the envelope is 5 5/8 x 4 1/8 in.',
      reason,
    ]);
  });
  test('go by post', () => {
    expect(post).toEqual([
      'In the envelope A2, 5 3/4 x 4 3/8 in, it is about 0.15 in thick and weighs about 21 g (0.72 oz).',
      'The post of the United States takes it as “letter that machines cannot sort”.',
      'It is no “letter”, for it is thick in some places only.',
      'Without the foam it is “letter”.',
      'Limits of size and weight as they were in 2023-07 (USPS Domestic Mail Manual 101, text dated 9 July 2023, and 201), no prices; the local post office decides.',
    ]);
  });
});

describe('a square card of papers that are all measured, with a button', () => {
  const layout = layoutOf({
    units: 'mm',
    cards: 3,
    base: [mm(135), mm(135)],
    basePapers: ['p', 'q'],
    papers: [
      { ...paper('p', []), gsm: 250, thickness: mm(0.3) },
      { ...paper('q', []), gsm: 300, thickness: mm(0.35) },
    ],
    parts: [part('button', { diameter: mm(20), thickness: mm(2.5), grams: 1.5 })],
  });
  const { section, weight, envelope, post } = said(layout, 'au');
  test('is told of', () => {
    expect({ section, weight, envelope, post }).toEqual({
      section: [
        'Closed, the card is about 3.2 mm at its thickest where button lies.',
        'There lie, from the back up: the back of the base (0.35 mm), the front of the base (0.35 mm) and button (2.5 mm).',
        'At its thinnest it is about 0.7 mm, and what is nearer to the thickest takes about a fiftieth of its face. A post may call that uneven.',
        'All these thicknesses are as the layout says them; foam gives a little when it is pressed.',
      ],
      weight: [
        'The heaviest card weighs about 12 g without its envelope, the set of 3 cards about 34 g.',
        'Estimated, hardly any of that: adhesives. The areas are exact.',
      ],
      envelope: ['The smallest usual envelope that takes it is 140 mm square, 140 x 140 mm.', reason],
      post: [
        'In the envelope 140 mm square, 140 x 140 mm, it is about 3.4 mm thick and weighs about 17 g.',
        'The post of Australia takes it as no letter.',
        'It is no “small letter”, for its envelope is 140 mm high and 130 mm is the most; and something in it may not bend.',
        'It is no “large letter”, for something in it may not bend.',
        'Without button it is “large letter”.',
        'Try whether button can be bent with the card: a post may refuse as a letter what is stiff.',
        'Limits of size and weight as they were in 2025-02 (Australia Post, its own pages; the least size is from memory), no prices; the local post office decides.',
      ],
    });
  });
});
