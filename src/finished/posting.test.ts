import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readLayoutFile } from '../files/index.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { inch, layoutOf, mm, type PartSketch, paper, part } from '../layout/testing/build.ts';
import { type PostTable, postTableOf } from '../making/index.ts';
import { inches, type Length, type Size } from '../measure/index.ts';
import { closedCards } from './closed.ts';
import { envelopeProblems, postProblems } from './closedProblems.ts';
import { finishedCodes } from './codes.ts';
import { postingOf } from './posting.ts';

const us = postTableOf('us')!;

function setOf(name: string): Layout {
  const read = readLayoutFile(readFileSync(`test/sets/${name}.card.json`, 'utf8'));
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  return read.layout;
}

const enveloped = (
  layout: Layout,
  size: Size,
  more: Partial<NonNullable<Layout['envelope']>> = {},
): Layout => ({
  ...layout,
  envelope: { name: '', size, gsm: null, thickness: null, grams: null, ...more },
});
const posting = (layout: Layout, table: PostTable = us) => postingOf(layout, arrange(layout), table);
const kindsOf = (layout: Layout, table?: PostTable) =>
  posting(layout, table).changes.map(({ kind, as }) => [kind, as.name]);

/** A card of 105 x 148 mm with such parts, and 300 g/m² paper for everything. */
const card = (
  parts: Readonly<Record<string, PartSketch>>,
  size: readonly [Length, Length] = [mm(105), mm(148)],
): Layout =>
  layoutOf({
    units: 'mm',
    base: size,
    basePapers: ['p'],
    papers: [{ ...paper('p', []), gsm: 250, thickness: mm(0.3) }],
    parts: Object.entries(parts).map(([id, sketch]) => part(id, { papers: ['p'], ...sketch })),
  });
const c6 = { width: mm(162), height: mm(114) };

describe('birthday cards with a sentiment on foam, in the United States', () => {
  const layout = enveloped(
    setOf('bees-and-dots'),
    { width: inch('5 3/4'), height: inch('4 3/8') },
    { name: 'A2' },
  );
  const answer = posting(layout);

  test('go as a letter that machines cannot sort, since they are uneven', () => {
    expect(answer.posted.as?.name).toBe('letter that machines cannot sort');
    expect(answer.posted.not.map(({ faults }) => faults.map(({ code }) => code))).toEqual([['uneven']]);
    // 0.1395 in and an envelope of two sheets: far below a quarter inch.
    expect(answer.piece.thickness).toBeLessThan(inch('1/4'));
    expect(answer.piece.thickness).toBeGreaterThan(inch('9/64'));
  });

  test('without the foam they are a letter', () => {
    expect(answer.changes.map(({ kind, as }) => [kind, as.name])).toContainEqual(['withoutFoam', 'letter']);
  });

  test('fit their envelope', () => {
    expect(envelopeProblems(layout, closedCards(layout, arrange(layout)))).toEqual([]);
  });
});

// A square of 140 mm is none of the first class in the United States (1.3) and Germany (1.4), and of Canada it is.
test('square cards are warned of by the posts that take none', () => {
  const square = enveloped(card({}, [mm(135), mm(135)]), { width: mm(140), height: mm(140) });
  const faults = (id: string) =>
    posting(square, postTableOf(id)!).posted.not.map((one) => one.faults[0]?.code);
  expect(faults('us')).toEqual(['tooSquare']);
  expect(faults('de').slice(0, 2)).toEqual(['tooHigh', 'tooHigh']);
  expect(faults('ca')).toEqual([]);
  expect(faults('uk')).toEqual([]);
  expect(faults('au')).toEqual(['tooHigh']);
});

