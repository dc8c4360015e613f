import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { SavedPlan, TableRecord } from '../src/planning/index.ts';
import { type PlanRecord, replay } from '../src/replay/index.ts';
import { cardwright, type LayoutDraft, layoutDraft, scratchFolder } from './commandLine.ts';

const folder = scratchFolder();
afterAll(folder.remove);

const lanterns = 'examples/lantern-walk.card.json';
const lanternPlan = folder.path('lanterns.plan.json');
let plan: PlanRecord;
beforeAll(async () => {
  const { out } = await cardwright(['plan', lanterns, '--json']);
  writeFileSync(lanternPlan, out);
  plan = JSON.parse(out) as PlanRecord;
}, 60_000);

/** All in one line, as it was before it was broken for a terminal. */
function flat(text: string): string {
  return text.replaceAll(/\s+/g, ' ');
}

type RecutJson = PlanRecord & { readonly recut: TableRecord };

async function recutJson(file: string, ...args: string[]): Promise<RecutJson> {
  const run = await cardwright(['recut', file, '--json', ...args]);
  expect(run).toMatchObject({ status: 0, err: '' });
  const record = JSON.parse(run.out) as RecutJson;
  expect(replay(record, { numberedOn: true })).toEqual([]);
  return record;
}

function stepsOf(record: PlanRecord, paper: string) {
  return record.steps.filter(({ take }) => take[0]!.startsWith(`${paper}-`));
}

describe('recut of an untouched table', () => {
  it('is the plan itself, to the byte', async () => {
    expect((await cardwright(['recut', lanterns, '--json'])).out).toBe(readFileSync(lanternPlan, 'utf8'));
    const again = await cardwright(['recut', lanterns, '--plan', lanternPlan, '--json']);
    expect(again.out).toBe(readFileSync(lanternPlan, 'utf8'));
  });
});

describe('recut with steps done', () => {
  it('has the steps that are left, as they were', async () => {
    const record = await recutJson(lanterns, '--plan', lanternPlan, '--done', '1-9');
    expect(record.steps).toEqual(plan.steps.slice(9));
    expect(Object.keys(record.finished)).toHaveLength(Object.keys(plan.finished).length);
  });

  it('says where things stand first', async () => {
    const { out } = await cardwright(['recut', lanterns, '--plan', lanternPlan, '--done', '1-9,18']);
    expect(flat(out)).toContain('Bark print and White cardstock: go on as planned.');
    expect(flat(out)).toContain('Ivory cardstock, Plum cardstock and Lanterns print: all is cut.');
    expect(out).toMatch(/^ +10\. Set /m);
    expect(out).not.toMatch(/^ +18\. Set /m);
  });

  it('goes on with the rest of a step', async () => {
    const record = await recutJson(lanterns, '--plan', lanternPlan, '--done', '1:2');
    expect(record.steps[0]).toMatchObject({ step: 1, take: ['ivory-3', 'ivory-4', 'ivory-5', 'ivory-6'] });
  });
});

