import type { Layout } from '../layout/index.ts';
import { type Axis, type Edge, type Length, minus, type Size, times, zero } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { Squaring, Step } from '../trimming/index.ts';
import type { Lying, OnTable, PlanInHand } from './onTable.ts';
import type { Plan, PlannedSheet } from './plan.ts';
import { type TableCode, type TableProblem, tableCodes } from './tableCodes.ts';

/** How far a plan has been cut, and what went wrong or turned up meanwhile. */
export interface CutSoFar {
  /** By number of the step, how many of its workpieces have been cut, from the first on; `all` of them. */
  readonly done: ReadonlyMap<number, number | 'all'>;
  /** Spoiled or lost; either one workpiece by its id, or so many finished pieces of a kind. */
  readonly spoiled: readonly Spoiled[];
  /** Scraps that lie there and are not in the plan. */
  readonly found: readonly Found[];
}

export type Spoiled =
  | { readonly kind: 'workpiece'; readonly id: string }
  | { readonly kind: 'pieces'; readonly piece: string; readonly count: number };

export interface Found {
  readonly paper: string;
  /** With the pattern upright. */
  readonly size: Size;
}

/** The table as it is now, and what is left to do of the plan that was cut by. */
export interface TableNow {
  readonly inHand: PlanInHand;
  /** Finished pieces, workpieces to be cut further, leftovers, found scraps; what is gone is not among them. */
  readonly onTable: OnTable;
  /** What is finished: id of a workpiece on the table → id of its piece. */
  readonly finished: ReadonlyMap<string, string>;
  /** Sheets of the plan that nothing has been cut off. */
  readonly whole: readonly PlannedSheet[];
  /** Steps of the plan, or the rest of them, that can still be done, without what is gone. */
  readonly toDo: readonly Step[];
  /** By number of a step of the plan, its paper. */
  readonly paperOfStep: ReadonlyMap<number, string>;
  /** By piece id, how many are lost: spoiled ones, and those that a spoiled workpiece would have become. */
  readonly lost: ReadonlyMap<string, number>;
  /** By paper, what was spoiled and what was found. */
  readonly spoiled: ReadonlyMap<string, readonly SpoiledThing[]>;
  readonly found: ReadonlyMap<string, readonly Lying[]>;
}

/** One workpiece that was spoiled or lost. */
export interface SpoiledThing {
  readonly id: string;
  readonly size: Size;
  /** The piece that it was; `null`: not yet one. */
  readonly piece: string | null;
}

/** A table on which everything is as it was. */
export const nothingCut: CutSoFar = { done: new Map(), spoiled: [], found: [] };

/**
 * The table after the steps of a plan that are done, less what is spoiled, with what was found; or everything that is
 * wrong with what is said, because no doing of the plan's steps leaves such a table.
 */
export function tableNow(
  layout: Layout,
  inHand: PlanInHand,
  { done, spoiled, found }: CutSoFar,
): TableNow | { readonly problems: readonly TableProblem[] } {
  const table = new Table(layout, inHand);
  // What lies on the table cannot be told while it is open what was done.
  const wrongSteps = table.cut(done);
  const problems = wrongSteps.length > 0 ? wrongSteps : [...table.spoil(spoiled), ...table.lay(found)];
  return problems.length > 0 ? { problems } : table.now();
}

/** A workpiece on the table; `whole` sheets have been cut nothing off. */
interface Thing extends Lying {
  readonly whole: boolean;
  /** A margin that was cut off: nothing may come of it. */
  readonly waste: boolean;
}

class Table {
  private readonly things = new Map<string, Thing>();
  private readonly begun: Map<string, number[]>;
  private readonly gone = new Map<string, Thing>();
  private readonly found: Lying[] = [];
  private readonly toDo: Step[] = [];
  private readonly leftovers: ReadonlySet<string>;
  /** By workpiece, the step that makes it and the step that takes it. */
  private readonly madeBy = new Map<string, number>();
  private readonly takenBy = new Map<string, number>();

