import type { Axis, Edge } from '../measure/index.ts';
import { lengthOfTicks, type Size } from '../measure/index.ts';
import {
  type PaperRecord,
  type PieceRecord,
  type PlanRecord,
  replay,
  type SizeRecord,
  type StepRecord,
} from '../replay/index.ts';
import { type CostUnit, costUnitOf } from '../stash/index.ts';
import { type CardSet, wantedOf } from './cardSet.ts';
import { type Lying, layoutOnTable, lyingOf, type OnTable, type PlanInHand } from './onTable.ts';
import type { Dealing, PaperOutcome, Plan } from './plan.ts';
import { planRecord, replayConditions } from './planRecord.ts';
import type { Recut } from './recut.ts';
import { settledBy } from './settling.ts';
import { type TableCode, type TableProblem, tableCodes } from './tableCodes.ts';

/**
 * A plan as `plan --json` and `recut --json` write it, as far as it is needed to go on from it. `recut` is there where
 * something had been cut before its first step.
 */
export interface SavedPlan extends Omit<PlanRecord, 'papers' | 'steps'> {
  readonly steps: readonly (StepRecord & { readonly squares?: Edge })[];
  readonly papers: Readonly<Record<string, SavedPaper>>;
  readonly spares?: SavedSpares;
  readonly recut?: TableRecord;
}

interface SavedPaper extends PaperRecord {
  readonly measuredIn?: CostUnit;
  readonly leastSettings?: number;
  readonly leastPasses?: number;
}

interface SavedSpares {
  readonly made: boolean;
  readonly offers: readonly { readonly piece: string; readonly offered: number }[];
}

/** The table that a plan begins with. */
export interface TableRecord {
  /** The highest number that a step has had so far. */
  readonly steps: number;
  /** Spares made beside those that the layout asks for, by piece. */
  readonly moreSpares: Readonly<Record<string, number>>;
  readonly papers: Readonly<Record<string, PaperTableRecord>>;
}

export interface PaperTableRecord {
  /** By stock of the layout, how many sheets are whole no more. */
  readonly begun: readonly number[];
  /** The highest number in the id of a sheet so far. */
  readonly sheets: number;
  /** What lies there; the stocks of the plan count on over it from those of the layout. */
  readonly lying: readonly LyingRecord[];
}

export interface LyingRecord {
  readonly id: string;
  readonly size: SizeRecord;
  /** Margins that it still carries, by edge; absent where it has none. */
  readonly margin?: Readonly<Partial<Record<Edge, number>>>;
  /** The stock it was cut from; `null`: it was found. */
  readonly stock: number | null;
  /** The step that it was measured off or left over at; `null`: it was found. */
  readonly from: { readonly kind: 'piece' | 'rest'; readonly step: number } | null;
}

/** A plan that begins with a table, as it is written out for others to read and to go on from; a plan that begins with none is just `planRecord`. */
export function recutRecord(
  { plan, onTable }: Pick<Recut, 'plan' | 'onTable'>,
  moreSpares: ReadonlyMap<string, number> = new Map(),
): PlanRecord & { readonly recut?: TableRecord } {
  const record = planRecord(plan);
  if (onTable.begun.size === 0 && onTable.lying.length === 0 && onTable.steps === 0) return record;
  const papers = [...onTable.sheets].map(([id, sheets]): [string, PaperTableRecord] => {
    const lying = lyingOf(onTable, id).map(({ id: workpiece, size, margin, stock, from }): LyingRecord => {
      const carried = Object.entries(margin).filter(([, length]) => length > 0);
      return {
        id: workpiece,
        size: [size.width, size.height],
        ...(carried.length === 0 ? {} : { margin: Object.fromEntries(carried) }),
        stock,
        from: from.kind === 'found' ? null : from,
      };
    });
    return [id, { begun: onTable.begun.get(id) ?? [], sheets, lying }];
  });
  const table: TableRecord = {
    steps: onTable.steps,
    moreSpares: Object.fromEntries(moreSpares),
    papers: Object.fromEntries(papers),
  };
  return { ...record, recut: table };
}

/** A plan that was saved and fits its set, ready to go on with. */
export interface ReadPlan {
  readonly inHand: PlanInHand;
  /** Spares that it makes beside those that the layout asks for. */
  readonly moreSpares: ReadonlyMap<string, number>;
}

/**
 * The plan that was saved, as a value, when it fits the layout and comes out; else what keeps it from that. For how many
 * cards it was made may differ from what the layout wants now, and there may be more sheets than when it was made.
 */
