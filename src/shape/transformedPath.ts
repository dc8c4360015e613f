import svgpath from 'svgpath';
import { assert } from '../problem/index.ts';

/**
 * Path data moved, turned or enlarged by transform lists as SVG writes them (`translate(10) rotate(45)`), the first of
 * the lists first; as path data again, its places absolute and its numbers with no more than `decimals` decimals.
 *
 * The data and the lists are such as `readPath` and `isTransform` take: what is none would be passed over in silence.
 */
export function transformedPath(text: string, transforms: readonly string[], decimals: number): string {
  let path = svgpath(text) as ReturnType<typeof svgpath> & { readonly err: string };
  assert(path.err === '', 'Only path data is transformed', { text });
  for (const transform of transforms) {
    assert(isTransform(transform), 'Only what is a transform is done', { transform });
    path = path.transform(transform) as typeof path;
  }
  return path.abs().round(decimals).toString();
}

/** Whether a text is a transform list of SVG, with numbers up to a million million; none is an empty one. */
export function isTransform(text: string): boolean {
  if (text.trim() === '') return true;
  const steps = [...text.matchAll(step)];
  return (
    steps.map(([whole]) => whole).join('') === text &&
    steps.every(([, name, list]) => {
      const numbers = list!.split(/[\s,]+/).map(Number);
      return counts[name!]!.includes(numbers.length) && numbers.every((number) => Math.abs(number) <= 1e12);
    })
  );
}

const number = String.raw`[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`;
const comma = String.raw`(?:\s+,?\s*|,\s*)`;
const step = new RegExp(
  String.raw`\s*(matrix|translate|scale|rotate|skewX|skewY)\s*\(\s*(${number}(?:${comma}${number})*)\s*\)\s*,?\s*`,
  'gy',
);

/** How many numbers each step may have (Scalable Vector Graphics 1.1, section 7.6). */
const counts: Readonly<Record<string, readonly number[]>> = {
  matrix: [6],
  translate: [1, 2],
  scale: [1, 2],
  rotate: [1, 3],
  skewX: [1],
  skewY: [1],
};
