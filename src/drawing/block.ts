import type { GroupMark, Mark, Role } from './mark.ts';

/** What is never cut by the end of a page: a line of type, a table's row, a picture; drawn from its own top left. */
export interface Row {
  readonly heightPt: number;
  readonly marks: readonly Mark[];
}

/** Something set to a width that `flow` puts on pages: rows, or blocks of rows within it, in reading order. */
export interface Block {
  readonly role?: Role;
  readonly says?: string;
  readonly content: readonly (Row | Block)[];
  /** White before and after it; the larger of two that meet counts, none at the top of a page. */
  readonly beforePt?: number;
  readonly afterPt?: number;
  /** Moved to the next page rather than broken, as long as it fits on a page at all. */
  readonly together?: boolean;
  /** Never the last thing on a page: a heading. */
  readonly withNext?: boolean;
  /** Begins a page. */
  readonly newPage?: boolean;
  /** Drawn again, for the eye alone, over what goes on on the next page: a table's head. */
  readonly again?: Row;
}

/** Whether it is a block with content of its own. */
export function isBlock(item: Row | Block): item is Block {
  return 'content' in item;
}

/** The blocks one under the other as a single row, with their roles, to stand beside something or in a picture. */
export function stackOf(blocks: readonly Block[]): Row {
  return stacked(blocks);
}

/** Rows side by side, each `xPt` from the left, their tops level, as one row. */
export function besideOf(rows: readonly { readonly xPt: number; readonly row: Row }[]): Row {
  return {
    heightPt: Math.max(0, ...rows.map(({ row }) => row.heightPt)),
    marks: rows.map(({ xPt, row }) => ({ kind: 'group', marks: row.marks, move: { xPt, yPt: 0 } })),
  };
}

/** The group that carries a block's role. */
export function groupOf(block: Block, marks: readonly Mark[]): GroupMark {
  return {
    kind: 'group',
    marks,
    ...(block.role === undefined ? {} : { role: block.role }),
    ...(block.says === undefined ? {} : { says: block.says }),
  };
}

function stacked(items: readonly (Row | Block)[]): Row {
  const marks: Mark[] = [];
  let heightPt = 0;
  let white = 0;
  for (const item of items) {
    const block = isBlock(item) ? item : undefined;
    if (heightPt > 0) heightPt += Math.max(white, block?.beforePt ?? 0);
    white = block?.afterPt ?? 0;
    const row = isBlock(item) ? stacked(item.content) : item;
    const moved: GroupMark = { kind: 'group', marks: row.marks, move: { xPt: 0, yPt: heightPt } };
    marks.push(block === undefined ? moved : groupOf(block, [moved]));
    heightPt += row.heightPt;
  }
  return { heightPt, marks };
}
