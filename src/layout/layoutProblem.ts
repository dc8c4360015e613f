import type { Problem } from '../problem/index.ts';
import { type LayoutCode, layoutCodes } from './codes.ts';
import type { Layout } from './layout.ts';

/** Something that is wrong with a layout. */
export type LayoutProblem = Problem<LayoutCode>;

type Numbers = Readonly<Record<string, number>>;
type Names = Readonly<Record<string, string>>;

/** The problem of that code with one part of the pile; `field` is the field of the part it is about. */
export function partProblem(
  layout: Layout,
  index: number,
  code: LayoutCode,
  field: string,
  numbers: Numbers,
  names: Names = {},
): LayoutProblem {
  const part = layout.parts[index]!;
  return {
    code,
    severity: layoutCodes[code],
    where: `parts[${index}].${field}`,
    part: part.id,
    numbers,
    names: { name: part.name, ...names },
  };
}

/** The problem of that code with the base. */
export function baseProblem(code: LayoutCode, where: string, numbers: Numbers, names: Names): LayoutProblem {
  return { code, severity: layoutCodes[code], where, part: 'base', numbers, names };
}

/** The field that says where a piece lies: `place[1]` where the pieces have places of their own, else `place`. */
export function placeField(layout: Layout, index: number, piece: number): string {
  const [first, ...others] = layout.parts[index]!.places.map((place) => JSON.stringify(place));
  return others.some((place) => place !== first) ? `place[${piece}]` : 'place';
}

/** What parts lie on, for a sentence: a part's name under `on`, or a face of the card under `face`. */
export function lyingOn(layout: Layout, on: string): Names {
  const part = layout.parts.find(({ id }) => id === on);
  return part === undefined ? { face: on } : { on: part.name };
}
