import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { plainLayout } from '../src/files/testing/plainLayout.ts';
import { slips } from '../src/files/testing/slips.ts';
import { cardwright, scratchFolder } from './commandLine.ts';

/**
 * Files that people get wrong, through every command that reads them: an exit status of 1, a sentence with the
 * field's path on standard error, and nothing else anywhere.
 */
const folder = scratchFolder();
afterAll(folder.remove);
const example = 'examples/lantern-walk.card.json';
const output = folder.path('output');
beforeAll(() => {
  mkdirSync(output);
});

interface BadFile {
  readonly name: string;
  readonly file: string | Uint8Array;
  /** The path of the field, or a line and column where the text is no JSON. */
  readonly where: string;
}

/** What no decoded text can show: bytes that are no UTF-8. */
const badBytes: readonly BadFile[] = [
  {
    name: 'UTF-16 with its mark',
    file: Buffer.from(`\ufeff${plainLayout()}`, 'utf16le'),
    where: 'line 1, column 1',
  },
  { name: 'UTF-16 without', file: Buffer.from(plainLayout(), 'utf16le'), where: 'line 1, column 2' },
  {
    name: 'Latin-1 in a title',
    file: Buffer.from(plainLayout({ title: 'Soirée' }), 'latin1'),
    where: 'title',
  },
  {
    name: 'Latin-1 in an id',
    file: Buffer.from(plainLayout({ 'parts[6].id': 'née' }), 'latin1'),
    where: 'parts[6].id',
  },
  {
    name: 'a picture',
    file: new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0]),
    where: 'line 1, column 1',
  },
];

const badFiles: readonly BadFile[] = [...slips, ...badBytes];

describe('every command refuses a malformed layout file', () => {
  it('of which there are enough', () => {
    expect(new Set(badFiles.map(({ file }) => String(file))).size).toBeGreaterThan(200);
  });

  it.each(badFiles.map((bad, index) => ({ ...bad, index })))('$name', async ({ file, where, index }) => {
    const path = folder.path(`${index}.card.json`);
    writeFileSync(path, file);
    const said = await refusedByAll(path);
    expect(said).toHaveLength(1);
    expect(said[0]).toContain(where);
    expect(readFileSync(path).equals(Buffer.from(file))).toBe(true);
  });

  it('that comes by standard input', async () => {
    const run = await cardwright(['plan', '-'], plainLayout({ cards: 0 }));
    expect(run).toMatchObject({ status: 1, out: '' });
    expect(run.err).toBe('cards holds 0; it may hold a whole number from 1 to 100 000.\n');
  });

  it('and names all that is wrong, a line each, in the order of the file', async () => {
    const path = folder.path('several.card.json');
    writeFileSync(
      path,
      plainLayout({
        cards: 1.5,
        'base.size[1]': 5.5,
        'papers.bark.up': 'down',
        'parts[1].id': 'mat',
        'parts[5].place[1].gap': 'some',
      }),
    );
    const said = await refusedByAll(path);
    expect(said.map((line) => line.split(/[ :]/)[0])).toEqual([
      'cards',
      'base.size[1]',
      'papers.bark.up',
      'parts[1].id',
      // What named the part by its id finds none of that name any more.
      'parts[2].place.rightOf',
      'parts[3].on',
      'parts[5].place[1].below',
      'parts[5].place[1].gap',
    ]);
  });

  it('and of a file of nothing but slips the first hundred', async () => {
    const path = folder.path('hopeless.card.json');
    writeFileSync(path, plainLayout({ parts: Array.from({ length: 400 }, () => 5) }));
    const said = await refusedByAll(path);
    expect(said).toHaveLength(101);
    expect(said[100]).toContain('more problems than the 100 named here');
  });
});

describe('a malformed trimmer file is refused by every command that plans', () => {
  const trimmers: readonly (readonly [name: string, file: string, where: string])[] = [
    ['an empty file', '', 'The file is empty'],
    ['no JSON', '{ cardwright_trimmer: 1 }', 'line 1, column 3'],
    ['a comma too many', '{ "cardwright_trimmer": 1, }', 'line 1, column 26'],
    ['a layout', plainLayout(), '"cardwright_trimmer"'],
    ['a list', '[]', 'The file holds []'],
    ['a newer one', '{ "cardwright_trimmer": 2 }', 'cardwright_trimmer holds 2'],
    ['no units', '{ "cardwright_trimmer": 1 }', 'units is missing'],
    ['a bare length', trimmer({ longest: 12 }), 'longest holds the bare number 12'],
    ['no length', trimmer({ longest: '12 inn' }), 'longest: “12 inn” is no length'],
    ['nothing to cut', trimmer({ longest: '0' }), 'longest holds "0"'],
    ['strips wider than it cuts', trimmer({ longest: '1', narrowest: '2' }), 'narrowest holds "2"'],
    ['no sheet at once', trimmer({ sheetsAtOnce: 0 }), 'sheetsAtOnce holds 0'],
    ['an unknown side', trimmer({ measuringEdge: 'top' }), 'measuringEdge holds "top"'],
    ['an unknown field', trimmer({ longset: '12' }), 'longset is no field known here'],
    ['a field twice', '{ "cardwright_trimmer": 1, "units": "in", "units": "mm" }', 'units stands'],
  ];

  it.each(trimmers)('%s', async (_, file, says) => {
    const path = folder.path('bad.trimmer.json');
    writeFileSync(path, file);
    const commands = [
      ['plan', example],
      ['plan', example, '--json'],
      ['check', example],
      ['guide', example, '-o', `${output}/guide.pdf`],
    ];
    for (const command of commands) {
      const run = await cardwright([...command, '--trimmer', path]);
      expect(run).toMatchObject({ status: 1, out: '' });
      expect(run.err).toContain(says);
      // Two files are read: whose line it is stands before it.
      expect(run.err).toMatch(/^\S*bad\.trimmer\.json: [^\n]+\n$/);
      expect(run.err).not.toMatch(/ {4}at /);
    }
    expect(readdirSync(output)).toEqual([]);
  });

  it('together with what is wrong with the layout', async () => {
    const path = folder.path('bad.trimmer.json');
    writeFileSync(path, trimmer({ hand: 'both' }));
    const run = await cardwright(['plan', '-', '--trimmer', path], plainLayout({ cards: 0 }));
    expect(run).toMatchObject({ status: 1, out: '' });
    expect(run.err).toMatch(/^cards holds 0;.*\n.*bad\.trimmer\.json: hand holds "both";.*\n$/);
  });
});

