import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLayoutFile } from '../files/index.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { layoutOf, mm, part } from '../layout/testing/build.ts';
import { setTimeOf } from './setTime.ts';
import { tasksOf } from './tasks.ts';
import { joins, permutations } from './testing/joining.ts';

function setOf(path: string): Layout {
  const read = readLayoutFile(readFileSync(path, 'utf8'));
  if ('problems' in read) throw new Error(path);
  return read.layout;
}

const nobody = { helpers: null, stations: null, dryAtOnce: null, cut: null, score: null, close: null };

describe('the usual minutes', () => {
  it('land where makers say they do (common practice, no source)', () => {
    const minutesOf = (path: string, without: readonly string[] = []) => {
      const layout = setOf(path);
      const tasks = tasksOf(layout, arrange(layout)).filter(({ kind }) => !without.includes(kind));
      return tasks.reduce((sum, { minutes, pieces }) => sum + (minutes * pieces) / layout.cards, 0);
    };
    // A simple card: about 5 minutes.
    expect(minutesOf('examples/garden-gate.card.json')).toBeCloseTo(5.5, 1);
    expect(minutesOf('test/sets/harbour-lights.card.json')).toBeLessThan(5);
    // 14 people made 527 cards of prepared kits in 5 hours: 7.97 minutes of one person a card.
    expect((14 * 5 * 60) / 527).toBeCloseTo(7.97, 2);
    expect(minutesOf('examples/lantern-walk.card.json', ['cut'])).toBeGreaterThan(7);
    expect(minutesOf('examples/lantern-walk.card.json', ['cut'])).toBeLessThan(10);
    // Layered cards take 35 to 45 minutes made one by one, and far less in a row.
    expect(minutesOf('test/sets/tulip-bow.card.json')).toBeLessThan(20);
  });

  it('count every piece that is cut, spares and papers in turn too', () => {
    const layout = setOf('examples/lantern-walk.card.json');
    const cut = tasksOf(layout, arrange(layout)).filter(({ kind }) => kind === 'cut');
    // Counted by hand from the file: 12 bases, 12 mats and so on, each with its spares.
    const all = [layout.base, ...layout.parts]
      .filter(({ papers }) => papers.length > 0)
      .reduce((sum, dealt) => sum + 12 * ('places' in dealt ? dealt.places.length : 1) + dealt.spare, 0);
    expect(cut.reduce((sum, { pieces }) => sum + pieces, 0)).toBe(all);
  });
});

/** Small piles with glue that sets for half an hour, and tasks that take some minutes each. */
const somePile = fc
  .record({
    cards: fc.integer({ min: 1, max: 3 }),
    parts: fc.array(
      fc.record({
        on: fc.nat(),
        left: fc.integer({ min: 0, max: 5 }),
        width: fc.integer({ min: 1, max: 6 }),
        isBand: fc.integer({ min: 0, max: 2 }).map((one) => one === 0),
        isRaised: fc.boolean(),
        lay: fc.integer({ min: 1, max: 20 }),
      }),
      { minLength: 2, maxLength: 4 },
    ),
  })
  .map(({ cards, parts }): Layout => {
    const layout = layoutOf({
      units: 'mm',
      base: [mm(80), mm(80)],
      parts: parts.map(({ on, left, width, isBand }, index) =>
        part(`p${index}`, {
          on: on % (index + 1) === 0 ? 'base' : `p${(on % (index + 1)) - 1}`,
          size: [mm(10 * width + (isBand ? 10 : 0)), mm(20)],
          place: { left: mm(10 * left), top: mm(10) },
          ...(isBand ? { tuck: { left: mm(5), right: mm(5) } } : {}),
        }),
      ),
    });
    return {
      ...layout,
      cards,
      making: { ...nobody, cut: 0, score: 0, close: 0 },
      parts: layout.parts.map((each, index) => ({
        ...each,
        adhere: parts[index]!.isRaised ? 'raised' : 'flat',
        minutes: { ready: 0, lay: parts[index]!.lay },
      })),
    };
  });

/** When the parts are on all cards in that order, minute by minute, by hands that know what hangs together. */
function watched(layout: Layout, order: readonly string[]): number {
  const heaps = new Map(['base', ...order].map((id) => [id, new Set([id])]));
  /** Since when each part lies on each card, and for how long that has to set. */
  const laid = new Map<string, readonly number[]>();
  let now = 0;
  for (const id of order) {
    const own = layout.parts.find((each) => each.id === id)!;
    const minutes = own.minutes!.lay!;
    const isBand = Object.values(own.tuck).some((tuck) => tuck > 0);
    const [mine, other] = [heaps.get(id)!, heaps.get(own.on)!];
    // A band is turned over with what it goes round; a part with something on it, to get at its back.
    const turned = [...(isBand ? other : []), ...(isBand || mine.size > 1 ? mine : [])];
    let start = now;
    const isSet = () =>
      turned.every((each) =>
        (laid.get(each) ?? []).every((since, card) => since + 30 <= start + card * minutes),
      );
    while (!isSet()) start += 1;
    now = start + layout.cards * minutes;
    const isGlued = own.adhere === 'flat' && !isBand;
    if (isGlued)
      laid.set(
        id,
        Array.from({ length: layout.cards }, (_, card) => start + (card + 1) * minutes),
      );
    const all = new Set([...mine, ...other]);
    for (const each of all) heaps.set(each, all);
  }
  return now;
}

