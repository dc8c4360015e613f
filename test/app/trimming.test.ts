import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openFonts } from '../../apps/cli/fonts.ts';
import { realWorld } from '../../apps/cli/world.ts';
import { english } from '../../apps/web/messages/english/english.ts';
import { madeGuide } from '../../apps/web/pdf/madeGuide.ts';
import { readLayoutFile, readTrimmerFile } from '../../src/files/index.ts';
import { arrange } from '../../src/layout/index.ts';
import { type KindnessGoal, planSet, stakesOf, untouchedTable } from '../../src/planning/index.ts';
import { testSolver } from '../../src/planning/testing/solver.ts';
import { readPdf } from '../../src/printing/testing/pdfReader.ts';
import type { Trimmer } from '../../src/trimming/index.ts';
import { kindnessSentence, stepWords } from '../../src/words/index.ts';
import { builtApp, hasChromium, isWorkedOut, layOnShelf, openLayout, turnTo } from './appPage.ts';
import { handOn, keysOf } from './hand.ts';

const { trimming } = english;
const { trimmer: words } = trimming;
const quietEvening = readFileSync('test/sets/quiet-evening.card.json', 'utf8');
const fiveMillimetre = readFileSync('test/sets/five-millimetre.trimmer.json', 'utf8');
const kiteDay = readFileSync('examples/kite-day.card.json', 'utf8');

