import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inchesOf, type Length, showLengthWithUnit } from '../src/measure/index.ts';
import {
  type ReadPage,
  type ReadPdf,
  readPdf,
  structureNodes,
  wordsOf,
} from '../src/printing/testing/pdfReader.ts';
import type { PlanRecord } from '../src/replay/index.ts';
import { cardwright, scratchFolder } from './commandLine.ts';

const folder = scratchFolder();
afterAll(folder.remove);

const examples = ['lantern-walk', 'kite-day', 'button-tin', 'garden-gate'] as const;
const formats = [
  { sheet: 'letter', units: 'in', widthPt: 612, heightPt: 792 },
  // ISO 216: 210 x 297 mm.
  { sheet: 'a4', units: 'mm', widthPt: (210 * 72) / 25.4, heightPt: (297 * 72) / 25.4 },
] as const;

async function guideOf(name: string, ...options: string[]): Promise<Uint8Array> {
  const file = folder.path('guide.pdf');
  const run = await cardwright(['guide', `examples/${name}.card.json`, '-o', file, ...options]);
  expect(run.status).toBe(0);
  return readFileSync(file);
}

/** The plan of an example, made once for all its guides. */
async function planOf(name: string): Promise<PlanRecord> {
  const known = plans.get(name);
  if (known !== undefined) return known;
  const { out } = await cardwright(['plan', `examples/${name}.card.json`, '--json']);
  const plan = JSON.parse(out) as PlanRecord;
  plans.set(name, plan);
  return plan;
}
const plans = new Map<string, PlanRecord>();

describe('the guide --with-spares', () => {
  it('counts the spares among the pieces and the bases that are scored', async () => {
    const words = (await readPdf(await guideOf('kite-day', '--with-spares'))).pages.map(wordsOf).join(' ');
    // Seven sheets of chalk give a fifteenth base for nothing.
    expect(words).toContain('Lay each of the 15 bases open');
    expect(words).toContain('15, 1 spare');
  });
});

describe('the guide --post', () => {
  it('tells how a post of the person’s own takes the card', async () => {
    const words = (await readPdf(await guideOf('kite-day', '--post', 'examples/counter.post.json'))).pages
      .map(wordsOf)
      .join(' ');
    expect(words).toContain('Fernland');
  });
});

describe.each(examples.flatMap((name) => formats.map((format) => ({ name, ...format }))))(
  'the guide of $name on $sheet in $units, read back by pdf.js',
  ({ name, sheet, units, widthPt, heightPt }) => {
    let pdf: ReadPdf;
    let plan: PlanRecord;
    beforeAll(async () => {
      plan = await planOf(name);
      pdf = await readPdf(await guideOf(name, '--sheet', sheet, '--units', units));
    }, 30_000);

    it('has pages of exactly that sheet', () => {
      for (const page of pdf.pages) {
        expect(page.widthPt).toBeCloseTo(widthPt, 3);
        expect(page.heightPt).toBeCloseTo(heightPt, 3);
      }
    });

    it('says every step with its number and setting, as real text', () => {
      const words = pdf.pages.map(wordsOf).join(' ');
      for (const step of plan.steps) {
        expect(words).toContain(`${step.step} Set ${showLengthWithUnit(step.set as Length, units)}.`);
      }
    });

    it('draws what each step cuts in its true proportions', () => {
      const sizes = sizesBefore(plan);
      const pages = pdf.pages.filter((page) => /\d Set /.test(wordsOf(page)));
      for (const step of plan.steps) {
        const [width, height] = sizes.get(step.step)!;
        // The pieces of one step stand apart; each is as large as the setting by the other side.
        const cut = step.axis === 'width' ? [step.set, height] : [step.set, width];
        const page = pages.find((candidate) => wordsOf(candidate).includes(`${step.step} Set `))!;
        const found = rectanglesOf(page).some(
          ([wide, high]) => Math.abs(wide / high - cut[0]! / cut[1]!) < 1e-3 * (wide / high),
        );
        expect(
          found,
          `step ${step.step}: ${cut.map((side) => inchesOf(side as Length)).join(' x ')} in`,
        ).toBe(true);
      }
    });

    it('has bars of exactly 1 in and 20 mm on the page at true size', () => {
      const atTrueSize = pdf.pages.filter((page) => wordsOf(page).includes('20 mm exactly'));
      expect(atTrueSize.map(wordsOf).join(' ')).toContain('The front at true size');
      for (const page of atTrueSize) {
        const bars = page.paths.map((path) => Math.abs((path.at(-1)?.[0] ?? 0) - (path[0]?.[0] ?? 0)));
        expect(bars.some((length) => Math.abs(length - 72) < 0.01)).toBe(true);
        expect(bars.some((length) => Math.abs(length - (20 * 72) / 25.4) < 0.01)).toBe(true);
      }
    });

    it('can be listened to: tagged, titled, every figure in words', () => {
      expect(pdf).toMatchObject({ marked: true, language: 'en' });
      expect(pdf.title).not.toBe('');
      const nodes = pdf.pages.flatMap((page) => structureNodes(page.structure));
      const figures = nodes.filter(({ role }) => role === 'Figure');
      expect(figures.length).toBeGreaterThan(plan.steps.length / 2);
      for (const { alt } of figures) expect(alt?.length ?? 0).toBeGreaterThan(10);
      expect(nodes.filter(({ role }) => role === 'H1')).toHaveLength(1);
      expect(nodes.some(({ role }) => role === 'TH')).toBe(true);
    });

    it('keeps all its type on the page', () => {
      for (const page of pdf.pages) {
        for (const { text, xPt, yPt, widthPt: run } of page.runs) {
          expect(xPt, text).toBeGreaterThan(-0.01);
          expect(xPt + run, text).toBeLessThan(page.widthPt + 0.01);
          expect(yPt, text).toBeGreaterThan(0);
          expect(yPt, text).toBeLessThan(page.heightPt);
        }
      }
    });

    it('lists the pieces, what to buy, what is left, how to put it together, and the cautions', () => {
      const words = pdf.pages.map(wordsOf).join(' ');
      for (const heading of [
        'What to cut',
        'What you need',
        'Left of',
        'Putting a card together',
        'Take care',
      ]) {
        expect(words).toContain(heading);
      }
    });
  },
);