describe('one pair of hands', () => {
  it('is as fast as the best of all orders in which a card can be put together', () => {
    const seen = { waits: 0, gains: 0 };
    fc.assert(
      fc.property(somePile, (layout) => {
        const arrangement = arrange(layout);
        const sound = permutations(layout.parts.map(({ id }) => id)).filter((order) =>
          joins(layout, arrangement, order),
        );
        fc.pre(sound.length > 0);
        const { hands } = setTimeOf(layout, arrangement);
        const best = Math.min(...sound.map((order) => watched(layout, order)));
        expect(hands.finish / 60).toBe(best);
        expect(hands.isProved).toBe(true);
        const order = hands.runs.map(({ task }) => task.slice('lay '.length));
        expect(watched(layout, order)).toBe(best);
        seen.waits += hands.idle > 0 ? 1 : 0;
        seen.gains += hands.finish < hands.guided.finish ? 1 : 0;
      }),
      { numRuns: 400 },
    );
    expect(seen.waits).toBeGreaterThan(10);
    expect(seen.gains).toBeGreaterThan(5);
  });

  it('keeps the order that the layout names', () => {
    const layout = setOf('test/sets/tulip-bow.card.json');
    const order = ['upper', 'lower', 'wrap', 'tail', 'loop', 'knot', 'mat'];
    const { hands } = setTimeOf({ ...layout, order }, arrange(layout));
    expect(hands.order).toBeNull();
    expect(hands.finish).toBeGreaterThan(setTimeOf(layout, arrange(layout)).hands.finish);
  });

  it('makes so many at a time where there is no room for more to dry', () => {
    const layout = setOf('test/sets/tulip-bow.card.json');
    const making = { ...nobody, dryAtOnce: 4 };
    const { hands } = setTimeOf({ ...layout, making }, arrange(layout));
    const of = (cards: number) => setTimeOf({ ...layout, cards }, arrange(layout)).hands;
    expect(hands.batch).toBe(4);
    // Ten are four, four and two; spares are cut with their share.
    expect(Math.abs(hands.finish - 2 * of(4).finish - of(2).finish)).toBeLessThan(120);
  });
});

describe('several helpers', () => {
  it('share the cards, the largest share counting', () => {
    const layout = setOf('examples/garden-gate.card.json');
    const { hands } = setTimeOf({ ...layout, making: { ...nobody, helpers: 3 } }, arrange(layout));
    expect(hands.cards).toBe(3);
  });

  it('go through stations with all that waits drying in between', () => {
    const layout = { ...setOf('test/sets/tulip-bow.card.json'), cards: 40 };
    const making = { ...nobody, helpers: 9, stations: 5 };
    const { line } = setTimeOf({ ...layout, making }, arrange(layout));
    expect(line?.isProved).toBe(true);
    expect(line?.stations).toHaveLength(5);
    expect(line?.stations.reduce((sum, { helpers }) => sum + helpers, 0)).toBe(9);
    expect(line?.stations.flatMap(({ tasks }) => tasks)).toEqual(
      tasksOf(layout, arrange(layout))
        .map(({ id }) => id)
        .filter((id) => !id.startsWith('cut') && id !== 'close'),
    );
    const crowded = setTimeOf({ ...layout, making: { ...making, dryAtOnce: 3 } }, arrange(layout)).line;
    expect(crowded?.withRoom).toBe(line?.finish);
    expect(crowded!.finish).toBeGreaterThan(line!.finish);
    for (const { most } of crowded!.lying) expect(most).toBeLessThanOrEqual(3);
  });

  it('that are two may make ready and put on, no faster than the rule for two allows', () => {
    const layout = setOf('examples/lantern-walk.card.json');
    const { pair } = setTimeOf({ ...layout, making: { ...nobody, helpers: 2 } }, arrange(layout));
    expect(pair?.isProved).toBe(true);
    expect(pair?.times.map((time) => time.part).toSorted()).toEqual(
      ['', ...layout.parts.map(({ id }) => id)].toSorted(),
    );
    expect(pair!.finish).toBeGreaterThanOrEqual(pair!.bound);
  });
});
