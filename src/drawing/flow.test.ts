import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Block, Row } from './block.ts';
import { flow } from './flow.ts';
import type { GroupMark, Mark, Role, TextMark } from './mark.ts';
import type { Page, PageFormat } from './page.ts';

/** A page with room for 100 pt between margins of 10. */
const format: PageFormat = {
  widthPt: 100,
  heightPt: 120,
  marginPt: { top: 10, right: 10, bottom: 10, left: 10 },
};

const row = (name: string, heightPt = 10): Row => ({
  heightPt,
  marks: [
    {
      kind: 'text',
      at: { xPt: 0, yPt: 0 },
      text: name,
      sizePt: 8,
      weight: 'regular',
      colour: '#000000',
      anchor: 'start',
    },
  ],
});
const rows = (name: string, count: number): readonly Row[] =>
  Array.from({ length: count }, (_, index) => row(`${name}${index + 1}`));
const paragraph = (name: string, count: number, more: Partial<Block> = {}): Block => ({
  role: 'paragraph',
  content: rows(name, count),
  ...more,
});

interface Found {
  readonly text: string;
  readonly yPt: number;
  readonly roles: readonly string[];
}

/** What stands on a page, with where and in which roles. */
function found(page: Page): readonly Found[] {
  const all: Found[] = [];
  const visit = (mark: Mark, xPt: number, yPt: number, roles: readonly string[]): void => {
    if (mark.kind === 'text')
      all.push({ text: (mark satisfies TextMark).text, yPt: yPt + mark.at.yPt, roles });
    if (mark.kind !== 'group') return;
    const group: GroupMark = mark;
    const inner =
      group.role === undefined ? roles : [...roles, group.role + (group.continues === true ? '...' : '')];
    for (const child of group.marks) {
      visit(child, xPt + (group.move?.xPt ?? 0), yPt + (group.move?.yPt ?? 0), inner);
    }
  };
  for (const mark of page.marks) visit(mark, 0, 0, []);
  return all;
}

const textsOf = (blocks: readonly Block[]) =>
  flow(blocks, { format }).map((page) => found(page).map(({ text }) => text));

describe('flow', () => {
  test('fills pages in order and begins each at the top margin', () => {
    const pages = flow([{ content: rows('a', 13) }], { format });
    expect(pages.map((page) => found(page).length)).toEqual([10, 3]);
    expect(pages.map((page) => found(page)[0]!.yPt)).toEqual([10, 10]);
    expect(found(pages[0]!)[9]!.yPt).toBe(100);
  });

  test('takes the larger of two whites that meet, and none at the top of a page', () => {
    const [first, second] = flow(
      [
        paragraph('a', 1, { beforePt: 30, afterPt: 5 }),
        paragraph('b', 1, { beforePt: 8, afterPt: 60 }),
        paragraph('c', 2, { beforePt: 2 }),
      ],
      { format },
    );
    expect(found(first!).map(({ yPt }) => yPt)).toEqual([10, 28]);
    expect(found(second!)[0]!.yPt).toBe(10);
  });

  test('leaves no first and no last line alone', () => {
    expect(textsOf([paragraph('a', 9), paragraph('b', 4)])[1]).toEqual(['b1', 'b2', 'b3', 'b4']);
    expect(textsOf([paragraph('a', 7), paragraph('b', 4)])[1]).toEqual(['b3', 'b4']);
    expect(textsOf([paragraph('a', 8), paragraph('b', 3)])[1]).toEqual(['b1', 'b2', 'b3']);
  });

  test('keeps a heading with what follows, and together what belongs together', () => {
    const heading: Block = { role: 'heading', content: [row('h')], withNext: true };
    expect(textsOf([paragraph('a', 9), heading, paragraph('b', 4)])[1]![0]).toBe('h');
    expect(textsOf([paragraph('a', 8), paragraph('b', 4, { together: true })])[1]).toHaveLength(4);
  });

  test('breaks what is together but larger than a page', () => {
    expect(textsOf([paragraph('a', 25, { together: true })]).map((page) => page.length)).toEqual([10, 10, 5]);
  });

  test('begins a new page where asked, but not a blank one', () => {
    expect(textsOf([paragraph('a', 2, { newPage: true }), paragraph('b', 2, { newPage: true })])).toEqual([
      ['a1', 'a2'],
      ['b1', 'b2'],
    ]);
  });

  test('draws the head of a table again, for the eye alone, and goes on with the same table', () => {
    const head = row('head');
    const table: Block = {
      role: 'table',
      content: [{ content: [head], withNext: true }, ...rows('r', 12)],
      again: head,
    };
    const [first, second] = flow([table], { format });
    expect(found(first!)).toHaveLength(10);
    const [again, next] = found(second!);
    expect(again).toMatchObject({ text: 'head', roles: [], yPt: 10 });
    expect(next).toMatchObject({ text: 'r10', roles: ['table...'], yPt: 20 });
  });

  test('goes on with the list, not with the item, where a page ends between items', () => {
    const list: Block = {
      role: 'list',
      content: Array.from(
        { length: 6 },
        (_, index): Block => ({ role: 'listItem', content: rows(`i${index}.`, 2) }),
      ),
    };
    const [, second] = flow([list], { format });
    expect(found(second!)[0]).toMatchObject({ text: 'i5.1', roles: ['list...', 'listItem'] });
  });

  test('tells the furniture the folio and how many pages there are', () => {
    const told: unknown[] = [];
    flow([{ content: rows('a', 13) }], {
      format,
      furniture: (place) => {
        told.push(place);
        return [];
      },
    });
    expect(told).toEqual([
      { folio: 1, count: 2 },
      { folio: 2, count: 2 },
    ]);
  });

  test('throws on a row higher than a page', () => {
    expect(() => flow([{ content: [row('a', 101)] }], { format })).toThrow('A row fits on a page');
  });

  test('loses nothing, changes no order, and stays between the margins, whatever the blocks', () => {
    const leaf = fc
      .record({
        heights: fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 8 }),
        role: fc.constantFrom<Role | undefined>('paragraph', 'listItem', undefined),
        together: fc.boolean(),
        withNext: fc.boolean(),
        newPage: fc.boolean(),
        beforePt: fc.integer({ min: 0, max: 30 }),
        afterPt: fc.integer({ min: 0, max: 30 }),
      })
      .map(({ heights, role, ...more }): Block => {
        const content = heights.map((height) => row('x', height));
        return { ...more, content, ...(role === undefined ? {} : { role }) };
      });
    const block = fc.oneof(
      leaf,
      fc.array(leaf, { minLength: 1, maxLength: 3 }).map((content): Block => ({ role: 'list', content })),
    );
    fc.assert(
      fc.property(fc.array(block, { maxLength: 12 }), (blocks) => {
        let count = 0;
        const heights: number[] = [];
        const named = (items: readonly (Row | Block)[]): readonly (Row | Block)[] =>
          items.map((item) => {
            if ('content' in item) return { ...item, content: named(item.content) };
            heights.push(item.heightPt);
            count += 1;
            return row(String(count - 1), item.heightPt);
          });
        const pages = flow(named(blocks) as readonly Block[], { format }).map(found);
        expect(pages.flat().map(({ text }) => Number(text))).toEqual(
          Array.from({ length: count }, (_, index) => index),
        );
        for (const page of pages) {
          let bottom = 10;
          for (const { text, yPt } of page) {
            expect(yPt).toBeGreaterThanOrEqual(bottom - 1e-9);
            bottom = yPt + heights[Number(text)]!;
          }
          expect(bottom).toBeLessThanOrEqual(110 + 1e-6);
        }
      }),
    );
  });
});
