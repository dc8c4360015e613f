import { describe, expect, it } from 'vitest';
import { arrange, type Layout, type Part } from '../layout/index.ts';
import { awayFrom, inch, layoutOf, mm, paper, part } from '../layout/testing/build.ts';
import { chanceInSet, sampledChance, tearSum } from '../making/index.ts';
import { type Length, lengthOfTicks } from '../measure/index.ts';
import {
  type Chance,
  chanceInCards,
  chanceOnCard,
  failureChance,
  type LaidJoin,
  type TearJoin,
  tearJoins,
  tearProblems,
  tearsOf,
} from './index.ts';

const tornBy = (least: number, usual: number, most: number) => ({
  least: mm(least),
  usual: mm(usual),
  most: mm(most),
  core: null,
});

/** Leaves above, ticking below, both torn over a navy strip: 3 + 64 + 5 + 30 + 3 = 105. */
function thankYou({ overlap = 10, reveal = 5, cards = 12, wander = 3 } = {}): Layout {
  const tear = tornBy(8 - wander, 8, 8 + wander);
  return layoutOf({
    units: 'mm',
    cards,
    base: [mm(148), mm(105)],
    fold: 'top',
    parts: [
      part('navy', {
        size: [mm(142), mm(2 * overlap + reveal)],
        place: { top: mm(67 - overlap) },
      }),
      part('leaf', { size: [mm(142), mm(72)], torn: { bottom: mm(8) }, place: { top: mm(3) }, tear }),
      part('stripe', {
        size: [mm(142), mm(38)],
        torn: { top: mm(8) },
        place: { top: awayFrom('leaf', mm(reveal)) },
        tear,
      }),
    ],
  });
}

const expectExactly = (found: Chance, chance: number) => {
  expect(found.by).toBe('exact');
  expect(found.chance).toBeCloseTo(chance, 12);
};

const told = (layout: Layout, wanted?: number) =>
  tearsOf(layout, arrange(layout), {
    marks: layout.units === 'mm' ? mm(1) : inch('1/16'),
    ...(wanted === undefined ? {} : { wanted }),
  });
const shown = ({ kind, part: of, edge, against, nominal, least, most }: TearJoin) =>
  [kind, of, edge, against.part, against.edge, nominal / 1600, least / 1600, most / 1600] as const;