  constructor(
    private readonly layout: Layout,
    private readonly inHand: PlanInHand,
  ) {
    const { plan, onTable } = inHand;
    this.begun = new Map(
      [...layout.papers].map(([id, { sheets }]) => [
        id,
        sheets.map((_, stock) => onTable.begun.get(id)?.[stock] ?? 0),
      ]),
    );
    for (const lying of onTable.lying) this.things.set(lying.id, { ...lying, whole: false, waste: false });
    for (const { id, paper, stock, size } of plan.sheets) {
      const own = layout.papers.get(paper)!.sheets[stock];
      if (own === undefined) continue;
      // A whole sheet came from no step; it is never told as lying.
      const from = { kind: 'found' } as const;
      this.things.set(id, { id, paper, size, margin: own.margin, stock, from, whole: true, waste: false });
    }
    this.leftovers = new Set(plan.leftovers.map(({ id }) => id));
    for (const { step, take, gives, rest } of plan.steps) {
      for (const id of take) this.takenBy.set(id, step);
      for (const id of [...gives.flat(), ...rest]) if (id !== null) this.madeBy.set(id, step);
    }
  }

  /** Does the steps that are done, in the order of the plan. */
  cut(done: CutSoFar['done']): readonly TableProblem[] {
    const { steps } = this.inHand.plan;
    const numbers = steps.map(({ step }) => step);
    // Of a range that goes too far the first is told.
    const unknown = [...done.keys()].find((step) => !numbers.includes(step));
    const [first = 0, last = 0] = [numbers[0], numbers.at(-1)];
    const problems = unknown === undefined ? [] : [problem('stepUnknown', { step: unknown, first, last })];
    for (const step of steps) {
      const said = done.get(step.step) ?? 0;
      const count = said === 'all' ? step.take.length : said;
      if (count > step.take.length) {
        problems.push(
          problem('stepHasFewer', { step: step.step, said: count, workpieces: step.take.length }),
        );
        continue;
      }
      const cut = step.take.slice(0, count);
      const missing = cut.find((id) => !this.things.has(id));
      if (missing === undefined) {
        for (const index of cut.keys()) this.cutOne(step, index);
      } else {
        const by = this.madeBy.get(missing);
        assert(by !== undefined, 'What a step takes and is not there, a step makes', { step, missing });
        problems.push(problem('stepTooEarly', { step: step.step, by }));
      }
      if (count < step.take.length) this.toDo.push(from(step, count));
    }
    return problems;
  }

  private cutOne(step: Step, index: number): void {
    const id = step.take[index]!;
    const thing = this.things.get(id)!;
    this.things.delete(id);
    if (thing.whole) this.begin(thing);
    const left = minus(thing.size[step.axis], times(step.set, step.repeat));
    const gives = step.gives[index]!;
    const carried = carriedMargins(thing, step, {
      left,
      // Only the margin that comes off is left over at such a cut; what stays is used.
      givesMargin: gives.every((given) => this.leftovers.has(given)),
    });
    const lay = (made: string, length: Length, kind: 'piece' | 'rest', margin: Squaring | null) => {
      this.things.set(made, {
        ...thing,
        id: made,
        size: { ...thing.size, [step.axis]: length },
        margin: margin ?? noMargin,
        from: { kind, step: step.step },
        whole: false,
        waste: thing.waste || margin === null,
      });
    };
    for (const given of gives) lay(given, step.set, 'piece', carried.gives);
    const rest = step.rest[index] ?? null;
    if (rest !== null) lay(rest, left, 'rest', carried.rest);
  }

  private begin({ paper, stock }: Thing): void {
    if (stock !== null) this.begun.get(paper)![stock]! += 1;
  }

  /** Takes away what is spoiled or lost. */
  spoil(spoiled: CutSoFar['spoiled']): readonly TableProblem[] {
    const problems: TableProblem[] = [];
    for (const one of spoiled) {
      if (one.kind !== 'workpiece') continue;
      if (this.things.has(one.id)) this.takeAway(one.id);
      else problems.push(this.notThere(one.id));
    }
    // Pieces after workpieces: any of them will do, and those that were named are gone.
    const { finished, pieces } = this.inHand.plan;
    for (const one of spoiled) {
      if (one.kind !== 'pieces') continue;
      if (!pieces.some(({ id }) => id === one.piece)) {
        const names = { piece: one.piece, pieces: pieces.map(({ id }) => id).join(', ') };
        problems.push(problem('pieceUnknown', {}, names));
        continue;
      }
      const there = [...finished].flatMap(([id, piece]) =>
        piece === one.piece && this.things.has(id) ? [id] : [],
      );
      if (there.length < one.count) {
        const numbers = { said: one.count, finished: there.length };
        problems.push(problem('piecesTooFew', numbers, { piece: one.piece }));
        continue;
      }
      for (const id of there.slice(there.length - one.count)) this.takeAway(id);
    }
    return problems;
  }

