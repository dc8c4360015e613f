import type { Axis, Edge } from '../measure/index.ts';
import type { PlanRecord, SizeRecord, StepRecord } from './planRecord.ts';

/** What is known of the papers and the trimmer beside the plan itself; each adds checks. */
export interface ReplayConditions {
  /** By paper id, the sheets on hand in the order of `SheetRecord.stock`. */
  readonly stock?: ReadonlyMap<string, readonly ReplayStock[]>;
  readonly trimmer?: ReplayTrimmer | null;
  /** The steps go on from others: their numbers ascend, but need not begin at 1 and may leave some out. */
  readonly numberedOn?: boolean;
}

export interface ReplayStock {
  readonly size: SizeRecord;
  readonly count: number | null;
  readonly cost: number;
  /** What must be cut off each edge before the sheet is used, in ticks. */
  readonly margin: Readonly<Record<Edge, number>>;
}

/** Limits in ticks; `null`: none. */
export interface ReplayTrimmer {
  readonly marks: number | null;
  readonly longest: number | null;
  /** Narrowest strip that is kept or cut again. */
  readonly narrowest: number | null;
  /** The largest setting on either side of the blade; no ruler on the other side is `null` there. */
  readonly reach?: { readonly measuringSide: number | null; readonly otherSide: number | null };
  /** On the measuring side it cuts so much more than its ruler reads. */
  readonly correction?: number;
}

/** Something in a plan that does not come out when it is followed. */
export interface Fault {
  readonly code: FaultCode;
  /** Number of the step, or `null` for the plan as a whole. */
  readonly step: number | null;
  /** The workpiece, piece, sheet or paper it is about. */
  readonly id: string;
  readonly expected: string;
  readonly found: string;
}

export type FaultCode =
  | 'step-number'
  | 'take-nothing'
  | 'not-on-the-table'
  | 'unequal-workpieces'
  | 'id-used-twice'
  | 'wrong-count'
  | 'does-not-fit'
  | 'rest-differs'
  | 'no-pass'
  | 'not-squared'
  | 'unknown-piece'
  | 'wrong-paper'
  | 'wrong-size'
  | 'margin-used'
  | 'finished-is-not-there'
  | 'leftover-differs'
  | 'left-on-the-table'
  | 'sheet-not-used'
  | 'too-few'
  | 'unknown-sheet'
  | 'too-many-sheets'
  | 'figure-differs'
  | 'proof-differs'
  | 'off-the-marks'
  | 'beyond-reach'
  | 'dial-differs'
  | 'cut-too-long'
  | 'strip-too-narrow';

/**
 * Follows the steps of a plan on imaginary sheets and lists all that does not come out; empty for a true plan.
 *
 * It knows the rules of cutting and nothing of how plans are made: every cut runs from edge to edge of its
 * workpiece, gives pieces of exactly `set`, and leaves the rest; at the end exactly the finished pieces and the
 * leftovers lie on the table. Sizes are compared to the tick. The figures by paper (sheets, passes, settings,
 * turns, cost) are counted again. Never throws on a record of the right types; linear in the number of steps.
 */
export function replay(plan: PlanRecord, conditions: ReplayConditions = {}): readonly Fault[] {
  const faults: Fault[] = [];
  const fault: SayFault = (code, step, id, expected, found) => {
    faults.push({ code, step, id, expected: String(expected), found: String(found) });
  };
  const bench: Bench = { onTable: new Map(), usedIds: new Set(), touched: new Set(), figures: new Map() };
  layOutSheets(plan, conditions, bench, fault);
  for (const [index, step] of plan.steps.entries()) {
    const number = conditions.numberedOn
      ? Math.max(step.step, (plan.steps[index - 1]?.step ?? 0) + 1)
      : index + 1;
    if (step.step !== number) fault('step-number', step.step, '', number, step.step);
    follow(step, conditions.trimmer ?? null, bench, fault);
  }
  takeUpFinished(plan, conditions.trimmer ?? null, bench, fault);
  takeUpLeftovers(plan, conditions.trimmer ?? null, bench, fault);
  for (const [id, workpiece] of bench.onTable) {
    fault('left-on-the-table', null, id, 'finished or a leftover', shown(workpiece));
  }
  for (const sheet of plan.sheets) {
    if (!bench.touched.has(sheet.id)) fault('sheet-not-used', null, sheet.id, 'used', 'not used');
  }
  compareFigures(plan, conditions, bench, fault);
  return faults;
}

