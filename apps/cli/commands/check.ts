import { checkFinished, usualRisk } from '../../../src/finished/index.ts';
import { arrange, checkLayout, type LayoutSum, sumsOf } from '../../../src/layout/index.ts';
import { checkSet, planSet, usualMarks } from '../../../src/planning/index.ts';
import type { Problem } from '../../../src/problem/index.ts';
import {
  counted,
  fileProblemSentence,
  finishedProblemSentence,
  layoutProblemSentence,
  listed,
  planningProblemSentence,
  type Showing,
  sumSentence,
} from '../../../src/words/index.ts';
import { openLayout, openPost, openSet, openTrimmer } from '../opening.ts';
import { cannot, done, type Outcome } from '../outcome.ts';
import type { World } from '../world.ts';
import { wrapped } from '../wrapped.ts';

export interface CheckOptions {
  readonly trimmer?: string;
  /** From 0 to 1, both left out. */
  readonly risk?: number;
  /** A file with the person's own table of a post. */
  readonly post?: string;
  readonly json?: boolean;
}

/** A problem with its sentence, as `check --json` writes it. */
type SaidProblem = Problem & { readonly says: string };

/** What `check --json` writes: the problems, and every sum of borders, sizes and gaps that was made. */
interface Checked {
  readonly problems: readonly SaidProblem[];
  readonly sums: readonly (LayoutSum & { readonly says: string })[];
}

/** `cardwright check`: everything that would spoil the set, errors and cautions apart. */
export async function check(file: string, options: CheckOptions, world: World): Promise<Outcome> {
  const opened = await openLayout(file, world);
  const trimmer = await openTrimmer(options.trimmer, world);
  const post = await openPost(options.post, world);
  const refused = [opened, trimmer, post].flatMap((each) => ('problems' in each ? each.problems : []));
  if ('problems' in opened || 'problems' in trimmer || 'problems' in post) {
    // The sentences are on standard error already; a program that asked for JSON gets its answer all the same.
    const said = refused.map((problem) => ({ ...problem, says: fileProblemSentence(problem) }));
    if (options.json) writeJson({ problems: said, sums: [] }, world);
    return cannot;
  }
  const layout = opened.value;
  const showing: Showing = { units: layout.units, glyphs: 'typed' };
  const arrangement = arrange(layout);
  const set = await openSet({ layout, arrangement, trimmer: trimmer.value }, world);
  const problems: SaidProblem[] = checkLayout(layout, arrangement).map((problem) => ({
    ...problem,
    says: layoutProblemSentence(problem, showing),
  }));
  // With a size unknown nothing can be cut yet.
  if (arrangement.parts.every(({ cut }) => cut !== null)) {
    const found = checkSet(set, planSet(set));
    problems.push(
      ...found.map((problem) => ({ ...problem, says: planningProblemSentence(problem, layout, showing) })),
    );
    const marks = trimmer.value?.marks ?? usualMarks(layout);
    const made = checkFinished(layout, arrangement, {
      marks,
      wanted: options.risk ?? usualRisk,
      ...(post.value === null ? {} : { tables: [post.value] }),
    });
    problems.push(
      ...made.map((problem) => ({ ...problem, says: finishedProblemSentence(problem, layout, showing) })),
    );
  }
  const sums = sumsOf(arrangement).map((sum) => ({ ...sum, says: sumSentence(sum, layout, showing) }));
  if (options.json) writeJson({ problems, sums }, world);
  else writeList(layout.title, { problems, sums }, world);
  return problems.some(({ severity }) => severity === 'error') ? cannot : done;
}

function writeJson(checked: Checked, world: World): void {
  world.out(`${JSON.stringify(checked, null, 2)}\n`);
}

function writeList(title: string, { problems, sums }: Checked, world: World): void {
  const errors = problems.filter(({ severity }) => severity === 'error');
  const cautions = problems.filter(({ severity }) => severity === 'caution');
  const lines = [title === '' ? 'This layout' : title];
  if (sums.length > 0) lines.push('', 'The sums:', ...[...new Set(sums.map(({ says }) => `  ${says}`))]);
  if (errors.length > 0) lines.push('', 'What would spoil the set:', ...errors.map(line));
  if (cautions.length > 0) lines.push('', 'Worth knowing before you cut:', ...cautions.map(line));
  lines.push(
    '',
    problems.length === 0
      ? 'Nothing found that would spoil the set.'
      : `${listed([counted(errors.length, 'error'), counted(cautions.length, 'caution')])}.`,
  );
  world.out(`${lines.flatMap((text) => wrapped(text)).join('\n')}\n`);
}

function line({ where, says }: SaidProblem): string {
  return `  ${says}${where === '' ? '' : ` (${where})`}`;
}