describe.skipIf(!hasChromium)('the trimming screen (needs chromium)', () => {
  const app = builtApp();

  it('goes by the trimmer that is said, from the steps to the guide', async () => {
    const page = await app.page();
    await openLayout(page, await layOnShelf(page, quietEvening), 'trimming');
    expect(await settingsOn(page)).toEqual(await settingsOf(quietEvening));
    await page.getByText(trimming.noTrimmer).waitFor();

    const hand = handOn(page);
    const blank = (label: string) => page.getByRole('button', { name: `${label}:` });
    await hand.tap(page.getByText(words.heading, { exact: true }));
    await hand.tap(page.getByRole('button', { name: words.say }));
    await hand.choose(blank(words.labels.marks), words.marked('5 mm'));
    await hand.fill(blank(words.labels.narrowest), '25 mm');
    await hand.choose(blank(words.labels.edge), words.sides.right);
    await hand.choose(blank(words.labels.hand), words.sides.left);
    await hand.fill(blank(words.labels.cuts), '35');
    await isWorkedOut(page);

    const trimmer = trimmerOf(fiveMillimetre);
    const settings = await settingsOn(page);
    expect(settings).toEqual(await settingsOf(quietEvening, { trimmer }));
    // Ten, fourteen and fourteen cuts, all on whole steps.
    for (const { set } of settings) expect(Number(/^Set (\d+)\smm/u.exec(set)?.[1]) % 5).toBe(0);
    const told = (await page.locator('.cut-for').textContent())?.replaceAll('\u00a0', ' ');
    expect(told).toContain('a mark every 5 mm that measures on the right, worked with the left hand');
    expect(told).toMatch(/38 passes, at most 35 at a sitting: a break after step \d+\./u);

    await turnTo(page, 'guide');
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: english.guide.save }).click();
    const saved = readFileSync(await (await download).path());
    const { layout, plan, stakes } = await planOf(quietEvening, { trimmer });
    const made = await madeGuide(
      {
        layout,
        plan,
        stakes,
        trimmer,
        hand: null,
        post: null,
        sheetFormat: 'a4',
        units: 'mm',
        bodyPt: 10.5,
        madeAt: 0,
      },
      () => openFonts(realWorld()),
    );
    if (made.kind !== 'made') throw new Error(made.message);
    expect(await readPdf(saved)).toEqual(await readPdf(made.pdf));
  });

  it('keeps the trimmer for every layout, until plans shall go by none', async () => {
    const page = await app.page();
    await openLayout(page, await layOnShelf(page, quietEvening), 'trimming');
    await page.getByText(words.heading, { exact: true }).click();
    await takeFile(page, fiveMillimetre);
    await isWorkedOut(page);
    const trimmer = trimmerOf(fiveMillimetre);
    expect(await settingsOn(page)).toEqual(await settingsOf(quietEvening, { trimmer }));

    await openLayout(page, await layOnShelf(page, kiteDay), 'trimming');
    // The same screen of the layout before is there until this one is drawn.
    await page.getByRole('heading', { name: 'Kite day' }).waitFor();
    await isWorkedOut(page);
    await page.getByText('worked with the left hand').waitFor();
    await page.getByText(words.heading, { exact: true }).click();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: words.save }).click();
    expect((await download).suggestedFilename()).toBe('large-print-trimmer.trimmer.json');
    const saved = readFileSync(await (await download).path(), 'utf8');
    expect(JSON.parse(saved)).toEqual(JSON.parse(fiveMillimetre));

    await page.getByRole('button', { name: words.layAside }).click();
    await isWorkedOut(page);
    expect(await settingsOn(page)).toEqual(await settingsOf(kiteDay));
    await page.getByRole('button', { name: words.takeUp }).click();
    await page.getByText('worked with the left hand').waitFor();
  });

  it('says what cannot be, and goes by the trimmer as it was', async () => {
    const page = await app.page();
    await openLayout(page, await layOnShelf(page, quietEvening), 'trimming');
    await page.getByText(words.heading, { exact: true }).click();
    await takeFile(page, fiveMillimetre.replace('"25 mm"', '"25 hands"'));
    await page.getByRole('alert').getByText('25 hands').waitFor();
    await page.getByText(trimming.noTrimmer).waitFor();

    await takeFile(page, fiveMillimetre);
    await isWorkedOut(page);
    await page.getByRole('button', { name: `${words.labels.longest}:` }).click();
    await page.keyboard.type('2 mm');
    await page.locator('.opened').getByRole('alert').getByText('2 mm').waitFor();
    await page.keyboard.press('Escape');
    await page.getByText(words.longest.none).waitFor();
  });

  it('tells what a ruler reads that a test cut found to be off', async () => {
    const page = await app.page();
    await openLayout(page, await layOnShelf(page, quietEvening), 'trimming');
    const hand = handOn(page);
    await hand.tap(page.getByText(words.heading, { exact: true }));
    await hand.tap(page.getByRole('button', { name: words.say }));
    await hand.tap(page.getByRole('button', { name: words.test.say }));
    await hand.fill(page.getByRole('button', { name: `${words.test.measured}:` }), '101 mm');
    await isWorkedOut(page);
    for (const { set } of await settingsOn(page)) {
      const [, length, reads] = /^Set (\d+)\smm, which on your trimmer reads (\d+)\smm\.$/u.exec(set) ?? [];
      expect(Number(length) - Number(reads)).toBe(1);
    }
    await hand.tap(page.getByRole('button', { name: words.test.none }));
    await isWorkedOut(page);
    const sets = (settings: Awaited<ReturnType<typeof settingsOn>>) => settings.map(({ set }) => set);
    expect(sets(await settingsOn(page))).toEqual(sets(await settingsOf(quietEvening)));
  });

  it('looks for the plan that is kind to her', async () => {
    const page = await app.page();
    await openLayout(page, await layOnShelf(page, kiteDay), 'trimming');
    const hand = handOn(page);
    await hand.tap(page.getByText(trimming.kindness.heading));
    const { label, goals, usual } = trimming.kindness;
    const blank = (place: number) => page.getByRole('button', { name: `${label(place)}:` });
    await hand.choose(blank(1), goals.passes);
    await isWorkedOut(page);
    const passes = await settingsOf(kiteDay, { prefer: ['passes'] });
    expect(await settingsOn(page)).toEqual(passes);
    expect(passes).not.toEqual(await settingsOf(kiteDay));
    expect(await page.locator('.cut-for').textContent()).toContain(kindnessSentence(['passes']));

    // By keys alone: the arrow keys go through all that may stand there, and nothing that was said is lost by it.
    const keys = keysOf(page);
    const told = async (prefer: readonly KindnessGoal[]) => {
      await isWorkedOut(page);
      expect(await page.locator('.cut-for').textContent()).toContain(kindnessSentence(prefer));
      expect(await settingsOn(page)).toEqual(await settingsOf(kiteDay, { prefer }));
    };
    await keys.choose(blank(2), goals.leftover);
    await keys.choose(blank(3), goals.alike);
    await told(['passes', 'leftover', 'alike']);
    await keys.reach(blank(1), 'back');
    await keys.choose(blank(1), goals.alike);
    await told(['alike', 'leftover', 'passes']);
    await keys.choose(blank(2), usual);
    expect(await blank(3).count()).toBe(0);
    await told(['alike']);
  });

  it('shows the cutting of each paper in a row of small pictures, which lead to its steps and back by keys alone', async () => {
    const page = await app.page({ widthPx: 320 });
    await openLayout(page, await layOnShelf(page, kiteDay), 'trimming');
    const { plan } = await planOf(kiteDay);
    const papers = page.locator('.paper-cut');
    let rows = 0;
    for (const [index, id] of [...plan.papers.keys()].entries()) {
      const own = plan.steps.filter(({ take }) => take[0]!.startsWith(`${id}-`));
      const leaves = papers.nth(index).locator('.flip-book li');
      const numerals = own.length === 1 ? [] : own.map(({ step }) => String(step));
      expect(await leaves.locator('span[aria-hidden]').allTextContents()).toEqual(numerals);
      // A picture shows its pieces and what remains, each with its outline, and nothing is written on it.
      expect(await leaves.locator('text').count()).toBe(0);
      for (const [at, leaf] of (await leaves.all()).entries()) {
        const { repeat, rest } = own[at]!;
        const outlines = await leaf.locator('svg path[stroke][d*="Z"], svg path[stroke][d*="z"]').count();
        expect(outlines).toBe(repeat + (rest[0] === null ? 0 : 1));
      }
      rows += numerals.length === 0 ? 0 : 1;
    }
    expect(rows).toBeGreaterThan(2);

    const keys = keysOf(page);
    const leafTo = (step: number) =>
      page.getByRole('button', { name: trimming.flipBook.to(step), exact: true });
    const back = page.getByRole('button', { name: trimming.flipBook.back });
    const { step } = plan.steps.at(-1)!;
    for (const to of [plan.steps[1]!.step, step]) {
      await keys.press(leafTo(to));
      const focused = page.locator(':focus');
      expect(await focused.textContent()).toContain(trimming.step(to));
      const box = await focused.boundingBox();
      expect(box!.y).toBeGreaterThanOrEqual(0);
      expect(box!.y + box!.height).toBeLessThanOrEqual(900);
      await page.keyboard.press('Tab');
      expect(await back.evaluate((button) => button === document.activeElement)).toBe(true);
      await page.keyboard.press('Enter');
      expect(await leafTo(to).evaluate((button) => button === document.activeElement)).toBe(true);
      expect(await back.count()).toBe(0);
    }
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.flip-book').first().isVisible()).toBe(false);
  });

  it('shows what the papers are enough for, and takes a small change that gains a card', async () => {
    const page = await app.page();
    const lanternWalk = readFileSync('examples/lantern-walk.card.json', 'utf8');
    await openLayout(page, await layOnShelf(page, lanternWalk), 'trimming');
    await page.getByText(trimming.enough.heading).click();
    const enough = page.locator('.enough-for');
    await enough.getByText('Enough for 13 cards').waitFor();
    const stacks = enough.locator('.finished li:not(.out) span');
    expect(await stacks.allTextContents()).toEqual(['10', '3']);
    const change = enough.locator('li', { hasText: '14 cards instead of 13' });
    await change.first().getByRole('button').click();
    await enough
      .getByText(/^Enough for 14 cards/u)
      .first()
      .waitFor();
    expect(await stacks.allTextContents()).toEqual(['10', '4']);
    await page
      .locator('.undo')
      .getByRole('button', { name: english.general.undoes('').trim() })
      .click();
    await enough.getByText('Enough for 13 cards').waitFor();
  });
});

