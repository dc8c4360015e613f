import { afterAll, describe, expect, test } from 'vitest';
import { zero } from '../measure/index.ts';
import { arrange } from './arrange.ts';
import { checkLayout } from './check.ts';
import { type LayoutCode, layoutCodes } from './codes.ts';
import type { Layout, Part } from './layout.ts';
import { awayFrom, inch, layoutOf, mm, paper, part, type Sketch } from './testing/build.ts';

const a2 = [inch('4 1/4'), inch('5 1/2')] as const;
const letter = { width: inch('8 1/2'), height: inch('11') };

/** Every code that some test of this file has seen. */
const met = new Set<LayoutCode>();

afterAll(() => {
  expect([...met].sort()).toEqual(Object.keys(layoutCodes).sort());
});

describe('sound sets', () => {
  test('ten birthday cards', () => {
    const layout = layoutOf({
      base: a2,
      basePapers: ['cream'],
      papers: [paper('cream', [{ size: letter, grain: 'height' }]), paper('bees', [], 'one-way')],
      parts: [
        part('mat', { inset: inch('1/8') }),
        part('bees', {
          on: 'mat',
          size: [inch('3 3/4'), inch('3')],
          place: { top: inch('1/8') },
          papers: ['bees'],
        }),
        part('dots', {
          on: 'mat',
          size: [inch('3 3/4'), inch('1 3/4')],
          place: { top: awayFrom('bees', inch('1/4')), bottom: inch('1/8') },
        }),
        part('verse', { on: 'inside', inset: inch('1/8') }),
        part('plate', {
          on: 'mat',
          size: [inch('3 1/4'), inch('1')],
          place: { top: inch('2 3/4') },
          adhere: 'raised',
        }),
        part('sentiment', { on: 'plate', inset: inch('1/8') }),
      ],
    });
    expect(found(layout)).toEqual([]);
  });

  test('thank-you cards: torn edges are laid over the strip below them', () => {
    const layout = layoutOf({
      units: 'mm',
      base: [mm(148), mm(105)],
      fold: 'top',
      parts: [
        part('navy', { size: [mm(142), mm(25)], place: { top: mm(57) } }),
        part('leaf', { size: [mm(142), mm(72)], torn: { bottom: mm(8) }, place: { top: mm(3) } }),
        part('stripe', { size: [mm(142), mm(38)], torn: { top: mm(8) }, place: { bottom: mm(3) } }),
      ],
    });
    expect(found(layout)).toEqual([]);
  });

  test('three squares on mats of their own, a flush strip, a circle on a circle', () => {
    const across = ['1/4', '1 5/8', '3'].map((left) => ({ left: inch(left), top: inch('1/4') }));
    const layout = layoutOf({
      base: a2,
      parts: [
        part('mats', { size: [inch('1'), inch('1')], place: across }),
        part('squares', { on: 'mats', inset: inch('1/16'), count: 3 }),
        part('strip', { size: [inch('4 1/4'), inch('1')], place: { bottom: inch('1/4') } }),
        part('moon', { diameter: inch('2'), place: { top: inch('1 1/2') } }),
        part('ring', { on: 'moon', shape: 'circle', inset: inch('1/8') }),
      ],
    });
    expect(found(layout)).toEqual([]);
  });

  test('thirds of an inch, rounded down when they are read, are flush', () => {
    const third = mm(8.466_25);
    const layout = layoutOf({
      base: [inch('1'), inch('1')],
      parts: [0, 1, 2].map((place) =>
        part(`bar${place}`, {
          size: [third, inch('1')],
          place: place === 0 ? { left: zero } : { left: awayFrom(`bar${place - 1}`, zero) },
        }),
      ),
    });
    expect(found(layout)).toEqual([]);
  });
});