describe('every guide', () => {
  it('is the same to the byte for the same set and day', async () => {
    expect(Buffer.compare(await guideOf('kite-day'), await guideOf('kite-day'))).toBe(0);
  });

  it('can be set in large print and for a trimmer of one’s own', async () => {
    const trimmer = ['--trimmer', 'examples/craft-table.trimmer.json'];
    const large = await readPdf(await guideOf('lantern-walk', '--type', '20', ...trimmer));
    const words = large.pages.map(wordsOf).join(' ');
    expect(words).toContain('a mark every 1/16 in');
    expect(words).toContain('At the mark halfway between the 5 and the 6 mark.');
    for (const page of large.pages) {
      for (const { xPt, widthPt, text } of page.runs) expect(xPt + widthPt, text).toBeLessThan(page.widthPt);
    }
  });

  it('can be had for the other hand, with every setting as it was', async () => {
    const said = async (hand: 'left' | 'right') => {
      const { pages } = await readPdf(await guideOf('lantern-walk', '--hand', hand));
      return pages.map(wordsOf).join(' ');
    };
    const [right, left] = [await said('right'), await said('left')];
    expect(right).toContain('The heavy rule on the left is the measuring edge');
    expect(left).toContain('The heavy rule on the right is the measuring edge');
    expect(left).toContain('Your left hand works the blade');
    const settings = (words: string) => words.match(/\d+ Set [^.]*\./gu);
    expect(settings(right)?.length).toBeGreaterThan(10);
    expect(settings(left)).toEqual(settings(right));
  });

  it('is told by a card’s own words even when they are strange', async () => {
    const layout = JSON.parse(readFileSync('examples/button-tin.card.json', 'utf8')) as {
      title: string;
      parts: { name: string }[];
    };
    layout.title = `Ёлка 🎄 ${'very '.repeat(30)}long`;
    layout.parts[0]!.name = 'שלום <b>&';
    const run = await cardwright(['guide', '-', '-o', folder.path('strange.pdf')], JSON.stringify(layout));
    expect(run.status).toBe(0);
    const pdf = await readPdf(readFileSync(folder.path('strange.pdf')));
    for (const page of pdf.pages) {
      for (const { xPt, widthPt, text } of page.runs)
        expect(xPt + widthPt, text).toBeLessThan(page.widthPt + 0.5);
    }
  });
});

/**
 * The words and the geometry of the examples' guides, and their fronts, as they were last looked at as pictures.
 * After a change that is meant, look at the new pages and run with GOLDEN=write.
 */
describe('the goldens', () => {
  const golden = (file: string, found: string) => {
    const path = `test/golden/${file}`;
    if (process.env.GOLDEN === 'write') {
      mkdirSync('test/golden', { recursive: true });
      writeFileSync(path, found);
    }
    expect(found).toBe(readFileSync(path, 'utf8'));
  };

  it.each(examples)('the guide of %s is as it was looked at', async (name) => {
    const { pages } = await readPdf(await guideOf(name));
    const lines = pages.flatMap((page, index) => [
      `— page ${index + 1}`,
      ...page.runs
        .filter(({ text }) => text.trim() !== '')
        .map(({ text, xPt, yPt }) => `${xPt.toFixed(2)} ${yPt.toFixed(2)} ${text}`),
      `${page.paths.length} paths ${createHash('sha256').update(JSON.stringify(page.paths)).digest('hex')}`,
    ]);
    golden(`${name}.guide.txt`, `${lines.join('\n')}\n`);
  });

  it.each(examples)('the front of %s is as it was looked at', async (name) => {
    golden(`${name}.svg`, (await cardwright(['draw', `examples/${name}.card.json`, '-o', '-'])).out);
  });
});

/** By step number, the size of the workpieces before it, followed through the plan. */
function sizesBefore(plan: PlanRecord): ReadonlyMap<number, readonly [number, number]> {
  const sizes = new Map<string, readonly [number, number]>(plan.sheets.map(({ id, size }) => [id, size]));
  const before = new Map<number, readonly [number, number]>();
  for (const { step, take, axis, set, repeat, gives, rest } of plan.steps) {
    const [width, height] = sizes.get(take[0]!)!;
    before.set(step, [width, height]);
    const left = (axis === 'width' ? width : height) - repeat * set;
    const sized = (along: number): readonly [number, number] =>
      axis === 'width' ? [along, height] : [width, along];
    for (const id of gives.flat()) sizes.set(id, sized(set));
    for (const id of rest) if (id !== null) sizes.set(id, sized(left));
  }
  return before;
}

/** Width and height of every upright rectangle on a page. */
function rectanglesOf(page: ReadPage): readonly (readonly [number, number])[] {
  return page.paths.flatMap((path) => {
    if (path.length < 4 || path.length > 5) return [];
    const [xs, ys] = [path.map(([x]) => x), path.map(([, y]) => y)];
    const size = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)] as const;
    return size[0] > 0 && size[1] > 0 ? [size] : [];
  });
}
