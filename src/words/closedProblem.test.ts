import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readLayoutFile } from '../files/index.ts';
import { checkFinished, finishedCodes } from '../finished/index.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { inch } from '../layout/testing/build.ts';
import { inches, type Length, millimetres } from '../measure/index.ts';
import { finishedProblemSentence } from './finishedProblem.ts';

const read = readLayoutFile(readFileSync('test/sets/bees-and-dots.card.json', 'utf8'));
if ('problems' in read) throw new Error(JSON.stringify(read.problems));
const bees: Layout = { ...read.layout, envelope: null, post: null };

const inEnvelope = (width: Length, height: Length, more: Partial<Layout> = {}, name = ''): Layout => ({
  ...bees,
  envelope: { name, size: { width, height }, gsm: null, thickness: null, grams: null },
  ...more,
});
const met = new Set<string>();
function told(layout: Layout): readonly string[] {
  const problems = checkFinished(layout, arrange(layout), { marks: inches(1, 16) });
  for (const { code } of problems) met.add(code);
  return problems.map((problem) =>
    finishedProblemSentence(problem, layout, { units: layout.units, glyphs: 'typed' }),
  );
}

test('an envelope that is too small, and one that is tight', () => {
  expect(told(inEnvelope(inch('5 3/4'), inch('4 1/4'), {}, 'Kraft'))).toEqual([
    'The envelope Kraft is too small: along its shorter side it is 4 1/4 in, the card is 4 1/4 in and its thickness, which an envelope goes round, takes about 0.037 in more. A2 is the smallest usual one that does.',
  ]);
  expect(told(inEnvelope(inch('5 3/4'), inch('4 5/16')))).toEqual([
    'The envelope is a tight fit: along its shorter side it is 4 5/16 in, the card is 4 1/4 in and its thickness, which an envelope goes round, takes about 0.037 in more. Try one card in it before all are made. A2 is the smallest usual one that has the usual room.',
  ]);
});

test('a post that takes the cards not as its smallest class, and what would help', () => {
  expect(told(inEnvelope(inch('5 3/4'), inch('4 3/8'), { post: 'us' }))).toEqual([
    'The post of the United States takes the card not as “letter” but as “letter that machines cannot sort” (as its limits were in 2023-07), for it is thick in some places only. Without the foam it is “letter”. The local post office decides.',
  ]);
  expect(told(inEnvelope(inch('5 3/4'), inch('4 3/8'), { post: 'de' }))).toEqual([
    'The post of Germany takes the card not as “Standardbrief” but as “Großbrief” (as its limits were in 2025-02), for it weighs 21 g (0.72 oz) and 20 g (0.71 oz) is the most; and its envelope is 1.31 times as long as high and has to be 1.4 times: it is too near to a square. As a smaller card in an envelope A-Long it is “Kompaktbrief”. The local post office decides.',
  ]);
});

test('a post that takes them not at all', () => {
  expect(told(inEnvelope(millimetres(400), millimetres(300), { post: 'ca', units: 'mm' }))).toEqual([
    'The post of Canada takes the card as no letter (as its limits were in 2025-02), for its envelope is 400 mm long and 380 mm is the most; and its envelope is 300 mm high and 270 mm is the most. In an envelope C6 it is “standard letter”. The local post office decides.',
  ]);
});

test('every code of the closed card was met', () => {
  const codes = Object.keys(finishedCodes).filter((code) => /envelope|posted/i.test(code));
  expect(codes.filter((code) => !met.has(code))).toEqual([]);
});
