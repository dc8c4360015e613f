import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Edge, type Length, lengthOfTicks, minus, sum, times, zero } from '../measure/index.ts';
import { arrange } from './arrange.ts';
import { beyondAlong, beyondSeen } from './beyond.ts';
import { dimensionsOf, withLengths } from './dimension.ts';
import { inch, layoutOf, mm, part } from './testing/build.ts';

describe('what is cut and not seen', () => {
  test('a band of 159 mm goes round a mat of 129 mm and 15 mm behind at each end', () => {
    const layout = layoutOf({
      units: 'mm',
      base: [mm(135), mm(135)],
      parts: [
        part('mat', { inset: mm(3) }),
        part('band', {
          on: 'mat',
          size: [mm(159), mm(20)],
          tuck: { left: mm(15), right: mm(15) },
        }),
      ],
    });
    const { cut, seen, pieces } = arrange(layout).parts[1]!;
    expect([cut, seen]).toEqual([
      { width: mm(159), height: mm(20) },
      { width: mm(129), height: mm(20) },
    ]);
    expect(pieces[0]!.borders).toMatchObject({ left: zero, right: zero });
  });

  test('a die leaves its margin round a circle, which is cut as a larger square', () => {
    const layout = layoutOf({
      base: [inch('4 1/4'), inch('5 1/2')],
      parts: [part('moon', { diameter: inch('1 1/2'), margin: inch('1/8'), dieCut: true })],
    });
    const { cut, seen } = arrange(layout).parts[0]!;
    expect([cut!.width, seen!.width]).toEqual([inch('1 3/4'), inch('1 1/2')]);
  });

  test('what fills its room is cut larger by all three', () => {
    const layout = layoutOf({
      base: [inch('4'), inch('4')],
      parts: [
        part('strip', {
          size: [null, inch('1')],
          place: { left: zero, right: zero },
          torn: { left: inch('1/4') },
          tuck: { right: inch('1/2') },
          margin: inch('1/8'),
        }),
      ],
    });
    expect(arrange(layout).parts[0]!.cut!.width).toBe(inch('5'));
  });

  test('law: cut less seen is the same on both ways to it, and follows when it is drawn anew', () => {
    const length = fc.integer({ min: 0, max: 20_000 }).map(lengthOfTicks);
    const edges = fc.record({ left: length, right: length, top: length, bottom: length });
    fc.assert(
      fc.property(edges, edges, length, (torn, tuck, margin) => {
        const one = part('one', { size: [inch('4'), inch('4')], torn, tuck, margin });
        const layout = layoutOf({ base: [inch('6'), inch('6')], parts: [one] });
        const { cut, seen } = arrange(layout).parts[0]!;
        const at = (edge: Edge): Length => sum(torn[edge], tuck[edge], margin);
        expect(beyondSeen(one).top).toBe(at('top'));
        expect(minus(cut!.width, seen!.width)).toBe(sum(at('left'), at('right')));
        expect(minus(cut!.height, seen!.height)).toBe(beyondAlong(one, 'height'));

        const doubled = new Map(
          dimensionsOf(layout).flatMap(({ kind, path, length: old }) =>
            kind === 'beyond' ? [[path, times(old, 2)] as const] : [],
          ),
        );
        const anew = withLengths(layout, doubled).parts[0]!;
        expect(beyondAlong(anew, 'width')).toBe(times(beyondAlong(one, 'width'), 2));
      }),
    );
  });
});
