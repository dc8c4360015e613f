import {
  isList,
  isObject,
  type Json,
  type JsonObject,
  type SavedLayout,
  valueAt,
  writtenLength,
} from '../files/index.ts';
import type { Layout } from '../layout/index.ts';
import { type Axis, readLength, type Size, type Units } from '../measure/index.ts';
import type { KeptLeftover, Plan } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import { type Edit, settingOf } from './edit.ts';

/** A leftover as it goes into a stash. */
export interface NewScrap {
  readonly paper: string;
  readonly size: Size;
  readonly grain: Axis | null;
}

/** The leftovers that are kept, with what is known of the sheets they were cut from; sizes stand as the pattern does. */
export function newScraps(layout: Layout, kept: readonly KeptLeftover[]): readonly NewScrap[] {
  return kept.map(({ paper, stock, size }) => {
    const sheet = stock === null ? undefined : layout.papers.get(paper)!.sheets[stock];
    return { paper, size, grain: sheet?.grain ?? null };
  });
}

/**
 * The stash once a set is cut: the sheets that its plan used are taken out and what it kept comes in as scraps. A scrap that
 * is used up goes out of the list; whole sheets of which none is left stay with a count of 0, and those of which there are
 * as many as needed stay as they are. One edit. `used` counts the sheets by paper and stock.
 */
export function restocked(
  file: SavedLayout,
  layout: Layout,
  { used, scraps }: { readonly used: UsedSheets; readonly scraps: readonly NewScrap[] },
): Edit {
  const papers = [...layout.papers.keys()].filter(
    (id) => (used.get(id)?.size ?? 0) > 0 || scraps.some(({ paper }) => paper === id),
  );
  const edits = papers.map((id) => {
    const path = ['papers', id, 'sheets'];
    const sheets = sheetsAfter(valueAt(file, path), used.get(id) ?? new Map());
    const own = scraps.filter(({ paper }) => paper === id);
    return settingOf(file, path, withScraps(sheets, own, layout.units));
  });
  return { told: { what: 'restocked' }, changes: edits.flatMap(({ changes }) => changes) };
}

/** By paper and stock, how many sheets were begun. */
export type UsedSheets = ReadonlyMap<string, ReadonlyMap<number, number>>;

/** The sheets that a plan begins. */
export function usedSheets(plan: Pick<Plan, 'sheets'>): UsedSheets {
  const used = new Map<string, Map<number, number>>();
  for (const { paper, stock } of plan.sheets) {
    const own = used.get(paper) ?? new Map<number, number>();
    used.set(paper, own.set(stock, (own.get(stock) ?? 0) + 1));
  }
  return used;
}

function sheetsAfter(sheets: Json | undefined, used: ReadonlyMap<number, number>): readonly Json[] {
  assert(isList(sheets), 'A paper that was cut has a list of sheets');
  return sheets.flatMap((sheet, stock): readonly Json[] => {
    const taken = used.get(stock) ?? 0;
    if (taken === 0 || !isObject(sheet) || typeof sheet.count !== 'number') return [sheet];
    const count = sheet.count - taken;
    assert(count >= 0, 'No more sheets are used than there are', { stock, taken });
    return count === 0 && sheet.scrap === true ? [] : [{ ...sheet, count }];
  });
}

/** The list with the scraps in it, those of one size and grain together, also with such as were there. */
function withScraps(sheets: readonly Json[], scraps: readonly NewScrap[], units: Units): readonly Json[] {
  const list = [...sheets];
  for (const { size, grain } of scraps) {
    const fresh: JsonObject = {
      size: [writtenLength(size.width, units, false), writtenLength(size.height, units, false)],
      count: 1,
      ...(grain === null ? {} : { grain }),
      scrap: true,
    };
    const same = list.findIndex((one) => isObject(one) && sameBut(one, fresh, units));
    const there = list[same];
    if (isObject(there) && typeof there.count === 'number') list[same] = { ...there, count: there.count + 1 };
    else list.push(fresh);
  }
  return list;
}

/** Whether two sheets differ in nothing but how many there are. */
function sameBut(one: JsonObject, other: JsonObject, units: Units): boolean {
  const fields = (sheet: JsonObject) =>
    JSON.stringify(
      Object.entries({ ...sheet, count: 0, size: ticksOf(sheet.size, units) }).sort(([a], [b]) =>
        a < b ? -1 : 1,
      ),
    );
  return typeof one.count === 'number' && fields(one) === fields(other);
}

/** A size in ticks, however it was typed. */
function ticksOf(size: Json | undefined, units: Units): Json {
  if (!isList(size)) return null;
  return size.map((text) => {
    const reading = typeof text === 'string' ? readLength(text, units) : null;
    return reading?.ok ? reading.length : null;
  });
}
