import type { Size, Units } from './box.ts';
import { type LengthRefusal, readLength } from './reading.ts';

/** A size that was read from text; or why the text is none, with the text of the measure that cannot be read. */
export type SizeReading =
  | { readonly ok: true; readonly size: Size; readonly units: Units }
  | { readonly ok: false; readonly why: 'not-two' }
  | { readonly ok: false; readonly why: 'length'; readonly refusal: LengthRefusal; readonly text: string };

/**
 * Width and height as people type them: `105 x 148 mm`, `4 1/4 × 5 1/2 in`, `8.5" by 11"`. A unit after the second
 * holds for both where the first has none; with none at all they are in `units`.
 */
export function readSize(text: string, units: Units): SizeReading {
  const measures = text.split(/\s*[x×*]\s*|\s+by\s+/iu);
  const [first, second] = measures;
  if (measures.length !== 2 || first === undefined || second === undefined)
    return { ok: false, why: 'not-two' };
  const height = readLength(second, units);
  if (!height.ok) return { ok: false, why: 'length', refusal: height, text: second };
  const unit = /[^\d\s.,/⁄¼-¾⅐-⅞-]+\s*\.?$/u.exec(second)?.[0] ?? '';
  const bare = !/[a-z"″'′”]/iu.test(first);
  const width = readLength(bare && unit !== '' ? `${first} ${unit}` : first, height.units);
  if (!width.ok) return { ok: false, why: 'length', refusal: width, text: first };
  return { ok: true, size: { width: width.length, height: height.length }, units: height.units };
}