describe('what is larger or hangs over', () => {
  test('a mat higher than the card', () => {
    // A strip of 1 3/8 x 5 3/4 on a card of 4 1/4 x 5 1/2 must be refused.
    expect(foundOn([part('strip', { size: [inch('1 3/8'), inch('5 3/4')] })])).toEqual([
      [
        'largerThanCard',
        'parts[0].size[1]',
        { size: inch('5 3/4'), room: inch('5 1/2'), difference: inch('1/4') },
      ],
    ]);
  });

  test('a mat that would fit if it were turned says so', () => {
    const wide = layoutOf({ base: a2, parts: [part('mat', { size: [inch('5'), inch('4')] })] });
    expect(check(wide)[0]).toMatchObject({
      code: 'largerThanCard',
      severity: 'error',
      names: { axis: 'width', face: 'base', turned: 'fits' },
    });
    const large = layoutOf({ base: a2, parts: [part('mat', { size: [inch('5'), inch('5')] })] });
    expect(check(large)[0]!.names.turned).toBe('larger');
  });

  test('a panel larger than its mat, and one that is meant to be', () => {
    const mat = part('mat', { inset: inch('1/2') });
    expect(foundOn([mat, part('panel', { on: 'mat', size: [inch('3 1/2'), inch('4')] })])).toContainEqual([
      'largerThanPart',
      'parts[1].size[0]',
      { size: inch('3 1/2'), room: inch('3 1/4'), difference: inch('1/4') },
    ]);
    const meant = part('panel', {
      on: 'mat',
      size: [null, inch('2')],
      place: { left: inch('-1/8'), right: inch('-1/8') },
    });
    expect(foundOn([mat, meant])).toEqual([
      ['overhang', 'parts[1].place', { over: inch('1/8') }],
      ['overhang', 'parts[1].place', { over: inch('1/8') }],
    ]);
  });

  test('what lies within an overhanging part is not named with it', () => {
    const tag = part('tag', { size: [inch('2'), inch('2')], place: { left: inch('3'), top: inch('1/2') } });
    expect(foundOn([tag, part('heart', { on: 'tag', inset: inch('1/8') })])).toEqual([
      ['overCardEdge', 'parts[0].place', { over: inch('3/4') }],
    ]);
  });

  test('over the edge of a part is a caution, over the edge of the card an error', () => {
    const panel = part('panel', {
      size: [inch('2'), inch('2')],
      place: { left: inch('1/4'), top: inch('1/4') },
    });
    const tag = (left: string) =>
      part('tag', { on: 'panel', size: [inch('1'), inch('1/2')], place: { left: inch(left) } });
    expect(foundOn([panel, tag('1 1/2')])).toEqual([
      ['overPartEdge', 'parts[1].place', { over: inch('1/2') }],
    ]);
    expect(foundOn([panel, tag('3 1/2')])).toEqual([
      ['overCardEdge', 'parts[1].place', { over: inch('1/2') }],
    ]);
  });

  test('an inset part that is pushed off', () => {
    const mat = part('mat', { size: [inch('3'), inch('3')] });
    const pushed = part('panel', { on: 'mat', inset: inch('1/8'), place: { left: inch('1/2') } });
    expect(foundOn([mat, pushed])).toContainEqual([
      'negativeBorder',
      'parts[1].place',
      { over: inch('1/4') },
    ]);
  });

  test('corners over the rim of a circle', () => {
    const moon = part('moon', { diameter: inch('2') });
    // Half the diagonal of a square of 1 1/2 in is 1.0607 in.
    const square = part('square', { on: 'moon', size: [inch('1 1/2'), inch('1 1/2')] });
    const [problem] = check(layoutOf({ base: a2, parts: [moon, square] }));
    expect(problem).toMatchObject({ code: 'overPartEdge', names: { edge: 'rim' } });
    expect(problem!.numbers.over! / inch('1')).toBeCloseTo(0.060_66, 4);
    expect(foundOn([moon, part('square', { on: 'moon', size: [inch('1 3/8'), inch('1 3/8')] })])).toEqual([]);
  });

  test('corners over the rim of an oval, a rounded corner and a banner', () => {
    const over = (bed: Parameters<typeof part>[1]) => {
      const panel = part('panel', { on: 'bed', size: [inch('3'), inch('1')] });
      const problems = check(
        layoutOf({ base: a2, parts: [part('bed', { size: [inch('3'), inch('1')], ...bed }), panel] }),
      );
      // All of the bed is hidden, which is told beside.
      expect(problems.map(({ code }) => code)).toEqual(['hidden', 'overPartEdge']);
      const [, problem] = problems;
      expect(problem).toMatchObject({ names: { edge: 'rim' } });
      return problem!.numbers.over! / inch('1');
    };
    // A corner rounded with 1/2 in leaves √2/2 - 1/2 in of its square along the diagonal; all sides have to move out
    // until the mitred corner holds it: half that and more.
    const rounded = over({ shape: { kind: 'rounded', corner: inch('1/2') } });
    expect(rounded).toBeGreaterThan(0.1);
    expect(rounded).toBeLessThan(0.3);
    expect(over({ shape: 'oval' })).toBeGreaterThan(0.1);
    expect(over({ shape: { kind: 'banner', ends: { right: 'notched' }, depth: null } })).toBeGreaterThan(0.1);
  });

  test('each piece that is wrong in its own way is named once, by its place', () => {
    const row = ['1/4', '1 1/2', '3 1/2'].map((left) => ({ left: inch(left) }));
    expect(foundOn([part('dots', { diameter: inch('1'), place: row })])).toEqual([
      ['overCardEdge', 'parts[0].place[2]', { over: inch('1/4') }],
    ]);
  });

  test('a sum that is off is not named again as an overhang', () => {
    const over = part('mat', {
      size: [inch('4 1/2'), inch('5')],
      place: { left: inch('1/8'), right: inch('1/8') },
    });
    expect(foundOn([over]).map(([code]) => code)).toEqual(['sumOff']);
  });
});

