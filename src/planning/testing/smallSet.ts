import type { CutLimits, Item } from '../../cutting/index.ts';
import { chance } from '../../cutting/testing/chance.ts';
import { leastByTrying } from '../../cutting/testing/everyCut.ts';
import type { Layout } from '../../layout/index.ts';
import { layoutOf, paper, part } from '../../layout/testing/build.ts';
import { type Length, lengthOfTicks } from '../../measure/index.ts';
import type { Trimmer } from '../../trimming/index.ts';
import { trimmerWith } from '../../trimming/testing/trimmers.ts';

/** All lengths of a small set are whole numbers of this: 1/4 in. */
export const unit = 10_160;

/** So many units. */
export function units(count: number): Length {
  return lengthOfTicks(count * unit);
}

/** A set of one to three parts from one to three papers of a few units, and the trimmer; the same for the same seed. */
export function smallSet(seed: number): { readonly layout: Layout; readonly trimmer: Trimmer | null } {
  const int = chance(seed);
  const some = (odds: number) => int(1, odds) === 1;
  const sheet = () => ({
    size: { width: units(int(4, 9)), height: units(int(4, 9)) },
    count: some(8) ? null : int(0, 2),
    scrap: some(4),
    margin: {
      left: units(some(6) ? 1 : 0),
      right: units(0),
      top: units(some(8) ? 1 : 0),
      bottom: units(some(8) ? 1 : 0),
    },
  });
  const ids = ['bark', 'meadow', 'plum'].slice(0, int(1, 3));
  const papers = ids.map((id) =>
    paper(id, Array.from({ length: int(1, 2) }, sheet), some(2) ? 'one-way' : 'any'),
  );
  const dealt = () =>
    some(3)
      ? Array.from({ length: int(2, 3) }, () => ids[int(0, ids.length - 1)]!)
      : [ids[int(0, ids.length - 1)]!];
  const parts = Array.from({ length: int(1, 3) }, (_, index) =>
    part(`part${index}`, {
      size: [units(int(1, 5)), units(int(1, 5))],
      count: some(4) ? 2 : 1,
      papers: some(9) ? [] : dealt(),
      spare: some(3) ? int(1, 2) : 0,
      lies: some(5) ? 'sideways' : 'upright',
      ...(some(5) ? { turn: some(2) ? 'free' : 'locked' } : {}),
    }),
  );
  const layout = layoutOf({
    cards: int(1, 9),
    base: [units(int(2, 4)), units(int(2, 5))],
    fold: some(2) ? 'none' : (['left', 'top', 'gate'] as const)[int(0, 2)]!,
    basePapers: some(3) ? dealt() : [],
    papers,
    parts,
  });
  const trimmer = trimmerWith({
    ...(some(2) ? { marks: units(2) } : {}),
    ...(some(3) ? { longest: units(int(5, 8)) } : {}),
    ...(some(3) ? { narrowest: units(2) } : {}),
    ...(some(3) ? { reach: units(int(3, 6)) } : {}),
  });
  return { layout, trimmer: some(3) ? trimmer : null };
}

/** What each paper must give for so many cards, dealt out card by card and piece by piece; in units. */
export function wantedByHand(layout: Layout, cards: number): ReadonlyMap<string, readonly Item[]> {
  const wanted = new Map<string, Item[]>();
  const want = (
    of: { readonly papers: readonly string[]; readonly turn: string | null },
    at: number,
    width: number,
    height: number,
  ) => {
    const id = of.papers[at % of.papers.length];
    if (id === undefined) return;
    const turns = of.turn === null ? layout.papers.get(id)!.up === 'any' : of.turn === 'free';
    const items = wanted.get(id) ?? [];
    wanted.set(id, items);
    const same = items.findIndex(
      (item) => item.width === width && item.height === height && item.turns === turns,
    );
    if (same < 0) items.push({ width, height, turns, need: 1 });
    else items[same] = { ...items[same]!, need: items[same]!.need + 1 };
  };
  const inUnits = (length: Length | null) => {
    if (length === null || length % unit !== 0) throw new Error('A small set has whole units');
    return length / unit;
  };
  const { base } = layout;
  const opened = [
    inUnits(base.size.width) * (base.fold === 'left' || base.fold === 'gate' ? 2 : 1),
    inUnits(base.size.height) * (base.fold === 'top' ? 2 : 1),
  ] as const;
  for (let card = 0; card < cards; card += 1) {
    want(base, card, ...opened);
    for (const part of layout.parts) for (const _ of part.places) want(part, card, ...cutSize(part));
  }
  for (let spare = 0; spare < base.spare; spare += 1) want(base, spare, ...opened);
  for (const part of layout.parts)
    for (let spare = 0; spare < part.spare; spare += 1) want(part, spare, ...cutSize(part));
  return wanted;

  function cutSize({ extent, lies }: Layout['parts'][number]): readonly [number, number] {
    if (extent.by !== 'size') throw new Error('A small set has parts of known sizes');
    const [width, height] = [inUnits(extent.width), inUnits(extent.height)];
    return lies === 'sideways' ? [height, width] : [width, height];
  }
}

/**
 * Whether the sheets of a paper give all this, by trying every cut; `null`: that is too much work, or margins are to
 * be cut off with a trimmer that may be unable to.
 */
export function givesByHand(
  layout: Layout,
  id: string,
  items: readonly Item[],
  trimmer: Trimmer | null,
): boolean | null {
  const { sheets } = layout.papers.get(id)!;
  const margins = sheets.some(({ margin }) => Object.values(margin).some((length) => length > 0));
  if (margins && trimmer !== null) return null;
  const counts = sheets.map(({ count }) => count ?? items.reduce((sum, { need }) => sum + need, 0));
  if (counts.reduce((sum, count) => sum + count, 0) > 5 || items.length > 3) return null;
  if (items.length === 0) return true;
  const inUnits = (length: Length | null) => (length === null ? null : length / unit);
  const limits: CutLimits = {
    step: inUnits(trimmer?.marks ?? null),
    longest: inUnits(trimmer?.longest ?? null),
    reach: inUnits(trimmer?.reach.measuringSide ?? null),
  };
  const narrowest = (trimmer?.narrowest ?? 0) / unit;
  if (items.some(({ width, height }) => Math.min(width, height) < narrowest)) return false;
  const task = {
    items,
    limits,
    sheets: sheets.flatMap(({ size, margin }, index) =>
      counts[index] === 0
        ? []
        : [
            {
              width: (size.width - margin.left - margin.right) / unit,
              height: (size.height - margin.top - margin.bottom) / unit,
              count: counts[index]!,
              cost: 1,
            },
          ],
    ),
  };
  return leastByTrying(task, 5) !== null;
}
