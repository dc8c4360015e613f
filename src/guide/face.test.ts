import { expect, test } from 'vitest';
import { frameOf, ringsOf } from '../drawing/index.ts';
import { arrange } from '../layout/index.ts';
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
