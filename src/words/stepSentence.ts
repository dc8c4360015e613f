import type { Layout } from '../layout/index.ts';
import { type Axis, inches, type Length, type Size, showLengthWithUnit, showSize } from '../measure/index.ts';
import { type Lying, type Piece, type Plan, proveFirstOf, type StepStakes } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import type { Paper } from '../stash/index.ts';
import { type Step, strokesOf, type Trimmer } from '../trimming/index.ts';
import { capital, counted, listed, numbersListed } from './count.ts';
import { whereOnRuler } from './length.ts';
import { measuredFrom, sideOf } from './measuredFrom.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';
import { proveSentence, stakesSentence } from './stakesSentence.ts';
import { isSliver, tableOf, type Workpiece } from './workpiece.ts';

/** What the hand is told at one step, a sentence each, in the order they are needed at the trimmer. */
export interface StepWords {
  readonly step: number;
  readonly paper: string;
  /** `Set 5 in.`; where a test cut found the ruler off, `Set 5 in, which on your trimmer reads 4 31/32 in.` */
  readonly set: string;
  /** Where the trimmer's marks have it: `halfway between the 1/2 and the 3/4 mark`; empty without a marked trimmer. */
  readonly mark: string;
  /** `Take Meadow sheet 1, 12 x 12 in.` */
  readonly take: string;
  /** `Lay it sideways, with the top of the print to the left.`; empty where it lies the same every way. */
  readonly lay: string;
  /** `Cut 2 pieces off: 2 passes.` */
  readonly cut: string;
  /** `Prove one first: …`; empty where nothing new begins. */
  readonly prove: string;
  /** `That makes 2 strips, 12 x 5 in, for step 2.` */
  readonly gives: string;
  /** `12 x 2 in is left over: keep it.`; empty where nothing remains. */
  readonly rest: string;
  /** `Nothing to spare: …`; empty where there is. */
  readonly care: string;
  /** `Point of no return: …`; empty where a slip can be made good, or where the stakes are not known. */
  readonly stake: string;
}

/**
 * Every step of the plan in words, in the plan's order; `trimmer` is `null` where nobody said which, `lying` is what
 * lies there as the plan begins and is no whole sheet, `stakes` what is at stake at its steps.
 */
export function stepWords(
  plan: Plan,
  {
    layout,
    trimmer,
    lying = [],
    stakes = [],
  }: {
    readonly layout: Layout;
    readonly trimmer: Trimmer | null;
    readonly lying?: readonly Lying[];
    readonly stakes?: readonly StepStakes[];
  },
  showing: Showing,
): readonly StepWords[] {
  const table = tableOf(plan, lying);
  const lies = new Set(lying.map(({ id }) => id));
  const stops = proveFirstOf(plan, layout);
  const rescues = new Map(stakes.map(({ step, rescue }) => [step, rescue]));
  const names = { layout, pieces: plan.pieces };
  const size = (of: Size) => showSize(of, showing.units, showing.glyphs);
  const length = (of: Length) => showLengthWithUnit(of, showing.units, showing.glyphs);

  return plan.steps.map((step) => {
    const taken = step.take.map((id) => at(table, id));
    const first = taken[0];
    assert(first !== undefined, 'A step takes something', { step: step.step });
    const paper = layout.papers.get(first.paper);
    assert(paper !== undefined, 'A step cuts a paper of the layout', { paper: first.paper });
    const given = step.gives.flat().map((id) => at(table, id));
    const rests = step.rest.flatMap((id) => (id === null ? [] : [at(table, id)]));
    const care = careWords(step, taken, rests, length);
    const rescue = rescues.get(step.step);
    const worthTelling = rests.filter((rest) => !isSliver(rest.size));
    return {
      step: step.step,
      paper: paper.id,
      set: settingWords(step, trimmer, length),
      mark: markWords(step.dial ?? step.set, trimmer, showing),
      take: `Take ${takenWords(taken, paper)}, ${each(taken)}${size(first.size)}.`,
      lay: layWords(step, taken, {
        given,
        turned: turnedAt(step, plan, { taken, lies }),
        paper,
        trimmer,
        length,
      }),
      cut: cutWords(step, trimmer),
      prove: proveSentence(stops.get(step.step) ?? [], { isSaid: care !== '' }),
      gives: `That makes ${givenWords(given, names, step.squares !== undefined)}, ${each(given)}${size(sizeOf(given))}.`,
      rest:
        worthTelling.length === 0
          ? ''
          : restWords(worthTelling, names, { size, squares: step.squares !== undefined }),
      care,
      stake: rescue === undefined ? '' : stakesSentence(rescue, takenNoun(taken)),
    };
  });
}

