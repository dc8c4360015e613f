import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openFonts } from '../../apps/cli/fonts.ts';
import { realWorld } from '../../apps/cli/world.ts';
import { english } from '../../apps/web/messages/english/english.ts';
import { madeGuide } from '../../apps/web/pdf/madeGuide.ts';
import { addressOf } from '../../apps/web/route.ts';
import { readLayoutFile } from '../../src/files/index.ts';
import { arrange } from '../../src/layout/index.ts';
import { planSet, stakesOf, untouchedTable } from '../../src/planning/index.ts';
import { testSolver } from '../../src/planning/testing/solver.ts';
import { readPdf } from '../../src/printing/testing/pdfReader.ts';
import { builtApp, hasChromium, layOnShelf, openLayout, turnTo } from './appPage.ts';

const text = readFileSync('examples/kite-day.card.json', 'utf8');

describe.skipIf(!hasChromium)('the guide in a browser', () => {
  const app = builtApp();

  it('is saved as the file that the library makes', async () => {
    const page = await app.page();
    const id = await layOnShelf(page, text);
    await openLayout(page, id, 'guide');
    await page.getByRole('button', { name: english.guide.sheets.a4 }).click();
    await page.getByRole('radio', { name: english.guide.sheets.letter }).click();
    await page.getByRole('button', { name: english.guide.usualHand.none }).click();
    await page.getByRole('radio', { name: english.guide.hands.left }).click();
    await page.getByText(english.guide.edge.right).waitFor();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: english.guide.save }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('kite-day.guide.pdf');
    const saved = readFileSync(await download.path());

    const read = readLayoutFile(text);
    if (!('layout' in read)) throw new Error('the example is sound');
    const { layout } = read;
    const set = { layout, arrangement: arrange(layout), trimmer: null, solver: await testSolver() };
    const plan = planSet(set);
    if (plan.kind !== 'plan') throw new Error('the example can be cut');
    const stakes = stakesOf(set, { plan, onTable: untouchedTable });
    const made = await madeGuide(
      {
        layout,
        plan,
        stakes,
        trimmer: null,
        hand: 'left',
        post: null,
        sheetFormat: 'letter',
        units: 'mm',
        bodyPt: 10.5,
        madeAt: 0,
      },
      () => openFonts(realWorld()),
    );
    if (made.kind !== 'made') throw new Error(made.message);
    expect(await page.getByRole('status').allInnerTexts()).toContain(
      english.guide.saved('kite-day.guide.pdf', made.pages),
    );
    const [one, other] = [await readPdf(saved), await readPdf(made.pdf)];
    expect(one).toEqual(other);

    // What is leafed through on the page says, page for page, what another reader finds in the file.
    const on = page.getByRole('button', { name: english.guide.pages.on });
    for (const [index, { runs }] of one.pages.entries()) {
      const shown = page.getByRole('group', { name: english.guide.pages.at(index + 1, one.pages.length) });
      await shown.waitFor();
      const words = (await shown.locator('text').allTextContents()).join('');
      expect(words.replaceAll(/\s/gu, '')).toBe(runs.map((run) => run.text.replaceAll(/\s/gu, '')).join(''));
      if (index + 1 < one.pages.length) await on.click();
    }
    expect(await on.isDisabled()).toBe(true);
  });

  it('keeps how guides are printed, for every layout and after the page was left', async () => {
    const page = await app.page();
    const id = await layOnShelf(page, text);
    await openLayout(page, id, 'guide');
    const { sheets, unitWords, types, usualHand, hands } = english.guide;
    const choose = async (from: string, to: string) => {
      await page.getByRole('button', { name: from }).click();
      await page.getByRole('radio', { name: to }).click();
    };
    await choose(sheets.a4, sheets.letter);
    await choose(unitWords.mm, unitWords.in);
    await choose(types.usual, types.larger);
    await choose(usualHand.none, hands.right);
    const isKept = async () => {
      for (const says of [sheets.letter, unitWords.in, types.larger, hands.right])
        await page.getByRole('button', { name: says }).waitFor();
    };
    await turnTo(page, 'card');
    await turnTo(page, 'guide');
    await isKept();
    const other = await layOnShelf(page, text);
    await page.goto(`${app.address()}${addressOf({ screen: 'guide', id: other })}`);
    await isKept();
  });

  it('says what is short, and where that is told', async () => {
    const page = await app.page();
    const short = JSON.parse(text) as { papers: { kites: { sheets: { count: number }[] } } };
    short.papers.kites.sheets[0]!.count = 1;
    const id = await layOnShelf(page, JSON.stringify(short));
    await openLayout(page, id, 'guide');
    expect(await page.getByRole('button', { name: english.guide.save }).count()).toBe(0);
    await page.locator('.notice').getByRole('link').click();
    await page.getByRole('heading', { name: english.trimming.short }).waitFor();
    expect(await page.locator('.notice').textContent()).toContain('Kites print');
  });
});
