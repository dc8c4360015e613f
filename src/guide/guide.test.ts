import { beforeAll, describe, expect, test } from 'vitest';
import { a4Format, type Booklet, letterFormat } from '../drawing/index.ts';
import { plainTypeface } from '../drawing/testing/plainTypeface.ts';
import { inches, showLengthWithUnit } from '../measure/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import { sittingsSentence } from '../words/index.ts';
import { type GuideRequest, guideOf } from './guide.ts';
import { fieldSet, hostileSet, planned, restfulTrimmer, tideSet } from './testing/sets.ts';
import { cornersOf, drawnMarks, groupsIn, wordsIn } from './testing/walk.ts';

const sets = { tide: tideSet, field: fieldSet, hostile: hostileSet };
const manners = (['letter', 'a4'] as const).flatMap((sheetFormat) =>
  (['in', 'mm'] as const).flatMap((units) => [10.5, 16].map((bodyPt) => ({ sheetFormat, units, bodyPt }))),
);
const cases = (Object.keys(sets) as (keyof typeof sets)[]).flatMap((name) =>
  manners.map((manner) => ({ name, ...manner })),
);

describe.each(cases)('the guide of $name on $sheetFormat in $units at $bodyPt pt', ({ name, ...manner }) => {
  let request: GuideRequest;
  let booklet: Booklet;
  beforeAll(async () => {
    request = { ...(await planned(sets[name]())), ...manner, typeface: plainTypeface };
    booklet = guideOf(request);
  });
  const format = manner.sheetFormat === 'letter' ? letterFormat : a4Format;

  test('says every setting', () => {
    const words = booklet.pages.map(({ marks }) => wordsIn(marks)).join(' ');
    for (const step of request.plan.steps) {
      const setting = showLengthWithUnit(step.set, manner.units, 'printed').replace(/\s/g, ' ');
      expect(words).toContain(`${step.step} Set ${setting}.`);
    }
  });

  test('keeps everything within the margins', () => {
    const { left, right } = format.marginPt;
    for (const [index, page] of booklet.pages.entries()) {
      expect([page.widthPt, page.heightPt]).toEqual([format.widthPt, format.heightPt]);
      for (const drawn of drawnMarks(page.marks)) {
        for (const { xPt, yPt } of cornersOf(drawn, plainTypeface)) {
          const where = `page ${index + 1}: ${JSON.stringify(drawn)}`;
          expect(xPt, where).toBeGreaterThanOrEqual(left - 0.01);
          expect(xPt, where).toBeLessThanOrEqual(format.widthPt - right + 0.01);
          // The running lines stand in the upper and lower margin.
          expect(yPt, where).toBeGreaterThan(24);
          expect(yPt, where).toBeLessThan(format.heightPt - 24);
        }
      }
    }
  });

  test('has words for every figure, and one title', () => {
    const groups = booklet.pages.flatMap(({ marks }) => groupsIn(marks));
    const figures = groups.filter(({ role }) => role === 'figure');
    expect(figures.length).toBeGreaterThan(request.plan.steps.length);
    for (const { says } of figures) expect(says).toMatch(/\S{3}/);
    expect(groups.filter(({ role }) => role === 'title')).toHaveLength(1);
  });

  test('has two true bars on each page at true size, and only there', () => {
    const barred = booklet.pages.filter(({ marks }) => wordsIn(marks).includes('1 in exactly'));
    const large = booklet.pages.filter(({ marks }) =>
      groupsIn(marks).some(
        ({ role, marks: inside }) => role === 'heading' && wordsIn(inside).includes('at true size'),
      ),
    );
    // The front, and the templates for what is torn.
    expect(large.length).toBeGreaterThanOrEqual(1);
    expect(barred).toEqual(large);
    for (const { marks } of large) {
      const widths = drawnMarks(marks).flatMap(({ mark }) => {
        const [from, to] = mark.kind === 'path' && mark.path.length === 2 ? mark.path : [];
        return from?.to === 'move' && to?.to === 'line' ? [to.xPt - from.xPt] : [];
      });
      expect(widths).toContain(72);
      expect(widths.some((width) => Math.abs(width - (20 * 72) / 25.4) < 1e-9)).toBe(true);
    }
  });

  test('points its contents line to the pages where the headings stand', () => {
    const headings = booklet.pages.flatMap(({ marks }, index) =>
      groupsIn(marks)
        .filter(({ role }) => role === 'heading')
        .map(({ marks: inside }) => `${wordsIn(inside)} ${index + 1}`),
    );
    const first = wordsIn(booklet.pages[0]!.marks).replace(/\s·\s/g, ' ');
    for (const heading of headings) {
      expect(first.replaceAll('\u200b', '').replace(/\s/g, '')).toContain(
        heading.replaceAll('\u200b', '').replace(/\s/g, ''),
      );
    }
  });
});

test('every step has one picture', async () => {
  const request = {
    ...(await planned(fieldSet())),
    sheetFormat: 'a4',
    units: 'mm',
    typeface: plainTypeface,
  } as const;
  const pictures = guideOf(request)
    .pages.flatMap(({ marks }) => groupsIn(marks))
    .filter(({ role, says }) => role === 'figure' && says?.startsWith('Picture of step') === true);
  expect(pictures.map(({ says }) => Number(says!.match(/\d+/)![0]))).toEqual(
    request.plan.steps.map(({ step }) => step),
  );
});

test('a guide for a trimmer on the right says so, and stops where its owner rests', async () => {
  const request = await planned(tideSet(), restfulTrimmer);
  const words = guideOf({ ...request, sheetFormat: 'letter', units: 'in', typeface: plainTypeface })
    .pages.map(({ marks }) => wordsIn(marks))
    .join(' ');
  expect(words).toContain('that measures on the right');
  expect(words).toContain('the top of the print to the right');
  expect(words).not.toContain('to the left');
  // Where every other door says it is: after that step, and before the next.
  const [, before] = /: breaks? after step (\d+)/u.exec(sittingsSentence(request.plan, restfulTrimmer))!;
  const place = words.indexOf('A good place to stop: what follows is for sitting 2.');
  expect(place).toBeGreaterThan(words.indexOf(`${before} Set `));
  const numbers = request.plan.steps.map(({ step }) => step);
  const next = numbers[numbers.indexOf(Number(before)) + 1]!;
  expect(place).toBeLessThan(words.indexOf(`${next} Set `));
});

test('a guide for a ruler that is off and short says what to set, and where', async () => {
  const trimmer: Trimmer = {
    ...restfulTrimmer,
    reach: { measuringSide: inches(4), otherSide: inches(12) },
    correction: inches(1, 32),
    sheetsAtOnce: 3,
  };
  const request = await planned(tideSet(), trimmer);
  const words = guideOf({ ...request, sheetFormat: 'letter', units: 'in', typeface: plainTypeface })
    .pages.map(({ marks }) => wordsIn(marks))
    .join(' ');
  expect(words).toContain('worked with the left hand');
  expect(words).toContain('Your left hand works the blade; the right holds the work');
  expect(words).toContain('more than its ruler reads; each step says what to set.');
  expect(words).toContain('measure on that side of the blade');
  expect(words).toContain('on the other side of the blade, the left.');
  expect(words).toMatch(/which on your trimmer reads .* \(ruler /);
  expect(words).toMatch(/in one stack: \d+ stroke|In \d+ stacks of/);
});

test('the same request gives the same pages', async () => {
  const request = {
    ...(await planned(tideSet())),
    sheetFormat: 'a4',
    units: 'mm',
    typeface: plainTypeface,
  } as const;
  expect(guideOf(request)).toEqual(guideOf(request));
});