describe('recut with a piece spoiled', () => {
  it('takes a leftover first, opens no sheet and says so', async () => {
    const args = ['--plan', lanternPlan, '--done', '1-9', '--spoiled', '1 tag/plum'];
    const { out } = await cardwright(['recut', lanterns, ...args]);
    expect(flat(out)).toMatch(
      /Plum cardstock: 1 piece for Sentiment mat is spoiled; what is still needed is cut from the leftover of [\d /x]+ in; no new sheet\./,
    );
    const record = await recutJson(lanterns, ...args);
    expect(record.papers.plum).toMatchObject({ cost: 0, proved: true });
    // Numbered on after the plan's last step; the others are as they were.
    expect(stepsOf(record, 'plum')[0]!.step).toBe(plan.steps.length + 1);
    expect(stepsOf(record, 'bark')).toEqual(stepsOf(plan, 'bark'));
  });

  it('lets a spare take its place', async () => {
    const args = ['--plan', lanternPlan, '--done', '1-9', '--spoiled', '1 panel/lanterns'];
    const { out } = await cardwright(['recut', lanterns, ...args]);
    expect(flat(out)).toContain(
      'Lanterns print: 1 piece for Torn panel is spoiled; there is enough without that, and the plan goes on.',
    );
    const record = await recutJson(lanterns, ...args);
    expect(record.pieces.find(({ piece }) => piece === 'panel/lanterns')!.need).toBe(6);
  });

  it('goes on where there is enough without it, and cuts what was found where that saves a sheet', async () => {
    const spares = folder.path('spares.json');
    writeFileSync(spares, (await cardwright(['plan', lanterns, '--json', '--with-spares'])).out);
    const { pieces } = JSON.parse(readFileSync(spares, 'utf8')) as PlanRecord;
    expect(pieces.find(({ piece }) => piece === 'mat/plum')!.need).toBe(14);
    const kept = await cardwright(['recut', lanterns, '--plan', spares, '--json']);
    expect(kept.out).toBe(readFileSync(spares, 'utf8'));

    // Of 12 bases two are spoiled; the scrap gives one of the two that are cut again.
    const args = ['--plan', lanternPlan, '--done', '1', '--spoiled', '2 base/ivory'];
    const two = await recutJson(lanterns, ...args);
    const found = ['--found', 'ivory 8 1/2 x 6 in', '--found', 'ivory 9 by 5.5 in'];
    const none = await recutJson(lanterns, ...args, ...found);
    expect(two.papers.ivory!.cost).toBe(93.5);
    expect(none.papers.ivory!.cost).toBe(0);
    const { out } = await cardwright(['recut', lanterns, ...args, ...found]);
    expect(flat(out)).toMatch(
      /Ivory cardstock: 2 pieces for base are spoiled; found: .*; what is still needed is cut from .*the scrap of .*; no new sheet\./,
    );
    const { out: at } = await cardwright([
      'recut',
      lanterns,
      '--plan',
      lanternPlan,
      '--found',
      'bark 2 x 2 in',
    ]);
    expect(flat(at)).toContain(
      'Bark print: found: 2 x 2 in of Bark print; there is enough without that, and the plan goes on.',
    );
  });

  it('can be recut again, and once more, until all is cut', async () => {
    const first = folder.path('first.json');
    const one = await recutJson(
      lanterns,
      ...['--plan', lanternPlan, '--done', '1-9', '--spoiled', '1 tag/plum'],
    );
    writeFileSync(first, JSON.stringify(one));
    const last = plan.steps.length + 1;
    const second = folder.path('second.json');
    const two = await recutJson(
      lanterns,
      ...[
        '--plan',
        first,
        '--done',
        `10-12,${last}`,
        '--spoiled',
        '1 panel/lanterns',
        '--spoiled',
        'bark-2b2',
      ],
      ...['--found', 'lanterns 3 x 6 in'],
    );
    writeFileSync(second, JSON.stringify(two));
    expect(two.recut.papers.lanterns!.begun).toEqual([1]);
    const steps = two.steps.map(({ step }) => step).join(',');
    const three = await recutJson(lanterns, '--plan', second, '--done', steps);
    expect(three.steps).toEqual([]);
    const made = (record: PlanRecord) => Object.values(record.finished).length;
    expect(three.pieces).toEqual(two.pieces);
    for (const { piece, need } of two.pieces)
      expect(Object.values(three.finished).filter((one) => one === piece).length).toBeGreaterThanOrEqual(
        need,
      );
    expect(made(three)).toBe(made(two));
    const text = await cardwright(['recut', lanterns, '--plan', second, '--done', steps]);
    expect(flat(text.out)).toContain('All is cut for 12 cards.');
  });

  it('names the rescues where it cannot be done, and exits with 1', async () => {
    const run = await cardwright([
      ...['recut', lanterns, '--plan', lanternPlan, '--done', '1-8'],
      ...['--spoiled', 'lanterns-1b', '--spoiled', '2 mat/plum'],
    ]);
    expect(run).toMatchObject({ status: 1, out: '' });
    expect(run.err).toContain('Plum cardstock: 2 pieces for Mat are spoiled.');
    expect(run.err).toContain('2 pieces for Mat would be wanting; that is proved.');
    expect(run.err).toContain(
      '- With 1 more sheet of Plum cardstock (8 1/2 x 11 in) and 1 more sheet of Lanterns print (12 x 12 in) the set comes out.',
    );
    expect(run.err).toMatch(
      /- Make \d cards without spares, \d fewer: the table gives them; it gives no more\./,
    );
  });

  it('comes out once a rescue is taken: another sheet in the layout, or fewer cards', async () => {
    const spoiled = ['--plan', lanternPlan, '--done', '1-6', '--spoiled', '2 mat/plum'];
    expect((await cardwright(['recut', lanterns, ...spoiled])).status).toBe(1);
    const richer = layoutDraft(lanterns);
    richer.papers.plum!.sheets[0]!.count = 5;
    const more = await recutJson(saved('richer', richer), ...spoiled);
    expect(more.sheets.filter(({ id }) => id === 'plum-5')).toHaveLength(1);
    const fewer = layoutDraft(lanterns);
    fewer.cards = 10;
    const ten = await recutJson(saved('fewer', fewer), ...spoiled);
    expect(ten.cards).toBe(10);
    expect(stepsOf(ten, 'plum')).toEqual([]);
  });
});

