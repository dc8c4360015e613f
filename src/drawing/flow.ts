import { assert } from '../problem/index.ts';
import { type Block, groupOf, isBlock, type Row } from './block.ts';
import type { GroupMark, Mark } from './mark.ts';
import type { Page, PageFormat } from './page.ts';

export interface FlowOptions {
  readonly format: PageFormat;
  /** What stands on every page outside the text, in page coordinates; see `runningLines`. */
  readonly furniture?: (place: Folio) => readonly Mark[];
}

/** The number of a page, from 1, and how many there are. */
export interface Folio {
  readonly folio: number;
  readonly count: number;
}

/**
 * The blocks on as many pages as they need, in their order.
 *
 * A page ends where a block, a row of a table or an item ends, or in a paragraph so that two lines stand on either
 * side; not inside a block that is `together` and not after one that is `withNext`, unless a page holds nothing
 * else. No blocks make no pages. Throws on a row that is higher than a page.
 */
export function flow(blocks: readonly Block[], options: FlowOptions): readonly Page[] {
  const { format, furniture } = options;
  const pages = pagesOf(atomsOf(blocks), format);
  return pages.map((placed, index) => ({
    widthPt: format.widthPt,
    heightPt: format.heightPt,
    marks: [...(furniture?.({ folio: index + 1, count: pages.length }) ?? []), ...nested(placed, 0)],
  }));
}

/** A row with the blocks it stands in, outermost first, and what may happen before it. */
interface Atom {
  readonly row: Row;
  readonly within: readonly Block[];
  readonly whitePt: number;
  readonly mayBreak: boolean;
  readonly newPage: boolean;
}

interface Placed {
  readonly row: Row;
  readonly within: readonly Block[];
  readonly xPt: number;
  readonly yPt: number;
  /** How many of the outer blocks went over from the page before. */
  readonly begun: number;
}

/** All rows in order, the white between them and where pages may end. */
function atomsOf(blocks: readonly Block[]): readonly Atom[] {
  const atoms: Atom[] = [];
  let white = 0;
  let tied = false;
  let newPage = false;
  const visit = (items: readonly (Row | Block)[], within: readonly Block[]): void => {
    const owner = within.at(-1);
    items.forEach((item, index) => {
      if (isBlock(item)) {
        white = Math.max(white, item.beforePt ?? 0);
        newPage ||= item.newPage === true;
        visit(item.content, [...within, item]);
        white = Math.max(white, item.afterPt ?? 0);
        tied ||= item.withNext === true;
        return;
      }
      const alone = owner !== undefined && leavesLineAlone(owner, index);
      atoms.push({ row: item, within, whitePt: white, mayBreak: !tied && !alone, newPage });
      white = 0;
      newPage = false;
      tied = false;
    });
  };
  visit(blocks, []);
  return atoms.map((atom, index) => {
    const before = atoms[index - 1];
    const shared = atom.within.some(
      (block, depth) =>
        (block.together === true || block.withNext === true) && before?.within[depth] === block,
    );
    return shared ? { ...atom, mayBreak: false } : atom;
  });
}

/** Whether a page end before this row would part the first or the last line of a paragraph or item from the rest. */
function leavesLineAlone(owner: Block, index: number): boolean {
  if (owner.role === 'table' || owner.role === undefined) return false;
  return index === 1 || (index > 0 && index === owner.content.length - 1);
}

function pagesOf(atoms: readonly Atom[], format: PageFormat): readonly (readonly Placed[])[] {
  const { marginPt } = format;
  const roomPt = format.heightPt - marginPt.top - marginPt.bottom;
  const pages: (readonly Placed[])[] = [];
  let first = 0;
  while (first < atoms.length) {
    const heads = first === 0 ? [] : headsAgain(atoms, first);
    const headPt = heads.reduce((total, head) => total + head.heightPt, 0);
    const end = endOfPage(atoms, first, roomPt - headPt);
    pages.push(placed(atoms, { first, end, heads, leftPt: marginPt.left, topPt: marginPt.top }));
    first = end;
  }
  return pages;
}

/** The first atom of the next page. */
function endOfPage(atoms: readonly Atom[], first: number, roomPt: number): number {
  let usedPt = 0;
  let lastBreak: number | undefined;
  for (let index = first; index < atoms.length; index += 1) {
    const atom = atoms[index]!;
    if (index > first) {
      if (atom.newPage) return index;
      if (atom.mayBreak) lastBreak = index;
    }
    usedPt += (index > first ? atom.whitePt : 0) + atom.row.heightPt;
    // A hair of room, so that heights added in another order give the same pages.
    if (usedPt <= roomPt + 1e-6) continue;
    assert(index > first, 'A row fits on a page', { heightPt: atom.row.heightPt, roomPt });
    return lastBreak ?? index;
  }
  return atoms.length;
}

/** The table heads to draw again over an atom that begins a page. */
function headsAgain(atoms: readonly Atom[], first: number): readonly Row[] {
  const atom = atoms[first]!;
  const before = atoms[first - 1]!;
  return atom.within.flatMap((block, depth) =>
    block.again !== undefined && before.within[depth] === block ? [block.again] : [],
  );
}

function placed(
  atoms: readonly Atom[],
  page: {
    readonly first: number;
    readonly end: number;
    readonly heads: readonly Row[];
    readonly leftPt: number;
    readonly topPt: number;
  },
): readonly Placed[] {
  const before = atoms[page.first - 1];
  let yPt = page.topPt;
  const all: Placed[] = page.heads.map((head) => {
    const row = { heightPt: head.heightPt, marks: forTheEye(head.marks) };
    const here = { row, within: [], xPt: page.leftPt, yPt, begun: 0 };
    yPt += head.heightPt;
    return here;
  });
  for (let index = page.first; index < page.end; index += 1) {
    const atom = atoms[index]!;
    if (index > page.first) yPt += atom.whitePt;
    const differs = atom.within.findIndex((block, depth) => before?.within[depth] !== block);
    all.push({
      row: atom.row,
      within: atom.within,
      xPt: page.leftPt,
      yPt,
      begun: differs === -1 ? atom.within.length : differs,
    });
    yPt += atom.row.heightPt;
  }
  return all;
}

/** The rows of a page, in the groups of the blocks they belong to. */
function nested(rows: readonly Placed[], depth: number): readonly Mark[] {
  const marks: Mark[] = [];
  let index = 0;
  while (index < rows.length) {
    const row = rows[index]!;
    const block = row.within[depth];
    if (block === undefined) {
      marks.push({ kind: 'group', marks: row.row.marks, move: { xPt: row.xPt, yPt: row.yPt } });
      index += 1;
      continue;
    }
    let end = index + 1;
    while (rows[end]?.within[depth] === block) end += 1;
    const inside = nested(rows.slice(index, end), depth + 1);
    if (block.role === undefined) marks.push(...inside);
    else marks.push({ ...groupOf(block, inside), ...(row.begun > depth ? { continues: true } : {}) });
    index = end;
  }
  return marks;
}

/** The same marks without their roles: decoration. */
function forTheEye(marks: readonly Mark[]): readonly Mark[] {
  return marks.map((mark): Mark => {
    if (mark.kind !== 'group') return mark;
    const plain: GroupMark = { kind: 'group', marks: forTheEye(mark.marks) };
    return {
      ...plain,
      ...(mark.move === undefined ? {} : { move: mark.move }),
      ...(mark.clip === undefined ? {} : { clip: mark.clip }),
    };
  });
}
