import { excerpt } from './excerpt.ts';

/** The way from the top of a file down to a field: names of fields and numbers of list entries. */
export type Path = readonly (string | number)[];

/**
 * A path as people read it: `parts[2].size[0]`; `''` for the file as a whole.
 *
 * A name that is more than letters, digits, `-` and `_` stands in brackets as JSON text: `papers["odd name"]`.
 */
export function pathText(path: Path): string {
  return path
    .map((key, index) => {
      if (typeof key === 'number') return `[${key}]`;
      if (!/^[\w-]{1,60}$/.test(key)) return `[${excerpt(key)}]`;
      return index === 0 ? key : `.${key}`;
    })
    .join('');
}