describe('thank-you cards with torn edges', () => {
  it('show 0 to 11 mm of navy where 5 are reckoned, and never less than 7 mm of it is covered', () => {
    const { joins, shows, meets } = told(thankYou());
    expect(joins.map(shown)).toEqual([
      ['facing', 'leaf', 'bottom', 'stripe', 'top', 5, -1, 11],
      ['over', 'leaf', 'bottom', 'navy', 'top', 10, 7, 13],
      ['over', 'stripe', 'top', 'navy', 'bottom', 10, 7, 13],
    ]);
    expect(joins.map((join) => join.shows)).toEqual(['navy', 'base', 'base']);
    expect(shows.inSet).toEqual({ by: 'exact', chance: 0 });
    // Both at least 2 of 3 mm short: t⁴ / (24 · 9²) with t = 1, worked out by hand.
    expectExactly(meets.onCard, 1 / 1944);
    expect(meets.inSet.chance).toBeCloseTo(1 - (1943 / 1944) ** 12, 12);
    expect(tearProblems(thankYou(), told(thankYou()))).toEqual([]);
  });

  it('are in nine of ten as their two tears together are', () => {
    const [facing] = told(thankYou()).joins;
    // 5 mm ± the twentieth of two symmetric tears: t⁴ / 1944 = 1/20 lies beyond the first corner, so by bisection.
    expect(facing!.likely.least / 1600).toBeCloseTo(5 - 2.83, 1);
    expect(facing!.likely.most / 1600).toBeCloseTo(5 + 2.83, 1);
  });

  it('are cautioned where the tears wander more than the strip is hidden', () => {
    const layout = thankYou({ overlap: 2 });
    const { joins, shows } = told(layout);
    // 1 of 3 mm too deep: (1/3)² / 2 each, two of them on a card.
    const each = 1 / 18;
    expect(joins[1]!.onCard.chance).toBeCloseTo(each, 12);
    expectExactly(shows.onCard, 1 - (1 - each) ** 2);
    expect(shows.inSet.chance).toBeCloseTo(1 - (1 - each) ** 24, 12);
    const problems = tearProblems(layout, told(layout));
    expect(
      problems.map(({ code, severity, where, names }) => [code, severity, where, names.against]),
    ).toEqual([
      ['tearMayShow', 'caution', 'parts[1].torn', 'navy'],
      ['tearMayShow', 'caution', 'parts[2].torn', 'navy'],
    ]);
  });

  it('are under the risk with each remedy, and not with a mark less', () => {
    const layout = thankYou({ overlap: 2 });
    const [, over] = told(layout).joins;
    expect(over!.remedy!.more).toBe(mm(1));
    expect(over!.remedy!.resized).toEqual([
      { part: 'leaf', axis: 'height', from: mm(72), to: mm(73) },
      { part: 'navy', axis: 'height', from: mm(9), to: mm(10) },
    ]);
    expect(told(thankYou({ overlap: 3 })).shows.inSet.chance).toBeLessThan(1 / 20);
    const { tear } = over!.remedy!.torn![0]!;
    expect([tear.least, tear.most]).toEqual([mm(6), mm(10)]);
    const evener = {
      ...layout,
      parts: layout.parts.map((each) =>
        each.tear === null ? each : { ...each, tear: { ...tear, core: null } },
      ),
    };
    expect(told(evener).shows.inSet.chance).toBeLessThan(1 / 20);
  });

  it('are an error where even the usual tear shows', () => {
    const layout = thankYou();
    const deep = layout.parts.map((each) =>
      each.id === 'leaf' ? { ...each, tear: tornBy(17, 19, 21) } : each,
    );
    const deeper = { ...layout, parts: deep };
    const [problem] = tearProblems(deeper, told(deeper));
    expect(problem).toMatchObject({ code: 'tearShows', severity: 'error', part: 'leaf' });
    expect(problem!.numbers.usual).toBe(mm(-1));
  });

  it('are cautioned where the two may meet', () => {
    const layout = thankYou({ reveal: 2 });
    expect(tearProblems(layout, told(layout)).map(({ code }) => code)).toEqual(['tearMeets']);
    const [facing] = told(layout).joins;
    expect(facing!.remedy!.more).toBe(mm(3));
    expect(facing!.remedy!.resized.map(({ part: id, from, to }) => [id, from, to])).toEqual([
      ['leaf', mm(72), mm(69)],
      ['stripe', mm(38), mm(35)],
    ]);
    expect(told(thankYou({ reveal: 5 })).meets.inSet.chance).toBeLessThan(1 / 20);
    expect(told(thankYou({ reveal: 4 })).meets.inSet.chance).toBeGreaterThan(1 / 20);
  });
});

