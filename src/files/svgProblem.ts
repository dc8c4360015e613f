import type { Problem } from '../problem/index.ts';
import type { SvgProblemCode } from '../words/index.ts';

/** A place in a text: line and column from 1, and the character from 0. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
  readonly index: number;
}

/** The problem `code` at a place; every problem of a drawing is an error. */
export function svgProblem(
  code: SvgProblemCode,
  { line, column }: TextPlace,
  names: Readonly<Record<string, string>> = {},
  numbers: Readonly<Record<string, number>> = {},
): Problem<SvgProblemCode> {
  return {
    code,
    severity: 'error',
    where: `${line}:${column}`,
    names,
    numbers: { ...numbers, line, column },
  };
}

/** What finds line and column of a character of the text. */
export function placesIn(text: string): (index: number) => TextPlace {
  const starts = [0, ...[...text.matchAll(/\r\n|\r|\n/g)].map((end) => end.index + end[0].length)];
  return (index) => {
    let [least, most] = [0, starts.length];
    while (most - least > 1) {
      const middle = (least + most) >> 1;
      if (starts[middle]! <= index) least = middle;
      else most = middle;
    }
    return { line: least + 1, column: index - starts[least]! + 1, index };
  };
}
