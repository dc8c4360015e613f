import type { Arrangement } from '../../layout/index.ts';
import { tearOf } from '../../making/index.ts';
import type { Edge } from '../../measure/index.ts';

/** How deep each torn edge went, by `part piece edge`. */
export type Depths = ReadonlyMap<string, number>;

/**
 * What is seen from top to bottom along a line down the front at `x`: the topmost part of every stretch, or `base`;
 * a simple painter that knows nothing of joins. Opaque rectangles only.
 */
export function seenDown({ card, parts }: Arrangement, x: number, depths: Depths): readonly string[] {
  const spans = parts.flatMap(({ part, pieces }) =>
    pieces.flatMap(({ box }, piece) => {
      if (box === null || x < box.left || x > box.left + box.width) return [];
      const retreat = (edge: Edge) => {
        const depth = depths.get(`${part.id} ${piece} ${edge}`);
        return depth === undefined ? 0 : depth - part.torn[edge];
      };
      const top = box.top + retreat('top');
      const bottom = box.top + box.height - retreat('bottom');
      return [{ id: part.id, top, bottom }];
    }),
  );
  const places = [0, card.height, ...spans.flatMap(({ top, bottom }) => [top, bottom])]
    .filter((place) => place >= 0 && place <= card.height)
    .sort((a, b) => a - b);
  const seen: string[] = [];
  for (const [index, from] of places.slice(0, -1).entries()) {
    const to = places[index + 1]!;
    if (to === from) continue;
    const middle = (from + to) / 2;
    const id = spans.findLast(({ top, bottom }) => top < middle && middle < bottom)?.id ?? 'base';
    if (seen.at(-1) !== id) seen.push(id);
  }
  return seen;
}

/** Depths for every torn edge of the arrangement; `share` gives a number in [0, 1] for each, from its least to its most. */
export function depthsOf({ parts }: Arrangement, share: () => number): Depths {
  return new Map(
    parts.flatMap(({ part, pieces }) =>
      pieces.flatMap((_, piece) =>
        (['left', 'right', 'top', 'bottom'] as const).flatMap((edge) => {
          if (part.torn[edge] === 0) return [];
          const { least, most } = tearOf(part.torn[edge], null);
          return [[`${part.id} ${piece} ${edge}`, least + share() * (most - least)] as const];
        }),
      ),
    ),
  );
}
