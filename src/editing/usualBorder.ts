import { dimensionsOf, type Layout } from '../layout/index.ts';
import { inches, type Length, millimetres } from '../measure/index.ts';

/**
 * The border that the layout has most often: the commonest of its insets, distances and gaps, of equally common ones
 * the smallest; 1/8 in or 3 mm where it has none (common practice, no source).
 */
export function usualBorder(layout: Layout): Length {
  const [most] = bordersUsed(layout);
  return most ?? (layout.units === 'in' ? inches(1, 8) : millimetres(3));
}

/** Every border and gap above zero that the layout, but for one part, was drawn with, the commonest first. */
export function bordersUsed(layout: Layout, except: string | null = null): readonly Length[] {
  const times = new Map<Length, number>();
  for (const { kind, length, part } of dimensionsOf(layout)) {
    if (part === except || length <= 0 || kind === 'size' || kind === 'beyond') continue;
    times.set(length, (times.get(length) ?? 0) + 1);
  }
  return [...times].sort((a, b) => b[1] - a[1] || a[0] - b[0]).map(([length]) => length);
}