describe('borders', () => {
  test('4 and 5 mm on half an A4 sheet', () => {
    const layout = layoutOf({
      units: 'mm',
      base: [mm(148), mm(105)],
      fold: 'top',
      parts: [part('mat', { size: [mm(140), mm(95)] })],
    });
    expect(found(layout)).toEqual([['unevenBorder', 'parts[0].place', { across: mm(4), down: mm(5) }]]);
    const trimmed = layoutOf({
      units: 'mm',
      base: [mm(145), mm(105)],
      fold: 'top',
      parts: [
        part('mat', { size: [mm(135), mm(95)] }),
        part('panel', { on: 'mat', size: [mm(125), mm(85)] }),
      ],
    });
    expect(found(trimmed)).toEqual([]);
  });

  test('left and right, top and bottom', () => {
    const off = part('mat', {
      size: [inch('4'), inch('5')],
      place: { left: inch('1/16'), top: inch('1/8') },
    });
    expect(foundOn([off])).toEqual([
      ['unevenBorder', 'parts[0].place', { left: inch('1/16'), right: inch('3/16') }],
      ['unevenBorder', 'parts[0].place', { top: inch('1/8'), bottom: inch('3/8') }],
    ]);
  });

  test('parts side by side are taken together', () => {
    const pair = (bottom: string) => [
      part('high', { size: [inch('4'), inch('3')], place: { top: inch('1/8') } }),
      part('low', {
        size: [inch('4'), null],
        place: { top: awayFrom('high', inch('1/4')), bottom: inch(bottom) },
      }),
    ];
    expect(foundOn(pair('1/8'))).toEqual([]);
    expect(check(layoutOf({ base: a2, parts: pair('1/4') }))).toMatchObject([
      {
        code: 'unevenBorder',
        part: 'high',
        numbers: { top: inch('1/8'), bottom: inch('1/4') },
        names: { face: 'base', name: 'high', last: 'low' },
      },
    ]);
  });

  test('what is raised over others frames nothing', () => {
    const panel = part('panel', { size: [inch('4'), inch('5 1/4')] });
    const over = (adhere: 'flat' | 'raised') =>
      part('tag', { size: [inch('3 3/4'), inch('1')], place: { left: inch('1/8'), top: inch('2') }, adhere });
    expect(foundOn([panel, over('raised')])).toEqual([]);
    expect(foundOn([panel, over('flat')])).toContainEqual([
      'unevenBorder',
      'parts[1].place',
      { left: inch('1/8'), right: inch('3/8') },
    ]);
  });

  test('a small part may lie where it likes, and equal pieces are named once', () => {
    expect(
      foundOn([part('heart', { diameter: inch('1'), place: { left: inch('1/4'), top: inch('3') } })]),
    ).toEqual([]);
    const row = ['1/8', '2 1/4'].map((left) => ({ left: inch(left) }));
    const squares = [
      part('mats', { size: [inch('1 1/2'), inch('1 1/2')], place: row }),
      part('tops', { on: 'mats', size: [inch('1 1/4'), inch('1 1/4')], count: 2, place: { left: zero } }),
    ];
    expect(foundOn(squares).filter(([, where]) => where === 'parts[1].place')).toEqual([
      ['unevenBorder', 'parts[1].place', { left: zero, right: inch('1/4') }],
    ]);
  });
});

