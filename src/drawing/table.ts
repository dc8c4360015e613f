import { assert } from '../problem/index.ts';
import { type Block, groupOf, type Row, stackOf } from './block.ts';
import { black, lineWidthPt } from './ink.ts';
import type { Mark, Role } from './mark.ts';
import { setParagraph, type Words, widestWordPt, wordsWidthPt } from './paragraph.ts';
import type { TextStyle } from './textStyle.ts';
import type { Typeface } from './typeface.ts';

export interface TableColumn {
  readonly head: Words;
  /** Numbers stand at the `end`; `start` when absent. */
  readonly align?: 'start' | 'middle' | 'end';
  /** A fixed width; absent: as its words need. */
  readonly widthPt?: number;
}

export interface TableRequest {
  readonly columns: readonly TableColumn[];
  /** As many cells in each row as there are columns. The first cell heads its row. */
  readonly rows: readonly (readonly Words[])[];
  /** The most the table may take; it is no wider than its words need unless `full`. */
  readonly widthPt: number;
  readonly full?: boolean;
  readonly style: TextStyle;
  readonly typeface: Typeface;
  readonly beforePt?: number;
  readonly afterPt?: number;
}

/**
 * A table as a printer sets it: a heavy rule over it, a narrow one under its head, one at its foot, no boxes and
 * no upright rules. Broken over pages, its head is drawn again.
 */
export function setTable(request: TableRequest): Block {
  const { columns, rows, style, typeface } = request;
  for (const row of rows) {
    assert(row.length === columns.length, 'A row has a cell for each column', {
      row,
      columns: columns.length,
    });
  }
  const headStyle: TextStyle = { ...style, weight: 'semibold' };
  const widths = columnWidths(request, headStyle);
  const total = widths.reduce((sum, width) => sum + width, 0) + columnGapPt * (columns.length - 1);
  const setRow = (cells: readonly Words[], isHead: boolean): Row =>
    rowOf(
      cells.map((words, index): Cell => {
        const role = isHead || index === 0 ? 'headerCell' : 'cell';
        return {
          words,
          role,
          heads: isHead ? 'column' : 'row',
          widthPt: widths[index]!,
          align: columns[index]!.align ?? 'start',
          style: isHead ? headStyle : style,
        };
      }),
      typeface,
    );

  const head = setRow(
    columns.map((column) => column.head),
    true,
  );
  const ruled = withRules(head, total, { over: lineWidthPt.heavy, under: lineWidthPt.narrow });
  const body = rows.map((cells, index) =>
    index === rows.length - 1
      ? withRules(setRow(cells, false), total, { under: lineWidthPt.wide })
      : setRow(cells, false),
  );
  // Its head never stands alone at the foot of a page.
  const begin: Block = { content: [ruled], withNext: true };
  return {
    role: 'table',
    content: [begin, ...body],
    again: ruled,
    ...(request.beforePt === undefined ? {} : { beforePt: request.beforePt }),
    ...(request.afterPt === undefined ? {} : { afterPt: request.afterPt }),
  };
}

const columnGapPt = 14;
/** Above and below the words of a row, as a share of the leading. */
const rowPad = 0.16;

interface Cell {
  readonly words: Words;
  readonly role: Role;
  readonly heads: 'column' | 'row';
  readonly widthPt: number;
  readonly align: 'start' | 'middle' | 'end';
  readonly style: TextStyle;
}

/**
 * Each column as wide as its widest cell on one line; when that is too wide together, the widest columns give
 * until it fits, none under its widest word while another can give.
 */
function columnWidths(request: TableRequest, headStyle: TextStyle): readonly number[] {
  const { columns, rows, style, typeface, widthPt } = request;
  const room = widthPt - columnGapPt * (columns.length - 1);
  const most = (
    measure: (words: Words, style: TextStyle, typeface: Typeface) => number,
    index: number,
  ): number =>
    Math.max(
      measure(columns[index]!.head, headStyle, typeface),
      ...rows.map((row) => measure(row[index]!, style, typeface)),
    );
  // A hair more than measured, so that adding widths in another order never breaks a line.
  const natural = columns.map((column, index) => column.widthPt ?? most(wordsWidthPt, index) + 0.01);
  const least = columns.map((column, index) => column.widthPt ?? most(widestWordPt, index) + 0.01);
  const total = (widths: readonly number[]): number => widths.reduce((sum, width) => sum + width, 0);
  const over = total(natural) - room;
  if (over <= 0) {
    const growing = columns.filter((column) => column.widthPt === undefined).length;
    if (request.full !== true || growing === 0) return natural;
    return natural.map((width, index) =>
      columns[index]!.widthPt === undefined ? width - over / growing : width,
    );
  }
  if (total(least) >= room) return least.map((width) => (width * room) / total(least));
  return natural.map((width, index) =>
    Math.max(least[index]!, Math.min(width, levelOf(natural, least, room))),
  );
}

/** The width down to which wider columns give, so that all of them together, none under its least, fill the room. */
function levelOf(natural: readonly number[], least: readonly number[], room: number): number {
  let [low, high] = [0, Math.max(...natural)];
  // Halving sixty times leaves nothing that a double could tell.
  for (let round = 0; round < 60; round += 1) {
    const level = (low + high) / 2;
    const total = natural.reduce(
      (sum, width, index) => sum + Math.max(least[index]!, Math.min(width, level)),
      0,
    );
    if (total > room) high = level;
    else low = level;
  }
  return low;
}

function rowOf(cells: readonly Cell[], typeface: Typeface): Row {
  const set = cells.map((cell) =>
    stackOf([
      setParagraph({
        words: cell.words,
        widthPt: cell.widthPt,
        style: cell.style,
        typeface,
        align: cell.align,
        role: null,
      }),
    ]),
  );
  const pad = Math.max(0, ...cells.map((cell) => cell.style.leadingPt * rowPad));
  let xPt = 0;
  const marks = cells.map((cell, index): Mark => {
    const move = { xPt, yPt: pad };
    xPt += cell.widthPt + columnGapPt;
    return {
      ...groupOf({ role: cell.role, content: [] }, set[index]!.marks),
      move,
      ...(cell.role === 'headerCell' ? { heads: cell.heads } : {}),
    };
  });
  return {
    heightPt: Math.max(0, ...set.map((row) => row.heightPt)) + 2 * pad,
    marks: [{ kind: 'group', role: 'row', marks }],
  };
}

function withRules(
  row: Row,
  widthPt: number,
  rules: { readonly over?: number; readonly under?: number },
): Row {
  const over = rules.over ?? 0;
  const under = rules.under ?? 0;
  const rule = (yPt: number, thickPt: number): Mark => ({
    kind: 'line',
    from: { xPt: 0, yPt },
    to: { xPt: widthPt, yPt },
    stroke: { colour: black, widthPt: thickPt },
  });
  return {
    heightPt: row.heightPt + over + under,
    marks: [
      ...(over > 0 ? [rule(over / 2, over)] : []),
      { kind: 'group', marks: row.marks, move: { xPt: 0, yPt: over } },
      ...(under > 0 ? [rule(over + row.heightPt + under / 2, under)] : []),
    ],
  };
}
