import type { Problem } from '../problem/index.ts';
import { type LayoutCode, layoutCodes } from './codes.ts';
import type { Layout } from './layout.ts';

/** Something that is wrong with a layout. */
export type LayoutProblem = Problem<LayoutCode>;

/** The problem of that code with one part of the pile; `field` is the field of the part it is about. */
export function partProblem(
  layout: Layout,
  index: number,
  code: LayoutCode,
  field: string,
  numbers: Readonly<Record<string, number>>,
  names: Readonly<Record<string, string>> = {},
): LayoutProblem {
  const part = layout.parts[index]!;
  return {
    code,
    severity: layoutCodes[code],
    where: `parts[${index}]${field === '' ? '' : `.${field}`}`,
    part: part.id,
    numbers,
    names: { name: part.name, ...names },
  };
}

/** The field that says where a piece lies: `place[1]` where the file lists a place for each piece, else `place`. */
export function placeField(layout: Layout, index: number, piece: number): string {
  const listed = `parts[${index}].place[`;
  return [...layout.typed.keys()].some((path) => path.startsWith(listed)) ? `place[${piece}]` : 'place';
}

/** What people call the thing with that id that parts lie on: a part's name, or the face itself. */
export function nameOf(layout: Layout, on: string): string {
  return layout.parts.find((part) => part.id === on)?.name ?? on;
}
