import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import type { SparesRecord } from '../src/planning/index.ts';
import { type PlanRecord, replay } from '../src/replay/index.ts';
import { cardwright, layoutDraft, scratchFolder } from './commandLine.ts';

/**
 * Four people's sets, invented, and worked out by hand before the tool: what each asks of the plan, through the
 * command line.
 */
const folder = scratchFolder();
afterAll(folder.remove);

async function planOf(layout: unknown, ...options: string[]): Promise<PlanRecord> {
  const run = await cardwright(['plan', '-', '--json', ...options], JSON.stringify(layout));
  expect(run.err).toBe('');
  expect(run.status).toBe(0);
  const plan = JSON.parse(run.out) as PlanRecord;
  expect(replay(plan)).toEqual([]);
  return plan;
}

async function refusalOf(layout: unknown): Promise<string> {
  const run = await cardwright(['plan', '-', '--json'], JSON.stringify(layout));
  expect(run.status).toBe(1);
  expect(run.out).toBe('');
  return run.err;
}

async function problemsOf(layout: unknown): Promise<readonly Problem[]> {
  const run = await cardwright(['check', '-', '--json'], JSON.stringify(layout));
  return (JSON.parse(run.out) as { problems: Problem[] }).problems;
}

interface Problem {
  readonly code: string;
  readonly severity: 'error' | 'caution';
  readonly part?: string;
  readonly numbers: Readonly<Record<string, number>>;
  readonly says: string;
}

function made(plan: PlanRecord, piece: string): number {
  return Object.values(plan.finished).filter((name) => name === piece).length;
}

const sheetsOf = (plan: PlanRecord) =>
  Object.fromEntries(Object.entries(plan.papers).map(([paper, { sheets }]) => [paper, sheets]));

const provedOf = (plan: PlanRecord) => Object.values(plan.papers).every(({ proved }) => proved);

