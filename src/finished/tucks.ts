import type { Part } from '../layout/index.ts';
import { type Box, bottomOf, type Edge, type Length, minus, rightOf } from '../measure/index.ts';
import { boxRegion, type Region } from '../shape/index.ts';

/** What a wrapped band has behind at each end it is tucked in at, in the axes of its face; `box` is what is seen of it. */
export function tucksOf(part: Part, box: Box): readonly Region[] {
  return tuckedEnds(part, box).map(({ box: end }) => boxRegion(end));
}

/** The same, each with the edge that it goes round. */
export function tuckedEnds({ tuck }: Part, box: Box): readonly { readonly edge: Edge; readonly box: Box }[] {
  const ends: Readonly<Record<Edge, (depth: Length) => Box>> = {
    left: (width) => ({ ...box, width }),
    right: (width) => ({ ...box, left: minus(rightOf(box), width), width }),
    top: (height) => ({ ...box, height }),
    bottom: (height) => ({ ...box, top: minus(bottomOf(box), height), height }),
  };
  return (Object.keys(ends) as Edge[]).flatMap((edge) =>
    tuck[edge] > 0 ? [{ edge, box: ends[edge](tuck[edge]) }] : [],
  );
}