/** What lies on the imaginary table, and what has been counted so far. */
interface Bench {
  readonly onTable: Map<string, Workpiece>;
  readonly usedIds: Set<string>;
  /** Sheets that a step or a finished piece came from. */
  readonly touched: Set<string>;
  /** By paper. */
  readonly figures: Map<string, Figures>;
}

interface Figures {
  sheets: number;
  passes: number;
  settings: number;
  turns: number;
  lastSet: number | null;
}

interface Workpiece {
  readonly paper: string;
  readonly width: number;
  readonly height: number;
  /** The axis of the step that made it; `null` for a sheet. */
  readonly madeBy: Axis | null;
  readonly sheet: string;
  /** Margins of the sheet that it still carries, by the axis they lie along. */
  readonly margins: Margins;
  /** It is a margin itself: nothing may come of it. */
  readonly waste: boolean;
}

type Margins = Readonly<Record<Axis, readonly number[]>>;

type SayFault = (code: FaultCode, step: number | null, id: string, expected: unknown, found: unknown) => void;

function layOutSheets(plan: PlanRecord, conditions: ReplayConditions, bench: Bench, fault: SayFault): void {
  const used = new Map<ReplayStock, number>();
  for (const sheet of plan.sheets) {
    if (bench.usedIds.has(sheet.id)) fault('id-used-twice', null, sheet.id, 'a new id', sheet.id);
    bench.usedIds.add(sheet.id);
    figuresOf(sheet.paper, bench).sheets += 1;
    const stock = conditions.stock?.get(sheet.paper)?.[sheet.stock];
    if (stock !== undefined) {
      const count = (used.get(stock) ?? 0) + 1;
      used.set(stock, count);
      if (stock.count !== null && count > stock.count) {
        fault('too-many-sheets', null, sheet.id, `at most ${stock.count}`, count);
      }
    }
    if (conditions.stock !== undefined && !(stock !== undefined && sameSize(stock.size, sheet.size))) {
      fault('unknown-sheet', null, sheet.id, stock?.size ?? 'a sheet on hand', sheet.size);
    }
    bench.onTable.set(sheet.id, {
      paper: sheet.paper,
      width: sheet.size[0],
      height: sheet.size[1],
      madeBy: null,
      sheet: sheet.id,
      margins: {
        width: [stock?.margin.left ?? 0, stock?.margin.right ?? 0].filter((ticks) => ticks > 0),
        height: [stock?.margin.top ?? 0, stock?.margin.bottom ?? 0].filter((ticks) => ticks > 0),
      },
      waste: false,
    });
  }
}

/** Takes the step's workpieces from the table, lays down what comes of them, and counts the effort. */
function follow(step: StepRecord, trimmer: ReplayTrimmer | null, bench: Bench, fault: SayFault): void {
  if (step.take.length === 0) fault('take-nothing', step.step, '', 'a workpiece', 'none');
  if (step.gives.length !== step.take.length || step.rest.length !== step.take.length) {
    fault('wrong-count', step.step, '', step.take.length, `${step.gives.length} and ${step.rest.length}`);
  }
  checkSetting(step, trimmer, fault);
  let first: Workpiece | null = null;
  for (const [at, id] of step.take.entries()) {
    const workpiece = bench.onTable.get(id);
    if (workpiece === undefined) {
      fault('not-on-the-table', step.step, id, 'a workpiece on the table', 'none');
      continue;
    }
    bench.onTable.delete(id);
    bench.touched.add(workpiece.sheet);
    first ??= workpiece;
    if (first.paper !== workpiece.paper || !sameSize(sizeOf(first), sizeOf(workpiece))) {
      fault('unequal-workpieces', step.step, id, shown(first), shown(workpiece));
    }
    const gives = step.gives[at] ?? [];
    const rest = step.rest[at] ?? null;
    const left = workpiece[step.axis] - step.repeat * step.set;
    checkCut(step, id, workpiece, { gives, rest, left }, trimmer, fault);

    const figures = figuresOf(workpiece.paper, bench);
    figures.passes += step.repeat - (rest === null ? 1 : 0);
    if (figures.lastSet !== step.set) figures.settings += 1;
    figures.lastSet = step.set;
    if (workpiece.madeBy !== null && workpiece.madeBy !== step.axis) figures.turns += 1;

    const margins = marginsAfter(workpiece, step, left);
    if (margins === null) fault('not-squared', step.step, id, `its ${step.axis} squared first`, step.set);
    const lay = (name: string, along: number, carried: Margins | 'waste') => {
      if (bench.usedIds.has(name)) fault('id-used-twice', step.step, name, 'a new id', name);
      bench.usedIds.add(name);
      bench.onTable.set(name, {
        ...workpiece,
        [step.axis]: along,
        madeBy: step.axis,
        margins: carried === 'waste' ? { width: [], height: [] } : carried,
        waste: workpiece.waste || carried === 'waste',
      });
    };
    for (const name of gives) lay(name, step.set, margins?.gives ?? 'waste');
    if (rest !== null) lay(rest, left, margins?.rest ?? 'waste');
  }
}

