import type { Layout } from './layout.ts';
import { type LayoutProblem, partProblem } from './layoutProblem.ts';

/** Parts that are to be cut from leftovers of papers that nothing else is cut from, so that there are none. */
export function noLeftovers(layout: Layout): readonly LayoutProblem[] {
  const cutFrom = new Set(
    [layout.base, ...layout.parts.filter(({ from }) => from === undefined)].flatMap(({ papers }) => papers),
  );
  return layout.parts.flatMap((part, index) =>
    part.from === undefined || part.papers.some((id) => cutFrom.has(id))
      ? []
      : [partProblem(layout, index, 'noLeftovers', 'from', { papers: new Set(part.papers).size })],
  );
}
