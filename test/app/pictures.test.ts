import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pixelmatch from 'pixelmatch';
import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { type Screen, screens } from '../../apps/web/route.ts';
import { builtApp, hasChromium, isWorkedOut, layOnShelf, openLayout, turnTo } from './appPage.ts';

/*
 * Every screen as it was last looked at as a picture, at three widths, on light and dark ground. After a change that
 * is meant, look at the new pictures and run with GOLDEN=write.
 */

const folder = 'test/golden/pictures';
const kiteDay = readFileSync('examples/kite-day.card.json', 'utf8');
const lanternWalk = readFileSync('examples/lantern-walk.card.json', 'utf8');

const widths = [1280, 820, 390] as const;
const grounds = ['light', 'dark'] as const;
type View = readonly [(typeof widths)[number], (typeof grounds)[number]];
const everyView = widths.flatMap((widthPx) => grounds.map((ground): View => [widthPx, ground]));
const heightPx = 900;

describe.skipIf(!hasChromium)('the pictures of the screens (need chromium)', () => {
  const app = builtApp();

  /** A page open at a screen of a set that is planned, with another set on the shelf. */
  async function opened(screen: Screen): Promise<Page> {
    const page = await app.page({ heightPx });
    await layOnShelf(page, lanternWalk);
    const id = await layOnShelf(page, kiteDay);
    if (screen === 'shelf') await page.locator('.catalogue .front').nth(1).waitFor();
    else await openLayout(page, id, screen);
    return page;
  }

  /** The page as it stands, from an element downwards, once what it is drawn with is there and what follows its width has followed. */
  async function pictureOf(
    page: Page,
    widthPx: number,
    ground: (typeof grounds)[number],
    from = 'body',
  ): Promise<PNG> {
    await page.emulateMedia({ colorScheme: ground });
    await page.setViewportSize({ width: widthPx, height: heightPx });
    await page.evaluate(async (top) => {
      document.querySelector(top)!.scrollIntoView({ block: 'start' });
      await document.fonts.ready;
      for (let frame = 0; frame < 3; frame += 1) {
        await new Promise((drawn) => requestAnimationFrame(drawn));
      }
      document.querySelector(top)!.scrollIntoView({ block: 'start' });
    }, from);
    return PNG.sync.read(await page.screenshot({ animations: 'disabled' }));
  }

  async function isAsLookedAt(
    page: Page,
    name: string,
    { from, views = everyView }: { readonly from?: string; readonly views?: readonly View[] } = {},
  ): Promise<void> {
    const otherwise: string[] = [];
    for (const [widthPx, ground] of views) {
      const file = `${name}-${widthPx}-${ground}.png`;
      const found = await pictureOf(page, widthPx, ground, from);
      if (process.env.GOLDEN === 'write') {
        mkdirSync(folder, { recursive: true });
        writeFileSync(join(folder, file), PNG.sync.write(found, smallest));
      }
      const apart = farApart(found, PNG.sync.read(readFileSync(join(folder, file))));
      if (apart <= mostApart) continue;
      const seen = join(tmpdir(), file);
      writeFileSync(seen, PNG.sync.write(found));
      otherwise.push(
        `${file}: ${apart} of ${windowSquares ** 2} squares of a window; it is now as in ${seen}`,
      );
    }
    expect(otherwise).toEqual([]);
  }

  it.each(screens)('%s', async (screen) => {
    const page = await opened(screen);
    if (screen === 'card') {
      await page.getByRole('button', { name: 'Kite panel, Kites print' }).click();
      await page.locator('.in-words').waitFor();
    }
    await isAsLookedAt(page, screen);
  });

  it('a part in words, with a blank that is open onto the ruler', async () => {
    const page = await opened('card');
    await page.getByRole('button', { name: 'Kite panel, Kites print' }).click();
    await page.locator('.in-words').getByRole('button', { name: english.card.blanks.width }).click();
    await page.locator('.ruler').waitFor();
    await isAsLookedAt(page, 'ruler', { from: '.in-words' });
  });

  it('what cannot be saved, told under a heavy rule', async () => {
    const page = await opened('card');
    await page.evaluate(() => {
      IDBDatabase.prototype.transaction = () => {
        throw new DOMException('No room', 'QuotaExceededError');
      };
    });
    await page.getByRole('button', { name: english.card.blanks.cards }).click();
    await page.getByRole('textbox', { name: english.card.blanks.cards }).fill('12');
    await page.keyboard.press('Enter');
    await page.getByText(english.general.saving.why.full).waitFor();
    await isWorkedOut(page);
    await isAsLookedAt(page, 'unsaved', { views: [[820, 'dark']] });
  });

  it('long names, and a word that is longer than the line', async () => {
    const page = await app.page({ heightPx });
    const long = JSON.parse(kiteDay) as LayoutWritten;
    long.title = 'Thank-you cards for everyone who helped at the summer fair in the village hall';
    long.papers.kites!.name = 'Donaudampfschifffahrtselektrizitätenhauptbetriebswerkpapier';
    long.parts[1]!.name = 'The panel with the kites that stands a little to the left of the middle';
    await openLayout(page, await layOnShelf(page, JSON.stringify(long)), 'card');
    await page.locator('.tag[data-part=view]').click();
    await page.locator('.in-words').waitFor();
    await isAsLookedAt(page, 'long', { from: '.in-words', views: [[390, 'light']] });
  });

  it('how a paper is cut, in a row and step by step', async () => {
    const page = await opened('trimming');
    await page.locator('.flip-book').first().waitFor();
    await isAsLookedAt(page, 'cutting', {
      from: cutInSteps,
      views: [
        [820, 'light'],
        [390, 'dark'],
      ],
    });
  });

  it('sizes that suit, and the layout planned again', async () => {
    const page = await opened('trimming');
    const { suit } = english.trimming;
    await page.locator('.suit summary').click();
    await page.getByRole('button', { name: suit.let, exact: true }).click();
    await isWorkedOut(page);
    await page.getByRole('button', { name: suit.go, exact: true }).click();
    await page.locator('.suit [role=status] > [lang]').waitFor();
    await isAsLookedAt(page, 'suit', { from: '.suit', views: [[820, 'light']] });
    await turnTo(page, 'card');
    await page.locator('.recast summary').click();
    await page.getByRole('button', { name: english.recast.go }).click();
    await page.locator('.recast-told').waitFor();
    await isAsLookedAt(page, 'recast', {
      from: '.recast',
      views: [
        [820, 'light'],
        [390, 'dark'],
      ],
    });
  });

  it('papers that are short', async () => {
    const page = await app.page({ heightPx });
    const short = JSON.parse(kiteDay) as LayoutWritten;
    short.papers.kites!.sheets[0]!.count = 1;
    await openLayout(page, await layOnShelf(page, JSON.stringify(short)), 'trimming');
    await isAsLookedAt(page, 'short', { views: [[390, 'light']] });
  });

  it('a line at the bench', async () => {
    const page = await app.page({ heightPx });
    // It says by when all is done.
    await page.clock.setFixedTime(new Date(2026, 10, 25, 10, 0));
    await openLayout(page, await layOnShelf(page, kiteDay), 'bench');
    await page.getByRole('button', { name: english.bench.begin }).click();
    const done = page.getByRole('button', { name: english.bench.done, exact: true });
    for (let line = 0; line < 3; line += 1) await done.click();
    await page.locator('.present-line svg').nth(1).waitFor();
    await page.getByText('Done by about').waitFor();
    await isAsLookedAt(page, 'bench-line', {
      views: [
        [820, 'light'],
        [390, 'dark'],
      ],
    });
  });

  it('a part that does not fit, with what mends it', async () => {
    const page = await app.page({ heightPx });
    const wrong = JSON.parse(kiteDay) as LayoutWritten;
    wrong.parts[1]!.size = ['200 mm', 'fill'];
    await openLayout(page, await layOnShelf(page, JSON.stringify(wrong)), 'card');
    await page.locator('.mends').first().waitFor();
    await isAsLookedAt(page, 'mends', { views: [[820, 'light']] });
  });

  it('the card opened by its fold', async () => {
    const page = await opened('card');
    await page.getByRole('button', { name: english.card.table.open }).click();
    await isAsLookedAt(page, 'inside', { views: [[820, 'dark']] });
  });

  it('are told from ones in which something is lost, or has moved', async () => {
    const page = await opened('trimming');
    await page.locator('.flip-book').first().waitFor();
    const golden = PNG.sync.read(readFileSync(join(folder, 'cutting-820-light.png')));
    const apart = async () => farApart(await pictureOf(page, 820, 'light', cutInSteps), golden);
    expect(await apart()).toBeLessThanOrEqual(mostApart);
    expect(farApart(smoothed(golden), golden), 'smoothed otherwise').toBeLessThanOrEqual(mostApart);
    for (const lost of ['h3', '.careful', '.flip-book li:nth-child(2) svg', '.cutting-steps svg'].map(
      (part) => `${cutInSteps} ${part}`,
    )) {
      const element = page.locator(lost).first();
      await element.evaluate((one) => {
        (one as HTMLElement).style.visibility = 'hidden';
      });
      expect(await apart(), `${lost} is lost`).toBeGreaterThan(mostApart);
      await element.evaluate((one) => one.removeAttribute('style'));
    }
    await page
      .locator(`${cutInSteps} h3`)
      .first()
      .evaluate((heading: HTMLElement) => {
        heading.style.paddingTop = '5px';
      });
    expect(await apart(), 'all but the heading is lower').toBeGreaterThan(mostApart);
  });
});

