import { assert } from '../problem/index.ts';
import { black } from './ink.ts';
import type { GroupMark, Mark, Point } from './mark.ts';

/**
 * Tally strokes as on a workshop slate, each fifth across the four before it, and how far they reach to the right.
 *
 * `at` is the bottom left corner, on the baseline of words beside it.
 */
export function tallyStrokes(
  at: Point,
  count: number,
  options: { readonly heightPt?: number; readonly colour?: string } = {},
): { readonly marks: GroupMark; readonly widthPt: number } {
  assert(Number.isSafeInteger(count) && count >= 0, 'Tally strokes count whole things', { count });
  const height = options.heightPt ?? 8;
  const step = height * 0.32;
  const stroke = { colour: options.colour ?? black, widthPt: height * 0.09 };
  const fiveWidth = 3 * step + height * 0.3;
  const marks: Mark[] = [];
  for (let index = 0; index < count; index += 1) {
    const left = at.xPt + Math.floor(index / 5) * (fiveWidth + step) + height * 0.15;
    const place = index % 5;
    const [from, to] =
      place === 4
        ? [
            { xPt: left - height * 0.15, yPt: at.yPt - height * 0.22 },
            { xPt: left + 3 * step + height * 0.15, yPt: at.yPt - height * 0.78 },
          ]
        : [
            { xPt: left + place * step, yPt: at.yPt },
            { xPt: left + place * step, yPt: at.yPt - height },
          ];
    marks.push({ kind: 'line', from, to, stroke });
  }
  const [fives, ones] = [Math.floor(count / 5), count % 5];
  const widthPt =
    fives * fiveWidth +
    (ones > 0 ? (ones - 1) * step + height * 0.3 : 0) +
    (fives - (ones > 0 ? 0 : 1)) * step;
  return { marks: { kind: 'group', marks }, widthPt: count === 0 ? 0 : widthPt };
}
