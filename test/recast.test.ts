import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { cardwright, scratchFolder } from './commandLine.ts';

const folder = scratchFolder();
afterAll(folder.remove);

/** What `recast --json` answers, as far as these tests read it. */
interface Answer {
  readonly suiting: string;
  readonly cards: { readonly asked: number; readonly given: number };
  readonly lengths: readonly {
    readonly path: string;
    readonly from: number;
    readonly to: number;
    readonly why: string;
  }[];
  readonly pieces: readonly PieceChange[];
  readonly papers: readonly {
    readonly paper: string;
    readonly sheets: { readonly from: number; readonly to: number };
  }[];
  readonly worse: { readonly uneven: readonly string[]; readonly wrong: readonly string[] };
  readonly problems: readonly unknown[];
  readonly conversion: {
    readonly cards: number;
    readonly uneven: readonly unknown[];
    readonly problems: readonly { readonly code: string }[];
    readonly pieces: readonly PieceChange[];
  };
  readonly squeezed: readonly string[];
  readonly says: {
    readonly worse: readonly string[];
    readonly changes: readonly string[];
    readonly conversion: readonly string[];
  };
}

interface PieceChange {
  readonly piece: string;
  readonly size: { readonly to: readonly number[] };
  readonly perSheet: { readonly from: number; readonly to: number };
}

const mm = (ticks: number) => ticks / 1_600;

async function recast(file: string, ...options: string[]): Promise<Answer> {
  const run = await cardwright(['recast', file, '--json', ...options]);
  expect(run.err).toBe('');
  expect(run.status).toBe(0);
  return JSON.parse(run.out) as Answer;
}

const pieceOf = (pieces: readonly PieceChange[], id: string) => {
  const piece = pieces.find((candidate) => candidate.piece === id)!;
  return { size: piece.size.to.map(mm), perSheet: piece.perSheet };
};

describe('fern walk: twelve panels a sheet of 12 x 12 in, now from one sheet of 300 x 300 mm', () => {
  const file = 'test/sets/fern-walk.card.json';
  const options = ['--units', 'mm', '--sheets', 'fern 300 x 300 mm'];

  it('would fall to nine a sheet by conversion alone: nine cards of ten, and uneven borders', async () => {
    const { conversion, says } = await recast(file, ...options);
    expect(pieceOf(conversion.pieces, 'upper/fern')).toEqual({
      size: [95, 76],
      perSheet: { from: 12, to: 9 },
    });
    expect(conversion.cards).toBe(9);
    expect(conversion.problems.map(({ code }) => code)).toContain('sumOff');
    expect(conversion.uneven).toHaveLength(1);
    expect(says.conversion).toContain(
      'A sheet of Fern print would give nine of Upper panel (95 x 76 mm), not twelve.',
    );
    expect(says.conversion).toContain('Fern print would be short: 9 cards of 10.');
  });

  it('holds ten cards from that sheet when it is planned again, with even borders', async () => {
    const answer = await recast(file, ...options);
    expect(answer.suiting).toBe('suited');
    expect(answer.cards).toEqual({ asked: 10, given: 10 });
    expect(pieceOf(answer.pieces, 'upper/fern')).toEqual({ size: [95, 75], perSheet: { from: 12, to: 12 } });
    // 3 + 75 + 6 + 46 + 3 = 133: the lower panel takes what the upper gives.
    expect(pieceOf(answer.pieces, 'lower/speckle').size).toEqual([95, 46]);
    expect(answer.papers.find(({ paper }) => paper === 'fern')?.sheets).toEqual({ from: 1, to: 1 });
    expect([answer.worse, answer.problems]).toEqual([{ uneven: [], wrong: [] }, []]);
  });

  it('writes a layout that reads, checks without fault and is planned as promised', async () => {
    const written = folder.path('fern.card.json');
    const run = await cardwright(['recast', file, '-o', written, ...options]);
    expect(run).toMatchObject({ status: 0, err: `Wrote ${written}.\n` });
    const checked = JSON.parse((await cardwright(['check', written, '--json'])).out) as {
      problems: { code: string }[];
    };
    expect(checked.problems.map(({ code }) => code)).toEqual(['nothingToSpare']);
    const plan = JSON.parse((await cardwright(['plan', written, '--json'])).out) as {
      papers: { fern: { sheets: number } };
    };
    expect(plan.papers.fern.sheets).toBe(1);
  });
});

