import { dimensionsOf, type Layout } from '../layout/index.ts';
import type { Length } from '../measure/index.ts';

/** A length of the layout that becomes another, by its path in the file. */
export interface LengthChange {
  readonly path: string;
  /** Id of the part; `base` for the base. */
  readonly part: string;
  /** What it is called among the lengths of its part. */
  readonly name: string;
  readonly from: Length;
  readonly to: Length;
}

/** The lengths that are others than they were drawn, in the layout's order. */
export function changesOf(
  { layout }: { readonly layout: Layout },
  lengths: ReadonlyMap<string, Length>,
): readonly LengthChange[] {
  return dimensionsOf(layout).flatMap(({ path, part, name, length }) => {
    const to = lengths.get(path);
    return to === undefined || to === length ? [] : [{ path, part, name, from: length, to }];
  });
}
