import type { Length } from '../measure/index.ts';
import { sum } from '../measure/index.ts';
import { type Dimension, dimensionsOf } from './dimension.ts';
import type { Layout } from './layout.ts';

/** A length of a layout, and what it is to be. */
export interface LengthWanted {
  readonly dimension: Dimension;
  readonly length: Length;
}

/**
 * What has to be set so that a length of a part, by its name (`height` of `strip`), becomes `length`. Where the size of a
 * part follows from an inset, that is the size of what it lies on, larger by the borders: they stay as they are.
 *
 * `null` where the part has no such length, also where its size fills a room or something of it is torn or tucked.
 */
export function lengthNamed(
  layout: Layout,
  { part: id, name, length }: { readonly part: string; readonly name: string; readonly length: Length },
): LengthWanted | null {
  const dimension = dimensionsOf(layout).find((one) => one.part === id && one.name === name);
  if (dimension !== undefined) return { dimension, length };
  const part = layout.parts.find((one) => one.id === id);
  if (part === undefined || part.extent.by !== 'inset' || (name !== 'width' && name !== 'height'))
    return null;
  if ([...Object.values(part.torn), ...Object.values(part.tuck), part.margin].some((off) => off > 0))
    return null;
  const { inset } = part.extent;
  const on = part.on === 'inside' || part.on === 'back' ? 'base' : part.on;
  return lengthNamed(layout, { part: on, name, length: sum(length, inset, inset) });
}

/** What the lengths of a part may be called in `lengthNamed`. */
export function lengthNames(layout: Layout, id: string): readonly string[] {
  const own = dimensionsOf(layout).flatMap((one) => (one.part === id ? [one.name as string] : []));
  const part = layout.parts.find((one) => one.id === id);
  return part?.extent.by === 'inset' ? [...new Set(['width', 'height', ...own])] : [...new Set(own)];
}