describe('a torn edge', () => {
  const card = (parts: readonly Part[], papers: Parameters<typeof paper>[0][] = []) =>
    layoutOf({
      units: 'mm',
      base: [mm(100), mm(100)],
      cards: 10,
      parts,
      papers: papers.map((id) => paper(id, [])),
    });
  const panel = (sketch = {}) =>
    part('panel', {
      size: [mm(80), mm(60)],
      torn: { bottom: mm(8) },
      place: { left: mm(10), top: mm(10) },
      ...sketch,
    });

  it('has a border to the edge of what it lies on', () => {
    expect(told(card([panel()])).joins.map(shown)).toEqual([
      ['border', 'panel', 'bottom', 'base', 'bottom', 38, 36, 40],
    ]);
    const onMat = [
      part('mat', { size: [mm(90), mm(56)], place: { left: mm(5), top: mm(8) } }),
      panel({ on: 'mat', place: { left: mm(5), top: mm(2) } }),
    ];
    expect(told(card(onMat)).joins.map(shown)).toEqual([
      ['border', 'panel', 'bottom', 'mat', 'bottom', 2, 0, 4],
    ]);
  });

  it('takes from the border it shows round what lies on it', () => {
    const label = part('label', { on: 'panel', size: [mm(60), mm(20)], place: { bottom: mm(1) } });
    const { joins } = told(card([panel(), label]));
    expect(joins.map(shown)).toEqual([
      ['border', 'panel', 'bottom', 'base', 'bottom', 38, 36, 40],
      ['border', 'panel', 'bottom', 'label', 'bottom', 1, -1, 3],
    ]);
    expect(joins[1]!.remedy!.resized.map(({ part: id, from, to }) => [id, from, to])).toEqual([
      ['panel', mm(60), mm(61)],
      ['label', mm(20), mm(19)],
    ]);
  });

  it('is hidden by a strip over it, and by nothing see-through', () => {
    const strip = (papers: readonly string[] = []) =>
      part('strip', { size: [mm(90), mm(10)], place: { left: mm(5), top: mm(58) }, papers });
    const { joins } = told(card([panel(), strip()]));
    expect(joins.map(shown)).toEqual([['under', 'panel', 'bottom', 'strip', 'top', 4, 2, 6]]);
    expect(joins[0]!.shows).toBe('base');
    const layout = card([panel(), strip(['mist'])], ['mist']);
    const vellum = { ...layout.papers.get('mist')!, seeThrough: true };
    const through = told({ ...layout, papers: new Map([['mist', vellum]]) }).joins.map(({ kind }) => kind);
    expect(through).not.toContain('under');
  });

  it('comes out past a strip that is too narrow for a shallow tear', () => {
    const strip = part('strip', { size: [mm(90), mm(5)], place: { left: mm(5), top: mm(58) } });
    const { joins, shows } = told(card([panel(), strip]));
    expect(joins.map(shown)).toEqual([
      ['under', 'panel', 'bottom', 'strip', 'top', 4, 2, 6],
      ['beyond', 'panel', 'bottom', 'strip', 'bottom', 1, -1, 3],
    ]);
    // 1 of 2 mm too shallow.
    expect(shows.onCard.chance).toBeCloseTo(1 / 8, 12);
  });

  it('bares nothing that something on top hides', () => {
    const navy = part('navy', { size: [mm(90), mm(10)], place: { left: mm(5), top: mm(61) } });
    const label = (top: number) =>
      part('label', { on: 'panel', size: [mm(80), mm(20)], place: { left: mm(0), top: mm(top) } });
    // Navy's edge lies 1 mm under the tear; a label that begins there hides 20 mm more.
    expect(
      told(card([navy, panel()])).joins.find(({ kind }) => kind === 'over')!.onCard.chance,
    ).toBeGreaterThan(0.1);
    const hidden = told(card([navy, panel(), label(31.5)])).joins.find(({ kind }) => kind === 'over');
    expect(shown(hidden!)).toEqual(['over', 'panel', 'bottom', 'label', 'top', 20.5, 18.5, 22.5]);
  });

  it('is followed by where its neighbours stand', () => {
    const left = part('left', { size: [mm(30), mm(10)], place: { left: mm(10), top: mm(66) } });
    const right = part('right', { size: [mm(30), mm(10)], place: { left: mm(60), top: mm(72) } });
    const joins = told(card([panel(), left, right])).joins;
    expect(joins.map((join) => [join.against.part, join.nominal / 1600])).toEqual([
      ['left', 4],
      ['base', 38],
      ['right', 10],
    ]);
  });

  it('comes nearest to a circle in the middle of it', () => {
    const sun = part('sun', { diameter: mm(20), place: { left: mm(40), top: mm(65) } });
    const nearest = told(card([panel(), sun])).joins.find(({ against }) => against.part === 'sun')!;
    expect(nearest.nominal / 1600).toBeCloseTo(3, 1);
  });

  it('is not joined to a circle that crosses it, but to a strip with rounded corners', () => {
    const sun = part('sun', { diameter: mm(20), place: { left: mm(40), top: mm(52) } });
    expect(told(card([panel(), sun])).joins.map(({ against }) => against.part)).toEqual(['base']);
    const strip = part('strip', {
      size: [mm(90), mm(10)],
      place: { left: mm(5), top: mm(58) },
      shape: { kind: 'rounded', corner: mm(4) },
    });
    expect(told(card([panel(), strip])).joins.map(shown)).toEqual([
      ['under', 'panel', 'bottom', 'strip', 'top', 4, 2, 6],
    ]);
  });

  it('is told once for pieces that are joined alike, with the chance of them all', () => {
    const three = panel({
      size: [mm(20), mm(60)],
      place: [5, 40, 75].map((left) => ({ left: mm(left), top: mm(10) })),
    });
    const band = part('band', { size: [mm(100), mm(20)], place: { left: mm(0), top: mm(61) } });
    const joins = told(card([band, three])).joins;
    expect(joins.map(({ kind, pieces }) => [kind, pieces])).toEqual([
      ['border', 3],
      ['over', 3],
    ]);
    // 1 of 2 mm: 1/8 each.
    expect(joins[1]!.onCard.chance).toBeCloseTo(1 - (7 / 8) ** 3, 12);
  });

  it('turned and mirrored is joined as before', () => {
    const turned = layoutOf({
      units: 'mm',
      cards: 12,
      base: [mm(105), mm(148)],
      parts: [
        part('navy', { size: [mm(25), mm(142)], place: { right: mm(57) } }),
        part('leaf', { size: [mm(72), mm(142)], torn: { left: mm(8) }, place: { right: mm(3) } }),
        part('stripe', { size: [mm(38), mm(142)], torn: { right: mm(8) }, place: { left: mm(3) } }),
      ],
    });
    const numbers = (layout: Layout) =>
      told(layout).joins.map(({ kind, part: id, nominal, least, most, onCard }) => [
        kind,
        id,
        nominal,
        least,
        most,
        onCard,
      ]);
    expect(numbers(turned)).toEqual(numbers(thankYou({ wander: 2 })));
  });

  it('with nothing torn there is nothing to tell', () => {
    const { joins, shows, meets } = told(card([panel({ torn: {} })]));
    expect(joins).toEqual([]);
    expect([shows.inSet.chance, meets.inSet.chance]).toEqual([0, 0]);
  });
});

