import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ReadPage, type ReadPdf, readPdf, wordsOf } from '../src/printing/testing/pdfReader.ts';
import { cardwright, layoutDraft, scratchFolder } from './commandLine.ts';

/** Ribbons from the file to the page that they are folded by, measured in the printed guide. */
const folder = scratchFolder();
afterAll(folder.remove);

type Corner = readonly [x: number, y: number];

async function guideOf(file: string): Promise<ReadPdf> {
  const pdf = folder.path('guide.pdf');
  const run = await cardwright(['guide', file, '-o', pdf]);
  expect(run.status).toBe(0);
  return readPdf(readFileSync(pdf));
}

const pageOf = ({ pages }: ReadPdf, words: string): ReadPage =>
  pages.find((page) => wordsOf(page).includes(words) && wordsOf(page).includes('20 mm exactly'))!;

/** Closed figures of four corners on a page, each from its first corner round. */
function quadsOf({ paths }: ReadPage): readonly (readonly Corner[])[] {
  return paths.flatMap((path) => {
    const corners = path.filter(
      ([x, y], index) => index === 0 || Math.hypot(x - path[0]![0], y - path[0]![1]) > 1e-6,
    );
    return corners.length === 4 ? [corners.map(([x, y]): Corner => [x, y])] : [];
  });
}

const between = ([x, y]: Corner, [toX, toY]: Corner): number => Math.hypot(toX - x, toY - y);
const middle = ([x, y]: Corner, [toX, toY]: Corner): Corner => [(x + toX) / 2, (y + toY) / 2];

describe('veiled ribbon: a folded ribbon behind a vellum circle', () => {
  const file = 'test/sets/veiled-ribbon.card.json';
  let pdf: ReadPdf;
  beforeAll(async () => {
    pdf = await guideOf(file);
  }, 30_000);

  it('is sound, and its docket tells every measure', async () => {
    expect((await cardwright(['check', file])).status).toBe(0);
    const { out } = await cardwright(['docket', file]);
    const words = out.replace(/\s+/g, ' ');
    // 3 / cos 20° = 3.1925 and 3 tan 20° = 1.0919 in, to the nearest 1/64.
    for (const said of [
      'which rises by 20°',
      '3 3/16 in long from crease to crease and rises by 1 3/32 in',
      'a gap of 19/32 in between them',
      '80° to the edge',
      'Fold both ends behind',
    ])
      expect(words).toContain(said);
  });

  it('shows its ribbon through the vellum, and counts both sides of the paper', async () => {
    const { out } = await cardwright(['docket', file, '--json']);
    const { papers } = JSON.parse(out) as {
      papers: readonly { paper: string; side: string; open: number; veiled: number }[];
    };
    const plum = papers.filter(({ paper }) => paper === 'plum');
    expect(plum.map(({ side }) => side)).toEqual(['front', 'back']);
    for (const { open, veiled } of plum) expect(Math.min(open, veiled)).toBeGreaterThan(0);
  });

  it('has a folding template that is true in the PDF: 3 / cos 20° by 1/2 in, its ends at 80°', () => {
    const page = pageOf(pdf, 'Folding template for C Ribbon');
    const long = (3 / Math.cos(Math.PI / 9)) * 72;
    const crease = (0.5 / Math.cos(Math.PI / 18)) * 72;
    const found = quadsOf(page).filter(
      ([a, b, c, d]) =>
        Math.abs(between(a!, b!) - long) < 0.01 &&
        Math.abs(between(b!, c!) - crease) < 0.01 &&
        Math.abs(between(c!, d!) - long) < 0.01,
    );
    expect(found.length).toBeGreaterThan(0);
    const [a, b, c, d] = found[0]! as [Corner, Corner, Corner, Corner];
    const [one, other] = [middle(b, c), middle(d, a)];
    expect(Math.abs(one[0] - other[0])).toBeCloseTo(216, 2);
    expect(Math.abs(one[1] - other[1])).toBeCloseTo(Math.tan(Math.PI / 9) * 216, 2);
    const angle = (from: Corner, to: Corner) => Math.atan2(to[1] - from[1], to[0] - from[0]);
    const turn = Math.abs(Math.sin(angle(b, c) - angle(a, b)));
    expect((Math.asin(turn) * 180) / Math.PI).toBeCloseTo(80, 2);
  });

  it('says how to fold it where it is laid on', () => {
    const words = pdf.pages.map(wordsOf).join(' ');
    expect(words).toContain('Turn the strip half round and do the same at its other end.');
    expect(words).toContain('Fold both ends behind along the scores');
  });
});

describe('tulip bow: a wrap with tucks and loops of a strip', () => {
  const file = 'test/sets/tulip-bow.card.json';

  it('has loops that come out of 130 mm, and says what would where they do not', async () => {
    expect((await cardwright(['check', file])).status).toBe(0);
    const longer = layoutDraft(file);
    longer.parts.find(({ id }) => id === 'loop')!.size = ['140 mm', '20 mm'];
    const run = await cardwright(['check', '-'], JSON.stringify(longer));
    expect(run.status).toBe(1);
    expect(run.out.replace(/\s+/g, ' ')).toContain(
      'two loops of 30 mm and an overlap of 10 mm take 130 mm: 10 mm too much',
    );
  });

  it('tells how much of the wrap lies behind and what is missing for its ends to meet', async () => {
    const { out } = await cardwright(['docket', file]);
    const words = out.replace(/\s+/g, ' ');
    expect(words).toContain('Wrap goes round mat and behind, 15 mm at the left and at the right.');
    expect(words).toContain('99.4 mm are missing for its ends to meet');
  });

  it('has a template of exactly 30 by 20 mm', async () => {
    const page = pageOf(await guideOf(file), 'Folding template for G loop');
    const pt = (mm: number) => (mm * 72) / 25.4;
    expect(
      quadsOf(page).some(
        ([a, b, c]) => Math.abs(between(a!, b!) - pt(30)) < 0.01 && Math.abs(between(b!, c!) - pt(20)) < 0.01,
      ),
    ).toBe(true);
  }, 30_000);
});

