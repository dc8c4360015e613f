import * as z from 'zod';
import { type Length, readLength, type Units } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import { excerpt } from './excerpt.ts';
import { expecting } from './expectation.ts';
import { fields, lengthText, oneOf, shownText, wholeNumber } from './field.ts';
import { type FileProblem, fileProblem } from './fileProblem.ts';
import { readFileText, tellable } from './fileText.ts';
import { withoutForeignFields } from './foreignField.ts';
import type { JsonObject } from './json.ts';
import { shapeProblems } from './shapeProblems.ts';

/** The version of the trimmer file that this program reads. */
export const trimmerVersion = 1;

/**
 * The trimmer in the text of a `*.trimmer.json` file, or everything that is wrong with the file, in its order.
 *
 * Only `cardwright_trimmer` and `units` are needed. What is not said is no limit; the measuring edge is then left,
 * the hand right, and one sheet is cut at a time.
 */
export function readTrimmerFile(text: string): { trimmer: Trimmer } | { problems: FileProblem[] } {
  const read = readFileText(text, 'cardwright_trimmer', trimmerVersion);
  if ('problems' in read) return read;
  const { file, repeated } = read;
  const own = withoutForeignFields(file);
  const units = unitsOf(own);
  const shape = shapes[units].safeParse(own);
  const problems = [
    ...repeated,
    ...(shape.success ? [] : shapeProblems(shape.error, own)),
    ...narrownessProblems(own, units),
  ];
  if (problems.length > 0) return { problems: tellable(problems, file) };
  assert(shape.success, 'A file without problems is in shape');
  return { trimmer: trimmerOf(shape.data) };
}

function shapeIn(units: Units) {
  const lengthOrNull = lengthText(units, 'positive', 'length-or-null').nullable().optional();
  return fields('file', {
    $schema: z.string({ error: expecting('text') }).optional(),
    cardwright_trimmer: z.literal(1, { error: expecting('version') }),
    name: shownText().optional(),
    units: oneOf(['in', 'mm']),
    marks: lengthOrNull,
    longest: lengthOrNull,
    narrowest: lengthOrNull,
    measuringEdge: oneOf(['left', 'right']).optional(),
    hand: oneOf(['left', 'right']).optional(),
    sheetsAtOnce: wholeNumber(1, 100).optional(),
    cutsPerSitting: wholeNumber(1, 100_000, 'whole-number-or-null').nullable().optional(),
  });
}

const shapes = { in: shapeIn('in'), mm: shapeIn('mm') };

function unitsOf(file: JsonObject): Units {
  return file.units === 'mm' ? 'mm' : 'in';
}

/** A strip that is no shorter than the longest cut cannot be kept at all. */
function narrownessProblems({ narrowest, longest }: JsonObject, units: Units): FileProblem[] {
  if (typeof narrowest !== 'string' || typeof longest !== 'string') return [];
  const [least, most] = [readLength(narrowest, units), readLength(longest, units)];
  if (!least.ok || !most.ok || least.length <= most.length || most.length <= 0) return [];
  return [
    fileProblem(
      'trimmerNarrow',
      ['narrowest'],
      { found: excerpt(narrowest), longest: excerpt(longest) },
      { narrowest: least.length, longest: most.length },
    ),
  ];
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
    measuringEdge: shape.measuringEdge ?? 'left',
    hand: shape.hand ?? 'right',
    sheetsAtOnce: shape.sheetsAtOnce ?? 1,
    cutsPerSitting: shape.cutsPerSitting ?? null,
  };
}
