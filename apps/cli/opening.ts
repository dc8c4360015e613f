import { highsSolver, type LinearSolver } from '../../src/cutting/index.ts';
import { readLayoutFile, readPostFile, readTrimmerFile, type SavedLayout } from '../../src/files/index.ts';
import { type Arrangement, arrange, checkLayout, type Layout } from '../../src/layout/index.ts';
import type { PostTable } from '../../src/making/index.ts';
import type { CardSet, PlanningProgress, SetToPlan } from '../../src/planning/index.ts';
import type { Problem } from '../../src/problem/index.ts';
import type { Trimmer } from '../../src/trimming/index.ts';
import { fileProblemSentence, layoutProblemSentence, progressSentence } from '../../src/words/index.ts';
import type { World } from './world.ts';

/** A layout that has been read, or what is wrong with its file. */
export type Opened<T> = { readonly value: T } | { readonly problems: readonly Problem[] };

/** Reads a layout file; what is wrong with it is said on standard error, a sentence a line. */
export async function openLayout(file: string, world: World): Promise<Opened<Layout>> {
  const opened = await openLayoutFile(file, world);
  return 'value' in opened ? { value: opened.value.layout } : opened;
}

/** As `openLayout`, with the file as it was typed, to be written again. */
export async function openLayoutFile(
  file: string,
  world: World,
): Promise<Opened<{ readonly layout: Layout; readonly file: SavedLayout }>> {
  const read = readLayoutFile(await world.read(file));
  if ('layout' in read) return { value: read };
  world.err(read.problems.map((problem) => `${fileProblemSentence(problem)}\n`).join(''));
  return { problems: read.problems };
}

/** Reads the trimmer that was named, or none; as `openLayout`. */
export async function openTrimmer(file: string | undefined, world: World): Promise<Opened<Trimmer | null>> {
  if (file === undefined) return { value: null };
  const read = readTrimmerFile(await world.read(file));
  if ('trimmer' in read) return { value: read.trimmer };
  world.err(read.problems.map((problem) => `${file}: ${fileProblemSentence(problem)}\n`).join(''));
  return { problems: read.problems };
}

/** Reads the post table that was named, or none; as `openLayout`. */
export async function openPost(file: string | undefined, world: World): Promise<Opened<PostTable | null>> {
  if (file === undefined) return { value: null };
  const read = readPostFile(await world.read(file));
  if ('table' in read) return { value: read.table };
  world.err(read.problems.map((problem) => `${file}: ${fileProblemSentence(problem)}\n`).join(''));
  return { problems: read.problems };
}

/** The solver of linear and integer programmes, loaded when it is wanted. */
export async function openSolver(): Promise<LinearSolver> {
  const { default: load } = await import('highs');
  return highsSolver(await load());
}

/** The pile worked out; `null` when that leaves a size unknown, with the reasons said on standard error. */
export function openPile(layout: Layout, world: World): Arrangement | null {
  const arrangement = arrange(layout);
  if (arrangement.parts.every(({ cut }) => cut !== null)) return arrangement;
  const showing = { units: layout.units, glyphs: 'typed' } as const;
  for (const problem of checkLayout(layout, arrangement)) {
    if (problem.severity === 'error')
      world.err(`${problem.where}: ${layoutProblemSentence(problem, showing)}\n`);
  }
  return null;
}

/** A set ready to be planned. */
export async function openSet(set: CardSet, world: World): Promise<SetToPlan> {
  return { ...set, solver: await openSolver(), onProgress: progress(set.layout, world) };
}

/** One calm line that says how far the planning has come, where there is a terminal to show it on. */
function progress(layout: Layout, world: World): (progress: PlanningProgress) => void {
  let next = world.now().getTime() + 500;
  return (come) => {
    const now = world.now().getTime();
    if (now < next) return;
    next = now + 250;
    world.status(progressSentence(come, layout));
  };
}
