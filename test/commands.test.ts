import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { goals } from '../apps/cli/commandLine.ts';
import { kindnessOrder, type SparesRecord, type StakesRecord } from '../src/planning/index.ts';
import { type PlanRecord, replay } from '../src/replay/index.ts';
import { cardwright, scratchFolder } from './commandLine.ts';

const folder = scratchFolder();
afterAll(folder.remove);
const example = 'examples/lantern-walk.card.json';
const commands = [
  'new',
  'check',
  'plan',
  'docket',
  'recut',
  'enough',
  'suit',
  'recast',
  'guide',
  'outline',
  'ribbon',
  'draw',
] as const;

describe('help', () => {
  it.each(commands)('of %s says what it does and gives an example', async (name) => {
    const { status, out } = await cardwright([name, '--help']);
    expect(status).toBe(0);
    expect(out).toContain(`Usage: cardwright ${name}`);
    expect(out).toMatch(new RegExp(`Example:\n {2}cardwright ${name} `));
  });

  it('lists every command', async () => {
    const { status, out } = await cardwright(['--help']);
    expect(status).toBe(0);
    for (const name of commands) expect(out).toMatch(new RegExp(`^ {2}${name} `, 'm'));
  });

  it('gives the version of the package', async () => {
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
    expect((await cardwright(['--version'])).out).toBe(`${version}\n`);
  });
});

describe('wrong usage', () => {
  const cases: readonly (readonly string[])[] = [
    [],
    ['plam', example],
    ['plan'],
    ['plan', example, 'more'],
    ['plan', example, '--jsno'],
    ['plan', example, '--prefer', 'speed'],
    ['recut'],
    ['recut', example, '--done', 'all'],
    ['guide', example],
    ['guide', example, '-o', folder.path('x.pdf'), '--sheet', 'a3'],
    ['guide', example, '-o', folder.path('x.pdf'), '--units', 'cm'],
    ['guide', example, '-o', folder.path('x.pdf'), '--hand', 'both'],
    ['guide', example, '-o', folder.path('x.pdf'), '--type', 'large'],
    ['guide', example, '-o', folder.path('x.pdf'), '--type', '400'],
    ['draw', example],
    ['draw', example, '-o', folder.path('x.svg'), '--card', '13'],
    ['draw', example, '-o', folder.path('x.svg'), '--card', 'two'],
    ['new', folder.path('x.card.json'), '--units', 'inch'],
    ['docket'],
    ['docket', example, '--risk', 'seldom'],
    ['docket', example, '--risk', '0'],
    ['docket', example, '--risk', '3/2'],
    ['enough'],
    ['enough', example, '--cards', '3'],
    ['suit', example, '--cards', 'many'],
  ];
  it.each(cases.map((args) => [args.join(' ') || '(nothing)', args] as const))('%s', async (_, args) => {
    const run = await cardwright(args);
    expect(run.status).toBe(2);
    expect(run.out).toBe('');
    expect(run.err).not.toBe('');
    expect(run.err).not.toMatch(/ {4}at /);
  });

  it('suggests the command that was meant', async () => {
    expect((await cardwright(['plam', example])).err).toContain('plan');
  });

  it('wrote nothing', () => {
    expect(readdirSync(folder.path('.'))).toEqual([]);
  });
});

describe('files that cannot be read or written', () => {
  it('are named with the reason', async () => {
    const gone = await cardwright(['plan', folder.path('gone.card.json')]);
    expect(gone).toMatchObject({ status: 1, out: '' });
    expect(gone.err).toMatch(/gone\.card\.json.*there is no such file/);
    expect((await cardwright(['plan', folder.path('.')])).err).toMatch(/it is a folder/);
    const nowhere = await cardwright(['draw', example, '-o', folder.path('no/such/x.svg')]);
    expect(nowhere.status).toBe(1);
    expect(nowhere.err).toMatch(/Cannot write/);
  });
});

