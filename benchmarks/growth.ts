import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type LinearSolver, planCuts } from '../src/cutting/index.ts';
import { readLayoutFile } from '../src/files/index.ts';
import { arrange, type Layout } from '../src/layout/index.ts';
import { paperTask, piecesOf, planSet } from '../src/planning/index.ts';
import { quantile, sum, table, three, timed } from './figures.ts';
import { growthPlot } from './growthPlot.ts';

const counts = [10, 100, 1_000, 10_000] as const;
const layoutFile = join('examples', 'lantern-walk.card.json');

/** What planning so many cards of one layout takes. */
interface Growth {
  readonly cards: number;
  readonly sheets: number;
  /** Milliseconds: the cutting alone; the whole plan, with every step written out for every sheet, and replayed. */
  readonly cutting: number;
  readonly whole: number;
  /** Megabytes: the most that the process held while it worked out the cutting; of that, the answer. */
  readonly peak: number;
  readonly answer: number;
}

/** Plans 10 to 10 000 cards of one layout, each in a process of its own, and prints ratios; `draw`: draws them too. */
export function growth(draw: boolean): void {
  console.log(`Growth: cards of ${layoutFile}, sheets without number`);
  const runs = counts.map((cards) => {
    const { stdout, stderr, status } = spawnSync(
      process.execPath,
      ['--expose-gc', fileURLToPath(import.meta.url), 'growth-child', String(cards)],
      { encoding: 'utf8' },
    );
    if (status !== 0) throw new Error(`${cards} cards: ${stderr}`);
    return JSON.parse(stdout) as Growth;
  });
  const base = runs[0]!;
  const rows = runs.map(({ cards, sheets, cutting, whole, peak, answer }) => [
    String(cards),
    String(sheets),
    `${three(cutting / base.cutting)} (${three(cutting)} ms)`,
    `${three((peak - answer) / (base.peak - base.answer))} (${three(peak - answer)} MB)`,
    `${three(answer * 1000)} kB`,
    `${three(whole / base.whole)} (${three(whole)} ms)`,
  ]);
  const head = ['cards', 'sheets', 'cutting, time', 'memory beside the answer', 'answer', 'whole plan, time'];
  console.log(table([head, ...rows]).replace(/^/gm, '  '));
  if (!draw) return;
  const plot = join('benchmarks', 'growth.svg');
  writeFileSync(
    plot,
    growthPlot(counts, [
      { name: 'cutting, time', ratios: runs.map(({ cutting }) => cutting / base.cutting) },
      { name: 'cutting, memory', ratios: runs.map((r) => (r.peak - r.answer) / (base.peak - base.answer)) },
      { name: 'every step of every sheet, time', ratios: runs.map(({ whole }) => whole / base.whole) },
    ]),
  );
  console.log(`  drawn in ${plot}`);
}

/** Measures one count; for a process started with `--expose-gc`. */
export function growthChild(cards: number, solver: LinearSolver): void {
  const tasks = tasksOf(cards);
  const cut = () => tasks.map((task) => planCuts(task, solver));
  // So that compiling counts for little.
  for (const task of tasksOf(7)) planCuts(task, solver);
  const clean = () => {
    globalThis.gc!();
    return process.memoryUsage().heapUsed / 1e6;
  };
  const before = clean();
  const first = timed(cut);
  const peak = process.resourceUsage().maxRSS / 1e3;
  const answer = Math.max(0, clean() - before);
  const cutting = quantile([first.milliseconds, timed(cut).milliseconds, timed(cut).milliseconds], 0.5);
  const layout = layoutOf(cards);
  const whole = timed(() => planSet({ layout, arrangement: arrange(layout), trimmer: null, solver }));
  if (whole.value.kind !== 'plan') throw new Error('no plan, and sheets are without number');
  const sheets = sum(
    first.value.map((found) => (found.kind === 'plan' ? sum(found.patterns.map(({ times }) => times)) : 0)),
  );
  const measured: Growth = { cards, sheets, cutting, whole: whole.milliseconds, peak, answer };
  console.log(JSON.stringify(measured));
}

function tasksOf(cards: number) {
  const layout = layoutOf(cards);
  const pieces = piecesOf(layout, arrange(layout));
  return [...layout.papers.values()].map((paper) => {
    const own = pieces.filter((piece) => piece.paper === paper.id);
    return paperTask(paper, own, null).task;
  });
}

/** The example's layout for so many cards, of papers that never run out. */
function layoutOf(cards: number): Layout {
  const saved = JSON.parse(readFileSync(layoutFile, 'utf8')) as {
    cards: number;
    papers: Record<string, { sheets: { count: number | null }[] }>;
  };
  saved.cards = cards;
  for (const paper of Object.values(saved.papers)) for (const sheet of paper.sheets) sheet.count = null;
  const read = readLayoutFile(JSON.stringify(saved));
  if (!('layout' in read)) throw new Error(`${layoutFile}: ${JSON.stringify(read.problems)}`);
  return read.layout;
}
