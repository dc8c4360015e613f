import { foldedBase, type Layout, turnOf } from '../layout/index.ts';
import { openedSize } from '../making/index.ts';
import { type Length, quarterTurned, type Size, type Units, zero } from '../measure/index.ts';
import type { Paper, SheetStock } from '../stash/index.ts';
import type { Trimmer } from '../trimming/index.ts';

/** What a layout is to be planned again for; what is not said stays as it is. */
export interface RecastWishes {
  readonly units?: Units;
  /** The closed front. */
  readonly base?: Size;
  /** Distance of the marks that lengths are brought to; else the trimmer's, else the usual ones of the units. */
  readonly marks?: Length;
  /** The trimmer that it is then cut with; `null`: none. */
  readonly trimmer?: Trimmer | null;
  readonly cards?: number;
  readonly sheets?: readonly OtherSheets[];
}

/** Other sheets in place of those that a layout has. Scraps are on hand as they are and stay. */
export interface OtherSheets {
  /** Id of the paper; `null`: every paper. */
  readonly paper: string | null;
  readonly size: Size;
  /** How many there are, `null`: as many as needed; absent: as many as those they stand for. */
  readonly count?: number | null;
  /** Only sheets of this size are replaced; `null`: all of them. */
  readonly insteadOf: Size | null;
}

/** Why a wish cannot be followed. */
export type RecastRefusal =
  | { readonly code: 'noMarks'; readonly marks: Length }
  | { readonly code: 'noCards'; readonly cards: number; readonly most: number }
  | { readonly code: 'noSize'; readonly size: Size; readonly of: 'base' | 'sheets' }
  | { readonly code: 'noSuchPaper'; readonly paper: string; readonly papers: readonly string[] }
  | { readonly code: 'noSuchSheets'; readonly paper: string | null; readonly size: Size }
  | { readonly code: 'baseTooLarge'; readonly size: Size; readonly opened: Size; readonly paper: string }
  | { readonly code: 'baseUnderMark'; readonly size: Size; readonly marks: Length }
  /** Borders and gaps leave nothing of the base to these parts. */
  | { readonly code: 'nothingLeft'; readonly size: Size; readonly parts: readonly string[] };

/** The papers with the sheets that are asked for, and what of that cannot be done. */
export function papersRecast(
  layout: Layout,
  wished: readonly OtherSheets[],
): { readonly papers: ReadonlyMap<string, Paper>; readonly refusals: readonly RecastRefusal[] } {
  const papers = new Map(layout.papers);
  const refusals: RecastRefusal[] = [];
  for (const wish of wished) {
    const { paper: id, size, insteadOf } = wish;
    if (size.width <= 0 || size.height <= 0) {
      refusals.push({ code: 'noSize', size, of: 'sheets' });
      continue;
    }
    if (id !== null && !papers.has(id)) {
      refusals.push({ code: 'noSuchPaper', paper: id, papers: [...papers.keys()] });
      continue;
    }
    const concerned = [...papers.values()].filter((paper) => id === null || paper.id === id);
    const replaced = concerned.map((paper) => ({ paper, now: replacedSheets(paper, wish) }));
    if (insteadOf !== null && replaced.every(({ now }) => now === null)) {
      refusals.push({ code: 'noSuchSheets', paper: id, size: insteadOf });
      continue;
    }
    for (const { paper, now } of replaced) if (now !== null) papers.set(paper.id, now);
  }
  return { papers, refusals };
}

/** The paper with other sheets; `null` where it has none that are meant. Their grain and price are not known. */
function replacedSheets(paper: Paper, { size, count, insteadOf }: OtherSheets): Paper | null {
  const meant = ({ size: own, scrap }: SheetStock) =>
    !scrap && (insteadOf === null || (own.width === insteadOf.width && own.height === insteadOf.height));
  const old = paper.sheets.filter(meant);
  if (old.length === 0 && (insteadOf !== null || paper.sheets.length > 0)) return null;
  const counts = old.map((sheet) => sheet.count);
  const all = counts.includes(null) ? null : counts.reduce<number>((total, one) => total + (one ?? 0), 0);
  const other: SheetStock = {
    size,
    count: count === undefined ? all : count,
    price: null,
    grain: null,
    scrap: false,
    margin: { left: zero, right: zero, top: zero, bottom: zero },
  };
  // A price that is not known for all is of no use.
  const kept = paper.sheets.filter((sheet) => !meant(sheet)).map((sheet) => ({ ...sheet, price: null }));
  return { ...paper, sheets: [other, ...kept] };
}

/** Papers of the base that no sheet gives even one base of that size, by size alone. */
export function basesTooLarge(layout: Layout): readonly RecastRefusal[] {
  const { base, papers } = layout;
  const opened = openedSize(foldedBase(layout));
  return [...new Set(base.papers)].flatMap((id) => {
    const paper = papers.get(id)!;
    const ways = turnOf(base, paper) === 'free' ? [opened, quarterTurned(opened)] : [opened];
    const fits = paper.sheets.some(({ size }) =>
      ways.some((way) => way.width <= size.width && way.height <= size.height),
    );
    if (fits || paper.sheets.length === 0) return [];
    return [{ code: 'baseTooLarge' as const, size: base.size, opened, paper: id }];
  });
}