describe('changes of one thing', () => {
  test('a single raised part of two is laid flat, where that does', () => {
    const layout = enveloped(
      card({
        panel: { size: [mm(90), mm(130)], adhere: 'raised', foam: mm(3) },
        word: { on: 'panel', size: [mm(40), mm(20)], adhere: 'raised', foam: mm(2) },
      }),
      c6,
      { gsm: 80 },
    );
    const uk = postTableOf('uk')!;
    expect(posting(layout, uk).posted.as?.name).toBe('large letter');
    expect(kindsOf(layout, uk)).toEqual([
      ['thinnerFoam', 'letter'],
      ['flatPart', 'letter'],
      ['flatPart', 'letter'],
      ['withoutFoam', 'letter'],
    ]);
  });

  test('a lighter envelope brings the weight under a limit', () => {
    // 20 g in Germany: 2 x 105 x 148 mm of 500 g/m² are 15.54 g.
    const layout = enveloped(
      { ...card({}), papers: new Map([['p', { ...paper('p', []), gsm: 500, thickness: mm(0.6) }]]) },
      c6,
      { gsm: 120 },
    );
    const de = postTableOf('de')!;
    expect(posting(layout, de).posted.as?.name).toBe('Kompaktbrief');
    expect(kindsOf(layout, de)).toEqual([['lighterEnvelope', 'Standardbrief']]);
  });

  test('another envelope, where the card fits one that a smaller class takes', () => {
    const layout = enveloped(card({}), { width: mm(229), height: mm(162) });
    const de = postTableOf('de')!;
    expect(posting(layout, de).posted.as?.name).toBe('Großbrief');
    expect(posting(layout, de).changes).toMatchObject([
      { kind: 'otherEnvelope', as: de.classes[0], envelope: { name: 'C6' } },
    ]);
  });

  test('a smaller card, where nothing else does', () => {
    const layout = enveloped(card({}, [mm(150), mm(210)]), { width: mm(229), height: mm(162) });
    const [change] = posting(layout, postTableOf('de')!).changes;
    expect(change).toMatchObject({
      kind: 'smallerCard',
      card: { length: mm(210), height: mm(111) },
      envelope: { name: 'C6/C5' },
    });
  });

  test('without a thing that does not bend', () => {
    const layout = enveloped(
      card({ button: { papers: [], diameter: mm(12), thickness: mm(2.5), grams: 1 } }),
      c6,
    );
    const au = postTableOf('au')!;
    const answer = posting(layout, au);
    expect(answer.rigid).toEqual(['button']);
    expect(answer.posted.as).toBeNull();
    expect(answer.changes).toEqual([{ kind: 'withoutPart', part: 'button', as: au.classes[0] }]);
  });
});

test('without an envelope in the layout the smallest usual one is taken, and one of its own where there is none', () => {
  expect(posting(card({})).envelope).toMatchObject({ name: 'C6', from: 'known', length: mm(162) });
  expect(posting(card({}, [mm(230), mm(330)])).envelope).toMatchObject({ name: '', from: 'needed' });
});

test('the thickest card goes through the slot, and the heaviest on the scale', () => {
  const layout: Layout = {
    ...card({}),
    cards: 5,
    base: { ...card({}).base, papers: ['p', 'thick', 'heavy'] },
    papers: new Map([
      ['p', { ...paper('p', []), gsm: 250, thickness: mm(0.3) }],
      ['thick', { ...paper('thick', []), gsm: 200, thickness: mm(0.5) }],
      ['heavy', { ...paper('heavy', []), gsm: 400, thickness: mm(0.4) }],
    ]),
  };
  const closed = closedCards(layout, arrange(layout));
  expect([closed.thickestCard, closed.section.thickest.thickness]).toEqual([1, mm(1)]);
  expect([closed.heaviestCard, closed.weight.grams]).toEqual([2, expect.closeTo(0.105 * 0.148 * 2 * 400, 6)]);
  // Of five cards the first two papers come twice.
  expect(closed.setGrams).toBeCloseTo(0.105 * 0.148 * 2 * (250 * 2 + 200 * 2 + 400), 6);
});

test('each problem is met, with the figures of its sentence, and none without an envelope and a post', () => {
  const problems = (layout: Layout) => [
    ...envelopeProblems(layout, closedCards(layout, arrange(layout))),
    ...postProblems(layout, posting(layout, postTableOf(layout.post ?? 'us')!)),
  ];
  const a2 = { width: inch('5 3/4'), height: inch('4 3/8') };
  const bees: Layout = { ...setOf('bees-and-dots'), envelope: null, post: null };
  expect(problems(bees)).toEqual([]);

  expect(
    problems({ ...enveloped(bees, { width: inch('5 5/8'), height: inch('4 3/8') }), post: 'us' }),
  ).toEqual([expect.objectContaining({ code: 'postedHigher', severity: 'caution', where: 'post' })]);
  const [small, ...rest] = problems(
    enveloped(bees, { width: inch('5 3/4'), height: inch('4 1/4') }, { name: 'Kraft' }),
  );
  expect(rest).toEqual([]);
  expect(small).toMatchObject({
    code: 'envelopeTooSmall',
    severity: finishedCodes.envelopeTooSmall,
    where: 'envelope.size',
    numbers: { card: inch('4 1/4'), envelope: inch('4 1/4'), spare: 0 },
    names: { side: 'shorter', name: 'Kraft', smallest: 'A2' },
  });
  expect(problems(enveloped(bees, { width: inch('5 3/4'), height: inch('4 5/16') }))).toMatchObject([
    { code: 'envelopeTight', severity: finishedCodes.envelopeTight },
  ]);
  expect(problems({ ...enveloped(bees, a2), post: 'us' })).toMatchObject([
    {
      code: 'postedHigher',
      names: {
        post: 'United States',
        why1: 'uneven',
        smallest: 'letter',
        change: 'withoutFoam',
        becomes: 'letter',
      },
    },
  ]);
  const huge = enveloped(bees, { width: inches(20), height: inches(20) });
  expect(problems({ ...huge, post: 'us' })).toMatchObject([
    { code: 'notPosted', names: { why1: 'tooLong' }, numbers: { is1: inches(20), limit1: inches(15) } },
  ]);
});
