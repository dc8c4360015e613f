import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  a4Format,
  type Booklet,
  circle,
  flow,
  letterFormat,
  type Mark,
  type Page,
  pointsOfMillimetres,
  polyline,
  rectangle,
  setFigure,
  setParagraph,
  setTable,
  standIn,
  type TextMark,
  type Typeface,
  testBars,
  textStyles,
} from '../drawing/index.ts';
import { type Fonts, printPdf, typefaceOf } from './index.ts';
import { type ReadPdf, readPdf, type StructureNode, structureNodes, wordsOf } from './testing/pdfReader.ts';

const madeAt = new Date('2026-11-25T12:00:00Z');
const fonts: Fonts = {
  regular: new Uint8Array(readFileSync('assets/fonts/SourceSans3_400Regular.ttf')),
  semibold: new Uint8Array(readFileSync('assets/fonts/SourceSans3_600SemiBold.ttf')),
};

function text(words: string, at: Partial<TextMark> = {}): TextMark {
  return {
    kind: 'text',
    at: { xPt: 72, yPt: 100 },
    text: words,
    sizePt: 12,
    weight: 'regular',
    colour: '#000000',
    anchor: 'start',
    ...at,
  };
}

function letter(...marks: readonly Mark[]): Page {
  return { widthPt: letterFormat.widthPt, heightPt: letterFormat.heightPt, marks };
}

function booklet(...pages: readonly Page[]): Booklet {
  return { title: 'Test print', language: 'en', pages };
}

async function printed(...pages: readonly Page[]): Promise<ReadPdf> {
  return readPdf(await printPdf(booklet(...pages), fonts, { madeAt }));
}

async function plainText(...pages: readonly Page[]): Promise<string> {
  const bytes = await printPdf(booklet(...pages), fonts, { madeAt, uncompressed: true });
  return Buffer.from(bytes).toString('latin1');
}

const thin = { colour: '#000000', widthPt: 0.5 };

describe('the sheet', () => {
  it('is letter, 8 1/2 x 11 in of 72 pt, and A4, 210 x 297 mm (ISO 216), to a thousandth of a point', async () => {
    const { pages } = await printed(letter(), {
      widthPt: a4Format.widthPt,
      heightPt: a4Format.heightPt,
      marks: [],
    });
    expect(pages.map(({ widthPt, heightPt }) => [widthPt, heightPt])).toEqual([
      [612, 792],
      [expect.closeTo(595.2756, 3), expect.closeTo(841.8898, 3)],
    ]);
  });
});

describe('true scale', () => {
  it('draws the test bars as 1 in = 72 pt and 20 mm = 56.692913 pt', async () => {
    const bars = testBars(
      { xPt: 72, yPt: 72 },
      { inch: '1 in', millimetres: '20 mm', says: 'Two test bars' },
    );
    const [page] = (await printed(letter(bars))).pages;
    const lengths = page!.paths.map((path) => Math.abs(path.at(-1)![0] - path[0]![0]));
    expect(lengths.filter((length) => Math.abs(length - 72) < 0.01)).toHaveLength(1);
    expect(lengths.filter((length) => Math.abs(length - 56.692_913) < 0.01)).toHaveLength(1);
    expect(pointsOfMillimetres(20)).toBeCloseTo(56.692_913, 6);
  });

  it('puts every point of a path where it was drawn, moved by its groups', async () => {
    const coordinate = fc.double({ min: -200, max: 200, noNaN: true, noDefaultInfinity: true });
    const point = fc.record({ xPt: coordinate, yPt: coordinate });
    await fc.assert(
      fc.asyncProperty(
        point,
        point,
        fc.array(point, { minLength: 2, maxLength: 6 }),
        async (outer, inner, points) => {
          const line: Mark = { kind: 'path', path: polyline(points), stroke: thin };
          const moved: Mark = {
            kind: 'group',
            move: outer,
            marks: [{ kind: 'group', move: inner, marks: [line] }],
          };
          const [page] = (await printed(letter(moved))).pages;
          points.forEach(({ xPt, yPt }, index) => {
            const [x, y] = page!.paths[0]![index]!;
            // pdf.js keeps coordinates in single precision.
            expect(x).toBeCloseTo(xPt + outer.xPt + inner.xPt, 3);
            expect(y).toBeCloseTo(yPt + outer.yPt + inner.yPt, 3);
          });
        },
      ),
      { numRuns: 15 },
    );
  });

  it('draws rectangles, circles and dots of no length', async () => {
    const box = { xPt: 100, yPt: 120, widthPt: 30, heightPt: 40 };
    const [page] = (
      await printed(
        letter(
          { kind: 'path', path: rectangle(box), fill: { colour: '#ffffff' }, stroke: thin },
          { kind: 'path', path: circle({ xPt: 200, yPt: 300 }, 10), stroke: thin },
          {
            kind: 'path',
            path: polyline([
              { xPt: 50, yPt: 60 },
              { xPt: 50, yPt: 60 },
            ]),
            stroke: { ...thin, cap: 'round' },
          },
        ),
      )
    ).pages;
    const reaches = page!.paths.map((path) => [
      Math.min(...path.map(([x]) => x)),
      Math.max(...path.map(([x]) => x)),
      Math.min(...path.map(([, y]) => y)),
      Math.max(...path.map(([, y]) => y)),
    ]);
    const close = (...numbers: number[]): unknown[] =>
      numbers.map((number): unknown => expect.closeTo(number, 3));
    expect(reaches).toContainEqual(close(100, 130, 120, 160));
    expect(reaches).toContainEqual(close(190, 210, 290, 310));
    expect(reaches).toContainEqual(close(50, 50, 60, 60));
  });
});

