import { type Arrangement, type Layout, type Part, paperOfCard } from '../layout/index.ts';
import { usualMinutes } from '../making/index.ts';
import type { Edge } from '../measure/index.ts';
import { assemblyOf, isMadeReady } from './assemblySteps.ts';
import { isWrapped } from './isWrapped.ts';

/** One thing that is done for every card of a set. */
export interface Task {
  /** `cut ivory`, `score`, `ready panel`, `lay panel`, `close`. */
  readonly id: string;
  /** `ready`: a part is torn, cut out, stamped or folded; `lay`: it is put on; `close`: the card goes into its envelope. */
  readonly kind: 'cut' | 'score' | 'ready' | 'lay' | 'close';
  /** The paper that is cut, or the part; `''` of the base and the card. */
  readonly of: string;
  /** Pieces of the whole set, its spares counted where they are cut. */
  readonly pieces: number;
  /** For one piece, and whether somebody said so. */
  readonly minutes: number;
  readonly isSaid: boolean;
  /** For one card, in whole seconds, spares left out; of cutting its share. */
  readonly seconds: number;
}

/**
 * What there is to do for a set, in the order that guide and bench have: cutting paper by paper, scoring, then part by
 * part what is done to it first and putting it on, and closing. What takes no time is left out, but for putting on.
 */
export function tasksOf(layout: Layout, arrangement: Arrangement): readonly Task[] {
  const { making, cards, base } = layout;
  const byId = new Map(layout.parts.map((part) => [part.id, part]));
  const task = (
    kind: Task['kind'],
    of: string,
    pieces: number,
    said: number | null | undefined,
    usual: number,
  ): Task => {
    const minutes = said ?? usual;
    const seconds = (secondsOf(minutes) * pieces) / cards;
    const id = of === '' ? kind : `${kind} ${of}`;
    return { id, kind, of, pieces, minutes, isSaid: typeof said === 'number', seconds: Math.round(seconds) };
  };
  const cut = [...layout.papers.keys()].map((paper) =>
    task('cut', paper, piecesOf(layout, paper), making?.cut, usualMinutes.cut),
  );
  const scores = base.fold === 'none' || base.papers.length === 0 ? 0 : cards;
  const laying = assemblyOf(layout, arrangement).steps.flatMap(({ part, readies }) => {
    const own = byId.get(part)!;
    return [
      ...readies.map((id) => {
        const ready = byId.get(id)!;
        const pieces = cards * ready.places.length;
        return task('ready', id, pieces, ready.minutes?.ready, usualReady(ready));
      }),
      task('lay', part, cards * own.places.length, own.minutes?.lay, usualLaying(own)),
    ];
  });
  return [
    ...cut,
    task('score', '', scores, making?.score, usualMinutes.score),
    ...laying,
    task('close', '', cards, making?.close, usualMinutes.close),
  ].filter(({ kind, pieces, minutes }) => kind === 'lay' || (pieces > 0 && minutes > 0));
}

/** Seconds of all the pieces of a task. */
export function wholeOf({ minutes, pieces }: Pick<Task, 'minutes' | 'pieces'>): number {
  return secondsOf(minutes) * pieces;
}

function secondsOf(minutes: number): number {
  return Math.round(minutes * 60);
}

/** Pieces that are cut from a paper for the whole set, with the spares. */
function piecesOf(layout: Layout, paper: string): number {
  return [{ ...layout.base, places: [null] }, ...layout.parts].reduce((sum, dealt) => {
    if (!dealt.papers.includes(paper)) return sum;
    const turns = dealt.papers.length;
    const own = dealt.papers.flatMap((_, card) => (paperOfCard(dealt, card) === paper ? [card] : []));
    const share = (of: number) =>
      own.reduce((cards, turn) => cards + Math.max(0, Math.ceil((of - turn) / turns)), 0);
    return sum + share(layout.cards) * dealt.places.length + share(dealt.spare);
  }, 0);
}

function usualReady(part: Part): number {
  if (!isMadeReady(part)) return 0;
  const torn = (Object.keys(part.torn) as Edge[]).filter((edge) => part.torn[edge] > 0).length;
  const { kind } = part.shape;
  const isFolded = kind === 'ribbon' || kind === 'loops' || kind === 'knot';
  const isCutOut = !isFolded && (part.dieCut || part.margin > 0 || kind !== 'rectangle');
  const out = part.dieCut ? usualMinutes.dieCut : usualMinutes.cutOut;
  return (
    torn * usualMinutes.tear +
    (part.stamped ? usualMinutes.stamp : 0) +
    (isFolded ? usualMinutes[kind] : 0) +
    (isCutOut ? out : 0)
  );
}

function usualLaying(part: Part): number {
  if (isWrapped(part)) return usualMinutes.wrap;
  return part.adhere === 'raised' ? usualMinutes.raise : usualMinutes.lay;
}
