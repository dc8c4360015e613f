import { millimetres, readSize, type Units } from '../../src/measure/index.ts';
import type { CutSoFar, Found, Spoiled } from '../../src/planning/index.ts';

/** What was read from an argument, or the sentence that says why it could not be. */
export type ArgumentRead<T> = { readonly value: T } | { readonly wrong: string };

/** `1-4,5:2`: steps 1 to 4, and of step 5 the first two workpieces. */
export function readDone(text: string): ArgumentRead<CutSoFar['done']> {
  const done = new Map<number, number | 'all'>();
  for (const part of text.split(',')) {
    const match = /^\s*(\d{1,7})\s*(?:-\s*(\d{1,7})|:\s*(\d{1,7}))?\s*$/.exec(part);
    const [first, last, count] = [Number(match?.[1]), match?.[2], match?.[3]];
    const end = Number(last ?? first);
    if (match === null || first === 0 || end < first || count === '0' || end - first > mostSteps)
      return {
        wrong: `--done holds “${part.trim()}”; it may hold numbers of steps such as 1-4,6 and, for a step that is done in part, how many of its workpieces are cut: 5:2.`,
      };
    for (let step = first; step <= end; step += 1) {
      if (done.has(step)) return { wrong: `--done names step ${step} twice; once is enough.` };
      done.set(step, count === undefined ? 'all' : Number(count));
    }
  }
  return { value: done };
}

const mostSteps = 100_000;

/** `2 panel/meadow`: two finished pieces; `panel/meadow`: one; anything else is the id of a workpiece. */
export function readSpoiled(text: string): ArgumentRead<Spoiled> {
  const trimmed = text.trim();
  const match = /^(?:(\d{1,7})\s+)?([\w-]+\/[\w-]+)$/.exec(trimmed);
  const count = Number(match?.[1] ?? 1);
  if (match !== null && count > 0) return { value: { kind: 'pieces', piece: match[2]!, count } };
  if (/^[^\s/]+$/.test(trimmed)) return { value: { kind: 'workpiece', id: trimmed } };
  return {
    wrong: `--spoiled holds “${text}”; it may hold a workpiece such as meadow-1a2, or finished pieces such as "2 panel/meadow".`,
  };
}

/** `meadow 3 x 12 in`: a scrap of that paper, width then height with the pattern upright. */
export function readFound(text: string, units: Units): ArgumentRead<Found> {
  const match = /^\s*([\w-]+)\s+(.+?)\s*$/.exec(text);
  const read = match === null ? null : readSize(match[2]!, units);
  if (match === null || read === null || !read.ok)
    return {
      wrong: `--found holds “${text}”; it may hold a paper and a size, such as "meadow 3 x 12 in".`,
    };
  const { width, height } = read.size;
  if (Math.min(width, height) <= 0 || Math.max(width, height) > longest)
    return {
      wrong: `--found holds “${text}”; a scrap has a width and a height of more than zero and at most 10 m.`,
    };
  return { value: { paper: match[1]!, size: read.size } };
}

/** No sheet of a layout is longer. */
const longest = millimetres(10_000);