describe('recut of the other examples', () => {
  it('takes scraps that were not in the plan, and those of the layout', async () => {
    const file = 'examples/button-tin.card.json';
    const { out } = await cardwright(['plan', file, '--json']);
    const { steps, finished } = JSON.parse(out) as PlanRecord;
    const path = folder.path('buttons.json');
    writeFileSync(path, out);
    // The first piece that a step makes is spoiled as soon as it is cut.
    const made = steps.flatMap(({ step, gives }) => gives.flat().map((id) => ({ step, id })));
    const { step, id } = made.find((one) => finished[one.id] !== undefined)!;
    const run = await cardwright([
      'recut',
      file,
      '--plan',
      path,
      '--done',
      `1-${step}`,
      '--spoiled',
      id,
      '--json',
    ]);
    expect(run.status, run.err).toBe(0);
    expect(replay(JSON.parse(run.out) as PlanRecord, { numberedOn: true })).toEqual([]);
  });

  it('keeps the margin of a sheet that is squared in part', async () => {
    const file = 'examples/kite-day.card.json';
    const { out } = await cardwright(['plan', file, '--json']);
    const { steps } = JSON.parse(out) as SavedPlan;
    const path = folder.path('kites.json');
    writeFileSync(path, out);
    const squaring = steps.find(({ squares }) => squares !== undefined)!;
    const record = await recutJson(file, '--plan', path, '--done', `1-${squaring.step}`);
    expect(record.steps).toEqual(steps.slice(squaring.step));
    // One of three is squared, and spoiled: the two others still have their margin, and so has a new one.
    const spoiled = ['--plan', path, '--done', `1-${squaring.step - 1},${squaring.step}:1`];
    spoiled.push('--spoiled', squaring.gives[0]![0]!);
    const again: SavedPlan = await recutJson(file, ...spoiled);
    const squared = again.steps.filter(({ squares }) => squares === 'bottom').flatMap(({ take }) => take);
    expect(squared.sort()).toEqual(['kites-2', 'kites-3', 'kites-4']);
    const { out: said } = await cardwright(['recut', file, ...spoiled]);
    expect(flat(said)).toContain('210 x 289 mm of it is spoiled');
    expect(flat(said)).toContain('one new sheet');
  });
});

describe('recut for a trimmer', () => {
  it('holds to what it can do, and refuses a plan that it cannot cut', async () => {
    const file = 'test/sets/bees-and-dots.card.json';
    const trimmer = folder.path('off.trimmer.json');
    const testCut = { set: '4 in', measured: '4 1/32 in' };
    writeFileSync(trimmer, JSON.stringify({ cardwright_trimmer: 1, units: 'in', marks: '1/16 in', testCut }));
    const { out } = await cardwright(['plan', file, '--trimmer', trimmer, '--json']);
    const path = folder.path('trimmed.json');
    writeFileSync(path, out);
    const { steps, finished } = JSON.parse(out) as PlanRecord;
    const first = steps.find(({ gives }) => gives.flat().some((id) => finished[id] !== undefined))!;
    const id = first.gives.flat().find((one) => finished[one] !== undefined)!;
    const args = ['--done', `1-${first.step}`, '--spoiled', id];
    const run = await cardwright(['recut', file, '--plan', path, '--trimmer', trimmer, ...args, '--json']);
    expect(run.status, run.err).toBe(0);
    expect(run.out).toContain('"dial"');
    const plain = folder.path('plain.json');
    writeFileSync(plain, (await cardwright(['plan', file, '--json'])).out);
    const other = await cardwright(['recut', file, '--plan', plain, '--trimmer', trimmer]);
    expect(other.status).toBe(1);
    expect(other.err).toMatch(/The plan does not come out when it is followed/);
  });
});

