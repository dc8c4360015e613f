import { changed, type Edit, newScraps, restocked, usedSheets } from '../../../src/editing/index.ts';
import { readSavedLayout, type SavedLayout, writeLayoutFile } from '../../../src/files/index.ts';
import type { Layout } from '../../../src/layout/index.ts';
import { type KeptLeftover, leftoverUses, settledBy } from '../../../src/planning/index.ts';
import { assert } from '../../../src/problem/index.ts';
import { extraSentences, keptSentences, listed, takenOutSentences } from '../../../src/words/index.ts';
import { openLayoutFile } from '../opening.ts';
import { cannot, done, type Outcome } from '../outcome.ts';
import type { World } from '../world.ts';
import { wrapped } from '../wrapped.ts';
import { type PlanOptions, planFile } from './plan.ts';

export interface RestockOptions extends Pick<PlanOptions, 'trimmer' | 'prefer' | 'withSpares'> {
  readonly output: string;
  /** Another layout, to whose papers of the same ids the leftovers go instead. */
  readonly into?: string;
}

/**
 * `cardwright restock`: the stash as it is once the set is cut by its plan, written as a layout file; with `--into` the
 * leftovers alone, put to the papers of another layout.
 */
export async function restock(file: string, options: RestockOptions, world: World): Promise<Outcome> {
  const opened = await openLayoutFile(file, world);
  if ('problems' in opened) return cannot;
  const into = options.into === undefined ? null : await openLayoutFile(options.into, world);
  if (into !== null && 'problems' in into) return cannot;
  const planned = await planFile(file, options, world);
  if (planned === null) return cannot;
  const { layout, plan, arrangement, trimmer } = planned;
  const uses = leftoverUses({ ...settledBy({ layout, arrangement }, plan.dealt), trimmer }, plan);
  const showing = { units: layout.units, glyphs: 'typed' } as const;
  const target = into?.value ?? opened.value;
  const scraps = newScraps(layout, uses.kept).filter(({ paper }) => target.layout.papers.has(paper));
  const edit = restocked(target.file, target.layout, {
    used: into === null ? usedSheets(plan) : new Map(),
    scraps,
  });
  await world.write(options.output, textOf(target.file, edit), {
    not: [file, options.into, options.trimmer],
  });
  const sentences = [
    ...extraSentences(uses, layout, showing),
    ...(into === null ? takenOutSentences(plan, layout) : []),
    ...keptSentences(
      { ...uses, kept: uses.kept.filter(({ paper }) => target.layout.papers.has(paper)) },
      layout,
      showing,
    ),
    ...strangeSentences(uses.kept, layout, target.layout),
  ];
  const said = options.output === '-' ? world.err : world.out;
  said(`${sentences.flatMap((line) => wrapped(line)).join('\n')}\n`);
  if (options.output !== '-') world.err(`Wrote ${options.output}.\n`);
  return done;
}

/** Leftovers of papers that the other layout has not. */
function strangeSentences(kept: readonly KeptLeftover[], layout: Layout, into: Layout): readonly string[] {
  const strange = [...new Set(kept.map(({ paper }) => paper))].filter((id) => !into.papers.has(id));
  if (strange.length === 0) return [];
  const names = strange.map((id) => `${layout.papers.get(id)?.name ?? id} (${id})`);
  return [`The other layout has no paper with the id of ${listed(names)}: what is left of it stays out.`];
}

function textOf(file: SavedLayout, edit: Edit): string {
  const read = readSavedLayout(changed(file, edit.changes).file);
  assert('file' in read, 'A layout whose sheets were taken out and put in is a layout', read);
  return writeLayoutFile(read.file);
}
