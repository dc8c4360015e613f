import { planCuts } from '../cutting/index.ts';
import { type Size, zero } from '../measure/index.ts';
import type { Paper } from '../stash/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import { paperTask } from './cuttingTask.ts';
import { givesAll, type Verdict } from './givesAll.ts';
import { neverReasons } from './never.ts';
import type { Piece } from './piece.ts';
import type { Plan } from './plan.ts';
import type { SetToPlan } from './planSet.ts';
import type { MoreSheets, NeverReason, PaperShortage, ShortageLimit } from './shortage.ts';

/** One paper that is short, with what is wanted of it. */
export interface ShortOf {
  readonly paper: Paper;
  /** All the pieces that are cut from it. */
  readonly pieces: readonly Piece[];
  /** Whether it is proved that its sheets do not give them all. */
  readonly proved: boolean;
  /** A plan of a smaller set, which shows what its sheets do give; `null`: none is known. */
  readonly given: Plan | null;
}

/** The paper's sheets, the pieces and the trimmer, as they are or with something about them changed. */
interface Case {
  readonly paper: Paper;
  readonly pieces: readonly Piece[];
  readonly trimmer: Trimmer | null;
}

/**
 * What a paper that is short is short of: the pieces that are wanting, as few as can be found; why; and what would
 * help.
 */
export function paperShortage(short: ShortOf, set: Pick<SetToPlan, 'trimmer' | 'solver'>): PaperShortage {
  const { paper, pieces } = short;
  const asItIs: Case = { paper, pieces, trimmer: set.trimmer };
  const asked = ({ trimmer, ...rest }: Case) => givesAll(rest.paper, rest.pieces, { ...set, trimmer });

  // What no sheet gives is short in full; the rest is planned, to say what else is.
  const never = neverOf(asItIs, asked);
  const possible = pieces.filter(({ id }) => !never.has(id));
  const rest = leastMissing({ ...short, pieces: possible, proved: short.proved && never.size === 0 }, set);
  const missing = new Map(
    pieces.flatMap(({ id, need }): [string, number][] => {
      const count = never.has(id) ? need : (rest.missing.get(id) ?? 0);
      return count > 0 ? [[id, count]] : [];
    }),
  );
  const limits = shortageLimits.filter((limit) => {
    const without = withoutLimit(asItIs, limit);
    return without !== null && asked(without) === 'yes';
  });
  return {
    paper: paper.id,
    missing,
    // Where there is no sheet, all is wanting.
    missingProved: rest.proved || paper.sheets.every(({ count }) => count === 0),
    proved: short.proved || never.size > 0 || rest.proved,
    never,
    limits,
    moreSheets: never.size > 0 ? [] : moreSheetsOf(asItIs, missing, short.proved, asked),
  };
}

const shortageLimits = ['trimmer', 'direction', 'margins'] as const satisfies readonly ShortageLimit[];

/** The case without the limit; `null` where there is no such limit. */
function withoutLimit({ paper, pieces, trimmer }: Case, limit: ShortageLimit): Case | null {
  switch (limit) {
    case 'trimmer':
      return trimmer === null ? null : { paper, pieces, trimmer: null };
    case 'direction': {
      if (pieces.every(({ turn }) => turn === 'free')) return null;
      return { paper, pieces: pieces.map((piece) => ({ ...piece, turn: 'free' })), trimmer };
    }
    case 'margins': {
      const used = paper.sheets.some(({ margin }) => Object.values(margin).some((length) => length > 0));
      if (!used) return null;
      const margin = { left: zero, right: zero, top: zero, bottom: zero };
      return {
        paper: { ...paper, sheets: paper.sheets.map((stock) => ({ ...stock, margin })) },
        pieces,
        trimmer,
      };
    }
  }
}

// --- What no sheet gives even one of ---

/** By piece id; none where there is no sheet at all, which is another matter. */
function neverOf(asItIs: Case, asked: (of: Case) => Verdict): ReadonlyMap<string, NeverReason> {
  // One of each stock, be it on hand or not: what one of them gives is only a matter of number.
  const sheets = asItIs.paper.sheets.map((stock) => ({ ...stock, count: 1 }));
  const reasons = new Map<string, NeverReason>();
  if (sheets.length === 0) return reasons;
  for (const piece of asItIs.pieces) {
    const one = { ...asItIs, paper: { ...asItIs.paper, sheets }, pieces: [{ ...piece, need: 1 }] };
    if (asked(one) !== 'no') continue;
    const told = neverReasons(one.paper, one.pieces, one.trimmer).get(piece.id);
    const limit = shortageLimits.find((candidate) => {
      const without = withoutLimit(one, candidate);
      return without !== null && asked(without) === 'yes';
    });
    reasons.set(piece.id, told === 'too-narrow' ? told : (limit ?? 'too-large'));
  }
  return reasons;
}