describe('type', () => {
  let typeface: Typeface;
  beforeAll(() => {
    typeface = typefaceOf(fonts);
  });

  it('is real text, with fractions around U+2044', async () => {
    const [page] = (await printed(letter(text('Set 3\u00a015⁄16 in')))).pages;
    expect(
      page!.runs
        .map((run) => run.text)
        .join('')
        .replaceAll('\u00a0', ' '),
    ).toBe('Set 3 15⁄16 in');
  });

  it('stands where it is anchored, as wide as it was measured', async () => {
    for (const words of ['Meadow', '5⁄8', 'AVAVA To. 1⁄2 ×', 'Żółw']) {
      const widthPt = typeface.widthPt(words, 12, 'regular');
      const [page] = (
        await printed(
          letter(
            text(words),
            text(words, { anchor: 'middle', at: { xPt: 300, yPt: 200 } }),
            text(words, { anchor: 'end', at: { xPt: 300, yPt: 300 } }),
          ),
        )
      ).pages;
      const starts = [72, 300 - widthPt / 2, 300 - widthPt];
      [100, 200, 300].forEach((yPt, index) => {
        const line = page!.runs.filter((run) => Math.abs(run.yPt - yPt) < 0.01);
        expect(line[0]!.xPt).toBeCloseTo(starts[index]!, 2);
        expect(line.reduce((sum, run) => sum + run.widthPt, 0)).toBeCloseTo(widthPt, 1);
      });
    }
  });

  it('shows a box for a character the font lacks, and never drops one', async () => {
    expect(typeface.has('Meadow ½')).toBe(true);
    expect(typeface.has('🎄')).toBe(false);
    const [page] = (await printed(letter(text('A 🎄 tree 松')))).pages;
    expect(wordsOf(page!)).toBe(`A ${standIn} tree ${standIn}`);
  });

  it('takes line breaks and tabs as spaces', async () => {
    const [page] = (await printed(letter(text('one\ntwo\tthree')))).pages;
    expect(wordsOf(page!)).toBe('one two three');
  });
});

