import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { readPdf } from '../src/printing/testing/pdfReader.ts';
import { cardwright, scratchFolder } from './commandLine.ts';

const folder = scratchFolder();
afterAll(folder.remove);

/** The first hour of a newcomer: a new layout goes through every command with nothing to put right. */
describe.each([
  // Bases as wide as their sheet are worth a caution, and so is twice 5 1/2 in out of 11; twice 148 mm leaves 1 of A4.
  {
    units: 'in',
    cautions: ['papers.cream.sheets[0] nothingToSpare', 'papers.cream.sheets[0] nothingToSpare'],
    page: /width="4\.25in" height="5\.5in"/,
    sheet: [612, 792],
  },
  {
    units: 'mm',
    // Three mats of 99 mm are the 297 mm of a sheet, which spares passes.
    cautions: ['papers.russet.sheets[0] nothingToSpare', 'papers.cream.sheets[0] nothingToSpare'],
    page: /width="105mm" height="148mm"/,
    sheet: [595.28, 841.89],
  },
])('a new layout in $units', ({ units, cautions, page, sheet }) => {
  const layout = folder.path(`first-${units}.card.json`);

  it('is written, and is sound', async () => {
    expect((await cardwright(['new', layout, '--units', units])).status).toBe(0);
    const { out, status } = await cardwright(['check', layout, '--json']);
    expect(status).toBe(0);
    const { problems } = JSON.parse(out) as { problems: { code: string; where: string }[] };
    expect(problems.map(({ code, where }) => `${where} ${code}`)).toEqual(cautions);
  });

  it('is planned, with every sheet count proved', async () => {
    const { out, status } = await cardwright(['plan', layout, '--json']);
    expect(status).toBe(0);
    const { papers, pieces } = JSON.parse(out) as {
      papers: Record<string, { proved: boolean }>;
      pieces: { need: number }[];
    };
    expect(Object.values(papers).map(({ proved }) => proved)).toEqual([true, true, true]);
    expect(pieces.map(({ need }) => need)).toEqual([10, 10, 10, 10]);
  });

  it('has its guide printed, on the paper of its country', async () => {
    const guide = folder.path(`first-${units}.pdf`);
    expect((await cardwright(['guide', layout, '-o', guide])).status).toBe(0);
    const { pages } = await readPdf(readFileSync(guide));
    expect(pages.length).toBeGreaterThan(1);
    // ANSI letter and ISO 216 A4, in points.
    for (const { widthPt, heightPt } of pages) {
      expect(widthPt).toBeCloseTo(sheet[0] ?? 0, 2);
      expect(heightPt).toBeCloseTo(sheet[1] ?? 0, 2);
    }
  });

  it('is drawn at its true size', async () => {
    const front = folder.path(`first-${units}.svg`);
    expect((await cardwright(['draw', layout, '-o', front])).status).toBe(0);
    expect(readFileSync(front, 'utf8')).toMatch(page);
  });
});
