import type { Layout, Part } from '../layout/index.ts';

/**
 * Parts that removable tape may lift as one, in the order they are put on: they lie on the same thing, are held the same
 * way, are put on one after the other, and each is laid to another of them, so that what has to stay as it is is the gap
 * between them. `order` has the ids of all parts; `isBand` tells those that are wrapped round, which are never among them.
 *
 * To lay them out, tape across their fronts and lift them as one is common practice, no source.
 */
export function liftedTogether(
  layout: Pick<Layout, 'parts'>,
  order: readonly string[],
  isBand: (part: Part) => boolean,
): readonly (readonly string[])[] {
  const byId = new Map(layout.parts.map((part) => [part.id, part]));
  const parts = order.flatMap((id) => byId.get(id) ?? []);
  const belongs = (part: Part, group: readonly Part[]): boolean =>
    group.every((other) => other.on === part.on && other.adhere === part.adhere && !isBand(other)) &&
    !isBand(part) &&
    group.some((other) => neighboursOf(part).has(other.id) || neighboursOf(other).has(part.id));
  const groups: Part[][] = [];
  for (const part of parts) {
    const group = groups.at(-1);
    if (group !== undefined && belongs(part, group)) group.push(part);
    else groups.push([part]);
  }
  return groups.filter((group) => group.length > 1).map((group) => group.map(({ id }) => id));
}

/** The parts that it is laid to. */
function neighboursOf({ places }: Part): ReadonlySet<string> {
  return new Set(
    places.flatMap(({ across, down }) =>
      [across.start, across.end, down.start, down.end].flatMap((anchor) =>
        anchor?.from === 'part' ? [anchor.part] : [],
      ),
    ),
  );
}
