import type * as z from 'zod/mini';
import { assert } from '../problem/index.ts';
import { excerpt } from './excerpt.ts';
import { type Expectation, expectationIn } from './expectation.ts';
import type { Finding } from './field.ts';
import { type FileProblem, fileProblem } from './fileProblem.ts';
import { isList, isObject, type Json, valueAt } from './json.ts';
import { faces } from './layoutShape.ts';
import { nearest } from './nearest.ts';
import type { Path } from './path.ts';

/** More than are ever told; a file of nothing but slips is not described to its end. */
const mostIssues = 2_000;

/**
 * What zod found wrong with `file`, as problems.
 *
 * Of the ways in which a field may be written (a text or a list of them), the one is judged that what stands
 * there comes nearest to.
 */
export function shapeProblems(error: z.core.$ZodError, file: Json): FileProblem[] {
  return error.issues.slice(0, mostIssues).flatMap((issue) => problemsOf(issue, [], file));
}

function problemsOf(issue: z.core.$ZodIssue, above: Path, file: Json): FileProblem[] {
  const path = [...above, ...issue.path.map((key) => (typeof key === 'number' ? key : String(key)))];
  const found = valueAt(file, path);

  if (issue.code === 'invalid_union') {
    const meant = issue.errors.find(
      (branch) => !branch.some((inner) => inner.code === 'invalid_type' && inner.path.length === 0),
    );
    if (meant !== undefined) return meant.flatMap((inner) => problemsOf(inner, path, file));
  }
  if (issue.code === 'custom') {
    const finding = issue.params?.finding as Finding | undefined;
    assert(finding !== undefined, 'Every check of a field reports a finding', { path });
    return [fileProblem(finding.code, path, finding.names, finding.numbers)];
  }

  const expected = expectationIn(issue.message);
  if (issue.code === 'unrecognized_keys') {
    const known = (expected.names.fields ?? '').split(', ');
    // An id as a name and what is wrong with it is told where it stands.
    return issue.keys.slice(0, mostIssues).map((key) => unknownField([...path, key], key, known));
  }
  if (found === undefined) return [problem('fieldMissing', path, expected, {})];
  const shown = { found: excerpt(found) };
  switch (issue.code) {
    case 'invalid_key': {
      const key = String(path.at(-1));
      const [inner] = issue.issues;
      if (inner?.code === 'too_big')
        return [
          problem(
            'textTooLong',
            path,
            expectationIn(inner.message),
            { found: excerpt(key) },
            { found: key.length },
          ),
        ];
      return [fileProblem('idMalformed', path, { found: excerpt(key) })];
    }
    case 'invalid_format':
      if (expected.wanted === 'price' || expected.wanted === 'colour')
        return [problem('fieldType', path, expected, shown)];
      return [problem(isFace(found) ? 'idReserved' : 'idMalformed', path, expected, shown)];
    case 'invalid_value': {
      const meant =
        typeof found === 'string' && expected.wanted === 'choice'
          ? nearest(found, issue.values.map(String))
          : null;
      return [
        problem('fieldChoice', path, expected, {
          ...shown,
          ...(meant === null ? {} : { nearest: `"${meant}"` }),
        }),
      ];
    }
    case 'too_big':
    case 'too_small':
      if (isList(found)) return [problem('listLength', path, expected, shown, { found: found.length })];
      if (typeof found === 'string')
        return [problem('textTooLong', path, expected, shown, { found: found.length })];
      return [problem('numberRange', path, expected, shown)];
    default:
      if (typeof found === 'number' && isLength(expected))
        return [problem('lengthBareNumber', path, expected, { ...shown, write: written(found, file) })];
      return [problem('fieldType', path, expected, shown)];
  }
}

function problem(
  code: FileProblem['code'],
  path: Path,
  expected: Expectation,
  names: Readonly<Record<string, string>>,
  numbers: Readonly<Record<string, number>> = {},
): FileProblem {
  return fileProblem(
    code,
    path,
    { ...expected.names, wanted: expected.wanted, ...names },
    { ...expected.numbers, ...numbers },
  );
}

function unknownField(path: Path, name: string, known: readonly string[]): FileProblem {
  const meant = nearest(name, known);
  return fileProblem('fieldUnknown', path, {
    fields: known.join(', '),
    ...(meant === null ? {} : { nearest: meant }),
  });
}

function isFace(value: Json): boolean {
  return faces.some((face) => face === value);
}

function isLength({ wanted }: Expectation): boolean {
  return ['length', 'length-or-fill', 'length-or-null', 'margin', 'gap'].includes(wanted);
}

/** How a bare number would be written as a length of the file's own units. */
function written(number: number, file: Json): string {
  return `"${number} ${isObject(file) && file.units === 'mm' ? 'mm' : 'in'}"`;
}
