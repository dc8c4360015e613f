import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { readKitFile, writeKitFile } from '../src/files/index.ts';
import { readPdf, wordsOf } from '../src/printing/testing/pdfReader.ts';
import { cardwright, scratchFolder } from './commandLine.ts';

const kit = 'examples/autumn-afternoon.kit.json';
const scratch = scratchFolder();
afterAll(() => scratch.remove());

interface Told {
  readonly kits: { readonly all: number };
  readonly pieces: { readonly inBags: number };
  readonly short: readonly { readonly paper: string; readonly missing: Readonly<Record<string, number>> }[];
  readonly offers: readonly {
    readonly number: number;
    readonly kind: string;
    readonly paper?: string;
    readonly says: string;
  }[];
  readonly plan: unknown;
}
const told = async (...args: readonly string[]) => {
  const run = await cardwright(['kits', kit, '--json', ...args]);
  return { ...run, told: JSON.parse(run.out) as Told };
};

describe('cardwright kits', () => {
  test('fills all the bags of the class', async () => {
    const { status, told: answer } = await told();
    expect(status).toBe(0);
    expect(answer).toMatchObject({ kits: { all: 16 }, pieces: { inBags: 304 }, short: [], offers: [] });
    expect(answer.plan).not.toBeNull();
  });

  test('two more seats are short, an offer for each paper is taken, and the gathered kit is filled', async () => {
    const { status, told: answer } = await told('--seats', '16');
    expect(status).toBe(1);
    expect(answer.short.map(({ paper, missing }) => [paper, Object.values(missing)])).toEqual([
      ['acorns', [2]],
      ['furrows', [2]],
    ]);
    const print = answer.offers.find(({ kind, paper }) => kind === 'standIn' && paper === 'acorns')!;
    const narrower = answer.offers.find(({ says }) => says.includes('Strip is then 1 1/8 x 5 1/4 in'))!;
    expect(narrower.says).toContain('5 pieces from a sheet of Furrows print, 20 in all');
    const path = scratch.path('eighteen.kit.json');
    const taken = await cardwright([
      'kits',
      kit,
      '--seats',
      '16',
      '--take',
      `${print.number},${narrower.number}`,
      '--gather',
      path,
    ]);
    expect(taken.status).toBe(0);
    expect(taken.out).toContain('342 cut pieces in all and 54 envelopes');
    expect(taken.out).toContain('Bags 17 and 18:');
    const again = await cardwright(['kits', path, '--json']);
    expect(again.status).toBe(0);
    expect((JSON.parse(again.out) as Told).short).toEqual([]);
  });

  test('a strip whose mat would be taller than the card is refused, and nothing is written', async () => {
    const path = scratch.path('taller.kit.json');
    const run = await cardwright(['kits', kit, '--length', 'path strip height 5 3/4 in', '--gather', path]);
    expect(run).toMatchObject({ status: 1, out: '' });
    expect(run.err).toContain('is refused, and nothing is changed');
    expect(run.err).toContain('Field path: Mat is 6 in high, but the card is 5 1/2 in: 1/2 in too much.');
    expect(() => readFileSync(path)).toThrow();
  });

  test.each([
    [['--seats', '0'], 2, '--seats is a whole number from 1 to 1000'],
    [['--length', 'path strip'], 2, 'Write a layout, a part'],
    [['--length', 'door strip height 5 in'], 2, 'it has window, path, stones'],
    [['--length', 'path stripe height 5 in'], 2, 'it has base, mat, strip'],
    [['--length', 'path strip depth 5 in'], 2, 'has no depth'],
    [['--length', 'path strip height tall'], 2, 'tall'],
    [['--take', '1'], 2, 'nothing is offered'],
  ])('says what is wrong with %j', async (args, status, says) => {
    const run = await cardwright(['kits', kit, ...args]);
    expect(run.status).toBe(status);
    expect(run.err).toContain(says);
  });

  test('layouts in files of their own are found beside the kit, and gathered', async () => {
    const read = readKitFile(readFileSync(kit, 'utf8'));
    if ('problems' in read) throw new Error('The example is sound');
    const path = scratch.path('class/autumn.kit.json');
    mkdirSync(dirname(path));
    const layouts = (read.file.layouts as { id: string; layout: object }[]).map(({ id, layout }) => {
      writeFileSync(scratch.path(`class/${id}.card.json`), JSON.stringify(layout));
      return { id, file: `${id}.card.json` };
    });
    writeFileSync(path, writeKitFile({ ...read.file, layouts }));
    const whole = scratch.path('whole.kit.json');
    expect((await cardwright(['kits', path, '--gather', whole])).status).toBe(0);
    const gathered = readKitFile(readFileSync(whole, 'utf8'));
    if ('problems' in gathered) throw new Error('A gathered kit is sound');
    expect(gathered.kit.layouts.map(({ layout }) => layout)).toEqual(
      read.kit.layouts.map(({ layout }) => layout),
    );
    writeFileSync(scratch.path('class/path.card.json'), '{ "cardwright": 1 }');
    const wrong = await cardwright(['kits', path]);
    expect(wrong.status).toBe(1);
    expect(wrong.err).toMatch(/^path\.card\.json: units is missing/mu);
  });

  test('prints bag lists, cut list, cutting, a page for each layout and a label for each bag', async () => {
    const path = scratch.path('class.pdf');
    const run = await cardwright(['kits', kit, '-o', path]);
    expect(run.status).toBe(0);
    const pages = (await readPdf(readFileSync(path))).pages.map(wordsOf);
    const all = pages.join(' ');
    for (let bag = 1; bag <= 16; bag += 1) expect(all).toContain(`Bag ${bag} of 16`);
    for (const words of ['What is in each bag', 'Cut list', 'Cutting Acorns print', 'Take care', 'Teacher'])
      expect(all).toContain(words);
    // The steps of each layout, the first to the last, with what to look for, on one page.
    for (const title of ['Acorn window', 'Field path', 'Three stones']) {
      const own = pages.filter((page) => page.includes(title) && page.includes('Look for:'));
      expect(own).toHaveLength(1);
      expect(own[0]).toContain('1. B');
      expect(own[0]).toContain('Inside panel. Glue');
    }
    const short = await cardwright(['kits', kit, '--seats', '16', '-o', scratch.path('short.pdf')]);
    expect(short.status).toBe(1);
    expect(short.err).toContain('No guide is printed for bags that cannot be filled');
  });
});