describe('new', () => {
  it.each(['in', 'mm'])('writes a layout in %s that is sound from the first moment', async (units) => {
    const file = folder.path(`${units}.card.json`);
    expect((await cardwright(['new', file, '--units', units, '--title', 'First frost'])).status).toBe(0);
    expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({
      cardwright: 1,
      units,
      title: 'First frost',
    });
    const checked = await cardwright(['check', file]);
    expect(checked.out).toContain('First frost');
    expect(checked.status).toBe(0);
    expect((await cardwright(['plan', file])).status).toBe(0);
  });

  it('leaves a file that is there as it is', async () => {
    const file = folder.path('mine.card.json');
    writeFileSync(file, 'mine');
    const run = await cardwright(['new', file]);
    expect(run.status).toBe(1);
    expect(run.err).toMatch(/left as it is/);
    expect(readFileSync(file, 'utf8')).toBe('mine');
  });

  it('can be piped into the other commands', async () => {
    const { out } = await cardwright(['new', '-']);
    expect((await cardwright(['check', '-'], out)).status).toBe(0);
  });
});

describe('check', () => {
  it('answers in sentences, or as JSON with the same', async () => {
    const words = await cardwright(['check', example]);
    const json = await cardwright(['check', example, '--json']);
    expect(words.status).toBe(0);
    const { problems } = JSON.parse(json.out) as { problems: { says: string; severity: string }[] };
    const said = words.out.replaceAll(/\s+/g, ' ');
    for (const { says, severity } of problems) {
      expect(said).toContain(says);
      expect(severity).toBe('caution');
    }
  });

  it('has an exit status of 1 for an error, and says where', async () => {
    const layout = JSON.parse(readFileSync(example, 'utf8')) as { parts: { size?: string[] }[] };
    layout.parts[1]!.size = ['9 in', '5 in'];
    const run = await cardwright(['check', '-', '--json'], JSON.stringify(layout));
    expect(run.status).toBe(1);
    const { problems } = JSON.parse(run.out) as {
      problems: { severity: string; where: string; part: string }[];
    };
    const error = problems.find(({ severity }) => severity === 'error');
    expect(error).toMatchObject({ part: 'band' });
    expect(error?.where).toMatch(/^parts\[1\]/);
  });
});

describe('plan', () => {
  it('says every step of the JSON in words, with its setting', async () => {
    const words = await cardwright(['plan', example]);
    const { out } = await cardwright(['plan', example, '--json']);
    const plan = JSON.parse(out) as { steps: { step: number }[] };
    for (const { step } of plan.steps)
      expect(words.out).toMatch(new RegExp(`^ *${step}\\. Set [0-9/ ]+in\\.`, 'm'));
  });

  it('says in words where the JSON knows of a point of no return, and where one is proved first', async () => {
    const words = (await cardwright(['plan', example])).out.replaceAll(/\s+/g, ' ');
    const { out } = await cardwright(['plan', example, '--json']);
    const plan = JSON.parse(out) as PlanRecord & { stakes: StakesRecord[] };
    expect(plan.stakes.map(({ step }) => step)).toEqual(plan.steps.map(({ step }) => step));
    for (const { step, rescue, cardsFewer, proveFirst } of plan.stakes) {
      const said = new RegExp(` ${step}\\. Set .*?(?= ${step + 1}\\. Set |$)`).exec(words)![0];
      expect(said.includes('Point of no return')).toBe(rescue === 'none');
      if (rescue === 'none') expect(said).toMatch(new RegExp(`spoiled here is ${cardsFewer} cards? fewer`));
      expect(said.includes('Prove one first')).toBe(proveFirst !== undefined);
    }
    expect(new Set(plan.stakes.map(({ rescue }) => rescue)).size).toBeGreaterThan(1);
  });

  it('gives the same bytes each time', async () => {
    const args = ['plan', 'examples/button-tin.card.json', '--json'];
    expect((await cardwright(args)).out).toBe((await cardwright(args)).out);
  });
});

