import { expect, test } from 'vitest';
import { frameOf, ringsOf } from '../drawing/index.ts';
import { arrange } from '../layout/index.ts';
import { inch, layoutOf, paper, part } from '../layout/testing/build.ts';
import { pointsOf } from '../measure/index.ts';
import { drawnFace } from './face.ts';
import { tideSet } from './testing/sets.ts';

const layout = tideSet();
const arrangement = arrange(layout);

test.each(['base', 'inside', 'back'] as const)('each piece of the %s can be taken up by itself', (face) => {
  const scale = 0.5;
  const { ground, pieces, frame } = drawnFace({ layout, arrangement, card: 0, face, scale });
  expect(ground.frame).toEqual({ xPt: 0, yPt: 0, widthPt: 306 * scale, heightPt: 396 * scale });
  const there = arrangement.parts.filter((part) => part.face === face);
  expect(pieces.map(({ part, piece }) => [part, piece])).toEqual(
    there.flatMap(({ part, pieces: own }) => own.map((_, piece) => [part.id, piece])),
  );
  for (const [index, { box }] of there.flatMap((part) => part.pieces).entries()) {
    const drawn = pieces[index]!;
    expect(drawn.frame.xPt).toBeCloseTo(pointsOf(box!.left) * scale, 9);
    expect(drawn.frame.widthPt).toBeCloseTo(pointsOf(box!.width) * scale, 9);
    // The outline keeps to the frame, but for a curve's hair and the wandering of a tear.
    const outline = frameOf(ringsOf(drawn.path).flat());
    expect(outline.xPt).toBeGreaterThanOrEqual(drawn.frame.xPt - 0.05);
    expect(outline.widthPt).toBeLessThanOrEqual(drawn.frame.widthPt + 0.1);
  }
  expect(frame).toEqual(ground.frame);
});

test('what hangs over is within the frame of the face', () => {
  const over = {
    ...layout,
    parts: layout.parts.map((part) =>
      part.id === 'strip'
        ? { ...part, extent: { by: 'size', width: layout.base.size.height, height: null } as const }
        : part,
    ),
  };
  const { frame, ground } = drawnFace({
    layout: over,
    arrangement: arrange(over),
    card: 0,
    face: 'base',
    scale: 1,
  });
  // 5 1/2 in centred on 4 1/4: 5/8 in over on either side.
  expect(frame.xPt).toBeCloseTo(-45, 6);
  expect(frame.widthPt).toBeCloseTo(ground.frame.widthPt + 90, 6);
});

test('through vellum the outlines of what lies below it are seen, in broken lines; through paper nothing is', () => {
  const marksOf = (seeThrough: boolean) => {
    const band = { ...paper('band', []), seeThrough };
    const misty = layoutOf({
      base: [inch('4'), inch('4')],
      papers: [band],
      parts: [
        part('moon', { diameter: inch('2') }),
        part('veil', { size: [inch('4'), inch('1')], papers: ['band'] }),
      ],
    });
    const request = { layout: misty, arrangement: arrange(misty), card: 0, face: 'base', scale: 1 } as const;
    return drawnFace(request).pieces.map(({ mark }) => mark);
  };
  const [, veil] = marksOf(true);
  if (veil?.kind !== 'group') throw new Error('expected what is seen through');
  const dashed = veil.marks.slice(1);
  expect(dashed).toHaveLength(1);
  for (const mark of dashed) {
    if (mark.kind !== 'path') throw new Error('expected outlines');
    expect(mark.stroke?.dashPt).toEqual([2, 2]);
    // The slice of the moon that lies under the band: from 1 to 3 in across and no higher than the band.
    const xs = mark.path.flatMap((step) => ('xPt' in step ? [step.xPt / 72] : []));
    const ys = mark.path.flatMap((step) => ('yPt' in step ? [step.yPt / 72] : []));
    expect([Math.min(...xs), Math.max(...xs)].map((x) => Number(x.toFixed(3)))).toEqual([1, 3]);
    expect([Math.min(...ys), Math.max(...ys)]).toEqual([1.5, 2.5]);
  }
  expect(marksOf(false).map(({ kind }) => kind)).toEqual(['path', 'path']);
});

test('a gate has its slit on the front, and its doors beside the inside when it is opened', () => {
  const gate = (face: 'base' | 'inside' | 'back') => {
    const layout = layoutOf({ base: [inch('4 1/4'), inch('5 1/2')], fold: 'gate' });
    return drawnFace({ layout, arrangement: arrange(layout), card: 0, face, scale: 1 });
  };
  const front = gate('base').ground.mark;
  expect(front.kind === 'group' ? front.marks.at(-1) : null).toMatchObject({
    kind: 'line',
    from: { xPt: 2.125 * 72, yPt: 0 },
    to: { xPt: 2.125 * 72, yPt: 5.5 * 72 },
  });
  expect(gate('back').ground.mark.kind).toBe('path');
  expect(gate('base').beside).toEqual([]);
  // The inside lies at the origin; the doors of 2 1/8 in to its left and right.
  expect(gate('inside').beside.map(({ frame: { xPt, widthPt } }) => [xPt / 72, widthPt / 72])).toEqual([
    [-2.125, 2.125],
    [4.25, 2.125],
  ]);
});

test('a roll that opens upwards lies open from its front down, the panels within shorter', () => {
  const layout = layoutOf({ base: [inch('4'), inch('4')], fold: 'roll', opens: 'upwards' });
  const { beside } = drawnFace({ layout, arrangement: arrange(layout), card: 0, face: 'inside', scale: 1 });
  expect(beside.map(({ frame: { yPt, heightPt } }) => [yPt / 72, heightPt / 72])).toEqual([
    [-4, 4],
    [4, 4 - 3 / 32],
    [8 - 3 / 32, 4 - 5 / 32],
  ]);
});