// --- How many are wanting ---

interface LeastMissing {
  /** By piece id. */
  readonly missing: ReadonlyMap<string, number>;
  readonly proved: boolean;
}

/**
 * The fewest pieces that are wanting in all, as far as can be found: to begin with what the planner made of the short
 * sheets, or what a smaller set makes of them where that is more, then one fewer as long as some way of leaving so many wanting comes out.
 *
 * It is proved when every way of leaving one fewer wanting is refuted. For one kind of piece that is one question,
 * and halving leads to it; for several kinds the ways are many, and they are looked at where few pieces are wanting.
 */
function leastMissing(
  { paper, pieces, proved, given: smaller }: ShortOf,
  set: Pick<SetToPlan, 'trimmer' | 'solver'>,
): LeastMissing {
  if (pieces.length === 0) return { missing: new Map(), proved: true };
  const answer = planCuts(paperTask(paper, pieces, set.trimmer).task, set.solver);
  const ask = (missing: readonly number[]): Verdict => {
    const fewer = pieces.map((piece, index) => ({ ...piece, need: piece.need - missing[index]! }));
    return areaWanting(paper, fewer) > 0n ? 'no' : givesAll(paper, fewer, set);
  };
  const given = (missing: readonly number[]) => new Map(pieces.map(({ id }, index) => [id, missing[index]!]));
  if (answer.kind === 'plan') return { missing: new Map(), proved: true };
  const known = smaller === null ? answer.missing : fewest(answer.missing, missingIn(smaller, pieces));

  if (pieces.length === 1) {
    let wanting = known[0]!;
    let tooFew = 0;
    let refuted = proved || answer.proved;
    while (wanting - tooFew > 1) {
      const middle = Math.floor((wanting + tooFew) / 2);
      const verdict = ask([middle]);
      if (verdict === 'yes') wanting = middle;
      else {
        tooFew = middle;
        refuted = verdict === 'no';
      }
    }
    return { missing: given([wanting]), proved: refuted };
  }

  let missing = known;
  for (let asked = 0; ; ) {
    const total = missing.reduce((sum, count) => sum + count, 0);
    if (total === 1) return { missing: given(missing), proved: proved || answer.proved };
    const all = total > mostCounted ? null : waysToMiss(total - 1, pieces, mostWays - asked);
    const ways = all ?? oneFewer(missing).slice(0, mostWays - asked);
    const verdicts: Verdict[] = [];
    for (const way of mostLike(missing, ways)) {
      verdicts.push(ask(way));
      if (verdicts.at(-1) !== 'yes') continue;
      missing = way;
      break;
    }
    asked += verdicts.length;
    if (verdicts.at(-1) === 'yes') continue;
    const proof = all !== null && verdicts.every((verdict) => verdict === 'no');
    return { missing: given(missing), proved: proof };
  }
}

/** How many of each piece the plan of a smaller set leaves wanting. */
function missingIn({ finished }: Plan, pieces: readonly Piece[]): readonly number[] {
  const made = new Map<string, number>();
  for (const piece of finished.values()) made.set(piece, (made.get(piece) ?? 0) + 1);
  return pieces.map(({ id, need }) => Math.max(0, need - (made.get(id) ?? 0)));
}

/** The one with fewer in all; the first of equal ones. */
function fewest(first: readonly number[], second: readonly number[]): readonly number[] {
  const all = (counts: readonly number[]) => counts.reduce((sum, count) => sum + count, 0);
  return all(second) < all(first) ? second : first;
}

/**
 * Where more are wanting than this, fewest in all says little: it would leave out the largest pieces for the sake of
 * many small ones, where the planner serves all alike. Then no more is tried than to leave out one piece fewer.
 */
const mostCounted = 6;

/** How many ways of leaving pieces wanting are looked at for one paper. */
const mostWays = 60;