describe('what is no file to read or write', () => {
  const absent = folder.path('absent.card.json');
  it.each([
    ['a file that is not there', absent, 'there is no such file'],
    ['a folder', output, 'it is a folder'],
    ['a file inside a file', `${example}/inside.card.json`, 'a part of its path is a file'],
    ['a name that is far too long', folder.path('x'.repeat(5_000)), 'the name is too long'],
  ])('%s', async (_, path, why) => {
    for (const run of await allCommands(path)) {
      expect(run).toMatchObject({ status: 1, out: '' });
      expect(run.err).toMatch(/^Cannot read “[^\n]+\n$/);
      expect(run.err).toContain(path);
      expect(run.err).toContain(why);
    }
    expect(readdirSync(output)).toEqual([]);
  });

  it.each([
    ['a trimmer that is not there', folder.path('absent.trimmer.json'), 'there is no such file'],
    ['a trimmer that is a folder', output, 'it is a folder'],
  ])('%s', async (_, path, why) => {
    for (const command of ['plan', 'check']) {
      const run = await cardwright([command, example, '--trimmer', path]);
      expect(run).toMatchObject({ status: 1, out: '' });
      expect(run.err).toContain(`Cannot read “${path}”`);
      expect(run.err).toContain(why);
    }
  });

  it.each([
    ['an output folder that is not there', folder.path('absent/page'), 'there is no such file or folder'],
    ['an output that is a folder', output, 'it is a folder'],
    ['an output inside a file', `${example}/page`, 'a part of its path is a file'],
  ])('%s', async (_, path, why) => {
    const before = readFileSync(example);
    for (const command of ['guide', 'draw']) {
      const run = await cardwright([command, example, '-o', path]);
      expect(run).toMatchObject({ status: 1, out: '' });
      expect(run.err).toContain(`Cannot write “${path}”`);
      expect(run.err).toContain(why);
    }
    const fresh = await cardwright(['new', `${path}/new.card.json`]);
    expect([fresh.status, path === output]).toEqual([path === output ? 0 : 1, path === output]);
    expect(existsSync(folder.path('absent'))).toBe(false);
    expect(readFileSync(example).equals(before)).toBe(true);
  });
});

it('a byte order mark, Windows line ends and fields of other tools spoil nothing', async () => {
  const text = readFileSync(example, 'utf8');
  const path = folder.path('marked.card.json');
  const marked = text.replace('"units"', '"x-shop": { "aisle": [1, null] },\n  "units"');
  writeFileSync(path, `\ufeff${marked.replaceAll('\n', '\r\n')}`);
  const plain = await cardwright(['plan', example, '--json']);
  expect(plain.status).toBe(0);
  expect(await cardwright(['plan', path, '--json'])).toEqual(plain);
});

/** Runs every command on a malformed file; what they say, which is the same from all, line by line. */
async function refusedByAll(path: string): Promise<readonly string[]> {
  const runs = await allCommands(path);
  for (const run of runs) {
    expect(run).toMatchObject({ status: 1, out: '' });
    expect(run.err).toMatch(/^\S[^\p{Cc}]*\.\n(?:\S[^\p{Cc}]*\.\n)*$/u);
    expect(run.err).not.toMatch(/ {4}at |undefined|\[object/);
    expect(run.err).toBe(runs[0]?.err);
  }
  expect(readdirSync(output)).toEqual([]);
  const lines = (runs[0]?.err ?? '').split('\n').slice(0, -1);

  const asJson = await cardwright(['check', path, '--json']);
  expect(asJson.status).toBe(1);
  const { problems } = JSON.parse(asJson.out) as {
    problems: { code: string; severity: string; where: string; says: string }[];
  };
  expect(problems.map(({ says }) => says)).toEqual(lines);
  for (const { code, severity, where, says } of problems) {
    expect(code).toMatch(/^[a-z]+(?:[A-Z][a-z0-9]+)*$/);
    expect(severity).toBe('error');
    expect(says).toContain(where);
  }
  return lines;
}

async function allCommands(path: string) {
  return [
    await cardwright(['plan', path]),
    await cardwright(['plan', path, '--json']),
    await cardwright(['check', path]),
    await cardwright(['guide', path, '-o', `${output}/guide.pdf`]),
    await cardwright(['draw', path, '-o', `${output}/front.svg`]),
  ];
}

function trimmer(changes: Readonly<Record<string, unknown>>): string {
  return JSON.stringify({ cardwright_trimmer: 1, units: 'in', ...changes });
}
