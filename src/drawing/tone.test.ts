import fc from 'fast-check';
import { expect, test } from 'vitest';
import { toneOn } from './index.ts';

/** WCAG 2.2's contrast, over a table of what the 256 steps of a channel come to. */
function contrast(one: string, other: string): number {
  const light = Array.from({ length: 256 }, (_, step) =>
    step <= 10 ? step / 255 / 12.92 : ((step / 255 + 0.055) / 1.055) ** 2.4,
  );
  const luminance = (colour: string) => {
    const number = Number(`0x${colour.slice(1)}`);
    return (
      0.2126 * light[number >> 16]! + 0.7152 * light[(number >> 8) & 255]! + 0.0722 * light[number & 255]!
    );
  };
  const both = [luminance(one), luminance(other)];
  return (Math.max(...both) + 0.05) / (Math.min(...both) + 0.05);
}

test('the tone stands out from every ground by 3:1, darker on light ones and lighter on dark ones', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 0xffffff }), (number) => {
      const ground = `#${number.toString(16).padStart(6, '0')}`;
      const tone = toneOn(ground);
      expect(tone).toMatch(/^#[0-9a-f]{6}$/);
      expect(contrast(tone, ground)).toBeGreaterThanOrEqual(3);
      const [toBlack, toWhite] = [contrast(ground, '#000000'), contrast(ground, '#ffffff')];
      // Where black and white are as good as equally far, either will do.
      if (Math.abs(toBlack - toWhite) < 0.01) return;
      expect(contrast(tone, '#000000') < toBlack).toBe(toBlack > toWhite);
    }),
    { numRuns: 3_000 },
  );
});

test('a tone is no stronger than it has to be, and keeps the hue of a light ground', () => {
  expect(contrast(toneOn('#efd394'), '#efd394')).toBeLessThan(3.2);
  const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(toneOn('#efd394').slice(at, at + 2), 16));
  expect(red! / blue!).toBeCloseTo(0xef / 0x94, 1);
  expect(red! / green!).toBeCloseTo(0xef / 0xd3, 1);
});