describe('what lies on what', () => {
  const low = part('low', { size: [inch('3'), inch('2')], place: { top: inch('1') } });
  const across = (more: Parameters<typeof part>[1] = {}) =>
    part('high', { size: [inch('1'), inch('3')], place: { top: inch('2') }, ...more });

  test('two flat parts partly on one another', () => {
    expect(foundOn([low, across()])).toEqual([['overlap', 'parts[1].place', {}]]);
    expect(foundOn([low, across({ adhere: 'raised' })])).toEqual([]);
    expect(foundOn([low, across({ size: [inch('1'), inch('2')], place: { top: inch('3') } })])).toEqual([]);
    expect(foundOn([low, across({ on: 'inside' })])).toEqual([]);
  });

  test('a negative gap is named by itself', () => {
    expect(foundOn([low, across({ place: { top: awayFrom('low', inch('-1/2')) } })])).toEqual([
      ['negativeGap', 'parts[1].place', { gap: inch('-1/2') }],
    ]);
  });

  test('a part that another hides, unless that one is seen through', () => {
    const cover = (papers: readonly string[]) =>
      layoutOf({
        base: a2,
        papers: [{ ...paper('mist', []), seeThrough: true }, paper('plain', [])],
        parts: [part('small', { diameter: inch('1') }), part('large', { diameter: inch('1 1/4'), papers })],
      });
    expect(found(cover(['plain']))).toEqual([['hidden', 'parts[0].place', {}]]);
    expect(found(cover(['mist']))).toEqual([]);
  });

  test('pieces at one place, and pieces too near', () => {
    expect(foundOn([part('dots', { diameter: inch('1'), count: 3 })])).toEqual([
      ['piecesStacked', 'parts[0].place', { count: 3 }],
    ]);
    const near = [{ left: inch('1') }, { left: inch('1 1/2') }];
    expect(foundOn([part('dots', { diameter: inch('1'), place: near })])).toEqual([
      ['overlap', 'parts[0].place', {}],
    ]);
  });
});

describe('folded strips', () => {
  const ribbon = (length: string, slant: number, template = '3') =>
    part('ribbon', {
      size: [inch(length), inch('1/2')],
      shape: {
        kind: 'ribbon',
        template: inch(template),
        slant,
        strip: { width: inch(length), height: inch('1/2') },
      },
    });
  const loops = (length: number, overlap: number) =>
    part('bow', {
      size: [mm(20), mm(length)],
      shape: {
        kind: 'loops',
        template: mm(30),
        loops: 2,
        overlap: mm(overlap),
        strip: { width: mm(20), height: mm(length) },
      },
    });
  const knot = (length: number) =>
    part('knot', {
      size: [mm(length), mm(12)],
      shape: { kind: 'knot', strip: { width: mm(length), height: mm(12) } },
    });

  test('what comes out is no problem', () => {
    expect(foundOn([ribbon('7', 20), loops(130, 10), knot(80)])).toEqual([]);
  });

  test('a strip that is too short is named with what it takes', () => {
    expect(foundOn([ribbon('3 1/4', 20)])).toEqual([
      ['stripTooShort', 'parts[0].size[0]', { length: inch('3 1/4'), least: 133_328 }],
    ]);
    // 4 cot 36 degrees times 12 mm.
    expect(foundOn([knot(66)])).toEqual([
      ['stripTooShort', 'parts[0].size[0]', { length: mm(66), least: Math.ceil(5.505527681884694 * mm(12)) }],
    ]);
  });

  test('tails that lie on one another, and the slant and the template that part them', () => {
    // 3 tan 9 degrees is 0.475, which is 0.025 short of the half inch; atan(1/6) is 9.46 degrees.
    const [problem, ...others] = foundOn([ribbon('7', -9)]);
    expect(others).toEqual([]);
    expect(problem!.slice(0, 2)).toEqual(['foldedOverItself', 'parts[0].slant']);
    const numbers = problem![2] as Record<string, number>;
    expect(numbers.slant).toBe(9.5);
    expect(numbers.over! / inch('1')).toBeCloseTo(0.02485, 4);
    expect(numbers.template! / inch('1')).toBeCloseTo(0.5 / Math.tan((9 * Math.PI) / 180), 3);
    expect(foundOn([ribbon('7', 9.5)])).toEqual([]);
  });

  test('a middle that is level can be parted by no template', () => {
    const [problem] = foundOn([ribbon('7', 0)]);
    expect(Object.keys(problem![2] as object)).toEqual(['over', 'slant']);
  });

  test('loops that are not as long as their strip', () => {
    expect(foundOn([loops(140, 10)])).toEqual([
      [
        'loopsOff',
        'parts[0].size[1]',
        {
          length: mm(140),
          wanted: mm(130),
          difference: mm(10),
          loops: 2,
          template: mm(30),
          overlap: mm(10),
          left: mm(20),
        },
      ],
    ]);
    expect(foundOn([loops(160, 31)])).toEqual([
      ['overlapTooLong', 'parts[0].overlap', { overlap: mm(31), template: mm(30) }],
    ]);
  });
});

