import {
  isList,
  isObject,
  type Json,
  type JsonObject,
  type Path,
  type SavedLayout,
  valueAt,
} from '../files/index.ts';
import type { Layout } from '../layout/index.ts';
import type { Edge } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { type Edit, paperAdded, paperTaken, settingOf, together } from './edit.ts';
import { freshPaperId } from './freshId.ts';

/** What is said of a paper that is to be put into the stash. */
export interface PaperWanted {
  readonly name: string;
  readonly kind: string;
  /** Width and height of its sheets, as typed. */
  readonly size: readonly [width: string, height: string];
  /** `null`: as many as needed. */
  readonly count: number | null;
}

/** A paper put into the stash, with sheets of one size, to be changed afterwards; it may lie any way. */
export function newPaper(file: SavedLayout, layout: Layout, { name, kind, size, count }: PaperWanted): Edit {
  return paperAdded(file, freshPaperId(layout, name), { name, kind, sheets: [{ size, count }] });
}

/** A paper taken out of the stash; the base and the parts that were cut from it are cut from another one instead. */
export function paperReplaced(file: SavedLayout, id: string, by: string): Edit {
  const parts = file.parts as readonly JsonObject[];
  const cut: readonly Path[] = [['base'], ...parts.map((_, index) => ['parts', index])];
  const given = cut.flatMap((path) => {
    const now = valueAt(file, [...path, 'paper']);
    const then: Json | undefined = isList(now)
      ? now.map((one) => (one === id ? by : one))
      : now === id
        ? by
        : now;
    return JSON.stringify(then) === JSON.stringify(now) ? [] : [settingOf(file, [...path, 'paper'], then)];
  });
  return together(paperTaken(file, id), ...given);
}

/** Sheets of another size put to a paper, as many as needed; at the price of its others where they have one. */
export function sheetsAdded(file: SavedLayout, paper: string, size: PaperWanted['size']): Edit {
  const sheets = sheetsOf(file, paper);
  const priced = sheets.find((sheet) => sheet.scrap !== true && 'price' in sheet);
  const price = priced === undefined ? {} : { price: priced.price! };
  return settingOf(file, pathOf(paper, sheets.length), { size, count: null, ...price });
}

/** All sheets of one size taken out of a paper. */
export function sheetsTaken(file: SavedLayout, paper: string, at: number): Edit {
  return settingOf(file, pathOf(paper, at), undefined);
}

/** One of these sheets is cut into: from now on it is a scrap, of the same size until that is measured. */
export function sheetCutInto(file: SavedLayout, paper: string, at: number): Edit {
  const sheets = sheetsOf(file, paper);
  const { count, price, ...sheet } = sheets[at]!;
  if (count === 1) return settingOf(file, [...pathOf(paper, at), 'scrap'], true);
  assert(count !== 0, 'A sheet that is cut into is there', { paper, at });
  const scrap = settingOf(file, pathOf(paper, sheets.length), { ...sheet, count: 1, scrap: true });
  if (typeof count !== 'number') return scrap;
  return together(scrap, settingOf(file, [...pathOf(paper, at), 'count'], count - 1));
}

/**
 * The price of these sheets, or with `undefined` none. All whole sheets of a paper have a price or none has, so the
 * others get the same where they have none, or lose theirs.
 */
export function sheetsPriced(file: SavedLayout, paper: string, at: number, price: string | undefined): Edit {
  const priceOf = (index: number) => settingOf(file, [...pathOf(paper, index), 'price'], price);
  const others = sheetsOf(file, paper).flatMap((sheet, index) => {
    if (index === at || sheet.scrap === true) return [];
    return 'price' in sheet === (price !== undefined) ? [] : [priceOf(index)];
  });
  return together(priceOf(at), ...others);
}

/** What cannot be used along one edge of these sheets, as typed; `undefined`: it is good to the edge. */
export function marginSet(
  file: SavedLayout,
  paper: string,
  at: number,
  { edge, margin }: { readonly edge: Edge; readonly margin: string | undefined },
): Edit {
  const path = [...pathOf(paper, at), 'margin'];
  const now = valueAt(file, path);
  if (typeof now !== 'string') {
    const isLast = isObject(now) && Object.keys(now).length === 1 && edge in now;
    return margin === undefined && isLast
      ? settingOf(file, path, undefined)
      : settingOf(file, [...path, edge], margin);
  }
  // One length for all edges is written out, since they differ now.
  const { [edge]: _, ...others } = { left: now, right: now, top: now, bottom: now };
  return settingOf(file, path, margin === undefined ? others : { ...others, [edge]: margin });
}

function pathOf(paper: string, at: number): Path {
  return ['papers', paper, 'sheets', at];
}

function sheetsOf(file: SavedLayout, paper: string): readonly JsonObject[] {
  const sheets = valueAt(file, ['papers', paper, 'sheets']);
  assert(isList(sheets), 'A paper whose sheets are edited is there', { paper });
  return sheets as readonly JsonObject[];
}
