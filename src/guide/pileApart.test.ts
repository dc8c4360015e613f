import { expect, test } from 'vitest';
import { frameOf } from '../drawing/index.ts';
import { plainTypeface } from '../drawing/testing/plainTypeface.ts';
import { arrange } from '../layout/index.ts';
import { layoutOf, mm, paper, part } from '../layout/testing/build.ts';
import { pointsOf, showLengthWithUnit } from '../measure/index.ts';
import { pileApart } from './pileApart.ts';
import { hostileSet, tideSet } from './testing/sets.ts';
import { cornersOf, drawnMarks, wordsIn } from './testing/walk.ts';

const length = (of: Parameters<typeof showLengthWithUnit>[0]) => showLengthWithUnit(of, 'mm', 'typed');

test('every layer is as thick as it is and lifted off what it lies on, side by side ones alike', () => {
  const thick = { ...paper('thick', []), thickness: mm(0.4) };
  const layout = layoutOf({
    units: 'mm',
    base: [mm(148), mm(105)],
    papers: [thick],
    parts: [
      part('left', { size: [mm(60), mm(80)], place: { left: mm(10) }, papers: ['thick'] }),
      part('right', { size: [mm(60), mm(80)], place: { right: mm(10) }, papers: ['thick'] }),
      part('tag', { size: [mm(100), mm(20)], adhere: 'raised', foam: mm(2), papers: ['thick'] }),
    ],
  });
  const apart = pileApart({ layout, arrangement: arrange(layout), typeface: plainTypeface, length }, 480);
  const papers = drawnMarks(apart.marks).flatMap((one) =>
    one.mark.kind === 'path' && one.mark.fill !== undefined && 'hatch' in one.mark.fill
      ? [frameOf(cornersOf(one, plainTypeface))]
      : [],
  );
  expect(papers).toHaveLength(3);
  const [left, right, tag] = papers as [
    (typeof papers)[number],
    (typeof papers)[number],
    (typeof papers)[number],
  ];
  for (const { heightPt } of papers) expect(heightPt).toBeCloseTo(pointsOf(mm(0.4)) * apart.thickened, 6);
  expect(left.yPt).toBeCloseTo(right.yPt, 6);
  // As far apart as foam is high, and the lift more.
  expect(left.yPt - (tag.yPt + tag.heightPt)).toBeCloseTo(pointsOf(mm(2)) * apart.thickened + 16, 6);
  expect(wordsIn(apart.marks)).toContain('0.4 mm on foam of 2 mm');
});

test('nothing stands outside it, whatever things are called', () => {
  for (const layout of [tideSet(), hostileSet()]) {
    const apart = pileApart({ layout, arrangement: arrange(layout), typeface: plainTypeface, length }, 480);
    for (const one of drawnMarks(apart.marks)) {
      const { xPt, yPt, widthPt, heightPt } = frameOf(cornersOf(one, plainTypeface));
      expect(xPt).toBeGreaterThan(-1);
      expect(yPt).toBeGreaterThan(-1);
      expect(xPt + widthPt).toBeLessThan(apart.widthPt + 1);
      expect(yPt + heightPt).toBeLessThan(apart.heightPt + 1);
    }
  }
});