describe('plan --prefer', () => {
  interface Figures {
    readonly passes: number;
    readonly settings: number;
  }
  const figures = async (...prefer: string[]) => {
    const { out } = await cardwright(['plan', 'examples/button-tin.card.json', '--json', ...prefer]);
    return Object.values((JSON.parse(out) as { papers: Record<string, Figures> }).papers);
  };

  it('takes the goals that the planner knows', () => {
    expect(goals).toEqual(kindnessOrder);
  });

  it('changes what a plan is chosen by, at the same cost', async () => {
    const usual = await figures();
    const passes = await figures('--prefer', 'passes,turns');
    for (const [index, { passes: few, settings }] of passes.entries()) {
      expect(few).toBeLessThanOrEqual(usual[index]!.passes);
      expect(settings).toBeGreaterThanOrEqual(usual[index]!.settings);
    }
    const { out } = await cardwright(['plan', example, '--prefer', 'leftover']);
    expect(out.replaceAll(/\s+/g, ' ')).toContain('the largest leftover whole first');
    const { err } = await cardwright(['plan', example, '--prefer', 'speed']);
    expect(err).toMatch(/“speed” is none of settings, passes/);
  });
});

describe('plan --with-spares', () => {
  it('makes the spares that plan offers, from as many sheets', async () => {
    const offered = await planned('plan', example, '--json');
    const made = await planned('plan', example, '--json', '--with-spares');
    expect(offered.spares).toEqual({ made: false, offers: made.spares.offers });
    expect(made.spares.made).toBe(true);
    const bonus = new Map(offered.spares.offers.map(({ piece, offered: more }) => [piece, more]));
    expect([...bonus.values()].some((more) => more > 0)).toBe(true);
    for (const [index, { piece, need }] of made.pieces.entries())
      expect(need).toBe(offered.pieces[index]!.need + (bonus.get(piece) ?? 0));
    expect(made.sheets).toHaveLength(offered.sheets.length);
    expect(replay(made)).toEqual([]);
  });

  it('is said in words, and in the guide', async () => {
    const { out } = await cardwright(['plan', example, '--with-spares']);
    expect(out.replaceAll(/\s+/g, ' ')).toContain('Made as spares, for nothing: 2 more for Mat');
    expect(out).not.toContain('Spares for nothing');
    expect((await cardwright(['plan', example])).out).toContain('Spares for nothing: 2 more for Mat');
    expect((await cardwright(['guide', example, '-o', '-', '--with-spares'])).status).toBe(0);
  });

  async function planned(...args: string[]): Promise<PlanRecord & { spares: SparesRecord }> {
    return JSON.parse((await cardwright(args)).out) as PlanRecord & { spares: SparesRecord };
  }
});

describe('output', () => {
  it('never goes over the file that was read', async () => {
    const file = folder.path('mine-again.card.json');
    const text = readFileSync(example, 'utf8');
    writeFileSync(file, text);
    for (const command of ['guide', 'draw']) {
      const run = await cardwright([command, file, '-o', `${folder.path('.')}/./mine-again.card.json`]);
      expect(run.status).toBe(1);
      expect(run.err).toMatch(/it is the file that was read/);
      expect(readFileSync(file, 'utf8')).toBe(text);
    }
  });

  it('replaces a file whole, and leaves no draft beside it', async () => {
    mkdirSync(folder.path('clean'));
    const file = folder.path('clean/front.svg');
    writeFileSync(file, 'old');
    expect((await cardwright(['draw', example, '-o', file])).status).toBe(0);
    expect(readFileSync(file, 'utf8')).toContain('</svg>');
    expect(readdirSync(folder.path('clean'))).toEqual(['front.svg']);
  });

  it('shows the papers in their colours when that is asked', async () => {
    const coloursOf = async (...options: readonly string[]) =>
      (await cardwright(['draw', example, '-o', '-', ...options])).out.match(/fill="#\w{6}"/g);
    // Ivory, plum, the other side of bark, lanterns, white.
    const papers = ['#f5eedc', '#7a4b67', '#dde3d2', '#efd394', '#fdfdfb'].map(
      (colour) => `fill="${colour}"`,
    );
    expect(await coloursOf('--coloured')).toEqual(expect.arrayContaining(papers));
    expect((await coloursOf())?.filter((colour) => papers.includes(colour))).toEqual([]);
  });

  it('goes to standard output for -', async () => {
    const { out } = await cardwright(['draw', example, '-o', '-']);
    expect(out).toMatch(/<svg [^>]*width="4\.25in" height="5\.5in"/);
    expect((await cardwright(['guide', example, '-o', '-'])).out).toMatch(/^%PDF-1\.7/);
  });
});