/** Where the names of pieces are found. */
interface Names {
  readonly layout: Layout;
  readonly pieces: readonly Piece[];
}

/** A step said in one breath. */
export function stepSentence(words: StepWords): string {
  const { set, mark, take, lay, cut, gives, rest, care, prove, stake } = words;
  return [set, mark, take, lay, cut, prove, gives, rest, care, stake]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

/** The length, on which side of the blade if not the usual one, and what the ruler reads for it if not the same. */
function settingWords(step: Step, trimmer: Trimmer | null, length: (length: Length) => string): string {
  const { set, dial } = step;
  const edge = sideOf(step, trimmer?.measuringEdge ?? 'left');
  const side = step.otherSide ? ` on the other side of the blade, the ${edge}` : '';
  if (dial === undefined) return `Set ${length(set)}${side}.`;
  if (dial > 0) return `Set ${length(set)}, which on your trimmer reads ${length(dial)}.`;
  return `Set ${length(set)}: your ruler reads nothing so short, so draw a line there and lay it under the blade.`;
}

/**
 * The mark of the trimmer, as a sentence of its own after the setting; without a marked trimmer the exact length
 * where it can only be said in the other units.
 */
function markWords(set: Length, trimmer: Trimmer | null, { units, glyphs }: Showing): string {
  if (set <= 0) return '';
  if (trimmer === null || trimmer.marks === null) {
    const other = units === 'in' ? 'mm' : 'in';
    const exact = showLengthWithUnit(set, other, glyphs);
    const rounded = showLengthWithUnit(set, units, glyphs).startsWith('about');
    return rounded && !exact.startsWith('about') ? `That is ${exact} exactly.` : '';
  }
  // The trimmer's own marks tell in which units it is numbered.
  const own = trimmer.marks % inches(1, 64) === 0 ? 'in' : 'mm';
  const exactly = whereOnRuler(set, { units: own, step: trimmer.marks }, glyphs);
  // What no eye sees is not told in figures.
  const past = set % trimmer.marks;
  const unseen = Math.min(past, trimmer.marks - past) < inches(1, 64);
  const where = unseen ? exactly.replace(/about [\d.]+\s\w+ (past|short of)/, 'a hair $1') : exactly;
  // There is a mark just there, if a shorter one.
  const told = where.replace(': halfway', ': at the mark halfway');
  return `${own === units ? capital(told.slice(told.indexOf(': ') + 2)) : told}.`;
}

/** Whether every workpiece has to be turned a quarter since the step that made it; what lay there is first laid. */
function turnedAt(
  step: Step,
  plan: Plan,
  { taken, lies }: { readonly taken: readonly Workpiece[]; readonly lies: ReadonlySet<string> },
): boolean {
  return taken.every(({ id, from }) => {
    if (from.kind === 'sheet' || from.kind === 'found' || lies.has(id)) return false;
    return plan.steps.find((earlier) => earlier.step === from.step)?.axis !== step.axis;
  });
}

/** `Meadow sheets 1 to 3`, `2 strips from step 1 and the piece left at step 3`. */
function takenWords(taken: readonly Workpiece[], paper: Paper): string {
  const sheets = taken.flatMap(({ from }) => (from.kind === 'sheet' ? [from.number] : []));
  const made = grouped(taken, ({ from }) => {
    if (from.kind === 'sheet') return null;
    if (from.kind === 'found') return `of ${paper.name} that ${taken.length === 1 ? 'was' : 'were'} found`;
    return `${from.kind === 'rest' ? 'left at' : 'from'} step ${from.step}`;
  });
  return listed([
    ...(sheets.length > 0
      ? [`${paper.name} ${sheets.length === 1 ? 'sheet' : 'sheets'} ${numbersListed(sheets)}`]
      : []),
    ...[...made].map(([origin, pieces]) =>
      pieces.length === 1
        ? `the ${nounFor(pieces)} ${origin}`
        : `the ${counted(pieces.length, nounFor(pieces))} ${origin}`,
    ),
  ]);
}

/**
 * How the work lies under the blade. Pieces come off at the measuring edge; the top of a print that lies on its
 * side points there, so that left-handed and right-handed trimmers mirror the work but never the print.
 */
function layWords(
  step: Step,
  taken: readonly Workpiece[],
  of: {
    readonly given: readonly Workpiece[];
    readonly turned: boolean;
    readonly paper: Paper;
    readonly trimmer: Trimmer | null;
    readonly length: (length: Length) => string;
  },
): string {
  const { axis } = step;
  const size = sizeOf(taken);
  const it = taken.length === 1 ? 'it' : 'them';
  const measuringEdge = of.trimmer?.measuringEdge ?? 'left';
  const side = sideOf(step, measuringEdge);
  if (step.squares !== undefined) {
    const edge = measuredFrom(step, of.given, measuringEdge);
    return `Lay ${it} with the ${edge} edge ${step.otherSide ? `on the ${side}, where it is measured` : 'at the measuring edge'}.`;
  }
  const how = [
    ...(of.paper.up === 'any' ? [] : [standings[axis]]),
    ...(of.paper.up === 'one-way' && axis === 'height'
      ? [`the top of the print to the ${of.trimmer === null ? 'measuring edge' : side}`]
      : []),
    ...(size.width === size.height ? [] : [`with the side of ${of.length(size[axis])} along the ruler`]),
  ].join(', ');
  if (how === '') return '';
  if (!of.turned) return `Lay ${it} ${how}.`;
  return `Give ${it} a quarter turn and lay ${it} ${how}.`;
}

const standings = { width: 'upright', height: 'sideways' } as const satisfies Record<Axis, string>;

function cutWords(step: Step, trimmer: Trimmer | null): string {
  const { take, repeat, rest, squares } = step;
  const whole = rest[0] === null;
  const passes = take.length * (whole ? repeat - 1 : repeat);
  const several = take.length > 1;
  const how = whole
    ? `Cut ${several ? 'each' : 'it'} into ${repeat}`
    : `Cut ${counted(repeat, 'piece')} off${several ? ' each' : ''}`;
  const squaring = squares === undefined ? '' : ` This squares the ${squares} edge.`;
  return `${how}: ${counted(passes, 'pass')}${several ? ' in all' : ''}.${squaring}${stackWords(step, trimmer)}`;
}

/** ` In 3 stacks of 2: 3 strokes.`; empty where nothing is stacked. */
function stackWords(step: Step, trimmer: Trimmer | null): string {
  const { length: count } = step.take;
  const most = trimmer?.sheetsAtOnce ?? 1;
  if (count === 1 || most === 1) return '';
  const strokes = counted(strokesOf(step, most), 'stroke');
  const stacks = Math.ceil(count / most);
  if (stacks === 1) return ` All ${count} in one stack: ${strokes}.`;
  return ` In ${stacks} stacks of ${count % most === 0 ? '' : 'up to '}${most}: ${strokes}.`;
}

/** `4 pieces for panel and 2 strips for step 5`. */
function givenWords(given: readonly Workpiece[], names: Names, squares: boolean): string {
  return listed(
    [...grouped(given, destiny)].map(([, pieces]) => {
      const { goes } = headOf(pieces);
      if (goes.kind === 'finished') return piecesFor(goes.piece, pieces.length, names);
      const many = counted(pieces.length, nounFor(pieces));
      if (goes.kind === 'step') return `${many} for step ${goes.step}`;
      if (squares) return `${many} of margin`;
      return `${many} ${goes.keep ? 'to keep' : 'too small to keep'}`;
    }),
  );
}

/** What remains of the workpieces, and what becomes of it. */
function restWords(
  rests: readonly Workpiece[],
  names: Names,
  { size, squares }: { readonly size: (size: Size) => string; readonly squares: boolean },
): string {
  const one = rests.length === 1;
  const shown = one
    ? size(sizeOf(rests))
    : `${counted(rests.length, nounFor(rests))}, each ${size(sizeOf(rests))}`;
  const { goes } = headOf(rests);
  if (rests.some((rest) => destiny(rest) !== destiny(headOf(rests)))) {
    return `What remains makes ${givenWords(rests, names, squares)}, ${each(rests)}${size(sizeOf(rests))}.`;
  }
  if (goes.kind === 'finished') {
    return `What remains makes ${piecesFor(goes.piece, rests.length, names)}, ${each(rests)}${size(sizeOf(rests))}.`;
  }
  if (goes.kind === 'step') return `What remains, ${shown}, is for step ${goes.step}.`;
  if (squares) return `What remains, ${shown}, is the margin.`;
  if (!goes.keep) return `What remains, ${shown}, is too small to keep.`;
  return capital(`${shown}${one ? ' is left over: keep it.' : ', are left over: keep them.'}`);
}

/** Warns where the last piece is whatever the sheet has left, so that a sheet cut short spoils it. */
function careWords(
  { axis, rest }: Step,
  taken: readonly Workpiece[],
  rests: readonly Workpiece[],
  length: (length: Length) => string,
): string {
  const lastRemains = rest[0] === null || rests.some(({ goes }) => goes.kind === 'finished');
  if (!lastRemains || !taken.some(({ unmeasured }) => unmeasured[axis])) return '';
  const it = taken.length === 1 ? 'it has' : 'they have';
  return `Nothing to spare: measure first, ${it} to be a full ${length(sizeOf(taken)[axis])} along the ruler.`;
}

function piecesFor(pieceId: string, count: number, { layout, pieces }: Names): string {
  const part = pieces.find(({ id }) => id === pieceId)?.part ?? pieceId;
  return part === 'base'
    ? counted(count, 'base')
    : `${counted(count, 'piece')} for ${partName(layout, part)}`;
}

function destiny({ goes }: Workpiece): string {
  if (goes.kind === 'finished') return `finished ${goes.piece}`;
  return goes.kind === 'step' ? `step ${goes.step}` : `leftover ${goes.keep}`;
}

/** A long narrow one is a strip. */
function nounFor(pieces: readonly Workpiece[]): 'strip' | 'piece' {
  const { width, height } = sizeOf(pieces);
  return Math.max(width, height) >= 2 * Math.min(width, height) ? 'strip' : 'piece';
}

function takenNoun(taken: readonly Workpiece[]): 'sheet' | 'strip' | 'piece' {
  return taken.every(({ from }) => from.kind === 'sheet') ? 'sheet' : nounFor(taken);
}

function each(pieces: readonly Workpiece[]): string {
  return pieces.length === 1 ? '' : 'each ';
}

/** All workpieces of one step have one size. */
function sizeOf(pieces: readonly Workpiece[]): Size {
  return headOf(pieces).size;
}

function headOf(pieces: readonly Workpiece[]): Workpiece {
  const head = pieces[0];
  assert(head !== undefined, 'There is at least one workpiece');
  return head;
}

/** The things under each key in order of first appearance; those with no key are left out. */
function grouped<T>(things: readonly T[], keyOf: (thing: T) => string | null): ReadonlyMap<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    const key = keyOf(thing);
    if (key === null) continue;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [thing]);
    else group.push(thing);
  }
  return groups;
}

function at(table: ReadonlyMap<string, Workpiece>, id: string): Workpiece {
  const piece = table.get(id);
  assert(piece !== undefined, 'Every workpiece of a step lies on the table', { id });
  return piece;
}