describe('what cannot be folded', () => {
  const set = () => layoutDraft('test/sets/veiled-ribbon.card.json');

  it('is named with what would do: a strip too short, tails that meet', async () => {
    const short = set();
    short.parts[1]!.size = ['3 1/4 in', '1/2 in'];
    const run = await cardwright(['check', '-'], JSON.stringify(short));
    expect(run.status).toBe(1);
    expect(run.out).toContain('it takes');
    const flat = set();
    flat.parts[1]!.slant = 9;
    const said = (await cardwright(['check', '-'], JSON.stringify(flat))).out.replace(/\s+/g, ' ');
    expect(said).toContain('A slant of 9.5° or more keeps them apart');
  });

  it('is no part that is torn', async () => {
    const torn = set();
    torn.parts[1]!.torn = { left: '1/4 in' };
    const run = await cardwright(['check', '-'], JSON.stringify(torn));
    expect(run.status).toBe(1);
    expect(run.err).toContain('only a rectangle may be torn');
  });
});

describe('cardwright ribbon', () => {
  const strip = ['ribbon', '--strip', '6 3/4 x 1/2 in'];

  it('finds the slant from the gap, the template from it, and the same ribbon forwards', async () => {
    // A rise of 1 in over 3 in: atan(1/3) is 18.4349 degrees.
    const back = await cardwright([...strip, '--template', '3 in', '--gap', '1/2 in', '--json']);
    const { part, measures } = JSON.parse(back.out) as {
      part: { slant: number; template: string };
      measures: { gap: number; between: number };
    };
    expect(part.slant).toBe(18.4349);
    expect(Math.abs(measures.gap - 20_320)).toBeLessThanOrEqual(2);
    expect(measures.between / 40_640).toBeCloseTo(Math.sqrt(10), 4);
    const forwards = await cardwright([...strip, '--template', '3 in', '--slant', '18.4349', '--json']);
    expect(forwards.out).toBe(back.out);
    const other = await cardwright([...strip, '--slant', '18.4349', '--gap', '1/2 in']);
    expect(other.out).toContain('on a template of 3 in');
  });

  it('finds the ribbon of a size, and prints fields that a layout takes', async () => {
    const { out, status } = await cardwright([...strip, '--overall', '4 x 2 in']);
    expect(status).toBe(0);
    expect(out.replace(/\s+/g, ' ')).toContain('Folded, it measures 4 x 2 in.');
    const fields = JSON.parse(`{${out.slice(out.indexOf('"shape"'))}}`) as object;
    const layout = layoutDraft('test/sets/veiled-ribbon.card.json');
    Object.assign(layout.parts[1]!, fields);
    // 4 in across fills the mat from edge to edge.
    expect((await cardwright(['check', '-'], JSON.stringify(layout))).status).toBe(0);
  });

  it('writes a template with the bars, in the units of the strip', async () => {
    const { out } = await cardwright([
      'ribbon',
      '--strip',
      '170 x 12 mm',
      '--template',
      '80 mm',
      '--slant',
      '-25',
      '-o',
      '-',
    ]);
    expect(out).toMatch(/^<\?xml|^<svg/);
    expect(out).toMatch(/width="[\d.]+mm"/);
    for (const said of ['1 in exactly', '20 mm exactly', '80']) expect(out).toContain(said);
  });

  it.each([
    [['--template', '3 in', '--gap', '3 in'], 'takes a strip of'],
    [['--template', '3 in', '--slant', '5'], 'A slant of 9.5° or more keeps them apart'],
    [['--slant', '0', '--gap', '1/2 in'], 'give it more slant'],
    [['--overall', '4 x 7/8 in'], 'is 1 in high at least'],
    [['--overall', '1/2 x 4 in'], 'wider than its strip'],
  ])('says that %j cannot be, and what would do', async (options, says) => {
    const short =
      options.includes('3 in') && options.includes('--gap') ? ['ribbon', '--strip', '4 x 1/2 in'] : strip;
    const run = await cardwright([...short, ...options]);
    expect(run.status).toBe(1);
    expect(run.out).toBe('');
    expect(run.err.replace(/\s+/g, ' ')).toContain(says);
  });

  it.each([
    [['--template', '3 in'], 'given by two of'],
    [['--template', '3 in', '--slant', '20', '--overall', '4 x 2 in'], 'given by two of'],
    [['--template', '0', '--slant', '20'], '--template wants a length'],
    [['--template', '3 in', '--slant', '90'], '--slant wants degrees from -85 to 85'],
  ])('does not understand %j', async (options, says) => {
    const run = await cardwright([...strip, ...options]);
    expect(run.status).toBe(2);
    expect(run.err).toContain(says);
  });
});
