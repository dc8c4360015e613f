import * as z from 'zod/mini';
import { inches, type Length, millimetres, minus, readLength, type Units, zero } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import { excerpt } from './excerpt.ts';
import { expecting } from './expectation.ts';
import { fields, inUnits, lengthText, oneOf, shownText, wholeNumber } from './field.ts';
import { type FileProblem, fileProblem } from './fileProblem.ts';
import { readFileText, tellable } from './fileText.ts';
import { withoutForeignFields } from './foreignField.ts';
import { type JsonObject, valueAt } from './json.ts';
import { shapeProblems } from './shapeProblems.ts';

/** The version of the trimmer file that this program reads. */
export const trimmerVersion = 1;

/**
 * The trimmer in the text of a `*.trimmer.json` file, or everything that is wrong with the file, in its order.
 *
 * Only `cardwright_trimmer` and `units` are needed. What is not said is no limit, but that there is no ruler on the
 * other side of the blade; the measuring edge is then left, the hand right, one sheet is cut at a time, and the
 * trimmer cuts what it is set to.
 */
export function readTrimmerFile(text: string): { trimmer: Trimmer } | { problems: FileProblem[] } {
  const read = readFileText(text, 'cardwright_trimmer', trimmerVersion);
  if ('problems' in read) return read;
  const { file, repeated } = read;
  const own = withoutForeignFields(file);
  const units = unitsOf(own);
  const parsed = trimmerShape(units).safeParse(own);
  const problems = [
    ...repeated,
    ...(parsed.success ? [] : shapeProblems(parsed.error, own)),
    ...limitProblems(own, units),
    ...testCutProblems(own, units),
  ];
  if (problems.length > 0) return { problems: tellable(problems, file) };
  assert(parsed.success, 'A file without problems is in shape');
  return { trimmer: trimmerOf(parsed.data) };
}

function shapeIn(units: Units) {
  const lengthOrNull = z.nullish(lengthText(units, 'positive', 'length-or-null'));
  return fields('file', {
    $schema: z.optional(z.string({ error: expecting('text') })),
    cardwright_trimmer: z.literal(1, { error: expecting('version') }),
    name: z.optional(shownText()),
    units: oneOf(['in', 'mm']),
    marks: lengthOrNull,
    longest: lengthOrNull,
    narrowest: lengthOrNull,
    reach: z.nullish(fields('reach', { measuringSide: lengthOrNull, otherSide: lengthOrNull })),
    testCut: z.nullish(
      fields('test-cut', {
        set: lengthText(units, 'positive'),
        measured: lengthText(units, 'positive'),
      }),
    ),
    measuringEdge: z.optional(oneOf(['left', 'right'])),
    hand: z.optional(oneOf(['left', 'right'])),
    sheetsAtOnce: z.optional(wholeNumber(1, 100)),
    cutsPerSitting: z.nullish(wholeNumber(1, 100_000, 'whole-number-or-null')),
  });
}

const trimmerShape = inUnits(shapeIn);

function unitsOf(file: JsonObject): Units {
  return file.units === 'mm' ? 'mm' : 'in';
}

/** Limits of which one leaves nothing of another, so that the trimmer could cut nothing. */
function limitProblems(file: JsonObject, units: Units): FileProblem[] {
  const marks = lengthAt(file, ['marks'], units);
  const longest = lengthAt(file, ['longest'], units);
  const narrowest = lengthAt(file, ['narrowest'], units);
  const measuringSide = lengthAt(file, ['reach', 'measuringSide'], units);
  const otherSide = lengthAt(file, ['reach', 'otherSide'], units);
  // With no limit on the measuring side the other one limits nothing.
  const further = measuringSide === null || (otherSide?.length ?? 0) > measuringSide.length;
  const reach = measuringSide === null ? null : further ? otherSide : measuringSide;
  const tooShort = [marks, narrowest].flatMap((most) =>
    most !== null && reach !== null && reach.length < most.length ? [slip('trimmerReach', reach, most)] : [],
  );
  return [
    ...(longest !== null && marks !== null && marks.length > longest.length
      ? [slip('trimmerMarks', marks, longest)]
      : []),
    ...(longest !== null && narrowest !== null && narrowest.length > longest.length
      ? [slip('trimmerNarrow', narrowest, longest)]
      : []),
    ...tooShort.slice(0, 1),
  ];
}

function slip(code: FileProblem['code'], field: LengthField, limit: LengthField): FileProblem {
  const names = { found: field.found, limit: limit.path.join('.'), most: limit.found };
  return fileProblem(code, field.path, names, { length: field.length, limit: limit.length });
}

/**
 * How long a test cut is at least, so that it is measured well, and how far off a ruler may be before something
 * else must be wrong (common practice, no source).
 */
const testCutLimits = {
  in: { shortest: inches(1), most: inches(1, 4) },
  mm: { shortest: millimetres(25), most: millimetres(6) },
} as const satisfies Record<Units, { shortest: Length; most: Length }>;

function testCutProblems(file: JsonObject, units: Units): FileProblem[] {
  const set = lengthAt(file, ['testCut', 'set'], units);
  const measured = lengthAt(file, ['testCut', 'measured'], units);
  if (set === null) return [];
  const { shortest, most } = testCutLimits[units];
  if (set.length < shortest) {
    return [fileProblem('testCutShort', set.path, { found: set.found, units }, { low: shortest })];
  }
  if (measured === null || Math.abs(measured.length - set.length) <= most) return [];
  const names = { found: measured.found, set: set.found, units };
  return [fileProblem('testCutFar', measured.path, names, { high: most })];
}

/** A length that stands in the file. */
interface LengthField {
  readonly path: readonly string[];
  /** As it is shown in a sentence. */
  readonly found: string;
  readonly length: Length;
}

/** The positive length at a path; `null` where none stands, or none that can be read. */
function lengthAt(file: JsonObject, path: readonly string[], units: Units): LengthField | null {
  const text = valueAt(file, path);
  if (typeof text !== 'string') return null;
  const reading = readLength(text, units);
  return reading.ok && reading.length > 0 ? { path, found: excerpt(text), length: reading.length } : null;
}

function trimmerOf(shape: z.infer<ReturnType<typeof shapeIn>>): Trimmer {
  const length = (text: string | null | undefined): Length | null => {
    if (text === null || text === undefined) return null;
    const reading = readLength(text, shape.units);
    assert(reading.ok, 'A length in a file that is in shape can be read', { text });
    return reading.length;
  };
  return {
    name: shape.name ?? '',
    marks: length(shape.marks),
    longest: length(shape.longest),
    narrowest: length(shape.narrowest),
    reach: {
      measuringSide: length(shape.reach?.measuringSide),
      otherSide: length(shape.reach?.otherSide),
    },
    correction: minus(length(shape.testCut?.measured) ?? zero, length(shape.testCut?.set) ?? zero),
    measuringEdge: shape.measuringEdge ?? 'left',
    hand: shape.hand ?? 'right',
    sheetsAtOnce: shape.sheetsAtOnce ?? 1,
    cutsPerSitting: shape.cutsPerSitting ?? null,
  };
}