it('bees and dots on A6 from A4 and the same prints: all borders 3 mm, ten cards from one sheet of bees', async () => {
  const answer = await recast(
    'test/sets/bees-and-dots.card.json',
    ...['--units', 'mm', '--base', '105 x 148 mm', '--sheets', '210 x 297 mm for 8 1/2 x 11 in'],
  );
  const sizes = Object.fromEntries(answer.pieces.map(({ piece, size }) => [piece, size.to.map(mm)]));
  expect(sizes).toMatchObject({
    'base/cream': [210, 148],
    'mat/coral': [99, 142],
    'upper/bees': [93, 76],
    'lower/dots': [93, 54],
    'lining/white': [99, 142],
  });
  const sheets = Object.fromEntries(answer.papers.map(({ paper, sheets: { to } }) => [paper, to]));
  expect(sheets).toEqual({ cream: 5, coral: 3, white: 3, bees: 1, dots: 1 });
  expect(answer.worse).toEqual({ uneven: [], wrong: [] });
});

it('harbour lights, half A4, on a trimmer of whole 5 mm: card 145 x 105, mat 135 x 95, panel 125 x 85, all borders 5', async () => {
  const answer = await recast(
    'test/sets/harbour-lights.card.json',
    '--trimmer',
    'test/sets/five-millimetre.trimmer.json',
  );
  const sizes = Object.fromEntries(answer.pieces.map(({ piece, size }) => [piece, size.to.map(mm)]));
  expect(sizes).toEqual({ 'base/pearl': [145, 210], 'mat/slate': [135, 95], 'panel/dusk': [125, 85] });
  expect(answer.papers.map(({ sheets }) => sheets.to)).toEqual([5, 3, 4]);
  expect(answer.conversion.problems.map(({ code }) => code)).toEqual(['unevenBorder']);
});

it('a layout that stands on the marks stays as it is, to the letter', async () => {
  const written = folder.path('same.card.json');
  const run = await cardwright(['recast', 'examples/kite-day.card.json', '-o', written]);
  expect(run.out).toContain('No length had to change.');
  expect(run.out).toContain('It would have come out as well.');
  const read = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'));
  expect(JSON.stringify(read(written))).toBe(JSON.stringify(read('examples/kite-day.card.json')));
});

it('keeps names, order and the fields of other tools, and lengths that do not change as they were typed', async () => {
  const draft = JSON.parse(readFileSync('test/sets/fern-walk.card.json', 'utf8')) as Record<string, unknown>;
  const run = await cardwright(
    ['recast', '-', '-o', '-', '--units', 'mm'],
    JSON.stringify({ 'x-shelf': { left: [1, '2 in'] }, ...draft }),
  );
  expect(run.status).toBe(0);
  const written = JSON.parse(run.out) as {
    papers: { oat: { name: string; sheets: { size: string[] }[] } };
    units: string;
  };
  expect(Object.keys(written)).toEqual(['x-shelf', ...Object.keys(draft)]);
  expect(written).toMatchObject({ 'x-shelf': { left: [1, '2 in'] }, units: 'mm', title: 'Fern walk' });
  expect(written.papers.oat).toMatchObject({
    name: 'Oat cardstock',
    sheets: [{ size: ['8 1/2 in', '11 in'] }],
  });
  expect(run.err).toContain('What changed, and why:');
});