describe('joins that share tears', () => {
  const edge = (name: string) => ({ part: name, piece: 0, edge: 'top' as const });
  const tear = tornBy(4, 8, 12);
  const join = (margin: number, ...names: readonly (readonly [string, 1 | -1])[]): LaidJoin => {
    const signs = names.reduce((all, [, sign]) => all + sign, 0);
    return {
      kind: 'facing',
      torn: edge(names[0]![0]),
      against: edge(names[1]?.[0] ?? 'x'),
      shows: 'base',
      nominal: mm(margin),
      bare: lengthOfTicks(mm(margin) - signs * mm(8)),
      tears: names.map(([name, sign]) => ({ of: edge(name), tear, sign })),
      along: mm(100),
    };
  };

  it('fail together where they are of one tear', () => {
    const joins = [join(1, ['a', -1]), join(2, ['a', -1])];
    expectExactly(chanceOnCard(joins), failureChance(joins[0]!));
  });

  it('fail one or the other where one needs a deep and one a shallow tear', () => {
    const joins = [join(1, ['a', -1]), join(2, ['a', 1])];
    expect(chanceOnCard(joins).chance).toBeCloseTo(failureChance(joins[0]!) + failureChance(joins[1]!), 12);
  });

  it('of three tears are drawn, near to what adding up in fine strips gives', () => {
    const joins = [join(2, ['a', -1], ['b', 1]), join(3, ['b', -1], ['c', -1])];
    const found = chanceOnCard(joins);
    expect(found.by).toBe('sampled');
    if (found.by !== 'sampled') return;
    // Given b, the two are independent.
    let chance = 1;
    const strips = 4_000;
    const one = tearSum([{ tear, sign: 1 }]);
    for (let strip = 0; strip < strips; strip++) {
      const from = mm(4) + (mm(8) * strip) / strips;
      const to = from + mm(8) / strips;
      const b = (from + to) / 2 - mm(8);
      const holds = (1 - one.above(mm(10) + b)) * (1 - one.above(mm(11) - b));
      chance -= (one.above(from) - one.above(to)) * holds;
    }
    expect(Math.abs(found.chance - chance)).toBeLessThan(4 * found.standardError);
    const set = chanceInCards(found, 12);
    expect(set.chance).toBe(chanceInSet(found.chance, 12));
    expect(set.by === 'sampled' && set.standardError).toBeGreaterThan(0);
  });

  it('are as independent as their tears', () => {
    const joins = [join(1, ['a', -1]), join(2, ['b', -1]), join(2, ['c', 1])];
    const none = joins.reduce((all, each) => all * (1 - failureChance(each)), 1);
    expectExactly(chanceOnCard(joins), 1 - none);
  });

  it('of two tears are what drawing them gives', () => {
    const joins = [join(1, ['a', -1], ['b', 1]), join(2, ['a', 1], ['b', 1]), join(3, ['a', -1])];
    const found = chanceOnCard(joins);
    expect(found.by).toBe('exact');
    const drawn = sampledChance({
      tears: [tear, tear],
      happens: ([a, b]) => a! - b! > mm(1) || a! + b! < mm(14) || a! > mm(11),
      draws: 200_000,
      seed: 3,
    });
    expect(Math.abs(drawn.chance - found.chance)).toBeLessThan(4 * drawn.standardError);
  });
});

describe('a stack of tears as data', () => {
  it('keeps nominal = bare + the tears as they were reckoned', () => {
    const layout = thankYou();
    const reckoned: Length = mm(8);
    for (const { nominal, bare, tears } of tearJoins(layout, arrange(layout))) {
      expect(tears.reduce((all, { sign }) => all + sign * reckoned, bare as number)).toBe(nominal);
    }
  });
});
