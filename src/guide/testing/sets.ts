import { arrange, type Layout } from '../../layout/index.ts';
import { inches, millimetres, type Size, zero } from '../../measure/index.ts';
import { planSet } from '../../planning/index.ts';
import { testSolver } from '../../planning/testing/solver.ts';
import { assert } from '../../problem/index.ts';
import type { Trimmer } from '../../trimming/index.ts';
import { centred, paper, part, stock } from '../../words/testing/meadowSet.ts';

/** A set of twelve: side fold, two prints dealt in turn, a torn panel, a circle, a raised strip, an inside panel. */
export function tideSet(): Layout {
  const letter: Size = { width: inches(17, 2), height: inches(11) };
  const twelve: Size = { width: inches(12), height: inches(12) };
  const sand = paper({
    id: 'sand',
    name: 'Sand',
    kind: 'cardstock',
    gsm: 270,
    sheets: [stock({ size: letter, count: null })],
  });
  const tide = paper({
    id: 'tide',
    name: 'Tide',
    up: 'one-way',
    sheets: [stock({ size: twelve, count: 1 })],
  });
  const shell = paper({
    id: 'shell',
    name: 'Shell',
    up: 'two-way',
    sheets: [stock({ size: twelve, count: 1 })],
  });
  return {
    title: 'Low tide',
    units: 'in',
    cards: 12,
    base: {
      size: { width: inches(17, 4), height: inches(11, 2) },
      fold: 'left',
      opens: 'sideways',
      allowance: null,
      papers: ['sand'],
      side: 'front',
      turn: null,
      spare: 0,
      thickness: null,
      grams: null,
    },
    papers: new Map([sand, tide, shell].map((each) => [each.id, each])),
    parts: [
      part({ id: 'mat', name: 'Mat', papers: ['sand'], extent: { by: 'inset', inset: inches(1, 8) } }),
      part({
        id: 'panel',
        name: 'Panel',
        on: 'mat',
        papers: ['tide', 'shell'],
        extent: { by: 'size', width: inches(5, 2), height: inches(5) },
        torn: { left: zero, right: inches(1, 2), top: zero, bottom: zero },
        places: [
          { across: { start: { from: 'edge', distance: inches(1, 8) }, end: null }, down: centred.down },
        ],
        spare: 1,
      }),
      part({
        id: 'moon',
        name: 'Moon',
        on: 'mat',
        shape: { kind: 'circle' },
        papers: [],
        extent: { by: 'diameter', diameter: inches(1) },
        adhere: 'spots',
      }),
      part({
        id: 'strip',
        name: 'Strip',
        on: 'mat',
        papers: ['sand'],
        extent: { by: 'size', width: inches(3), height: inches(3, 4) },
        adhere: 'raised',
      }),
      part({
        id: 'note',
        name: 'Note',
        on: 'inside',
        papers: ['sand'],
        extent: { by: 'inset', inset: inches(1, 8) },
      }),
    ],
    envelope: null,
    post: null,
    typed: new Map(),
  };
}

/** The same set with names that no page was made for. */
export function hostileSet(): Layout {
  const tide = tideSet();
  return {
    ...tide,
    title: `${'W'.repeat(300)} \u{1f33e} ${'שלום '.repeat(40)}`,
    papers: new Map(
      [...tide.papers].map(([id, each]) => [
        id,
        { ...each, name: `${'Mm'.repeat(90)}${'\u{1f41a}'.repeat(9)}` },
      ]),
    ),
    parts: tide.parts.map((each, index) => ({
      ...each,
      name: index % 2 === 0 ? '\u{1f41a}\u{1f33e}' : 'ii WW '.repeat(60),
    })),
  };
}

/** A small set on A4 with a top fold, whose lengths are whole millimetres. */
export function fieldSet(): Layout {
  const a4: Size = { width: millimetres(210), height: millimetres(297) };
  const chalk = paper({ id: 'chalk', name: 'Chalk', sheets: [stock({ size: a4, count: null })] });
  const field = paper({
    id: 'field',
    name: 'Field',
    up: 'one-way',
    sheets: [
      stock({
        size: a4,
        count: 4,
        margin: { left: zero, right: zero, top: zero, bottom: millimetres(8) },
      }),
    ],
  });
  return {
    title: 'Field notes',
    units: 'mm',
    cards: 10,
    base: {
      size: { width: millimetres(145), height: millimetres(105) },
      fold: 'top',
      opens: 'sideways',
      allowance: null,
      papers: ['chalk'],
      side: 'front',
      turn: null,
      spare: 0,
      thickness: null,
      grams: null,
    },
    papers: new Map([chalk, field].map((each) => [each.id, each])),
    parts: [
      part({
        id: 'panel',
        name: 'Panel',
        papers: ['field'],
        extent: { by: 'inset', inset: millimetres(10) },
      }),
    ],
    envelope: null,
    post: null,
    typed: new Map(),
  };
}

/** Everything the guide of a set is made from but the manner of it. */
export async function planned(layout: Layout, trimmer: Trimmer | null = null) {
  const arrangement = arrange(layout);
  const plan = planSet({ layout, arrangement, trimmer, solver: await testSolver() });
  assert(plan.kind === 'plan', 'The sets of these tests can be cut', { title: layout.title });
  return { layout, arrangement, plan, trimmer };
}

/** A trimmer that measures on the right and whose owner rests after twenty cuts. */
export const restfulTrimmer: Trimmer = {
  name: 'By the window',
  marks: inches(1, 16),
  longest: inches(12),
  narrowest: inches(1, 2),
  reach: { measuringSide: null, otherSide: null },
  correction: zero,
  measuringEdge: 'right',
  hand: 'left',
  sheetsAtOnce: 1,
  cutsPerSitting: 20,
};
