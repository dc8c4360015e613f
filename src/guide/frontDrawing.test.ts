import { expect, test } from 'vitest';
import { frameOf, ringsOf, toneOn } from '../drawing/index.ts';
import { plainTypeface } from '../drawing/testing/plainTypeface.ts';
import { arrange } from '../layout/index.ts';
import { pointsOf } from '../measure/index.ts';
import { frontDrawing } from './frontDrawing.ts';
import { tideSet } from './testing/sets.ts';
import { cornersOf, drawnMarks, wordsIn } from './testing/walk.ts';

const layout = tideSet();
const arrangement = arrange(layout);

test('the page is the front, at true size', () => {
  const page = frontDrawing(layout, arrangement, 0, null);
  // 4 1/4 x 5 1/2 in at 72 points to the inch.
  expect([page.widthPt, page.heightPt]).toEqual([306, 396]);
});

test('every part of the front lies where it was arranged, in the order of the pile', () => {
  const drawn = drawnMarks(frontDrawing(layout, arrangement, 0, null).marks).flatMap(({ mark }) =>
    mark.kind === 'path' ? [frameOf(ringsOf(mark.path).flat())] : [],
  );
  const boxes = arrangement.parts.filter(({ face }) => face === 'base').flatMap(({ pieces }) => pieces);
  expect(drawn).toHaveLength(1 + boxes.length);
  for (const [index, { box }] of boxes.entries()) {
    const frame = drawn[index + 1]!;
    expect(frame.xPt).toBeCloseTo(pointsOf(box!.left), 1);
    expect(frame.yPt).toBeCloseTo(pointsOf(box!.top), 1);
    expect(frame.heightPt).toBeCloseTo(pointsOf(box!.height), 1);
    // A torn edge wanders inside the seen size; the panel is torn at its right.
    expect(frame.widthPt).toBeLessThanOrEqual(pointsOf(box!.width) + 0.1);
    expect(frame.widthPt).toBeGreaterThan(pointsOf(box!.width) - 6);
  }
});

test('papers are dealt to the cards in turn', () => {
  const hatches = [0, 1, 2].map((card) =>
    drawnMarks(frontDrawing(layout, arrangement, card, null).marks).map(({ mark }) =>
      mark.kind === 'path' && mark.fill !== undefined && 'hatch' in mark.fill
        ? mark.fill.hatch.pattern
        : null,
    ),
  );
  expect(hatches[0]).toEqual(hatches[2]);
  expect(hatches[0]![2]).not.toBe(hatches[1]![2]);
  expect(hatches[0]![1]).toBe(hatches[1]![1]);
});

test('with dimensions the page holds them all, and they add up to the card', () => {
  const page = frontDrawing(layout, arrangement, 0, { units: 'in', typeface: plainTypeface });
  for (const drawn of drawnMarks(page.marks)) {
    for (const { xPt, yPt } of cornersOf(drawn, plainTypeface)) {
      expect(xPt).toBeGreaterThan(-0.01);
      expect(yPt).toBeGreaterThan(-0.01);
      expect(xPt).toBeLessThan(page.widthPt + 0.01);
      expect(yPt).toBeLessThan(page.heightPt + 0.01);
    }
  }
  expect(wordsIn(page.marks)).toMatch(/4 1⁄4 in/);
  expect(wordsIn(page.marks)).toMatch(/5 1⁄2 in/);
});

test('in colour each paper lies under its own hatch in a tone of it, on the side that is seen', () => {
  const papers = new Map(
    [...layout.papers].map(([id, paper]) => [id, { ...paper, ...coloursOf[id as keyof typeof coloursOf] }]),
  );
  const turned = layout.parts.map((part) =>
    part.id === 'strip' ? { ...part, side: 'back' as const } : part,
  );
  const coloured = { ...layout, papers, parts: turned };
  const fills = (manner: 'printed' | 'coloured', card = 0) =>
    drawnMarks(frontDrawing(coloured, arrange(coloured), card, null, manner).marks).map(({ mark }) =>
      mark.kind === 'path' && mark.fill !== undefined && 'hatch' in mark.fill ? mark.fill.hatch : null,
    );
  // Base, mat, panel (dealt in turn), moon (bought), strip (the other side of sand).
  expect(fills('coloured').map((hatch) => hatch?.ground)).toEqual([
    '#e8d9b5',
    '#e8d9b5',
    '#2a4a66',
    undefined,
    '#c46a4a',
  ]);
  expect(fills('coloured', 1)[2]?.ground).toBe('#ffffff');
  expect(fills('coloured').map((hatch) => hatch?.pattern)).toEqual(
    fills('printed').map((hatch) => hatch?.pattern),
  );
  expect(new Set(fills('printed').map((hatch) => hatch?.ink))).toEqual(new Set(['#000000', undefined]));
  for (const hatch of fills('coloured')) if (hatch !== null) expect(hatch.ink).toBe(toneOn(hatch.ground));
});

const coloursOf = {
  sand: { colour: '#e8d9b5', back: { name: 'Brick', up: 'any', colour: '#c46a4a' } },
  tide: { colour: '#2a4a66' },
  shell: {},
} as const;