test('a part from leftovers of papers that nothing else is cut from', () => {
  const papers = [paper('plum', []), paper('ivory', [])];
  const tag = part('tag', { size: [inch('1'), inch('1')], papers: ['plum', 'ivory'], from: 'leftovers' });
  const panel = part('panel', { size: [inch('1'), inch('1')], papers: ['ivory'] });
  const codes = (parts: Sketch['parts']) =>
    found(layoutOf({ base: a2, papers, ...(parts === undefined ? {} : { parts }) })).map(([code]) => code);
  expect(codes([tag])).toContain('noLeftovers');
  expect(codes([tag, panel])).not.toContain('noLeftovers');
});

describe('folds of several panels', () => {
  const gate = (sketch: Parameters<typeof part>[1], more: Partial<Sketch> = {}) =>
    found(layoutOf({ base: a2, fold: 'gate', parts: [part('label', sketch)], ...more }));

  test('what lies on both doors of a gate holds the card shut', () => {
    expect(gate({ size: [inch('2'), inch('1')], place: { left: inch('1') } })).toEqual([
      ['acrossSlit', 'parts[0].place', { first: inch('1 1/8'), second: inch('7/8') }],
    ]);
    expect(gate({ size: [inch('1'), inch('2')] }, { opens: 'upwards' })).toEqual([
      ['acrossSlit', 'parts[0].place', { first: inch('1'), second: inch('1') }],
    ]);
    expect(gate({ size: [inch('1'), inch('2')] }, { fold: 'shutter' }).map(([code]) => code)).toEqual([
      'acrossSlit',
    ]);
  });

  test('what lies on one door alone, inside, or goes round as a band does not', () => {
    const size = [inch('2'), inch('1')] as const;
    expect(gate({ size, place: { left: inch('1/8') } })).toEqual([]);
    expect(gate({ size, on: 'inside' })).toEqual([]);
    expect(gate({ size }, { fold: 'trifold' })).toEqual([]);
    // Wider than the front by what goes behind.
    const band = { size: [inch('6 1/4'), inch('1')], tuck: { left: inch('1'), right: inch('1') } } as const;
    expect(gate(band)).toEqual([]);
    const held = { base: a2, fold: 'gate' } as const;
    const onPart = [
      part('door', { size: [inch('1'), inch('2')], place: { left: inch('1') } }),
      part('seal', { on: 'door', size: [inch('1/2'), inch('1/2')], place: { right: inch('-1/4') } }),
    ];
    expect(found(layoutOf({ ...held, parts: onPart })).map(([code]) => code)).not.toContain('acrossSlit');
  });

  test('an allowance leaves the panels within something', () => {
    const roll = (allowance: string) =>
      found(layoutOf({ base: a2, fold: 'roll', allowance: inch(allowance) }));
    expect(roll('1 1/16')).toEqual([]);
    expect(roll('1 1/8')).toEqual([
      ['allowanceTooLarge', 'base.allowance', { allowance: inch('1 1/8'), most: inch('1 1/16') }],
    ]);
  });
});

