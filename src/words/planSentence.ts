import { type Axis, showLengthWithUnit, showSize } from '../measure/index.ts';
import type { PaperOutcome, Plan } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import type { Paper, Up } from '../stash/index.ts';
import { strokesOf, type Trimmer } from '../trimming/index.ts';
import { amount } from './costWords.ts';
import { capital, counted, countedInWords, listed } from './count.ts';
import type { Showing } from './showing.ts';
import { isSliver, tableOf } from './workpiece.ts';

/**
 * What one paper comes to, and how sure that is: `2 sheets of Meadow; no plan takes fewer.`,
 * `11 sheets of Meadow; any plan takes at least 10.`
 */
export function planSentence(paper: Paper, plan: Plan): string {
  const outcome = outcomeOf(paper, plan);
  const scraps = plan.sheets.filter(
    (sheet) => sheet.paper === paper.id && paper.sheets[sheet.stock]?.scrap === true,
  ).length;
  const whole = outcome.sheets - scraps;
  const used = listed([
    ...(whole > 0 ? [counted(whole, 'sheet')] : []),
    ...(scraps > 0 ? [counted(scraps, 'scrap')] : []),
  ]);
  if (whole === 0) return `${used} of ${paper.name}; no whole sheet is cut into.`;
  const spent = outcome.measuredIn === 'price' ? `, ${amount(outcome.cost)} in all` : '';
  return `${used} of ${paper.name}${spent}; ${proofOf(outcome)}.`;
}

/**
 * The work one paper asks for: `9 passes, 2 settings (no fewer will do) and 1 quarter turn.`, and how few strokes of the
 * blade it is where the trimmer cuts several sheets at once.
 */
export function effortSentence(paper: Paper, plan: Plan, trimmer: Trimmer | null = null): string {
  const { passes, settings, turns, leastSettings } = outcomeOf(paper, plan);
  if (passes === 0) return 'Nothing to cut: the sheets are the pieces.';
  const fewest = settings > 1 && settings === leastSettings ? ' (no fewer will do)' : '';
  return `${listed([
    counted(passes, 'pass'),
    `${counted(settings, 'setting')}${fewest}`,
    ...(turns > 0 ? [counted(turns, 'quarter turn')] : []),
  ])}.${stackedWords(paper, plan, trimmer)}`;
}

function stackedWords(paper: Paper, plan: Plan, trimmer: Trimmer | null): string {
  const most = trimmer?.sheetsAtOnce ?? 1;
  if (most === 1) return '';
  const table = tableOf(plan);
  const strokes = plan.steps
    .filter(({ take }) => table.get(take[0] ?? '')?.paper === paper.id)
    .reduce((sum, step) => sum + strokesOf(step, most), 0);
  if (strokes === outcomeOf(paper, plan).passes) return '';
  return ` In stacks of up to ${most} that is ${counted(strokes, 'stroke')} of the blade.`;
}

/**
 * Which measures of its sheets a paper has nothing to spare in, to be measured before the first cut; none where
 * a sheet that is a little short spoils nothing.
 */
export function slackSentences(paper: Paper, plan: Plan, showing: Showing): readonly string[] {
  const table = [...tableOf(plan).values()].filter((piece) => piece.paper === paper.id);
  const tight = (axis: Axis) =>
    table.some((piece) => piece.goes.kind === 'finished' && piece.unmeasured[axis]);
  const axes = (['width', 'height'] as const).filter(tight);
  if (axes.length === 0) return [];
  const stocks = new Set(plan.sheets.filter((sheet) => sheet.paper === paper.id).map(({ stock }) => stock));
  return [...stocks].flatMap((stock) => {
    const sheet = paper.sheets[stock];
    if (sheet === undefined) return [];
    const measures = axes.map(
      (axis) =>
        `${showLengthWithUnit(sheet.size[axis], showing.units, showing.glyphs)} ${dimensionWords[axis]}`,
    );
    return [
      `Measure ${paper.name} first: a sheet has to be a full ${listed(measures)}; there is nothing to spare.`,
    ];
  });
}

const dimensionWords = { width: 'wide', height: 'high' } as const satisfies Record<Axis, string>;

/** What is left of a paper, largest first: `7 x 12 in, stands upright: keep it.` */
export function leftoverSentences(paper: Paper, plan: Plan, showing: Showing): readonly string[] {
  const table = tableOf(plan);
  const left = plan.leftovers
    .filter(({ id, size }) => table.get(id)?.paper === paper.id && !isSliver(size))
    .sort((a, b) => b.size.width * b.size.height - a.size.width * a.size.height);
  const kinds = new Map<string, { readonly size: string; readonly keep: boolean; count: number }>();
  for (const { size, keep } of left) {
    const shown = showSize(size, showing.units, showing.glyphs);
    const key = `${shown} ${keep}`;
    const kind = kinds.get(key) ?? { size: shown, keep, count: 0 };
    kind.count += 1;
    kinds.set(key, kind);
  }
  return [...kinds.values()].map(({ size, keep, count }) => {
    const many = count === 1 ? '' : `${countedInWords(count, 'piece')} of `;
    if (!keep) return capital(`${many}${size}: for the snippet box.`);
    const stands = count === 1 ? 'stands' : 'stand';
    return capital(`${many}${size}${upWords[paper.up](stands)}: keep ${count === 1 ? 'it' : 'them'}.`);
  });
}

const upWords = {
  any: () => '',
  'one-way': (stands) => `, ${stands} upright`,
  'two-way': (stands) => `, ${stands} upright or half round`,
} as const satisfies Record<Up, (stands: string) => string>;

function outcomeOf(paper: Paper, plan: Plan): PaperOutcome {
  const outcome = plan.papers.get(paper.id);
  assert(outcome !== undefined, 'Only papers that something is cut from have a plan', { paper: paper.id });
  return outcome;
}

function proofOf({ proved, bound, measuredIn }: PaperOutcome): string {
  if (measuredIn === 'price') {
    return proved ? 'no plan costs less' : `any plan costs at least ${amount(bound)}`;
  }
  if (measuredIn === 'sheets') {
    return proved
      ? 'no plan takes fewer'
      : `any plan takes at least ${counted(Math.ceil(bound - 1e-6), 'sheet')}`;
  }
  return proved
    ? 'no plan takes less paper'
    : `any plan takes at least ${Number(bound.toFixed(1))} square inches of it`;
}