  private takeAway(id: string): void {
    const thing = this.things.get(id)!;
    if (thing.whole) this.begin(thing);
    this.things.delete(id);
    this.gone.set(id, thing);
  }

  private notThere(id: string): TableProblem {
    if (this.gone.has(id)) return problem('spoiledTwice', {}, { id });
    const taken = this.takenBy.get(id);
    const made = this.madeBy.get(id);
    const waiting =
      made !== undefined &&
      this.toDo.some(({ gives, rest }) => gives.flat().includes(id) || rest.includes(id));
    if (waiting) return problem('workpieceNotYet', { step: made }, { id });
    if (taken !== undefined) return problem('workpieceCutUp', { step: taken }, { id });
    return problem('workpieceUnknown', {}, { id });
  }

  /** Lays down what was found. */
  lay(found: CutSoFar['found']): readonly TableProblem[] {
    const problems: TableProblem[] = [];
    const { papers } = this.layout;
    for (const { paper, size } of found) {
      if (!papers.has(paper)) {
        problems.push(problem('paperUnknownOnTable', {}, { paper, papers: [...papers.keys()].join(', ') }));
        continue;
      }
      const others = [...this.things.keys(), ...this.gone.keys(), ...this.madeBy.keys()];
      // No id of a paper has a point, so no sheet is ever called so.
      const id = firstFree((number) => `${paper}.found-${number}`, new Set(others));
      const lying: Lying = { id, paper, size, margin: noMargin, stock: null, from: { kind: 'found' } };
      this.things.set(id, { ...lying, whole: false, waste: false });
      this.found.push(lying);
    }
    return problems;
  }

  now(): TableNow {
    const { inHand, layout } = this;
    const { plan, onTable: before } = inHand;
    const toDo = withoutGone(this.toDo, new Set(this.gone.keys()));
    const there = [...this.things.values()].filter(({ waste }) => !waste);
    const lying = there
      .filter(({ whole }) => !whole)
      .map(({ id, paper, size, margin, stock, from }) => ({ id, paper, size, margin, stock, from }));
    const whole = plan.sheets.filter(({ id }) => this.things.get(id)?.whole);
    const finished = new Map([...plan.finished].filter(([id]) => this.things.has(id)));
    const lost = new Map<string, number>();
    const willBe = new Set([...finished.keys(), ...toDo.kept]);
    const wasToBe = new Set([...this.gone.keys(), ...toDo.gone]);
    for (const [id, piece] of plan.finished) {
      assert(willBe.has(id) !== wasToBe.has(id), 'A piece is made, to be made or lost', { id });
      if (wasToBe.has(id)) lost.set(piece, (lost.get(piece) ?? 0) + 1);
    }
    const begun = new Map([...this.begun].filter(([, counts]) => counts.some((count) => count > 0)));
    return {
      inHand,
      onTable: {
        begun,
        lying,
        steps: Math.max(before.steps, ...plan.steps.map(({ step }) => step)),
        sheets: new Map([...layout.papers.keys()].map((id) => [id, this.highestSheet(id)])),
      },
      finished,
      whole,
      toDo:
        toDo.steps.length === plan.steps.length && toDo.steps.every((step, at) => step === plan.steps[at])
          ? plan.steps
          : toDo.steps,
      paperOfStep: papersOfSteps(plan),
      lost,
      spoiled: byPaper([...this.gone.values()], ({ id, size }) => ({
        id,
        size,
        piece: plan.finished.get(id) ?? null,
      })),
      found: byPaper(this.found, (thing) => thing),
    };
  }

