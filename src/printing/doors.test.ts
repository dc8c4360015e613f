import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import {
  type Block,
  black,
  cropTick,
  dimensionLine,
  flow,
  hatchFor,
  letterFormat,
  type Mark,
  outlineStroke,
  type Page,
  rectangle,
  roundedRectangle,
  scissors,
  setList,
  setTable,
  standIn,
  svgOf,
  type Typeface,
  tallyStrokes,
  testBars,
  textStyles,
  tornOutline,
  upArrow,
} from '../drawing/index.ts';
import { type Fonts, printPdf, typefaceOf } from './index.ts';
import { type ReadPdf, readPdf, type StructureNode, structureNodes } from './testing/pdfReader.ts';

const madeAt = new Date('2026-11-25T12:00:00Z');
const fonts: Fonts = {
  regular: new Uint8Array(readFileSync('assets/fonts/SourceSans3_400Regular.ttf')),
  semibold: new Uint8Array(readFileSync('assets/fonts/SourceSans3_600SemiBold.ttf')),
};
const style = textStyles().body;
let typeface: Typeface;
beforeAll(() => {
  typeface = typefaceOf(fonts);
});

async function printed(pages: readonly Page[], title = 'Test'): Promise<ReadPdf> {
  return readPdf(await printPdf({ title, language: 'en', pages }, fonts, { madeAt }));
}

async function source(pages: readonly Page[], title = 'Test'): Promise<string> {
  const bytes = await printPdf({ title, language: 'en', pages }, fonts, { madeAt, uncompressed: true });
  return Buffer.from(bytes).toString('latin1');
}

const letter = (...marks: readonly Mark[]): Page => ({ widthPt: 612, heightPt: 792, marks });

/** A page with one of everything that is drawn. */
function everything(): Page {
  const at = { xPt: 300, yPt: 300 };
  const card = { xPt: 90, yPt: 90, widthPt: 150, heightPt: 180 };
  return letter({
    kind: 'group',
    role: 'figure',
    says: 'One of everything',
    move: { xPt: 11.3, yPt: 7.7 },
    marks: [
      { kind: 'path', path: rectangle(card), fill: { hatch: hatchFor(0) }, stroke: outlineStroke },
      { kind: 'path', path: tornOutline(card, { right: 9 }, 3), fill: { hatch: hatchFor(5) } },
      { kind: 'path', path: roundedRectangle({ ...card, xPt: 400 }, 12), fill: { hatch: hatchFor(1) } },
      dimensionLine({
        from: { xPt: 90, yPt: 270 },
        to: { xPt: 240, yPt: 270 },
        side: 'bottom',
        label: '2 1\u204412',
        typeface,
      }),
      cropTick({ at, edge: 'top', label: { text: '3 1\u20448', typeface } }),
      tallyStrokes(at, 7).marks,
      upArrow({ at, sizePt: 20, turnDegrees: 30 }),
      scissors({ at, sizePt: 20 }),
      testBars({ xPt: 90, yPt: 500 }, { inch: '1 in', millimetres: '20 mm', says: 'Bars' }),
    ],
  });
}

/** The points of every line and path of an SVG picture, its groups' moves added, in order. */
function pointsOfSvg(svg: string): readonly (readonly (readonly [number, number])[])[] {
  const paths: (readonly [number, number])[][] = [];
  const moves: [number, number][] = [[0, 0]];
  for (const [tag, end, name, attributes] of svg.matchAll(/<(\/?)(\w+)([^>]*)>/g)) {
    const value = (attribute: string) => new RegExp(`\\b${attribute}="([^"]*)"`).exec(attributes!)?.[1];
    const [x, y] = moves.at(-1)!;
    if (name === 'g' && end === '/') moves.pop();
    else if (name === 'g') {
      const [dx, dy] = /translate\((\S+) (\S+)\)/.exec(tag)?.slice(1).map(Number) ?? [0, 0];
      moves.push([x + dx!, y + dy!]);
    } else if (name === 'line') {
      const at = (attribute: string) => Number(value(attribute));
      paths.push([
        [x + at('x1'), y + at('y1')],
        [x + at('x2'), y + at('y2')],
      ]);
    } else if (name === 'path') {
      for (const ring of value('d')!.split('M').slice(1)) {
        const numbers = ring.match(/-?\d+(?:\.\d+)?(?:e-?\d+)?/g)!.map(Number);
        paths.push(
          Array.from({ length: numbers.length / 2 }, (_, index) => [
            x + numbers[2 * index]!,
            y + numbers[2 * index + 1]!,
          ]),
        );
      }
    }
  }
  return paths;
}