it('warns of a stamped part that became smaller with what it lies on', async () => {
  const { says, squeezed } = await recast(
    'examples/lantern-walk.card.json',
    ...['--units', 'mm', '--base', '105 x 148 mm', '--sheets', '210 x 297 mm for 8 1/2 x 11 in'],
  );
  expect(squeezed).toEqual(['sentiment']);
  expect(says.worse).toEqual(['Sentiment is smaller than it was: see that its stamp still fits.']);
  // The new sheets have no grain that a fold could cross.
  expect(says.conversion.join()).not.toContain('grain');
});

it('brings the room of a size along', async () => {
  const draft = JSON.parse(readFileSync('test/sets/fern-walk.card.json', 'utf8')) as {
    parts: Record<string, unknown>[];
  };
  draft.parts[1]!.room = { height: ['2 7/8 in', '3 1/8 in'] };
  const run = await cardwright(['recast', '-', '-o', '-', '--units', 'mm'], JSON.stringify(draft));
  const written = JSON.parse(run.out) as typeof draft;
  expect(written.parts[1]!.room).toEqual({ height: ['73 mm', '79 mm'] });
});

it('says when the papers stay short, and the most that was found', async () => {
  const run = await cardwright([
    'recast',
    'test/sets/gum-leaves.card.json',
    '--units',
    'in',
    '-o',
    folder.path('gum.card.json'),
  ]);
  expect(run.status).toBe(1);
  expect(run.out).toContain('The papers are short.');
  expect(run.err).toContain('Gum leaves is short');
});

describe('what cannot be followed', () => {
  const file = 'test/sets/fern-walk.card.json';
  it.each([
    ['marks of nothing', ['--marks', '0 mm'], 'Marks 0 in apart are no marks'],
    [
      'a base that no sheet gives',
      ['--base', '8 x 12 in'],
      'A base of 8 x 12 in is 16 x 12 in lying open, larger than any sheet of Oat cardstock',
    ],
    [
      'a paper that is not there',
      ['--sheets', 'ferm 300 x 300 mm'],
      'The layout has no paper “ferm”. It has oat, moss, fern or speckle.',
    ],
    [
      'sheets in place of none',
      ['--sheets', '210 x 297 mm for 9 x 9 in'],
      'No paper of the layout has sheets of 9 x 9 in',
    ],
    ['no cards', ['--cards', '0'], '0 is no number of cards for a set'],
    ['marks wider than the card', ['--marks', '10 in'], 'smaller than one mark of 10 in'],
    ['a base with nothing between the borders', ['--base', '1/4 x 1/4 in'], 'leave nothing for Mat'],
    ['a sheet without size', ['--sheets', '0 x 300 mm'], 'has no size'],
  ])('%s', async (_, options, says) => {
    const run = await cardwright(['recast', file, ...options]);
    expect(run).toMatchObject({ status: 1, out: '' });
    expect(run.err).toContain(says);
  });

  it.each([
    ['one measure for a base', ['--base', '105 mm'], '“105 mm” is no size'],
    ['a base that is no length', ['--base', '105 x wide mm'], '--base wants a width and a height'],
    ['sheets that are no size', ['--sheets', 'fern large'], '--sheets wants a width and a height'],
    [
      'marks that are no length',
      ['--marks', 'fine'],
      '--marks wants the distance of two marks: “fine” is no length',
    ],
    ['cards that are no number', ['--cards', 'ten'], '--cards wants how many cards'],
    ['other units', ['--units', 'cm'], 'in, mm'],
  ])('%s: wrong usage', async (_, options, says) => {
    const run = await cardwright(['recast', file, ...options]);
    expect(run).toMatchObject({ status: 2, out: '' });
    expect(run.err).toContain(says);
  });

  it('is never written over the file that was read', async () => {
    const own = folder.path('own.card.json');
    await cardwright(['new', own]);
    const before = readFileSync(own, 'utf8');
    const run = await cardwright(['recast', own, '-o', own, '--units', 'mm']);
    expect(run.status).toBe(1);
    expect(run.err).toContain('it is the file that was read');
    expect(readFileSync(own, 'utf8')).toBe(before);
  });
});