export function readSavedPlan(
  planned: Pick<CardSet, 'layout' | 'arrangement' | 'trimmer'>,
  saved: SavedPlan,
): ReadPlan | { readonly problems: readonly TableProblem[] } {
  const set = settledBy(planned, dealingIn(saved));
  const unknown = [...saved.sheets, ...saved.pieces]
    .map(({ paper }) => paper)
    .concat(Object.keys(saved.papers), Object.keys(saved.recut?.papers ?? {}))
    .concat(Object.values(saved.dealt ?? {}).flatMap((runs) => runs.map(({ paper }) => paper)))
    .filter((paper) => !set.layout.papers.has(paper));
  const papers = [...set.layout.papers.keys()].join(', ');
  if (unknown.length > 0)
    return {
      problems: [...new Set(unknown)].map((paper) => problem('planPaperUnknown', '', {}, { paper, papers })),
    };
  const onTable = onTableOf(saved.recut);
  const problems = [...pieceProblems(set, saved), ...sheetProblems(set, saved, onTable)];
  if (problems.length > 0) return { problems };

  const layout = layoutOnTable(set.layout, onTable);
  const plan = planOf(set, saved, layout.papers);
  const conditions = { ...replayConditions(layout, set.trimmer), numberedOn: saved.recut !== undefined };
  const [fault] = replay(planRecord(plan), conditions);
  if (fault !== undefined) {
    const { code, step, id, expected, found } = fault;
    return {
      problems: [problem('planNotTrue', '', { step: step ?? 0 }, { fault: code, id, expected, found })],
    };
  }
  const spares = saved.spares?.made ? saved.spares.offers : [];
  const moreSpares = new Map([
    ...spares.map(({ piece, offered }) => [piece, offered] as const),
    ...Object.entries(saved.recut?.moreSpares ?? {}),
  ]);
  return { inHand: { plan, onTable }, moreSpares };
}

/** The kinds of piece have to be those of the layout, for as many cards as the plan was made for. */
function pieceProblems(
  set: Pick<CardSet, 'layout' | 'arrangement' | 'trimmer'>,
  { pieces, cards }: SavedPlan,
): readonly TableProblem[] {
  const wanted = wantedOf({ ...set, layout: { ...set.layout, cards } });
  const missing = wanted.filter(({ id }) => !pieces.some(({ piece }) => piece === id));
  return [
    ...pieces.flatMap((record, index): TableProblem[] => {
      const { piece, size, turn, need } = record;
      const where = `pieces[${index}]`;
      const own = wanted.find(({ id }) => id === piece);
      // What is wanted no more may have been cut all the same.
      if (own === undefined)
        return need === 0 ? [] : [problem('planPieceUnknown', where, { cards }, { piece })];
      if (own.size.width === size[0] && own.size.height === size[1] && own.turn === turn && fits(record, own))
        return [];
      const numbers = {
        width: size[0],
        height: size[1],
        layoutWidth: own.size.width,
        layoutHeight: own.size.height,
      };
      return [problem('planPieceDiffers', where, numbers, { piece })];
    }),
    ...missing.map(({ id }) => problem('planPieceMissing', 'pieces', { cards }, { piece: id })),
  ];
}

function fits({ part, paper }: PieceRecord, own: { readonly part: string; readonly paper: string }): boolean {
  return part === own.part && paper === own.paper;
}

function sheetProblems(
  { layout }: Pick<CardSet, 'layout'>,
  { sheets, steps, recut }: SavedPlan,
  onTable: OnTable,
): readonly TableProblem[] {
  // Each id once: what lies there is no other thing that lies there, nor what a step makes.
  const ids = new Set<string | null>(steps.flatMap(({ gives, rest }) => [...gives.flat(), ...rest]));
  return [
    ...sheets.flatMap(({ id, paper, stock, size }, index): TableProblem[] => {
      const own = layout.papers.get(paper)!.sheets;
      const lying = lyingOf(onTable, paper)[stock - own.length];
      const known = own[stock]?.size ?? (lying?.id === id ? lying.size : undefined);
      if (known?.width === size[0] && known.height === size[1]) return [];
      const numbers = { width: size[0], height: size[1] };
      return [problem('planSheetDiffers', `sheets[${index}]`, numbers, { sheet: id, paper })];
    }),
    ...Object.entries(recut?.papers ?? {}).flatMap(([paper, { begun, lying }]) => {
      const own = layout.papers.get(paper)!.sheets;
      const where = `recut.papers.${paper}`;
      return [
        ...begun.flatMap((count, stock) => {
          const there = stock < own.length ? (own[stock]!.count ?? Infinity) : 0;
          const numbers = { begun: count, count: there };
          return count <= there
            ? []
            : [problem('planSheetsFewer', `${where}.begun[${stock}]`, numbers, { paper })];
        }),
        ...lying.flatMap(({ id, size: [width, height], stock }, index) => {
          const twice = ids.has(id);
          ids.add(id);
          if (!twice && (stock === null || stock < own.length)) return [];
          return [
            problem('planSheetDiffers', `${where}.lying[${index}]`, { width, height }, { sheet: id, paper }),
          ];
        }),
      ];
    }),
  ];
}