  private highestSheet(paper: string): number {
    const before = this.inHand.onTable.sheets.get(paper) ?? 0;
    const numbers = this.inHand.plan.sheets.flatMap(({ id, paper: of }) => {
      const number = of === paper && id.startsWith(`${paper}-`) ? id.slice(paper.length + 1) : '';
      return /^\d{1,9}$/.test(number) ? [Number(number)] : [];
    });
    return Math.max(before, ...numbers);
  }
}

/** That of a workpiece whose edges are all good. */
export const noMargin: Squaring = { left: zero, right: zero, top: zero, bottom: zero };

/** The step for its workpieces from `count` on. */
function from(step: Step, count: number): Step {
  if (count === 0) return step;
  return {
    ...step,
    take: step.take.slice(count),
    gives: step.gives.slice(count),
    rest: step.rest.slice(count),
  };
}

/**
 * The margins that what is measured off and what remains still carry; `null` for the margin itself, of which nothing
 * may come. The margin that a step cuts off is that of the edge it says, or else one of that width along its axis.
 */
function carriedMargins(
  { margin }: Thing,
  { axis, set, squares }: Step,
  { left, givesMargin }: { readonly left: Length; readonly givesMargin: boolean },
): { readonly gives: Squaring | null; readonly rest: Squaring | null } {
  const along = edgesAlong[axis].filter((edge) => margin[edge] > 0);
  const edge = squares ?? along.find((each) => margin[each] === set || margin[each] === left);
  if (along.length === 0 || edge === undefined) return { gives: margin, rest: margin };
  const without = { ...margin, [edge]: zero };
  const measured = margin[edge] === set && (margin[edge] !== left || givesMargin);
  return measured ? { gives: null, rest: without } : { gives: without, rest: null };
}

const edgesAlong = { width: ['left', 'right'], height: ['top', 'bottom'] } as const satisfies Record<
  Axis,
  readonly Edge[]
>;

function papersOfSteps({ sheets, steps }: Plan): ReadonlyMap<number, string> {
  const papers = new Map(sheets.map(({ id, paper }) => [id, paper]));
  return new Map(
    steps.map(({ step, take, gives, rest }) => {
      const paper = papers.get(take[0]!)!;
      for (const id of [...gives.flat(), ...rest]) if (id !== null) papers.set(id, paper);
      return [step, paper] as const;
    }),
  );
}

/**
 * The steps without what is gone and what would have been made of it; `kept` and `gone` are the ids of what the steps
 * make and of what they would have made.
 */
function withoutGone(
  steps: readonly Step[],
  spoiled: ReadonlySet<string>,
): { readonly steps: readonly Step[]; readonly kept: readonly string[]; readonly gone: readonly string[] } {
  const gone = new Set(spoiled);
  const kept: string[] = [];
  const left = steps.flatMap((step): Step[] => {
    const made = (index: number) => [
      ...step.gives[index]!,
      ...[step.rest[index] ?? null].filter((id) => id !== null),
    ];
    const stays = step.take.map((id) => !gone.has(id));
    for (const [index, stay] of stays.entries()) {
      if (stay) kept.push(...made(index));
      else for (const id of made(index)) gone.add(id);
    }
    if (!stays.includes(true)) return [];
    if (!stays.includes(false)) return [step];
    const only = <T>(list: readonly T[]) => list.filter((_, index) => stays[index]);
    return [{ ...step, take: only(step.take), gives: only(step.gives), rest: only(step.rest) }];
  });
  return { steps: left, kept, gone: [...gone].filter((id) => !spoiled.has(id)) };
}

function byPaper<From extends { readonly paper: string }, To>(
  things: readonly From[],
  told: (thing: From) => To,
): ReadonlyMap<string, readonly To[]> {
  const papers = new Map<string, To[]>();
  for (const thing of things) papers.set(thing.paper, [...(papers.get(thing.paper) ?? []), told(thing)]);
  return papers;
}

function firstFree(name: (number: number) => string, taken: ReadonlySet<string>): string {
  for (let number = 1; ; number += 1) if (!taken.has(name(number))) return name(number);
}

function problem(
  code: TableCode,
  numbers: Readonly<Record<string, number>>,
  names: Readonly<Record<string, string>> = {},
): TableProblem {
  return { code, severity: tableCodes[code], where: '', numbers, names };
}