/** Every way of leaving `total` pieces wanting; `null` where there are more than `most`. */
function waysToMiss(
  total: number,
  pieces: readonly Piece[],
  most: number,
): readonly (readonly number[])[] | null {
  let ways: (readonly number[])[] = [[]];
  for (const [index, { need }] of pieces.entries()) {
    const last = index === pieces.length - 1;
    const longer: (readonly number[])[] = [];
    for (const way of ways) {
      const left = total - way.reduce((sum, count) => sum + count, 0);
      for (let count = last ? left : 0; count <= Math.min(left, need); count += 1) {
        longer.push([...way, count]);
        // Nearly every beginning can be gone on with, so many beginnings are too many ways.
        if (longer.length > most) return null;
      }
    }
    ways = longer;
  }
  return ways;
}

/** The ways that leave one piece fewer wanting than `known`. */
function oneFewer(known: readonly number[]): readonly (readonly number[])[] {
  return known.flatMap((count, index) => (count > 0 ? [known.with(index, count - 1)] : []));
}

/** The ways in the order of how like `known` they are: a little change to what came out is likely to come out. */
function mostLike(
  known: readonly number[],
  ways: readonly (readonly number[])[],
): readonly (readonly number[])[] {
  const unlike = (way: readonly number[]) =>
    way.reduce((sum, count, index) => sum + Math.abs(count - known[index]!), 0);
  return ways.toSorted((a, b) => unlike(a) - unlike(b));
}

/** By how much the pieces are larger together than all the sheets on hand, in square ticks; 0 where they are not. */
function areaWanting(paper: Paper, pieces: readonly Piece[]): bigint {
  if (paper.sheets.some(({ count }) => count === null)) return 0n;
  const areaOf = ({ width, height }: Size, times: number) => BigInt(width * height) * BigInt(times);
  const sheets = paper.sheets.reduce((sum, { size, count }) => sum + areaOf(size, count ?? 0), 0n);
  const wanted = pieces.reduce((sum, { size, need }) => sum + areaOf(size, need), 0n);
  return wanted > sheets ? wanted - sheets : 0n;
}

// --- What would help ---

/** For each stock of whole sheets the fewest more that would be enough, by doubling and halving. */
function moreSheetsOf(
  asItIs: Case,
  missing: ReadonlyMap<string, number>,
  proved: boolean,
  asked: (of: Case) => Verdict,
): readonly MoreSheets[] {
  const { paper, pieces } = asItIs;
  const found: MoreSheets[] = [];
  let questions = mostSheetQuestions;
  for (const [stock, sheet] of paper.sheets.entries()) {
    const { count } = sheet;
    if (sheet.scrap || count === null) continue;
    const fits = (piece: Piece) =>
      asked({
        ...asItIs,
        paper: { ...paper, sheets: [{ ...sheet, count: 1 }] },
        pieces: [{ ...piece, need: 1 }],
      }) === 'yes';
    const ownSheet = pieces.filter(fits);
    if (ownSheet.length === 0) continue;
    // A piece that fits may have a sheet to itself. Others come out where those that fit make room for them.
    const wanting = (of: readonly Piece[]) => of.reduce((sum, { id }) => sum + (missing.get(id) ?? 0), 0);
    const most =
      wanting(ownSheet) === wanting(pieces)
        ? wanting(pieces)
        : ownSheet.reduce((sum, { need }) => sum + need, 0);

    // So many more are known not to be enough, by area to begin with.
    const lack = areaWanting(paper, pieces);
    const area = BigInt(sheet.size.width * sheet.size.height);
    let tooFew = lack > 0n ? Number((lack - 1n) / area) : 0;
    let refuted = proved || tooFew > 0;
    let enough: number | null = null;
    for (let step = 1; questions > 0 && tooFew < most && tooFew + 1 !== enough; questions -= 1) {
      const more: number =
        enough === null ? Math.min(most, tooFew + step) : Math.floor((enough + tooFew) / 2);
      const sheets = paper.sheets.with(stock, { ...sheet, count: count + more });
      const verdict = asked({ ...asItIs, paper: { ...paper, sheets } });
      if (verdict === 'yes') enough = more;
      else {
        tooFew = more;
        refuted = verdict === 'no';
        step *= 2;
      }
    }
    if (enough !== null) found.push({ stock, count: enough, proved: refuted && enough === tooFew + 1 });
  }
  return found;
}

/** How often one paper is planned again to find how many sheets more would do. */
const mostSheetQuestions = 60;
