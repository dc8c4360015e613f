import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Block, Row } from './block.ts';
import type { GroupMark, LineMark, Mark, TextMark } from './mark.ts';
import { wordsWidthPt } from './paragraph.ts';
import { setTable, type TableColumn } from './table.ts';
import { plainTypeface } from './testing/plainTypeface.ts';
import { textStyles } from './textStyle.ts';

const style = textStyles(10).table;
const set = (
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
  widthPt: number,
  full = false,
) => setTable({ columns, rows, widthPt, full, style, typeface: plainTypeface });

interface CellFound {
  readonly role: string;
  readonly heads: string | undefined;
  readonly xPt: number;
  readonly lines: readonly TextMark[];
}

/** The cells of each row, the head first, with where each cell begins. */
function cellsOf(table: Block): readonly (readonly CellFound[])[] {
  return rowsOf(table.content).map((row) => {
    const found: CellFound[] = [];
    const visit = (mark: Mark, xPt: number): void => {
      if (mark.kind !== 'group') return;
      const left = xPt + (mark.move?.xPt ?? 0);
      if (mark.role === 'cell' || mark.role === 'headerCell') {
        found.push({ role: mark.role, heads: mark.heads, xPt: left, lines: textsOf(mark) });
      } else {
        for (const inner of mark.marks) visit(inner, left);
      }
    };
    for (const mark of row.marks) visit(mark, 0);
    return found;
  });
}

function rowsOf(content: Block['content']): readonly Row[] {
  return content.flatMap((item) => ('content' in item ? rowsOf(item.content) : [item]));
}

function textsOf(group: GroupMark): readonly TextMark[] {
  return group.marks.flatMap((mark) => {
    if (mark.kind === 'text') return [mark];
    return mark.kind === 'group' ? textsOf(mark) : [];
  });
}

function rulesOf(row: Row): readonly LineMark[] {
  return row.marks.filter((mark): mark is LineMark => mark.kind === 'line');
}

const plain: readonly TableColumn[] = [
  { head: 'Part' },
  { head: 'Cut size', align: 'end' },
  { head: 'Notes' },
];
const long = 'stands upright and is torn along its right edge before it is glued';

describe('setTable', () => {
  test('heads columns and rows', () => {
    const [head, first] = cellsOf(set(plain, [['Mat', '4 x 5', '']], 500));
    expect(head!.map(({ role, heads }) => [role, heads])).toEqual(Array(3).fill(['headerCell', 'column']));
    expect(first!.map(({ role, heads }) => [role, heads])).toEqual([
      ['headerCell', 'row'],
      ['cell', undefined],
      ['cell', undefined],
    ]);
  });

  test('has a heavy rule over it, a narrow one under its head, one at its foot, and no other', () => {
    const rows = rowsOf(
      set(
        plain,
        [
          ['Mat', '4 x 5', ''],
          ['Panel', '2 x 3', ''],
        ],
        500,
      ).content,
    );
    expect(rows.map((row) => rulesOf(row).length)).toEqual([2, 0, 1]);
    const [over, under] = rulesOf(rows[0]!);
    expect(over!.stroke.widthPt).toBeGreaterThan(under!.stroke.widthPt);
    for (const rule of rows.flatMap(rulesOf)) expect(rule.from.yPt).toBe(rule.to.yPt);
  });

  test('breaks the words of no short column while a long one has room to give', () => {
    const rows = cellsOf(set(plain, [['Sunrise panel', '2 1\u20444 x 5', long]], 220));
    expect(rows[1]!.map(({ lines }) => lines.length).slice(0, 2)).toEqual([1, 1]);
    expect(rows[1]![2]!.lines.length).toBeGreaterThan(1);
  });

  test('sets numbers flush at the end of their column', () => {
    const rows = cellsOf(
      set(
        plain,
        [
          ['Mat', '4', ''],
          ['Mat', '12 x 10', ''],
        ],
        500,
      ),
    );
    const ends = rows.map((row) => {
      const [line] = row[1]!.lines;
      return row[1]!.xPt + line!.at.xPt + plainTypeface.widthPt(line!.text, line!.sizePt, line!.weight);
    });
    for (const end of ends) expect(end).toBeCloseTo(ends[0]!, 6);
  });

  test('is no wider than its words unless it is to be full', () => {
    const reach = (full: boolean) =>
      rulesOf(rowsOf(set(plain, [['Mat', '4', 'x']], 500, full).content)[0]!)[0]!.to.xPt;
    expect(reach(false)).toBeLessThan(300);
    expect(reach(true)).toBeCloseTo(500, 6);
  });

  test('keeps to a column width that is given', () => {
    const [head] = cellsOf(set([{ head: 'A', widthPt: 90 }, { head: 'B' }], [['a', 'b']], 500));
    expect(head![1]!.xPt - head![0]!.xPt).toBeGreaterThan(90);
    expect(head![1]!.xPt - head![0]!.xPt).toBeLessThan(120);
  });

  test('lets no words reach into the next column or past the table, while single words fit', () => {
    const word = fc.stringMatching(/^[a-z]{1,6}$/);
    const cell = fc.array(word, { maxLength: 12 }).map((words) => words.join(' '));
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 6 }), (rows) => {
        const widthPt = 320;
        for (const row of cellsOf(set(plain, rows, widthPt))) {
          row.forEach(({ xPt, lines }, index) => {
            const next = row[index + 1]?.xPt ?? widthPt;
            for (const line of lines) {
              const ink = plainTypeface.widthPt(line.text.trimEnd(), line.sizePt, line.weight);
              expect(line.at.xPt).toBeGreaterThanOrEqual(-1e-9);
              expect(xPt + line.at.xPt + ink).toBeLessThanOrEqual(next + 1e-6);
            }
          });
        }
      }),
    );
  });

  test('wants a cell for each column', () => {
    expect(() => set(plain, [['Mat']], 500)).toThrow('A row has a cell for each column');
  });

  test('measures a head in its own weight', () => {
    const head = wordsWidthPt('Cut size', { ...style, weight: 'semibold' }, plainTypeface);
    const [cells] = cellsOf(set(plain, [['a', 'b', 'c']], 500));
    expect(cells![2]!.xPt - cells![1]!.xPt).toBeGreaterThan(head);
  });
});