describe('a table that no step could have left', () => {
  const cases: readonly (readonly [args: readonly string[], says: string])[] = [
    [['--done', '1-40'], 'There is no step 26: the plan has steps 1 to 25.'],
    [['--done', '1:9'], 'Step 1 takes 6 workpieces; it cannot be done for 9.'],
    [['--done', '4'], 'Step 4 cannot be done yet: it takes what step 3 makes, and that is not done so far.'],
    [['--spoiled', 'plum-1c9'], 'No workpiece of the plan is called “plum-1c9”.'],
    [['--spoiled', '1 mat/plum'], '1 piece of “mat/plum” cannot be spoiled: none is finished by then.'],
    [['--done', '1-6', '--spoiled', '13 mat/plum'], 'only 12 are finished by then.'],
    [['--spoiled', '2 lid/plum'], 'No piece is called “lid/plum”; it may be base/ivory, mat/plum'],
    [['--spoiled', 'plum-1', '--spoiled', 'plum-1'], '“plum-1” is said to be spoiled twice'],
    [['--done', '1-3', '--spoiled', 'plum-1'], '“plum-1” cannot be spoiled now: it was cut up at step 2.'],
    [['--spoiled', 'plum-1a'], '“plum-1a” cannot be spoiled yet: step 2 makes it, and that is not done.'],
    [
      ['--found', 'rose 3 x 4 in'],
      'The layout has no paper “rose”; it may be ivory, plum, lanterns, bark or white.',
    ],
  ];
  it.each(cases.map(([args, says]) => [args.join(' '), args, says] as const))('%s', async (_, args, says) => {
    const run = await cardwright(['recut', lanterns, '--plan', lanternPlan, ...args]);
    expect(run).toMatchObject({ status: 1, out: '' });
    expect(run.err).toContain(says);
  });

  const usage: readonly (readonly string[])[] = [
    ['--done', 'first'],
    ['--done', '4-2'],
    ['--done', '5:0'],
    ['--done', '3,1-4'],
    ['--spoiled', 'two panels'],
    ['--found', '3 x 4 in'],
    ['--found', 'plum 3 4 in'],
    ['--found', 'plum 0 x 4 in'],
  ];
  it.each(usage.map((args) => [args.join(' '), args] as const))('%s is not understood', async (_, args) => {
    const run = await cardwright(['recut', lanterns, '--plan', lanternPlan, ...args]);
    expect(run).toMatchObject({ status: 2, out: '' });
    expect(run.err).toContain(args[0]);
    expect(run.err).toMatch(/ may hold | once is enough| a scrap has /);
  });
});

/** The JSON of a plan, to be changed. */
interface Changing {
  pieces: object[];
  steps: object[];
}

describe('a plan file that cannot be gone on from', () => {
  const changed = async (change: (plan: Changing) => void, layout = lanterns) => {
    const draft = JSON.parse(readFileSync(lanternPlan, 'utf8')) as Changing;
    change(draft);
    const path = folder.path('changed.json');
    writeFileSync(path, JSON.stringify(draft));
    const run = await cardwright(['recut', layout, '--plan', path]);
    expect(run).toMatchObject({ status: 1, out: '' });
    return run.err;
  };

  it('is refused with the field and what may stand there', async () => {
    expect(await changed((plan) => Reflect.deleteProperty(plan, 'steps'))).toMatch(
      /steps is missing; it may hold a list/,
    );
    expect(await changed((plan) => Object.assign(plan, { cards: '12' }))).toMatch(
      /cards holds "12"; it may hold a whole number/,
    );
    expect(await changed((plan) => Object.assign(plan.pieces[0]!, { size: [1.5, 2] }))).toMatch(
      /pieces\[0\]\.size\[0\] holds 1\.5; it may hold a whole number of ticks/,
    );
    expect(await changed((plan) => Object.assign(plan, { cardwright_plan: 2 }))).toMatch(
      /newer than this program/,
    );
    const run = await cardwright(['recut', lanterns, '--plan', lanterns]);
    expect(run.err).toMatch(/has the field "cardwright" and not "cardwright_plan"/);
  });

  it('is refused when it is of another layout', async () => {
    const other = layoutDraft(lanterns);
    other.base.size = ['4 in', '5 1/2 in'];
    expect(await changed(() => undefined, saved('other', other))).toMatch(
      /pieces\[0\] of the plan is “base\/ivory” of 8 1\/2 x 5 1\/2 in, but in the layout it is 8 x 5 1\/2 in/,
    );
    expect(await changed(() => undefined, 'examples/button-tin.card.json')).toMatch(
      /The plan cuts the paper “plum”, which the layout does not have/,
    );
    const smaller = layoutDraft(lanterns);
    smaller.papers.white!.sheets[0]!.size = ['9 in', '11 in'];
    expect(await changed(() => undefined, saved('smaller', smaller))).toMatch(
      /of the plan is “white-1”, 8 1\/2 x 11 in of white, and there is no such sheet/,
    );
  });

  it('is refused when it does not come out', async () => {
    expect(await changed((plan) => Object.assign(plan.steps[0]!, { repeat: 3 }))).toMatch(
      /The plan does not come out when it is followed \(step 1\)/,
    );
  });
});

function saved(name: string, draft: LayoutDraft): string {
  const path = folder.path(`${name}.card.json`);
  writeFileSync(path, JSON.stringify(draft));
  return path;
}
