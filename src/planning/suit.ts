import { type SumChange, sumChanges } from '../layout/index.ts';
import type { Length } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { CardSet } from './cardSet.ts';
import { mostGiven, nearestGiving, Question, smallestOf } from './drawingsThatGive.ts';
import { type Drawing, type EvenDrawings, evenDrawings, type Variable, valuesOf } from './evenDrawings.ts';
import { changesOf, type LengthChange } from './lengthChange.ts';
import type { Plan } from './plan.ts';
import { planSet, type SetToPlan } from './planSet.ts';
import { Redrawing } from './redrawing.ts';

/** Sizes that suit the sheets on hand, or the nearest that can be done. */
export type Suited =
  | SuitedSizes
  /** The layout gives no length any room. */
  | { readonly kind: 'no-room' }
  /** There is no whole mark in the room of a length; `path` is the length's. */
  | { readonly kind: 'no-mark'; readonly path: string; readonly mark: Length }
  /** No sizes within the room keep borders and gaps even. */
  | { readonly kind: 'never-even'; readonly proved: boolean };

export interface SuitedSizes {
  readonly kind: 'suited';
  /** How many cards come out: as many as were asked for, else the most that the room allows. */
  readonly cards: number;
  /** Whether it is proved that no sizes within the room give more, where fewer come out than were asked for. */
  readonly proved: boolean;
  /** Whether it is proved that no sizes within the room that give so many cards are nearer to what was drawn. */
  readonly nearest: boolean;
  /** Whether borders are alike all round where they were drawn so; else only left and right, top and bottom are. */
  readonly alike: boolean;
  /** The lengths that are others than they were drawn, in the layout's order; none: it was well as it was. */
  readonly changes: readonly LengthChange[];
  /** By how many marks they differ in all, those of borders and gaps that only follow aside. */
  readonly marks: number;
  /** What becomes of every border, gap and seen size of the card. */
  readonly effect: readonly SumChange[];
  /** The set with these sizes and that many cards. */
  readonly set: CardSet;
  /** Its plan; `null` for no card. */
  readonly plan: Plan | null;
}

/**
 * Sizes in whole marks, within the room that a layout gives its lengths, that make so many cards from the sheets on
 * hand: of all that leave borders and gaps as even as they were drawn the nearest to what was drawn, by marks in all,
 * then by how many lengths change. Borders and gaps without a room of their own may follow where that evens a row.
 *
 * Where no such sizes give so many cards, those that give the most. Where none are even all round, those whose
 * borders are even left and right, top and bottom.
 */
export function suitedSet(set: SetToPlan, cards: number = set.layout.cards): Suited {
  const redrawing = new Redrawing(set);
  const variables: Variable[] = [];
  for (const movable of redrawing.movable) {
    if (!movable.asked) continue;
    const values = valuesOf(movable, redrawing.mark);
    if (values.length === 0) return { kind: 'no-mark', path: movable.path, mark: redrawing.mark };
    variables.push({ movable, values });
  }
  if (variables.length === 0) return { kind: 'no-room' };

  const drawings = evenDrawings(redrawing, variables);
  const question = new Question(set);
  const strict = { alike: true, drawings: drawings.even.filter(({ redrawn }) => redrawn.worse.size === 0) };
  const lenient = { alike: false, drawings: drawings.even };
  if (drawings.even.length === 0) return { kind: 'never-even', proved: drawings.complete };
  for (const { alike, drawings: among } of [strict, lenient]) {
    const found = nearestGiving(cards, among, question);
    if (found !== null)
      return suitedFrom(set, { cards, alike, ...found }, { proved: true, drawings, question });
  }
  const mostAlike = mostGiven(cards, strict.drawings, question);
  const mostOfAll = mostGiven(cards, lenient.drawings, question);
  const { alike, drawings: among } = mostAlike === mostOfAll && strict.drawings.length > 0 ? strict : lenient;
  const most = alike ? mostAlike : mostOfAll;
  const found = most === 0 ? { drawing: among[0]!, sure: true } : nearestGiving(most, among, question)!;
  return suitedFrom(set, { cards: most, alike, ...found }, { proved: false, drawings, question });
}

function suitedFrom(
  set: SetToPlan,
  found: {
    readonly cards: number;
    readonly alike: boolean;
    readonly drawing: Drawing;
    readonly sure: boolean;
  },
  about: {
    readonly proved: boolean;
    readonly drawings: EvenDrawings;
    readonly question: Question;
  },
): SuitedSizes {
  const { cards, alike, drawing, sure } = found;
  const { redrawn, marks } = drawing;
  const { solver, onProgress, ...drawn } = set;
  const layout = { ...redrawn.layout, cards: Math.max(1, cards) };
  const suited: CardSet = { ...drawn, layout, arrangement: redrawn.arrangement };
  const again = { ...suited, solver, ...(onProgress === undefined ? {} : { onProgress }) };
  const plan = cards === 0 ? null : planSet(again);
  assert(plan?.kind !== 'short', 'Sizes that suit can be planned', { lengths: [...redrawn.lengths] });
  const { drawings, question } = about;
  const refuted = () =>
    drawings.complete && smallestOf(drawings.even).every((one) => question.ask(one, cards + 1) === 'no');
  return {
    kind: 'suited',
    cards,
    proved: about.proved || refuted(),
    nearest: sure && marks <= drawings.reached,
    alike,
    changes: changesOf(set, redrawn.lengths),
    marks,
    effect: sumChanges(set.arrangement, redrawn.arrangement),
    set: suited,
    plan,
  };
}
