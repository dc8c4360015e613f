import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { TextMark } from './mark.ts';
import { type Run, setParagraph, type Words, wordsWidthPt } from './paragraph.ts';
import { plainTypeface } from './testing/plainTypeface.ts';
import { textStyles } from './textStyle.ts';

const style = textStyles(10).body;
const set = (words: Words, widthPt: number, align: 'start' | 'middle' | 'end' = 'start') =>
  setParagraph({ words, widthPt, style, typeface: plainTypeface, align });
const marksOf = (words: Words, widthPt: number, align: 'start' | 'middle' | 'end' = 'start') =>
  set(words, widthPt, align).content.map((row) => row.marks as readonly TextMark[]);
const linesOf = (words: Words, widthPt: number) =>
  marksOf(words, widthPt).map((line) => line.map((mark) => mark.text).join(''));

/** Words as people write them, with what is hard to break. */
const texts = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        ' ',
        '  ',
        '\u00a0',
        '\n',
        '2 15\u204416 in',
        '9\u204464',
        'half-inch',
        '5-1/4',
        '\u2013',
      ),
      fc.string({ maxLength: 12, unit: 'grapheme' }),
      fc.string({ minLength: 20, maxLength: 60, unit: fc.constantFrom('a', 'b', 'W') }),
    ),
    { maxLength: 30 },
  )
  .map((parts) => parts.join(''));
const runs = fc.array(
  fc.record({ text: texts, weight: fc.constantFrom('regular' as const, 'semibold' as const) }),
  { maxLength: 4 },
);

describe('setParagraph', () => {
  test('breaks at spaces and keeps them at the end of the line', () => {
    expect(linesOf('one two three', wordsWidthPt('one two', style, plainTypeface))).toEqual([
      'one two ',
      'three',
    ]);
  });

  test('never breaks at a no-break space', () => {
    expect(linesOf('cut at 2\u00a01\u20444', wordsWidthPt('2\u00a01\u20444', style, plainTypeface))).toEqual([
      'cut ',
      'at ',
      '2\u00a01\u20444',
    ]);
  });

  test('never breaks a fraction, even in a word that must be broken', () => {
    const width = wordsWidthPt('15\u204416', style, plainTypeface);
    for (const line of linesOf('x15\u204416x15\u204416', width)) {
      expect(line.replaceAll('15\u204416', '')).not.toMatch(/[\d\u2044]/);
    }
  });

  test('breaks after a hyphen between letters but not in 5-1/4', () => {
    expect(linesOf('half-inch', wordsWidthPt('half-i', style, plainTypeface))).toEqual(['half-', 'inch']);
    expect(linesOf('to 5-1/4', wordsWidthPt('5-1/4', style, plainTypeface))).toEqual(['to ', '5-1/4']);
  });

  test('keeps an accent with its letter when it breaks a long word', () => {
    const word = 'e\u0301'.repeat(30);
    for (const line of linesOf(word, 40)) expect(line).toMatch(/^(e\u0301)+$/u);
  });

  test('breaks at a new line', () => {
    expect(linesOf('one\ntwo', 400)).toEqual(['one ', 'two']);
    expect(linesOf('', 400)).toHaveLength(1);
  });

  test('lets no line be wider than asked and loses no character', () => {
    fc.assert(
      fc.property(runs, fc.integer({ min: 200, max: 500 }), (words, widthPt) => {
        const whole = words.map((run) => run.text).join('');
        const lines = marksOf(words, widthPt);
        expect(lines.flatMap((line) => line.map((mark) => mark.text)).join('')).toBe(
          whole.replaceAll('\n', ' '),
        );
        for (const line of lines) {
          const text = line.map((mark) => mark.text).join('');
          const ink = text.replace(/[ \t\u2000-\u2006\u2008-\u200b]+$/u, '');
          let left = ink.length;
          const drawn = line.reduce((total, mark) => {
            const part = mark.text.slice(0, Math.max(0, left));
            left -= mark.text.length;
            return total + plainTypeface.widthPt(part, mark.sizePt, mark.weight);
          }, 0);
          expect(drawn).toBeLessThanOrEqual(widthPt + 1e-9);
        }
      }),
    );
  });

  test('sets as few lines as the widths allow: the first word of a line would not fit on the line before', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-z]{1,9}$/), { minLength: 1, maxLength: 40 }), (words) => {
        const widthPt = 120;
        const lines = linesOf(words.join(' '), widthPt);
        for (let index = 1; index < lines.length; index += 1) {
          const longer = lines[index - 1]! + lines[index]!.split(' ')[0]!;
          expect(plainTypeface.widthPt(longer, style.sizePt, 'regular')).toBeGreaterThan(widthPt);
        }
      }),
    );
  });

  test('puts runs side by side, each where the one before ends', () => {
    const words: readonly Run[] = [
      { text: 'Meadow, ', weight: 'semibold' },
      { text: 'two', colour: '#a3211f' },
    ];
    const [line] = marksOf(words, 400);
    expect(line!.map(({ text, weight, colour }) => [text, weight, colour])).toEqual([
      ['Meadow, ', 'semibold', '#000000'],
      ['two', 'regular', '#a3211f'],
    ]);
    expect(line![1]!.at.xPt).toBeCloseTo(plainTypeface.widthPt('Meadow, ', style.sizePt, 'semibold'), 9);
  });

  test('sets to the end and to the middle by what is seen of the line', () => {
    const width = plainTypeface.widthPt('12', style.sizePt, 'regular');
    expect(marksOf('12 ', 100, 'end')[0]![0]!.at.xPt).toBeCloseTo(100 - width, 9);
    expect(marksOf('12 ', 100, 'middle')[0]![0]!.at.xPt).toBeCloseTo((100 - width) / 2, 9);
  });

  test('is as high as its lines', () => {
    const paragraph = set('one two three', 40);
    expect(paragraph.heightPt).toBe(paragraph.content.length * style.leadingPt);
  });
});
