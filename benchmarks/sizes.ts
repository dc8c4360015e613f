import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { LinearSolver } from '../src/cutting/index.ts';
import { readLayoutFile } from '../src/files/index.ts';
import { arrange, dimensionsOf, type Layout, withRoom } from '../src/layout/index.ts';
import { type Length, lengthOfTicks } from '../src/measure/index.ts';
import {
  cliffsOf,
  enoughFor,
  planSet,
  type SetToPlan,
  suitedSet,
  usualMarks,
} from '../src/planning/index.ts';
import { quantile, table, three, timed } from './figures.ts';
import { generator } from './generator.ts';

/** Seeds of the invented sets: this one and those after it. */
const firstSeed = 20_261_125;

/** How long it takes to know what papers are enough for and which sizes suit them, as multiples of one plan's time. */
export function sizes(solver: LinearSolver, count: number): void {
  const layouts = [...layoutsIn('examples'), ...layoutsIn(join('test', 'sets')), ...invented(count)];
  console.log(
    `Sizes: ${layouts.length - count} sets of the house, ${count} invented with seeds ${firstSeed} to ${firstSeed + count - 1}`,
  );
  const setOf = (layout: Layout): SetToPlan => ({
    layout,
    arrangement: arrange(layout),
    trimmer: null,
    solver,
  });
  for (const [, layout] of layouts.slice(0, 3)) planSet(setOf(layout)); // warm

  const runs = layouts.map(([name, layout]) => {
    const set = setOf(layout);
    const plan = timed(() => planSet(set));
    const enough = timed(() => enoughFor(set));
    const cliffs = timed(() => cliffsOf(set, enough.value));
    const roomy = withThreeRooms(layout, enough.value.limit);
    const cards = (enough.value.cards ?? layout.cards) + 1;
    const suit = roomy === null ? null : timed(() => suitedSet(setOf(roomy), cards));
    const both = enough.milliseconds + cliffs.milliseconds;
    return { name, layout, plan, enough, cliffs, suit, both: both / plan.milliseconds };
  });

  const rows = runs.map(({ name, layout, plan, enough, cliffs, suit, both }) => [
    name,
    String(layout.parts.length),
    plan.milliseconds.toFixed(0),
    three(enough.milliseconds / plan.milliseconds),
    three(both),
    `${enough.value.cards ?? 'any'}${enough.value.proved ? '' : ' at least'}`,
    String(cliffs.value.length),
    suit === null ? '-' : three(suit.milliseconds / plan.milliseconds),
    suit === null
      ? '-'
      : suit.value.kind === 'suited'
        ? `${suit.value.cards} at ${suit.value.marks}`
        : suit.value.kind,
  ]);
  const heads = [
    'set',
    'parts',
    'plan ms',
    'enough',
    'with cliffs',
    'cards',
    'cliffs',
    'suit',
    'cards at marks',
  ];
  console.log(table([heads, ...rows]).replace(/^/gm, '  '));
  const shown = (what: string, ratios: readonly number[], aim: number) => {
    const [half, most, all] = [0.5, 0.95, 1].map((share) => three(quantile(ratios, share)));
    const over = ratios.filter((ratio) => ratio > aim).length;
    console.log(
      `  ${what} / one plan: median ${half}, 95 % under ${most}, most ${all}; ${over} of ${ratios.length} over ${aim}`,
    );
  };
  shown(
    'enough and cliffs',
    runs.map(({ both }) => both),
    50,
  );
  shown(
    'suit, three sizes in play',
    runs.flatMap(({ suit, plan }) => (suit === null ? [] : [suit.milliseconds / plan.milliseconds])),
    200,
  );
}

function layoutsIn(folder: string): readonly (readonly [name: string, layout: Layout])[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.card.json'))
    .sort()
    .map((name) => [name.replace('.card.json', ''), layoutIn(readFileSync(join(folder, name), 'utf8'))]);
}

function layoutIn(text: string): Layout {
  const read = readLayoutFile(text);
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  return read.layout;
}

/**
 * The layout with room of four marks less and two more for three of its sizes, those from the papers that limit it
 * first; `null` where it has not three.
 */
