import type { Layout, Part, Place } from '../../layout/index.ts';
import { inches, type Size, zero } from '../../measure/index.ts';
import type { Plan } from '../../planning/index.ts';
import type { Paper, SheetStock } from '../../stash/index.ts';

/** A small set with a plan made by hand: six cards with a panel of a one-way print on a bought base. */
export function meadowSet(): { readonly layout: Layout; readonly plan: Plan } {
  const meadow = paper({
    id: 'meadow',
    name: 'Meadow',
    up: 'one-way',
    sheets: [stock({ size: size(12, 12), count: 2 })],
  });
  const layout: Layout = {
    title: 'Meadow notes',
    units: 'in',
    cards: 6,
    base: {
      size: { width: inches(17, 4), height: inches(11, 2) },
      fold: 'left',
      opens: 'sideways',
      allowance: null,
      papers: [],
      side: 'front',
      turn: null,
      spare: 0,
      thickness: null,
      grams: null,
    },
    papers: new Map([[meadow.id, meadow]]),
    parts: [part({ id: 'panel', name: 'Panel', papers: ['meadow'] })],
    envelope: null,
    post: null,
    typed: new Map(),
  };
  const plan: Plan = {
    kind: 'plan',
    cards: 6,
    pieces: [
      {
        id: 'panel/meadow',
        part: 'panel',
        paper: 'meadow',
        size: size(4, 5),
        need: 6,
        spare: 0,
        turn: 'locked',
      },
    ],
    sheets: [{ id: 'meadow-1', paper: 'meadow', stock: 0, size: size(12, 12) }],
    steps: [
      {
        step: 1,
        take: ['meadow-1'],
        axis: 'height',
        set: inches(5),
        repeat: 2,
        gives: [['a', 'b']],
        rest: ['c'],
      },
      {
        step: 2,
        take: ['a', 'b'],
        axis: 'width',
        set: inches(4),
        repeat: 3,
        gives: [
          ['a1', 'a2', 'a3'],
          ['b1', 'b2', 'b3'],
        ],
        rest: [null, null],
      },
    ],
    finished: new Map(['a1', 'a2', 'a3', 'b1', 'b2', 'b3'].map((id) => [id, 'panel/meadow'])),
    leftovers: [{ id: 'c', size: size(12, 2), keep: true }],
    papers: new Map([
      [
        'meadow',
        {
          sheets: 1,
          cost: 1,
          bound: 1,
          proved: true,
          measuredIn: 'sheets',
          leastSettings: 0,
          leastPasses: 0,
          passes: 6,
          settings: 2,
          turns: 2,
        },
      ],
    ]),
  };
  return { layout, plan };
}

/** A size in whole inches. */
export function size(width: number, height: number): Size {
  return { width: inches(width), height: inches(height) };
}

/** A paper with what is not said left unknown. */
export function paper(given: Pick<Paper, 'id' | 'name' | 'sheets'> & Partial<Paper>): Paper {
  return {
    kind: null,
    gsm: null,
    thickness: null,
    colour: null,
    core: null,
    seeThrough: false,
    up: 'any',
    back: null,
    ...given,
  };
}

/** A stock of sheets with what is not said left unknown. */
export function stock(given: Pick<SheetStock, 'size' | 'count'> & Partial<SheetStock>): SheetStock {
  return {
    price: null,
    grain: null,
    scrap: false,
    margin: { left: zero, right: zero, top: zero, bottom: zero },
    ...given,
  };
}

const noEdge = { left: zero, right: zero, top: zero, bottom: zero };

/** A panel of 4 x 5 in, centred on the front, unless said otherwise. */
export function part(given: Pick<Part, 'id' | 'name' | 'papers'> & Partial<Part>): Part {
  return {
    on: 'base',
    shape: { kind: 'rectangle' },
    extent: { by: 'size', width: inches(4), height: inches(5) },
    torn: noEdge,
    tear: null,
    tuck: noEdge,
    margin: zero,
    dieCut: false,
    stamped: false,
    places: [centred],
    side: 'front',
    turn: null,
    spare: 0,
    lies: 'upright',
    adhere: 'flat',
    foam: null,
    thickness: null,
    grams: null,
    ...given,
  };
}

/** Nothing fixed: centred both ways. */
export const centred: Place = { across: { start: null, end: null }, down: { start: null, end: null } };