function checkCut(
  step: StepRecord,
  id: string,
  workpiece: Workpiece,
  { gives, rest, left }: { gives: readonly string[]; rest: string | null; left: number },
  trimmer: ReplayTrimmer | null,
  fault: SayFault,
): void {
  if (gives.length !== step.repeat) fault('wrong-count', step.step, id, step.repeat, gives.length);
  if (left < 0) fault('does-not-fit', step.step, id, workpiece[step.axis], step.repeat * step.set);
  if (left === 0 && rest !== null) fault('rest-differs', step.step, id, 'no rest', rest);
  if (left > 0 && rest === null) fault('rest-differs', step.step, id, `a rest of ${left}`, 'none');
  if (step.repeat - (rest === null ? 1 : 0) < 1) fault('no-pass', step.step, id, 'at least one pass', 'none');
  const cutLength = step.axis === 'width' ? workpiece.height : workpiece.width;
  if (trimmer?.longest && cutLength > trimmer.longest) {
    fault('cut-too-long', step.step, id, trimmer.longest, cutLength);
  }
  if (isNarrow(workpiece, trimmer)) {
    fault('strip-too-narrow', step.step, id, trimmer?.narrowest, shown(workpiece));
  }
}

function takeUpFinished(
  plan: PlanRecord,
  trimmer: ReplayTrimmer | null,
  bench: Bench,
  fault: SayFault,
): void {
  const pieces = new Map(plan.pieces.map((piece) => [piece.piece, piece]));
  const made = new Map<string, number>();
  for (const [id, pieceId] of Object.entries(plan.finished)) {
    const workpiece = bench.onTable.get(id);
    if (workpiece === undefined) {
      fault('finished-is-not-there', null, id, pieceId, 'nothing on the table');
      continue;
    }
    bench.onTable.delete(id);
    bench.touched.add(workpiece.sheet);
    checkKept(id, workpiece, trimmer, fault);
    const piece = pieces.get(pieceId);
    if (piece === undefined) {
      fault('unknown-piece', null, id, 'a piece of the plan', pieceId);
      continue;
    }
    made.set(pieceId, (made.get(pieceId) ?? 0) + 1);
    if (piece.paper !== workpiece.paper) fault('wrong-paper', null, id, piece.paper, workpiece.paper);
    const turned: SizeRecord = [workpiece.height, workpiece.width];
    if (
      !sameSize(piece.size, sizeOf(workpiece)) &&
      !(piece.turn === 'free' && sameSize(piece.size, turned))
    ) {
      fault('wrong-size', null, id, `${piece.size.join(' x ')} ${piece.turn}`, shown(workpiece));
    }
  }
  for (const piece of plan.pieces) {
    const count = made.get(piece.piece) ?? 0;
    if (count < piece.need) fault('too-few', null, piece.piece, piece.need, count);
  }
}

function takeUpLeftovers(
  plan: PlanRecord,
  trimmer: ReplayTrimmer | null,
  bench: Bench,
  fault: SayFault,
): void {
  for (const leftover of plan.leftovers) {
    const workpiece = bench.onTable.get(leftover.id);
    if (workpiece === undefined || !sameSize(sizeOf(workpiece), leftover.size)) {
      const found = workpiece === undefined ? 'nothing on the table' : shown(workpiece);
      fault('leftover-differs', null, leftover.id, leftover.size.join(' x '), found);
    }
    bench.onTable.delete(leftover.id);
    if (workpiece !== undefined && leftover.keep) checkKept(leftover.id, workpiece, trimmer, fault);
  }
}

/** What is kept carries no margin of its sheet and is no narrower than the trimmer holds. */
function checkKept(id: string, workpiece: Workpiece, trimmer: ReplayTrimmer | null, fault: SayFault): void {
  if (workpiece.waste || workpiece.margins.width.length + workpiece.margins.height.length > 0) {
    fault('margin-used', null, id, 'no margin of the sheet', shown(workpiece));
  }
  if (isNarrow(workpiece, trimmer)) {
    fault('strip-too-narrow', null, id, trimmer?.narrowest, shown(workpiece));
  }
}

