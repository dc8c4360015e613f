import { type Piece, piecesPerSheet } from '../planning/index.ts';
import type { Paper } from '../stash/index.ts';
import type { PlannedKit } from './kitReport.ts';

/** What is cut from one of the shared papers. */
export interface CutList {
  readonly paper: Paper;
  /** How many of its sheets are cut; `null` where no plan is known. */
  readonly sheets: number | null;
  /** Whole sheets on hand that are not cut; `null` where there are as many as needed, or too few. */
  readonly whole: number | null;
  /** Pieces of one size together. */
  readonly sizes: readonly CutSize[];
}

export interface CutSize {
  readonly size: Piece['size'];
  readonly pieces: readonly Piece[];
  /** Of all of these. */
  readonly need: number;
  /**
   * How many of them one sheet gives, and how many more the sheets that are cut would give; only where nothing else is cut
   * from the paper and its sheets are of one size.
   */
  readonly yield: { readonly perSheet: number; readonly over: number } | null;
}

/** The cut list by paper, in the order of the kit: what is cut from each, and which stay whole. */
export function cutListOf({
  set,
  wanted,
  plan,
}: Pick<PlannedKit, 'set' | 'wanted' | 'plan'>): readonly CutList[] {
  return [...set.layout.papers.values()].map((paper): CutList => {
    const own = wanted.filter((piece) => piece.paper === paper.id);
    const sheets = own.length === 0 ? 0 : plan === null ? null : (plan.papers.get(paper.id)?.sheets ?? 0);
    const bySize = new Map<string, Piece[]>();
    for (const piece of own) {
      const key = `${piece.size.width} ${piece.size.height} ${piece.turn}`;
      bySize.set(key, [...(bySize.get(key) ?? []), piece]);
    }
    const [stock, ...others] = paper.sheets;
    const alone = bySize.size === 1 && stock !== undefined && others.length === 0 && sheets !== null;
    const sizes = [...bySize.values()].map((pieces): CutSize => {
      const need = pieces.reduce((sum, piece) => sum + piece.need, 0);
      const perSheet = alone ? piecesPerSheet(pieces[0]!, stock, set.trimmer).count : 0;
      return {
        size: pieces[0]!.size,
        pieces,
        need,
        yield: alone && perSheet > 0 ? { perSheet, over: perSheet * sheets - need } : null,
      };
    });
    const onHand = paper.sheets.some(({ count }) => count === null)
      ? null
      : paper.sheets.reduce((sum, { count }) => sum + (count ?? 0), 0);
    const whole = onHand === null || sheets === null || onHand < sheets ? null : onHand - sheets;
    return { paper, sheets, whole, sizes };
  });
}