function withThreeRooms(layout: Layout, limit: readonly string[]): Layout | null {
  const limits = (id: string) =>
    layout.parts.some((part) => part.id === id && part.papers.some((paper) => limit.includes(paper)));
  const cut = new Set(layout.parts.filter(({ papers }) => papers.length > 0).map(({ id }) => id));
  const chosen = dimensionsOf(layout)
    .filter(({ part, kind }) => cut.has(part) && (kind === 'size' || kind === 'inset'))
    .sort((a, b) => Number(limits(b.part)) - Number(limits(a.part)))
    .slice(0, 3);
  if (chosen.length < 3) return null;
  const mark = usualMarks(layout);
  const around = (length: Length) => ({
    least: lengthOfTicks(Math.max(1, length - 4 * mark)),
    most: lengthOfTicks(length + 2 * mark),
  });
  return chosen.reduce(
    (roomy, { part, name, length }) =>
      name === 'width' || name === 'height' || name === 'diameter' || name === 'inset'
        ? withRoom(roomy, part, name, around(length))
        : roomy,
    layout,
  );
}

/** Invented layouts of a mat, one or two panels, a tag and an inside panel, from few sheets of some papers. */
function invented(count: number): readonly (readonly [name: string, layout: Layout])[] {
  return Array.from({ length: count }, (_, index) => {
    const seed = firstSeed + index;
    return [`seed ${seed}`, layoutIn(JSON.stringify(inventedFile(seed)))];
  });
}

function inventedFile(seed: number): object {
  const next = generator(seed);
  const between = (low: number, high: number) => low + Math.floor(next() * (high - low + 1));
  const oneOf = <T>(list: readonly T[]): T => list[between(0, list.length - 1)]!;
  const metric = next() < 0.4;
  // Whole millimetres, or sixteenths of an inch.
  const t = (length: number) => (metric ? `${length} mm` : `${length}/16 in`);
  const [width, height] = metric
    ? oneOf([
        [105, 148],
        [135, 135],
        [148, 105],
      ] as const)
    : oneOf([
        [68, 88],
        [80, 112],
        [88, 88],
      ] as const);
  const cardstock = metric ? ['210 mm', '297 mm'] : ['8 1/2 in', '11 in'];
  const print = oneOf([
    ['12 in', '12 in'],
    ['304.8 mm', '304.8 mm'],
    ['6 in', '6 in'],
    ['11 15/16 in', '11 15/16 in'],
  ]);
  const cards = between(8, 30);
  const sheets = (size: readonly string[], most: number) => [
    { size, count: next() < 0.2 ? null : between(2, most) },
  ];
  const border = between(2, 4);
  const gap = between(2, 5);
  const [across, down] = [width - 4 * border, height - 4 * border];
  const upper = between(Math.floor(down / 3), Math.floor((2 * down) / 3));
  const one = next() < 0.4;
  return {
    cardwright: 1,
    units: metric ? 'mm' : 'in',
    cards,
    base: { size: [t(width), t(height)], fold: 'left', paper: 'ivory' },
    papers: {
      ivory: { sheets: sheets(cardstock, cards) },
      plum: { sheets: sheets(cardstock, 8) },
      bark: { up: oneOf(['any', 'one-way']), sheets: sheets(print, 4) },
      meadow: { up: 'one-way', sheets: sheets(print, 4) },
    },
    parts: [
      { id: 'mat', inset: t(border), paper: 'plum' },
      ...(one
        ? [{ id: 'panel', on: 'mat', size: [t(across), t(down)], paper: ['bark', 'meadow'] }]
        : [
            { id: 'upper', on: 'mat', size: [t(across), t(upper)], place: { top: t(border) }, paper: 'bark' },
            {
              id: 'lower',
              on: 'mat',
              size: [t(across), t(down - upper - gap)],
              place: { below: 'upper', gap: t(gap) },
              paper: oneOf(['bark', 'meadow']),
            },
          ]),
      {
        id: 'tag',
        on: 'mat',
        size: [t(between(30, 50)), t(between(12, 20))],
        adhere: 'raised',
        paper: 'plum',
      },
      ...(next() < 0.6
        ? [{ id: 'lining', on: 'inside', inset: t(border), paper: oneOf(['ivory', 'plum']) }]
        : []),
    ],
  };
}