function compareFigures(plan: PlanRecord, conditions: ReplayConditions, bench: Bench, fault: SayFault): void {
  const said = new Map(Object.entries(plan.papers));
  for (const paper of new Set([...bench.figures.keys(), ...said.keys()])) {
    const counted = figuresOf(paper, bench);
    const printed = said.get(paper);
    for (const figure of ['sheets', 'passes', 'settings', 'turns'] as const) {
      if (printed?.[figure] !== counted[figure]) {
        fault('figure-differs', null, `${paper} ${figure}`, counted[figure], printed?.[figure]);
      }
    }
    if (printed === undefined) continue;
    const stock = conditions.stock?.get(paper);
    if (stock !== undefined) {
      const costs = plan.sheets
        .filter((sheet) => sheet.paper === paper)
        .map((sheet) => stock[sheet.stock]?.cost ?? 0);
      const cost = costs.reduce((total, one) => total + one, 0);
      if (!near(cost, printed.cost)) fault('figure-differs', null, `${paper} cost`, cost, printed.cost);
    }
    const meets = near(printed.cost, printed.bound);
    if (printed.proved !== meets || (printed.bound > printed.cost && !meets)) {
      const found = `proved ${printed.proved}, bound ${printed.bound} of ${printed.cost}`;
      fault('proof-differs', null, paper, `proved ${meets}`, found);
    }
  }
}

/**
 * What margins the pieces and the rest of a step carry; `null` when that cannot be told. A margin along the
 * step's axis goes when exactly its width is split off, on either side of the blade.
 */
function marginsAfter(
  workpiece: Workpiece,
  step: StepRecord,
  left: number,
): { gives: Margins | 'waste'; rest: Margins | 'waste' } | null {
  const along = workpiece.margins[step.axis];
  if (along.length === 0) return { gives: workpiece.margins, rest: workpiece.margins };
  const without = (ticks: number): Margins => {
    const remaining = [...along];
    remaining.splice(remaining.indexOf(ticks), 1);
    return { ...workpiece.margins, [step.axis]: remaining };
  };
  if (step.repeat === 1 && along.includes(left)) return { gives: without(left), rest: 'waste' };
  if (step.repeat === 1 && along.includes(step.set)) return { gives: 'waste', rest: without(step.set) };
  return null;
}

function checkSetting(step: StepRecord, trimmer: ReplayTrimmer | null, fault: SayFault): void {
  if (!(step.set > 0) || !Number.isSafeInteger(step.set))
    fault('does-not-fit', step.step, '', 'a length', step.set);
  if (!(step.repeat >= 1) || !Number.isSafeInteger(step.repeat)) {
    fault('no-pass', step.step, '', 'a count', step.repeat);
  }
  if (trimmer?.marks && step.set % trimmer.marks !== 0) {
    fault('off-the-marks', step.step, '', `a multiple of ${trimmer.marks}`, step.set);
  }
  if (trimmer !== null) checkDial(step, trimmer, fault);
}

/** The length is read off the ruler of its side of the blade, which goes so far; a correction is that of one side. */
function checkDial(step: StepRecord, trimmer: ReplayTrimmer, fault: SayFault): void {
  const { reach, correction = 0 } = trimmer;
  const read = step.otherSide ? step.set : step.set - correction;
  const most = step.otherSide ? (reach?.otherSide ?? 0) : (reach?.measuringSide ?? Infinity);
  if (read > most) fault('beyond-reach', step.step, '', `at most ${most}`, read);
  if ((step.dial ?? step.set) !== read) fault('dial-differs', step.step, '', read, step.dial ?? step.set);
}

function figuresOf(paper: string, bench: Bench): Figures {
  const figures = bench.figures.get(paper) ?? { sheets: 0, passes: 0, settings: 0, turns: 0, lastSet: null };
  bench.figures.set(paper, figures);
  return figures;
}

function isNarrow(workpiece: Workpiece, trimmer: ReplayTrimmer | null): boolean {
  return !!trimmer?.narrowest && Math.min(workpiece.width, workpiece.height) < trimmer.narrowest;
}

function sizeOf(workpiece: Workpiece): SizeRecord {
  return [workpiece.width, workpiece.height];
}

function sameSize(a: SizeRecord, b: SizeRecord): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

/** Costs are sums of decimals: equal to a millionth is equal. */
function near(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-6;
}

function shown(workpiece: Workpiece): string {
  return `${workpiece.width} x ${workpiece.height}`;
}
