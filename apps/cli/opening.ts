import { highsSolver, type LinearSolver } from '../../src/cutting/index.ts';
import { readLayoutFile, readTrimmerFile } from '../../src/files/index.ts';
import { type Arrangement, arrange, type Layout } from '../../src/layout/index.ts';
import type { SetToPlan } from '../../src/planning/index.ts';
import type { Problem } from '../../src/problem/index.ts';
import type { Trimmer } from '../../src/trimming/index.ts';
import { fileProblemSentence } from '../../src/words/index.ts';
import type { World } from './world.ts';

/** A layout that has been read, or what is wrong with its file. */
export type Opened<T> = { readonly value: T } | { readonly problems: readonly Problem[] };

/** Reads a layout file; what is wrong with it is said on standard error, a sentence a line. */
export async function openLayout(file: string, world: World): Promise<Opened<Layout>> {
  const read = readLayoutFile(await world.read(file));
  if ('layout' in read) return { value: read.layout };
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

/** The solver of linear and integer programmes, loaded when it is wanted. */
async function openSolver(): Promise<LinearSolver> {
  const { default: load } = await import('highs');
  return highsSolver(await load());
}

/** A layout ready to be planned, its sizes worked out; `arrangement.problems` may still keep it from that. */
export async function openSet(
  { layout, trimmer }: { readonly layout: Layout; readonly trimmer: Trimmer | null },
  world: World,
): Promise<SetToPlan> {
  const arrangement: Arrangement = arrange(layout);
  return { layout, arrangement, trimmer, solver: await openSolver(), onPaper: progress(layout, world) };
}

/** Says which paper is being planned once a second has gone by, on standard error. */
function progress(layout: Layout, world: World): (paper: string) => void {
  const began = world.now().getTime();
  let said = '';
  return (paper) => {
    if (world.now().getTime() - began < 1000 || said === paper) return;
    said = paper;
    world.err(`Planning ${layout.papers.get(paper)?.name ?? paper} …\n`);
  };
}
