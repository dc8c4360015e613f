import type { Problem } from '../problem/index.ts';
import type { FileProblemCode } from '../words/index.ts';
import { type Path, pathText } from './path.ts';

/** Something that is wrong with a file from outside; `fileProblemSentence` in `words` says it. */
export interface FileProblem extends Problem<FileProblemCode> {
  /** `where` for programs; a field that is missing has the path it would have. */
  readonly path: Path;
}

/** The problem `code` at `path`; every problem of a file is an error. */
export function fileProblem(
  code: FileProblemCode,
  path: Path,
  names: Readonly<Record<string, string>> = {},
  numbers: Readonly<Record<string, number>> = {},
): FileProblem {
  return { code, severity: 'error', where: pathText(path), path: [...path], numbers, names };
}
