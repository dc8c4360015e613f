import { describe, expect, test } from 'vitest';
import { type Block, besideOf, type Row, stackOf } from './block.ts';
import { setFigure } from './figure.ts';
import { setList } from './list.ts';
import type { Mark, TextMark } from './mark.ts';
import { letterFormat } from './page.ts';
import { runningLines } from './runningLines.ts';
import { plainTypeface } from './testing/plainTypeface.ts';
import { textStyles } from './textStyle.ts';

const style = textStyles(10).body;

interface Found {
  readonly mark: TextMark;
  readonly xPt: number;
  readonly yPt: number;
  readonly roles: readonly string[];
}

/** All text with where it stands and in which roles, in reading order. */
function found(marks: readonly Mark[], xPt = 0, yPt = 0, roles: readonly string[] = []): readonly Found[] {
  return marks.flatMap((mark): readonly Found[] => {
    if (mark.kind === 'text') return [{ mark, xPt: xPt + mark.at.xPt, yPt: yPt + mark.at.yPt, roles }];
    if (mark.kind !== 'group') return [];
    const inner = mark.role === undefined ? roles : [...roles, mark.role];
    return found(mark.marks, xPt + (mark.move?.xPt ?? 0), yPt + (mark.move?.yPt ?? 0), inner);
  });
}

const row = (text: string, heightPt: number): Row => ({
  heightPt,
  marks: [
    {
      kind: 'text',
      at: { xPt: 0, yPt: 0 },
      text,
      sizePt: 8,
      weight: 'regular',
      colour: '#000000',
      anchor: 'start',
    },
  ],
});

describe('stackOf', () => {
  test('puts blocks under one another with the larger white between, and keeps their roles', () => {
    const blocks: readonly Block[] = [
      { role: 'heading', content: [row('a', 20)], beforePt: 99, afterPt: 4 },
      { role: 'paragraph', content: [row('b', 10), row('c', 10)], beforePt: 7, afterPt: 99 },
    ];
    const stack = stackOf(blocks);
    expect(stack.heightPt).toBe(47);
    expect(found(stack.marks).map(({ mark, yPt, roles }) => [mark.text, yPt, ...roles])).toEqual([
      ['a', 0, 'heading'],
      ['b', 27, 'paragraph'],
      ['c', 37, 'paragraph'],
    ]);
  });
});

describe('besideOf', () => {
  test('is as high as the highest and keeps the order in which it is read', () => {
    const both = besideOf([
      { xPt: 0, row: row('a', 30) },
      { xPt: 120, row: row('b', 50) },
    ]);
    expect(both.heightPt).toBe(50);
    expect(found(both.marks).map(({ mark, xPt, yPt }) => [mark.text, xPt, yPt])).toEqual([
      ['a', 0, 0],
      ['b', 120, 0],
    ]);
  });
});

describe('setList', () => {
  const items = ['Cut the mat.', 'Tear the panel along its right edge and glue it down.'];
  const list = (first: number) =>
    stackOf([setList({ items, labels: 'numbers', first, widthPt: 150, style, typeface: plainTypeface })]);

  test('numbers its items, from the first number given', () => {
    const labels = found(list(9).marks).filter(({ roles }) => roles.at(-1) === 'label');
    expect(labels.map(({ mark }) => mark.text)).toEqual(['9.', '10.']);
    expect(labels.every(({ roles }) => roles.join(' ') === 'list listItem label')).toBe(true);
  });

  test('hangs its labels: numbers end where the widest ends, words begin in one column', () => {
    const all = found(list(9).marks);
    const [labels, words] = [true, false].map((isLabel) =>
      all.filter(({ roles }) => (roles.at(-1) === 'label') === isLabel),
    );
    expect(new Set(labels!.map(({ mark, xPt }) => `${mark.anchor} ${xPt}`)).size).toBe(1);
    const [column, ...others] = new Set(words!.map(({ xPt }) => xPt));
    expect(others).toEqual([]);
    expect(column!).toBeGreaterThan(labels![0]!.xPt);
    // A label stands on the baseline of the first line of its item.
    expect(labels!.map(({ yPt }) => yPt).every((yPt) => words!.some((word) => word.yPt === yPt))).toBe(true);
  });

  test('holds every word of its items within the width', () => {
    const words = found(list(1).marks).filter(({ roles }) => roles.at(-1) !== 'label');
    expect(words.map(({ mark }) => mark.text).join('')).toBe(items.join(''));
    for (const { mark, xPt } of words) {
      const ink = plainTypeface.widthPt(mark.text.trimEnd(), mark.sizePt, mark.weight);
      expect(xPt + ink).toBeLessThanOrEqual(150 + 1e-9);
    }
  });
});

describe('setFigure', () => {
  test('says what it shows and keeps its caption with it', () => {
    const caption = { words: 'The front', widthPt: 100, style, typeface: plainTypeface };
    const figure = setFigure({ marks: [], heightPt: 40, says: 'A card front', caption });
    expect(figure.together).toBe(true);
    expect(figure.content[0]).toMatchObject({ role: 'figure', says: 'A card front' });
    expect(figure.content[1]).toMatchObject({ role: 'paragraph' });
  });
});

describe('runningLines', () => {
  const lines = runningLines({
    format: letterFormat,
    style,
    head: { left: 'Lantern walk', right: 'Cutting' },
    foot: 'Print at actual size',
    folio: ({ folio, count }) => `${folio} of ${count}`,
  });
  const textsOf = (folio: number) => found(lines({ folio, count: 3 })).map(({ mark }) => mark.text);

  test('give every page its folio, and all but the first a head', () => {
    expect(textsOf(1)).toEqual(['Print at actual size', '1 of 3']);
    expect(textsOf(2)).toEqual(['Lantern walk', 'Cutting', 'Print at actual size', '2 of 3']);
  });

  test('stand in the margins and are decoration', () => {
    const { marginPt, heightPt } = letterFormat;
    for (const { yPt, roles } of found(lines({ folio: 2, count: 3 }))) {
      expect(yPt < marginPt.top || yPt - style.sizePt > heightPt - marginPt.bottom).toBe(true);
      expect(roles).toEqual([]);
    }
  });
});
