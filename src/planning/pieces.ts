import { type Arrangement, type Dealt, foldedBase, type Layout, turnOf } from '../layout/index.ts';
import { openedSize } from '../making/index.ts';
import { quarterTurned, type Size } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { Piece } from './piece.ts';

/**
 * Every kind of piece that the set is cut from: the bases first, then the pile from the bottom, each part once
 * for each paper it is dealt from. Bought bases and parts give none, nor does a paper of a list that no card
 * and no spare comes to.
 *
 * Every part's size must be known (`arrange` found no problem that leaves one open).
 */
export function piecesOf(layout: Layout, arrangement: Arrangement): readonly Piece[] {
  const { base } = layout;
  const pieces = dealtPieces(layout, base, {
    part: 'base',
    size: openedSize(foldedBase(layout)),
    perCard: 1,
  });
  for (const { part, cut } of arrangement.parts) {
    assert(cut !== null, 'Pieces are counted when every size is known', { part: part.id });
    const size = part.lies === 'sideways' ? quarterTurned(cut) : cut;
    pieces.push(
      ...dealtPieces(layout, part, {
        part: part.id,
        size,
        perCard: part.places.length,
        settled: part.settled !== undefined,
      }),
    );
  }
  return pieces;
}

/**
 * How many of the `cards` of a set take each paper of a list dealt over them in turn: the first paper to cards
 * 1, n + 1, 2n + 1 …
 */
export function dealt(count: number, papers: number): readonly number[] {
  return Array.from({ length: papers }, (_, index) => Math.floor((count + papers - 1 - index) / papers));
}

function dealtPieces(
  layout: Layout,
  what: Dealt,
  { part, size, perCard, settled = false }: { part: string; size: Size; perCard: number; settled?: boolean },
): Piece[] {
  const cards = dealt(layout.cards * (what.cardsEach ?? 1), what.papers.length);
  // Where the list says the paper of each card, the spares are of the first.
  const spares = settled ? [what.spare] : dealt(what.spare, what.papers.length);
  // A paper may stand in the list more than once, to be dealt more often.
  const byPaper = new Map<string, { need: number; spare: number }>();
  what.papers.forEach((paper, index) => {
    const sum = byPaper.get(paper) ?? { need: 0, spare: 0 };
    const spare = spares[index] ?? 0;
    byPaper.set(paper, { need: sum.need + (cards[index] ?? 0) * perCard + spare, spare: sum.spare + spare });
  });
  for (const { paper, by, cards: wanted } of what.instead ?? []) {
    const from = byPaper.get(paper) ?? { need: 0, spare: 0 };
    const moved = Math.min(wanted * perCard, from.need - from.spare);
    const to = byPaper.get(by) ?? { need: 0, spare: 0 };
    byPaper.set(paper, { ...from, need: from.need - moved });
    byPaper.set(by, { ...to, need: to.need + moved });
  }
  return [...byPaper]
    .filter(([, { need }]) => need > 0)
    .map(([id, { need, spare }]) => {
      const paper = layout.papers.get(id);
      assert(paper !== undefined, 'A layout names only papers it has', { paper: id });
      return { id: `${part}/${id}`, part, paper: id, size, need, spare, turn: turnOf(what, paper) };
    });
}