/** Gives a trimmer file to the page. */
async function takeFile(page: Page, text: string): Promise<void> {
  const file = { name: 'mine.trimmer.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.locator('main input[type=file]').setInputFiles(file);
}

/** The settings that stand on the screen, once the pictures of every paper are drawn: they come after the plan. */
async function settingsOn(page: Page): Promise<readonly { readonly set: string; readonly says: string }[]> {
  await expect.poll(() => page.locator('.cutting-steps:empty').count(), { timeout: 20_000 }).toBe(0);
  return page.locator('.cutting-steps figcaption').evaluateAll((captions) =>
    captions.map((caption) => ({
      set: caption.querySelector('.setting > [lang]')?.textContent ?? '',
      says: [...caption.querySelectorAll('div[lang] p:not(.careful)')].map((p) => p.textContent).join(' '),
    })),
  );
}

interface Cut {
  readonly trimmer?: Trimmer | null;
  readonly prefer?: readonly KindnessGoal[];
}

/** The settings as the library says them. */
async function settingsOf(text: string, cut: Cut = {}): ReturnType<typeof settingsOn> {
  const { layout, plan, stakes } = await planOf(text, cut);
  const all = stepWords(
    plan,
    { layout, trimmer: cut.trimmer ?? null, stakes },
    { units: layout.units, glyphs: 'printed' },
  );
  return [...plan.papers.keys()].flatMap((paper) =>
    all
      .filter((step) => step.paper === paper)
      .map(({ set, mark, take, lay, cut: passes, prove, gives, rest }) => ({
        set,
        says: [mark, take, lay, passes, prove, gives, rest].filter((says) => says !== '').join(' '),
      })),
  );
}

async function planOf(text: string, { trimmer = null, prefer = [] }: Cut = {}) {
  const read = readLayoutFile(text);
  if (!('layout' in read)) throw new Error('the layout is sound');
  const { layout } = read;
  const set = { layout, arrangement: arrange(layout), trimmer, prefer, solver: await testSolver() };
  const plan = planSet(set);
  if (plan.kind !== 'plan') throw new Error('the set can be cut');
  return { layout, plan, stakes: stakesOf(set, { plan, onTable: untouchedTable }) };
}

function trimmerOf(text: string): Trimmer {
  const read = readTrimmerFile(text);
  if (!('trimmer' in read)) throw new Error('the trimmer is sound');
  return read.trimmer;
}