describe('for those who listen', () => {
  const styles = textStyles();
  const group = (
    role: NonNullable<Extract<Mark, { kind: 'group' }>['role']>,
    ...marks: readonly Mark[]
  ): Mark => ({
    kind: 'group',
    role,
    marks,
  });
  let pdf: ReadPdf;
  let nodes: readonly StructureNode[];
  beforeAll(async () => {
    const typeface = typefaceOf(fonts);
    const furniture = { style: styles.body, typeface, widthPt: 400 };
    pdf = await readPdf(
      await printPdf(
        booklet(
          ...flow(
            [
              setParagraph({ ...furniture, words: 'Lantern walk', role: 'title' }),
              setParagraph({ ...furniture, words: 'Cutting', role: 'heading' }),
              setParagraph({ ...furniture, words: 'Set 5 in.' }),
              setFigure({
                marks: [{ kind: 'path', path: circle({ xPt: 9, yPt: 9 }, 9), stroke: thin }],
                heightPt: 20,
                says: 'A moon',
              }),
              setTable({
                ...furniture,
                columns: [{ head: 'Part' }, { head: 'Cut' }],
                rows: [
                  ['Mat', '4 in'],
                  ['Moon', '1 in'],
                ],
              }),
            ],
            { format: letterFormat },
          ),
        ),
        fonts,
        { madeAt },
      ),
    );
    nodes = structureNodes(pdf.pages[0]!.structure);
  });

  it('states title, language and that it is tagged', () => {
    expect(pdf).toMatchObject({ title: 'Test print', language: 'en', marked: true });
  });

  it('reads in the order it was set', () => {
    const roles = nodes.map(({ role }) => role);
    const order = ['H1', 'H2', 'P', 'Figure', 'Table', 'TR', 'TH', 'TD'].map((role) => roles.indexOf(role));
    expect(order.every((place) => place >= 0)).toBe(true);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it('heads the columns and the rows of a table', () => {
    const count = (role: string) => nodes.filter((node) => node.role === role).length;
    expect({ rows: count('TR'), heads: count('TH'), cells: count('TD') }).toEqual({
      rows: 3,
      heads: 4,
      cells: 2,
    });
  });

  it('has words for each figure', () => {
    expect(nodes.filter(({ role }) => role === 'Figure').map(({ alt }) => alt)).toEqual(['A moon']);
    for (const node of nodes.filter(({ role }) => role === 'Figure')) expect(node.alt).toBeTruthy();
  });

  it('marks every painting as content or as decoration', async () => {
    const source = await plainText(
      letter(group('paragraph', text('Words')), text('7'), {
        kind: 'path',
        path: rectangle({ xPt: 9, yPt: 9, widthPt: 9, heightPt: 9 }),
        fill: { colour: '#000000' },
      }),
    );
    const streams = [...source.matchAll(/stream\n([\s\S]*?)\nendstream/g)]
      .map(([, body]) => body!)
      .filter((body) => /\bBT\b|\bf\b/.test(body) && /\bBDC\b/.test(body));
    expect(streams.length).toBeGreaterThan(0);
    for (const body of streams) {
      let depth = 0;
      for (const [token] of body
        .replaceAll(/\((?:\\.|[^\\)])*\)|<[0-9a-fA-F]+>/g, '')
        .matchAll(/\b(?:BDC|BMC|EMC|TJ|Tj|S|s|f\*?|B\*?|b\*?)(?=\s|$)/g)) {
        if (token === 'BDC' || token === 'BMC') depth += 1;
        else if (token === 'EMC') depth -= 1;
        else expect(depth, token).toBeGreaterThan(0);
      }
      expect(depth).toBe(0);
    }
  });

  it('asks to be shown by its title and printed at actual size (ISO 32000-1, viewer preferences)', async () => {
    const source = await plainText(letter());
    expect(source).toMatch(/\/DisplayDocTitle true/);
    expect(source).toMatch(/\/PrintScaling \/?\(?None/);
    expect(source).toMatch(/\/PickTrayByPDFSize true/);
    expect(source).toMatch(/pdfuaid:part/);
  });
});

describe('the same booklet', () => {
  it('gives the same bytes for the same day, and others for another', async () => {
    const once = booklet(
      letter(text('Meadow 1⁄2'), {
        kind: 'path',
        path: circle({ xPt: 90, yPt: 90 }, 20),
        fill: {
          hatch: { ground: '#ffffff', ink: '#000000', pattern: 'dots', turnDegrees: 30, spacingPt: 6 },
        },
      }),
    );
    const [a, b, c] = await Promise.all([
      printPdf(once, fonts, { madeAt }),
      printPdf(once, fonts, { madeAt }),
      printPdf(once, fonts, { madeAt: new Date('2026-11-26T12:00:00Z') }),
    ]);
    expect(Buffer.compare(a, b)).toBe(0);
    expect(Buffer.compare(a, c)).not.toBe(0);
  });

  it('may have no page at all, or a hundred', async () => {
    expect((await printed(...Array.from({ length: 100 }, () => letter(text('Page'))))).pages).toHaveLength(
      100,
    );
    expect(
      Buffer.from(await printPdf(booklet(), fonts, { madeAt }))
        .subarray(0, 8)
        .toString(),
    ).toBe('%PDF-1.7');
  });
});