describe('both doors', () => {
  test('draw the same points, those of the hatches too', async () => {
    const page = everything();
    const drawn = pointsOfSvg(svgOf(page, { units: 'in', title: 'Everything' }));
    const [read] = (await printed([page])).pages;
    expect(read!.paths).toHaveLength(drawn.length);
    expect(drawn.length).toBeGreaterThan(500);
    drawn.forEach((points, index) => {
      const found = read!.paths[index]!;
      expect(found).toHaveLength(points.length);
      points.forEach(([x, y], place) => {
        // Both write what was drawn; pdf.js reads single precision.
        expect(Math.abs(found[place]![0] - x)).toBeLessThan(1e-4);
        expect(Math.abs(found[place]![1] - y)).toBeLessThan(1e-4);
      });
    });
  });

  test('see a group through its clip, moved with it', async () => {
    const clipped: Mark = {
      kind: 'group',
      move: { xPt: 100, yPt: 50 },
      clip: { xPt: 10, yPt: 20, widthPt: 30, heightPt: 40 },
      marks: [
        {
          kind: 'path',
          path: rectangle({ xPt: 0, yPt: 0, widthPt: 90, heightPt: 90 }),
          stroke: outlineStroke,
        },
      ],
    };
    // Top left corner at 110, 70; pdfkit turns the page, so that its own y runs downwards.
    expect(await source([letter(clipped)])).toMatch(/\n110 70 30 40 re\nW n\n/);
    const svg = svgOf(letter(clipped), { units: 'in', title: 'Clip' });
    expect(svg).toContain('<clipPath id="cw-clip-1"><path d="M10 20L40 20L40 60L10 60Z"/></clipPath>');
    expect(svg).toContain('transform="translate(100 50)" clip-path="url(#cw-clip-1)"');
  });

  test('turn text clockwise about its place', async () => {
    const turned: Mark = {
      kind: 'text',
      at: { xPt: 200, yPt: 300 },
      text: 'H',
      sizePt: 10,
      weight: 'regular',
      colour: black,
      anchor: 'start',
      turnDegrees: -90,
    };
    const [page] = (await printed([letter(turned)])).pages;
    expect(page!.runs).toMatchObject([
      { text: 'H', xPt: expect.closeTo(200, 3) as number, yPt: expect.closeTo(300, 3) as number },
    ]);
    // A quarter turn against the clock: x goes up the page, which is down in pdfkit's turned plane.
    expect(await source([letter(turned)])).toMatch(/\n0 -1 1 0 -100 500 cm\n/);
    expect(svgOf(letter(turned), { units: 'in', title: 'H' })).toContain('rotate(-90 200 300)');
  });
});

describe('what is read aloud', () => {
  const contentOf = (node: StructureNode) => (node.children ?? []).filter((child) => 'type' in child).length;

  test('goes on with one table over several pages, its repeated head for the eye alone', async () => {
    const rows = Array.from({ length: 90 }, (_, index) => [`Part ${index}`, '4 in']);
    const table = setTable({
      columns: [{ head: 'Part' }, { head: 'Cut' }],
      rows,
      widthPt: 400,
      style,
      typeface,
    });
    const pages = flow([table], { format: letterFormat });
    expect(pages.length).toBeGreaterThan(1);
    const text = await source(pages);
    expect(text.match(/\/S \/Table\b/g)).toHaveLength(1);
    expect(text.match(/\/S \/TR\b/g)).toHaveLength(91);
    expect(text.match(/\/Scope \/Column\b/g)).toHaveLength(2);
    // The head is on every page to be seen all the same.
    for (const page of (await printed(pages)).pages)
      expect(page.runs.some(({ text }) => text === 'Cut')).toBe(true);
  });

  test('goes on with one paragraph over two pages', async () => {
    const lines: Block = {
      role: 'paragraph',
      content: Array.from({ length: 60 }, (_, index) => ({
        heightPt: 20,
        marks: [
          {
            kind: 'text',
            at: { xPt: 0, yPt: 12 },
            text: `Line ${index} `,
            sizePt: 10,
            weight: 'regular',
            colour: black,
            anchor: 'start',
          },
        ],
      })),
    };
    const text = await source(flow([lines], { format: letterFormat }));
    expect(text.match(/\/S \/P\b/g)).toHaveLength(1);
    expect(text).toContain('/Type /MCR');
  });

  test('gives each item of a list its label and its body', async () => {
    const list = setList({ items: ['Cut.', 'Fold.'], labels: 'numbers', widthPt: 300, style, typeface });
    const [page] = (await printed(flow([list], { format: letterFormat }))).pages;
    const roles = structureNodes(page!.structure).map((node) => node.role);
    expect(roles.slice(roles.indexOf('L'))).toEqual(['L', 'LI', 'Lbl', 'LBody', 'LI', 'Lbl', 'LBody']);
  });

  test('reads a figure as one, with nothing inside', async () => {
    const [page] = (await printed([everything()])).pages;
    const figures = structureNodes(page!.structure).filter((node) => node.role === 'Figure');
    expect(figures.map(({ alt }) => alt)).toEqual(['One of everything']);
    expect(contentOf(figures[0]!)).toBe(1);
  });

  test('keeps what a box stands for (ActualText)', async () => {
    const words: Mark = {
      kind: 'text',
      at: { xPt: 72, yPt: 72 },
      text: '\u6f22',
      sizePt: 10,
      weight: 'regular',
      colour: black,
      anchor: 'start',
    };
    const text = await source([letter({ kind: 'group', role: 'paragraph', marks: [words] })]);
    expect(text).toContain('/ActualText (\xfe\xff\x6f\x22)');
    expect((await printed([letter(words)])).pages[0]!.runs.map((run) => run.text)).toEqual([standIn]);
  });

  test('writes a title with any sign both as it is and as XML', async () => {
    const title = 'Ten <cards> & "more"';
    expect((await printed([letter()], title)).title).toBe(title);
    expect(await source([letter()], title)).toContain(
      '<rdf:li xml:lang="x-default">Ten &lt;cards&gt; &amp; &quot;more&quot;</rdf:li>',
    );
  });
});
