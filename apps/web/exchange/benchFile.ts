import {
  isList,
  isObject,
  type Json,
  type JsonObject,
  readPlanFile,
  readSavedLayout,
} from '../../../src/files/index.ts';
import { makingOf } from '../state/benchState.ts';
import type { BenchEntry, BenchEvent } from '../storage/benchLog.ts';

/** The version of the shape, which is ours alone. */
const benchVersion = 1;

/** All that was told at the bench of a layout, as a file that lies beside the layout's. */
export function benchText(bench: readonly BenchEntry[]): string {
  return `${JSON.stringify({ cardwright_bench: benchVersion, told: bench })}\n`;
}

/**
 * What such a file tells; or what is the matter. `bench`: it is of no shape that is known here, or what it tells can
 * have happened at no table. `newer`: a newer version of the app wrote it.
 */
export function readBench(text: string): readonly BenchEntry[] | 'bench' | 'newer' {
  let read: Json;
  try {
    read = JSON.parse(text) as Json;
  } catch {
    return 'bench';
  }
  if (!isObject(read)) return 'bench';
  const { cardwright_bench: version, told } = read;
  if (typeof version === 'number' && version > benchVersion) return 'newer';
  if (version !== benchVersion || !isList(told) || !told.every(isEntry)) return 'bench';
  return told.length === 0 || stands(told) ? told : 'bench';
}

/** Whether it begins with a set and comes to a table that can be. */
function stands(told: readonly BenchEntry[]): boolean {
  try {
    return told[0]?.event.kind === 'begun' && makingOf(told.map(({ event }) => event)) !== null;
  } catch {
    // A plan may be in shape and still make no sense.
    return false;
  }
}

function isEntry(value: Json): value is JsonObject & BenchEntry {
  return isObject(value) && typeof value.entry === 'string' && value.entry !== '' && isEvent(value.event);
}

function isEvent(value: Json | undefined): boolean {
  if (!isObject(value)) return false;
  const { kind, file, trimmer, plan, mark, line, at } = value;
  switch (kind as BenchEvent['kind']) {
    case 'begun':
      return isLayout(file) && (trimmer === null || isTrimmer(trimmer)) && isPlan(plan) && isMoment(at);
    case 'planned again':
      return (file === null || isLayout(file)) && isPlan(plan);
    case 'noted':
      return isMark(mark) && isMoment(at);
    case 'made':
      return typeof line === 'string' && isMoment(at);
    case 'taken back':
      return true;
    default:
      return false;
  }
}

function isMoment(at: Json | undefined): boolean {
  return at === undefined || typeof at === 'number';
}

function isMark(mark: Json | undefined): boolean {
  if (!isObject(mark)) return false;
  const { kind, step, workpieces, spoiled, found } = mark;
  if (kind === 'cut') return isCount(step) && isCount(workpieces);
  if (kind === 'found') return isObject(found) && typeof found.paper === 'string' && isSize(found.size);
  if (kind !== 'spoiled' || !isObject(spoiled)) return false;
  if (spoiled.kind === 'workpiece') return typeof spoiled.id === 'string';
  return spoiled.kind === 'pieces' && typeof spoiled.piece === 'string' && isCount(spoiled.count);
}

function isLayout(file: Json | undefined): boolean {
  return isObject(file) && !('problems' in readSavedLayout(file));
}

function isPlan(plan: Json | undefined): boolean {
  return isObject(plan) && !('problems' in readPlanFile(JSON.stringify(plan)));
}

/** Whether it is a trimmer as the bench has it: lengths in ticks, not as they were typed. */
function isTrimmer(trimmer: Json | undefined): boolean {
  if (!isObject(trimmer)) return false;
  const { name, marks, longest, narrowest, reach, correction, sheetsAtOnce, cutsPerSitting } = trimmer;
  return (
    typeof name === 'string' &&
    [marks, longest, narrowest].every(isCountOrNone) &&
    isObject(reach) &&
    [reach.measuringSide, reach.otherSide].every(isCountOrNone) &&
    Number.isSafeInteger(correction) &&
    [trimmer.measuringEdge, trimmer.hand].every((side) => side === 'left' || side === 'right') &&
    isCount(sheetsAtOnce) &&
    (sheetsAtOnce as number) > 0 &&
    isCountOrNone(cutsPerSitting)
  );
}

function isSize(size: Json | undefined): boolean {
  return isObject(size) && [size.width, size.height].every(isCount);
}

function isCountOrNone(length: Json | undefined): boolean {
  return length === null || isCount(length);
}

function isCount(count: Json | undefined): boolean {
  return Number.isSafeInteger(count) && (count as number) >= 0;
}