function onTableOf(table: TableRecord | undefined): OnTable {
  const papers = Object.entries(table?.papers ?? {});
  return {
    begun: new Map(papers.filter(([, { begun }]) => begun.length > 0).map(([id, { begun }]) => [id, begun])),
    lying: papers.flatMap(([paper, { lying }]) =>
      lying.map(({ id, size, margin, stock, from }): Lying => {
        const edge = (name: Edge) => lengthOfTicks(margin?.[name] ?? 0);
        return {
          id,
          paper,
          size: sizeOf(size),
          margin: { left: edge('left'), right: edge('right'), top: edge('top'), bottom: edge('bottom') },
          stock,
          from: from ?? { kind: 'found' },
        };
      }),
    ),
    steps: table?.steps ?? 0,
    sheets: new Map(papers.map(([id, { sheets }]) => [id, sheets])),
  };
}

function planOf(
  set: Pick<CardSet, 'layout' | 'arrangement' | 'trimmer'>,
  saved: SavedPlan,
  papers: CardSet['layout']['papers'],
): Plan {
  const wanted = wantedOf({ ...set, layout: { ...set.layout, cards: saved.cards } });
  const dealt = dealingIn(saved);
  return {
    kind: 'plan',
    cards: saved.cards,
    ...(dealt === undefined ? {} : { dealt }),
    pieces: saved.pieces.map(({ piece, part, paper, size, need, turn }) => {
      const spare = wanted.find(({ id }) => id === piece)?.spare ?? 0;
      return { id: piece, part, paper, size: sizeOf(size), need, spare: Math.min(spare, need), turn };
    }),
    sheets: saved.sheets.map(({ id, paper, stock, size }) => ({ id, paper, stock, size: sizeOf(size) })),
    steps: saved.steps.map(
      ({ step, take, axis, set: length, repeat, gives, rest, dial, otherSide, squares }) => ({
        step,
        take,
        axis: axis satisfies Axis,
        set: lengthOfTicks(length),
        repeat,
        gives,
        rest,
        ...(dial === undefined ? {} : { dial: lengthOfTicks(dial) }),
        ...(otherSide === undefined ? {} : { otherSide }),
        ...(squares === undefined ? {} : { squares }),
      }),
    ),
    finished: new Map(Object.entries(saved.finished)),
    leftovers: saved.leftovers.map(({ id, size, keep }) => ({ id, size: sizeOf(size), keep })),
    papers: new Map(
      Object.entries(saved.papers).map(([id, paper]): [string, PaperOutcome] => [
        id,
        {
          passes: paper.passes,
          settings: paper.settings,
          turns: paper.turns,
          sheets: paper.sheets,
          cost: paper.cost,
          bound: paper.bound,
          proved: paper.proved,
          measuredIn: paper.measuredIn ?? costUnitOf(papers.get(id)!),
          leastSettings: paper.leastSettings ?? 0,
          leastPasses: paper.leastPasses ?? 0,
        },
      ]),
    ),
  };
}

/** How the saved plan deals the parts from leftovers. */
export function dealingIn({ dealt }: Pick<SavedPlan, 'dealt'>): Dealing | undefined {
  return dealt === undefined ? undefined : new Map(Object.entries(dealt));
}

function sizeOf([width, height]: SizeRecord): Size {
  return { width: lengthOfTicks(width), height: lengthOfTicks(height) };
}

function problem(
  code: TableCode,
  where: string,
  numbers: Readonly<Record<string, number>>,
  names: Readonly<Record<string, string>>,
): TableProblem {
  return { code, severity: tableCodes[code], where, numbers, names };
}