/** A paper that is cut at more than one setting, and so has a row. */
const cutInSteps = '.paper-cut:has(.flip-book)';

/** What of a layout file is written over here. */
interface LayoutWritten {
  title: string;
  readonly papers: Record<string, { name: string; readonly sheets: { count: number | null }[] }>;
  readonly parts: { name: string; size?: readonly string[] }[];
}

/** Pictures with much that is flat and hatched are smallest so. */
const smallest = { colorType: 2, filterType: 0, deflateLevel: 9, deflateStrategy: 0 } as const;

/** How many pixels of a picture are taken as one square, along either side. */
const square = 3;
/** Squares along a side of the window in which pictures are compared: 72 pixels of the page. */
const windowSquares = 24;
/** So many squares of a window may differ. */
const mostApart = 10;

/**
 * The most squares that differ in any window of two pictures; all of them where they are not of one size.
 *
 * Squares are averages of pixels, in which the edges of letters come out alike however a version of the browser
 * smoothes them, and lines that were moved by a few pixels do not.
 */
function farApart(one: PNG, other: PNG): number {
  if (one.width !== other.width || one.height !== other.height) return windowSquares ** 2;
  const [a, b] = [averaged(one), averaged(other)];
  return pixelmatch(a.data, b.data, null, a.width, a.height, { threshold: 0.1, windowSize: windowSquares });
}

function averaged({ width, height, data }: PNG): { width: number; height: number; data: Uint8Array } {
  const across = Math.ceil(width / square);
  const down = Math.ceil(height / square);
  const out = new Uint8Array(across * down * 4).fill(255);
  for (let row = 0; row < down; row += 1) {
    for (let column = 0; column < across; column += 1) {
      for (let channel = 0; channel < 3; channel += 1) {
        let sum = 0;
        let count = 0;
        for (let y = row * square; y < Math.min(height, (row + 1) * square); y += 1) {
          for (let x = column * square; x < Math.min(width, (column + 1) * square); x += 1) {
            sum += data[(y * width + x) * 4 + channel]!;
            count += 1;
          }
        }
        out[(row * across + column) * 4 + channel] = sum / count;
      }
    }
  }
  return { width: across, height: down, data: out };
}

/** A picture as another version of a browser might smooth it: a quarter of every pixel goes to the one at its right. */
function smoothed({ width, height, data }: PNG): PNG {
  const other = new PNG({ width, height });
  for (let at = 0; at < data.length; at += 1) {
    const left = at % (width * 4) < 4 ? at : at - 4;
    other.data[at] = 0.75 * data[at]! + 0.25 * data[left]!;
  }
  return other;
}