describe('bees and dots: ten inch cards from letter and 12 x 12, with a fit that has nothing to spare', () => {
  const layout = layoutDraft('test/sets/bees-and-dots.card.json');

  it('takes five cream, three coral, three white, one of each print; proved', async () => {
    const plan = await planOf(layout);
    expect(sheetsOf(plan)).toEqual({ cream: 5, coral: 3, white: 3, bees: 1, dots: 1 });
    expect(provedOf(plan)).toBe(true);
    expect(made(plan, 'upper/bees')).toBeGreaterThanOrEqual(10);
  });

  it('offers the two spares that a sheet of bees has over ten, and the eight of dots; no more, proved', async () => {
    const { spares } = (await planOf(layout)) as PlanRecord & { readonly spares: SparesRecord };
    const offer = (piece: string) => spares.offers.find((each) => each.piece === piece);
    const none = { kind: 'none', proved: true };
    expect(offer('upper/bees')).toMatchObject({ offered: 2, proved: true, next: none });
    expect(offer('lower/dots')).toMatchObject({ offered: 8, proved: true, next: none });
    const withSpares = await planOf(layout, '--with-spares');
    expect([made(withSpares, 'upper/bees'), made(withSpares, 'lower/dots')]).toEqual([12, 18]);
    expect(sheetsOf(withSpares)).toEqual({ cream: 5, coral: 3, white: 3, bees: 1, dots: 1 });
  });

  it('keeps most of the dots sheet whole', async () => {
    const plan = await planOf(layout);
    const kept = plan.leftovers.filter(({ id, keep }) => keep && id.startsWith('dots-'));
    const largest = Math.max(...kept.map(({ size }) => (size[0] * size[1]) / 40_640 ** 2));
    expect(largest).toBeGreaterThanOrEqual(12 * 5);
  });

  it('names the twelve inches that four panels of three use up, and what a shorter sheet would cost', async () => {
    const tight = (await problemsOf(layout)).filter(({ code }) => code === 'nothingToSpare');
    expect(tight.find(({ says }) => says.includes('bees'))?.numbers).toMatchObject({ missing: 1 });
  });

  it('is one short on a true sheet of 11 15/16 in square', async () => {
    const short = structuredClone(layout);
    short.papers.bees!.sheets[0]!.size = ['11 15/16 in', '11 15/16 in'];
    const said = await refusalOf(short);
    expect(said).toMatch(/bees is short: (1|one) of the 10 pieces for upper/i);
    expect(said).toMatch(/proved/);
    expect(said).toMatch(/9|nine/);
    // The nearest way out: panels of 2 15/16 with a gap of 5/16 between them.
    short.parts[1]!.size = ['3 3/4 in', '2 15/16 in'];
    short.parts[2]!.place!.gap = '5/16 in';
    expect(sheetsOf(await planOf(short)).bees).toBe(1);
    expect((await problemsOf(short)).filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});

describe('gum leaves: twelve metric cards from two sheets that give ten', () => {
  const layout = layoutDraft('test/sets/gum-leaves.card.json');

  it('says that ten are the most, proved, and what limits it', async () => {
    const said = await refusalOf(layout);
    expect(said).toMatch(/Gum leaves is short/);
    expect(said).toMatch(/(2|two) sheets/);
    expect(said).toMatch(/these papers give (10|ten) cards/);
    expect(said).toMatch(/no more/);
  });

  it('plans ten, and eleven from a third sheet', async () => {
    const ten = await planOf({ ...layout, cards: 10 });
    expect(sheetsOf(ten).gum).toBe(2);
    expect(provedOf(ten)).toBe(true);
    const third = structuredClone(layout);
    third.papers.gum!.sheets[0]!.count = 3;
    expect(sheetsOf(await planOf(third)).gum).toBe(3);
  });

  it('cuts the stripe 38 mm wide and 142 mm high, so that it runs across the card', async () => {
    const plan = await planOf({ ...layout, cards: 10 });
    expect(plan.pieces.find(({ part }) => part === 'stripe')).toMatchObject({
      size: [38 * 1600, 142 * 1600],
      turn: 'locked',
    });
  });

  it('takes one sheet of navy turned or two upright', async () => {
    expect(sheetsOf(await planOf({ ...layout, cards: 10 })).navy).toBe(1);
  });
});

describe('tulip bow: ten square cards with a ribbon', () => {
  const layout = layoutDraft('test/sets/tulip-bow.card.json');

  it('takes five, three, two sheets, and all the ribbon from one', async () => {
    const plan = await planOf(layout);
    expect(sheetsOf(plan)).toEqual({ stone: 5, leaf: 3, tulips: 2, ribbon: 1 });
    expect(provedOf(plan)).toBe(true);
  });

  it('still takes one sheet of ribbon with tucks of 22 and of 23 mm', async () => {
    for (const tuck of [22, 23]) {
      const longer = structuredClone(layout);
      longer.parts[3]!.size = [`${129 + 2 * tuck} mm`, '20 mm'];
      longer.parts[3]!.tuck = { left: `${tuck} mm`, right: `${tuck} mm` };
      expect(sheetsOf(await planOf(longer)).ribbon).toBe(1);
    }
  });
});

describe('quiet evening: ten cards on a trimmer with 5 mm marks', () => {
  const layout = layoutDraft('test/sets/quiet-evening.card.json');
  const trimmer = ['--trimmer', 'test/sets/five-millimetre.trimmer.json'];

  it('takes five, three and four sheets in settings of 5 mm, all borders even', async () => {
    const plan = await planOf(layout, ...trimmer);
    expect(sheetsOf(plan)).toEqual({ pearl: 5, slate: 3, dusk: 4 });
    expect(provedOf(plan)).toBe(true);
    for (const { set } of plan.steps) expect(set % (5 * 1600)).toBe(0);
    const passes = Object.values(plan.papers).reduce((total, paper) => total + paper.passes, 0);
    expect(passes).toBe(38);
    expect((await problemsOf(layout)).filter(({ code }) => code === 'unevenBorder')).toEqual([]);
  });

  it('breaks the cutting into two sittings, between steps', async () => {
    const { out } = await cardwright(['plan', 'test/sets/quiet-evening.card.json', ...trimmer]);
    expect(out).toMatch(/^\d+ passes, at most 35 at a sitting: a break after step \d+\.$/m);
    expect((await cardwright(['plan', 'test/sets/quiet-evening.card.json'])).out).not.toContain('sitting');
  });

  it('flags the borders of 4 and 5 mm that a mat of 140 x 95 leaves on half an A4', async () => {
    const uneven = structuredClone(layout);
    uneven.base.size = ['148 mm', '105 mm'];
    uneven.parts = [{ id: 'mat', size: ['140 mm', '95 mm'], paper: 'slate' }];
    const found = (await problemsOf(uneven)).filter(({ code }) => code === 'unevenBorder');
    expect(found).toHaveLength(1);
    expect(found[0]?.says).toMatch(/4 mm/);
    expect(found[0]?.says).toMatch(/5 mm/);
  });

  it('cannot set 148 on 5 mm marks, and says so', async () => {
    const off = structuredClone(layout);
    off.base.size = ['148 mm', '105 mm'];
    const run = await cardwright(['plan', '-', ...trimmer], JSON.stringify(off));
    expect(run.status).toBe(1);
    expect(run.err).toMatch(/pearl/);
    expect(run.err).toMatch(/The limit is the trimmer/);
    const checked = await cardwright(['check', '-', ...trimmer], JSON.stringify(off));
    expect(checked.status).toBe(1);
    expect(checked.out.replaceAll(/\s+/g, ' ')).toContain('The limit is the trimmer');
  });
});

describe('the examples', () => {
  it.each(['lantern-walk', 'kite-day', 'button-tin', 'garden-gate'])(
    '%s is planned, proved, and without error',
    async (name) => {
      const layout: unknown = JSON.parse(readFileSync(`examples/${name}.card.json`, 'utf8'));
      expect(provedOf(await planOf(layout))).toBe(true);
      expect((await problemsOf(layout)).filter(({ severity }) => severity === 'error')).toEqual([]);
    },
  );
});
