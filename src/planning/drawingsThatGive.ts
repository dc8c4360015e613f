import { firstPlan } from '../cutting/index.ts';
import { assert } from '../problem/index.ts';
import { paperTask } from './cuttingTask.ts';
import { mostCards } from './enough.ts';
import type { Drawing } from './evenDrawings.ts';
import { givesAll, type Verdict } from './givesAll.ts';
import { neverReasons } from './never.ts';
import type { Piece } from './piece.ts';
import { piecesOf } from './pieces.ts';
import type { SetToPlan } from './planSet.ts';

/** Whether the sheets on hand give the pieces of a drawing for so many cards; nothing is planned twice. */
export class Question {
  readonly #set: SetToPlan;
  readonly #known = new Map<string, { readonly extents: readonly number[]; readonly verdict: Verdict }[]>();

  constructor(set: SetToPlan) {
    this.#set = set;
  }

  ask({ redrawn }: Drawing, cards: number): Verdict {
    const pieces = piecesOf({ ...redrawn.layout, cards }, redrawn.arrangement);
    const papers = [...new Set(pieces.map(({ paper }) => paper))];
    let verdict: Verdict = 'yes';
    for (const paper of papers) {
      const own = pieces.filter((piece) => piece.paper === paper);
      const one = this.#askPaper(paper, own);
      if (one === 'no') return 'no';
      if (one === 'unknown') verdict = one;
    }
    return verdict;
  }

  /** What is smaller in everything comes out where the larger does, and what is larger does not where that does not. */
  #askPaper(id: string, pieces: readonly Piece[]): Verdict {
    const key = `${id} ${pieces.map((piece) => `${piece.id} ${piece.need} ${piece.turn}`).join()}`;
    const extents = pieces.flatMap(({ size }) => [size.width, size.height]);
    const known = this.#known.get(key) ?? [];
    this.#known.set(key, known);
    for (const before of known) {
      if (before.verdict === 'yes' && isWithin(extents, before.extents)) return 'yes';
      if (before.verdict === 'no' && isWithin(before.extents, extents)) return 'no';
      if (before.extents.every((extent, index) => extent === extents[index])) return before.verdict;
    }
    const verdict = this.#plan(id, pieces);
    known.push({ extents, verdict });
    return verdict;
  }

  #plan(id: string, pieces: readonly Piece[]): Verdict {
    const paper = this.#set.layout.papers.get(id)!;
    if (neverReasons(paper, pieces, this.#set.trimmer).size > 0) return 'no';
    if (firstPlan(paperTask(paper, pieces, this.#set.trimmer).task) !== null) return 'yes';
    return givesAll(paper, pieces, this.#set);
  }
}

/** Whether each is at most as large as the other's. */
function isWithin(smaller: readonly number[], larger: readonly number[]): boolean {
  return smaller.every((extent, index) => extent <= larger[index]!);
}

/**
 * The nearest of the drawings that gives so many cards; `null`: none does. `sure`: it is proved of all nearer ones
 * that they do not.
 *
 * Whether any up to a distance does is told by the smallest of them alone, so the distance is found by halving.
 */
export function nearestGiving(
  cards: number,
  drawings: readonly Drawing[],
  question: Question,
): { readonly drawing: Drawing; readonly sure: boolean } | null {
  const distances = [...new Set(drawings.map(({ marks }) => marks))];
  let sure = true;
  const anyWithin = (distance: number) => {
    const verdicts: Verdict[] = [];
    for (const drawing of smallestOf(drawings.filter(({ marks }) => marks <= distance))) {
      verdicts.push(question.ask(drawing, cards));
      if (verdicts.at(-1) === 'yes') return true;
    }
    if (verdicts.includes('unknown')) sure = false;
    return false;
  };
  let [low, high] = [0, distances.length - 1];
  if (high < 0 || !anyWithin(distances[high]!)) return null;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (anyWithin(distances[middle]!)) high = middle;
    else low = middle + 1;
  }
  const drawing = drawings.find(
    (candidate) => candidate.marks === distances[low]! && question.ask(candidate, cards) === 'yes',
  );
  assert(drawing !== undefined, 'Of the drawings up to a distance one gives the cards', { cards });
  return { drawing, sure };
}

/** The drawings that no other is smaller than in every piece. */
export function smallestOf(drawings: readonly Drawing[]): readonly Drawing[] {
  const area = ({ pieces }: Drawing) => pieces.reduce((sum, { size }) => sum + size.width * size.height, 0);
  const smallest: Drawing[] = [];
  for (const { drawing } of drawings
    .map((drawing) => ({ drawing, area: area(drawing) }))
    .sort((a, b) => a.area - b.area)) {
    if (!smallest.some(({ extents }) => isWithin(extents, drawing.extents))) smallest.push(drawing);
  }
  return smallest;
}

/** The most cards, fewer than `cards`, that any of the drawings gives; 0: none gives one. */
export function mostGiven(cards: number, drawings: readonly Drawing[], question: Question): number {
  const smallest = smallestOf(drawings);
  let [most, tooMany] = [0, Math.min(cards, mostCards + 1)];
  while (tooMany - most > 1) {
    const middle = Math.floor((most + tooMany) / 2);
    if (smallest.some((drawing) => question.ask(drawing, middle) === 'yes')) most = middle;
    else tooMany = middle;
  }
  return most;
}