describe('grain and direction', () => {
  const bases = (sketch: Partial<Sketch>, grain: 'width' | 'height', sheet = letter) =>
    found(
      layoutOf({
        base: a2,
        basePapers: ['ivory'],
        papers: [paper('ivory', [{ size: sheet, grain }])],
        ...sketch,
      }),
    );
  const where = 'papers.ivory.sheets[0].grain';

  // Hand-reckoned: a long-grain letter sheet gives two side-fold bases with the grain; the 4 1/4 x 11 top-fold
  // base fits it only with its fold across the grain.
  test('of the two A2 bases from a long-grain letter sheet, the side fold goes with it', () => {
    expect(bases({ fold: 'left' }, 'height')).toEqual([]);
    expect(bases({ fold: 'top' }, 'height')).toMatchObject([
      ['foldAcrossGrain', where, { along: 0, across: 2 }],
    ]);
    expect(bases({ fold: 'top' }, 'width')).toEqual([]);
    expect(bases({ fold: 'none' }, 'height')).toEqual([]);
  });

  test('where both ways fit, the one that saves sheets counts', () => {
    expect(bases({ fold: 'left' }, 'width')).toMatchObject([
      ['foldMayCrossGrain', where, { along: 1, across: 2 }],
    ]);
    expect(bases({ fold: 'left', baseTurn: 'locked' }, 'width')).toMatchObject([
      ['foldAcrossGrain', where, { along: 0 }],
    ]);
  });

  test('sheets that are used up, or too small for a base, say nothing', () => {
    const papers = [paper('ivory', [{ size: letter, grain: 'width', count: 0 }])];
    expect(bases({ papers }, 'width')).toEqual([]);
    expect(bases({}, 'width', { width: inch('4'), height: inch('6') })).toEqual([]);
    const margin = { left: inch('1'), right: zero, top: zero, bottom: zero };
    const ragged = [paper('ivory', [{ size: letter, grain: 'width', margin }])];
    // Only turned does it fit what is left of 7 1/2 x 11, and then it folds with the grain.
    expect(bases({ papers: ragged }, 'width')).toEqual([]);
  });

  test('a print with a direction that is freed to turn', () => {
    const papers = [
      paper('meadow', [], 'one-way'),
      { ...paper('plain', []), back: { name: 'stripe', up: 'two-way' as const, colour: null } },
    ];
    const freed = (more: Parameters<typeof part>[1]) =>
      found(layoutOf({ base: a2, papers, parts: [part('panel', { inset: inch('1/8'), ...more })] }));
    expect(freed({ papers: ['meadow', 'plain', 'meadow'], turn: 'free' })).toEqual([
      ['directionFreed', 'parts[0].turn', {}],
    ]);
    expect(freed({ papers: ['plain'], turn: 'free', side: 'back' })).toHaveLength(1);
    expect(freed({ papers: ['plain'], turn: 'free' })).toEqual([]);
    expect(freed({ papers: ['meadow'] })).toEqual([]);
    expect(found(layoutOf({ base: a2, papers, basePapers: ['meadow'], baseTurn: 'free' }))).toEqual([
      ['directionFreed', 'base.turn', {}],
    ]);
  });
});

test('the inside of a flat card', () => {
  const layout = layoutOf({
    base: a2,
    fold: 'none',
    parts: [part('verse', { on: 'inside', inset: inch('1/8') })],
  });
  expect(found(layout)).toEqual([['noInside', 'parts[0].on', {}]]);
});

test('what the arrangement found is told too, errors before cautions', () => {
  const layout = layoutOf({
    base: a2,
    parts: [
      part('tag', { size: [inch('1'), inch('1')], place: { left: inch('-1/4') } }),
      part('fill', { size: [null, inch('1')], place: { left: inch('4 1/2'), top: zero } }),
      part('torn', { size: [inch('1/4'), inch('1')], torn: { left: inch('1/4') } }),
      part('die', { size: [inch('1/4'), inch('1')], margin: inch('1/8') }),
      part('deep', { on: 'inside', inset: inch('3') }),
      part('rooms', { on: 'back', size: [null, inch('1')], place: [{ left: zero }, { left: inch('1') }] }),
      part('far', { size: [inch('1'), inch('1')], place: { bottom: awayFrom('deep', zero), left: zero } }),
    ],
  });
  expect(check(layout).map(({ code, severity }) => [code, severity])).toEqual([
    ['noRoom', 'error'],
    ['tornAway', 'error'],
    ['nothingSeen', 'error'],
    ['insetTooLarge', 'error'],
    ['insetTooLarge', 'error'],
    ['roomsDiffer', 'error'],
    ['neighbourElsewhere', 'error'],
    ['overhang', 'caution'],
  ]);
});

function check(layout: Layout) {
  const problems = checkLayout(layout, arrange(layout));
  for (const { code } of problems) met.add(code);
  return problems;
}

/** What is found, in short: code, path and numbers. */
function found(layout: Layout) {
  return check(layout).map(({ code, where, numbers }) => [code, where, numbers]);
}

function foundOn(parts: readonly Part[]) {
  return found(layoutOf({ base: a2, parts }));
}
