import type { Axis } from '../measure/index.ts';

/** How a piece is laid along one axis. */
export type PartLaying =
  /** Centred. */
  | { readonly how: 'middle' }
  /** At a distance from the left or top edge of what it lies on, or from the right or bottom edge. */
  | { readonly how: 'start' | 'end' }
  /** From both edges: it fills the room between. */
  | { readonly how: 'between' }
  /** A gap to the right of another part or below it; or to the left of it or above it. */
  | { readonly how: 'beyond' | 'before'; readonly part: string };

/** How it is laid, in the trade's words: `from the left`, `below Panel`. `beside`: the name of the other part. */
export function layingWords(laying: PartLaying, axis: Axis, beside: string): string {
  const across = axis === 'width';
  switch (laying.how) {
    case 'middle':
      return across ? 'in the middle across' : 'in the middle down';
    case 'start':
      return across ? 'from the left' : 'from the top';
    case 'end':
      return across ? 'from the right' : 'from the bottom';
    case 'between':
      return across ? 'from side to side' : 'from top to bottom';
    case 'beyond':
      return across ? `to the right of ${beside}` : `below ${beside}`;
    case 'before':
      return across ? `to the left of ${beside}` : `above ${beside}`;
  }
}
