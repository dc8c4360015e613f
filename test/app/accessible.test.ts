import { readFileSync } from 'node:fs';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  builtApp,
  chromiumPath,
  eachKindOfBlank,
  eachScreen,
  hasChromium,
  type PageOptions,
} from './appPage.ts';

const example = readFileSync('examples/kite-day.card.json', 'utf8');

/**
 * Widths tell on the order of things and grounds on colours only, so the four combinations are held by two. 320 px is
 * what WCAG 2.2 asks of reflow (1.4.10).
 */
const readers = [
  { widthPx: 1280, ground: 'light' },
  { widthPx: 320, ground: 'dark' },
] as const satisfies readonly PageOptions[];

/** What axe finds by these depends on width and ground; by its others on what is said alone, which is the same for all. */
const rulesOfSight = ['color-contrast', 'color-contrast-enhanced', 'target-size'];

describe.skipIf(!hasChromium)(`every screen (needs ${chromiumPath})`, () => {
  const app = builtApp();

  it('has nothing that axe finds, with a blank of each kind open too, and fits with text twice as large (WCAG 2.2, 1.4.4)', async () => {
    const page = await app.page();
    const found: string[] = [];
    const kinds = new Set<string>();
    // Each screen is gone to once and looked at by every reader there.
    await eachScreen(page, example, async (name) => {
      for (const reader of readers) {
        const { widthPx, ground } = reader;
        await turnedTo(page, widthPx, ground);
        const rules = reader === readers[0] ? null : rulesOfSight;
        found.push(...(await foundOn(page, `${name}, ${widthPx} px wide, ${ground}`, { rules })));
      }
      // The narrow page, which it is now, is the harder one for what opens below a sentence; only that is looked at.
      await eachKindOfBlank(page, kinds, async (label) => {
        found.push(...(await foundOn(page, `${name}, ${label}`, { within: '.opened' })));
      });
      await turnedTo(page, 640, 'light');
      await typeTimes(page, 2);
      found.push(...(await wider(page)).map((one) => `${name}, text twice as large: ${one}`));
      await typeTimes(page, 1);
      await turnedTo(page, 1280, 'light');
    });
    expect(found).toEqual([]);
    expect(kinds.size).toBeGreaterThan(4);
  }, 300_000);
});

/** Gives a page that width and ground, and waits until what follows its width has followed. */
async function turnedTo(page: Page, widthPx: number, ground: 'light' | 'dark'): Promise<void> {
  await page.emulateMedia({ colorScheme: ground });
  await page.setViewportSize({ width: widthPx, height: 900 });
  await page.evaluate(async () => {
    for (let frame = 0; frame < 3; frame += 1) await new Promise((drawn) => requestAnimationFrame(drawn));
  });
}

/** Sets all type of a page so many times as large as it is. */
function typeTimes(page: Page, times: number): Promise<void> {
  return page.evaluate((times) => {
    const { style } = document.documentElement;
    style.fontSize = '';
    const usual = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
    if (times !== 1) style.fontSize = `${times * usual}px`;
  }, times);
}

/** All that is found against a page, each with the name of what is open there. */
async function foundOn(
  page: Page,
  name: string,
  { within = 'body', rules = null }: { readonly within?: string; readonly rules?: string[] | null } = {},
): Promise<readonly string[]> {
  const all = [...(await axe(page, within, rules)), ...(await wider(page)), ...(await narrowTargets(page))];
  return all.map((one) => `${name}: ${one}`);
}

/** What axe finds by these rules, or by all, each with where it is. */
async function axe(page: Page, within: string, rules: string[] | null): Promise<readonly string[]> {
  const { violations, passes } = await new AxeBuilder({ page })
    .include(within)
    // All in the page itself: it has no frames of other hosts to be asked.
    .setLegacyMode()
    .options(
      rules === null
        ? { rules: { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true } } }
        : { runOnly: { type: 'rule', values: rules } },
    )
    .analyze();
  // What finds nothing may have looked at nothing.
  expect(passes.map(({ id }) => id)).toEqual(
    expect.arrayContaining(['color-contrast-enhanced', 'target-size']),
  );
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${help}: ${html}: ${failureSummary ?? ''}`),
  );
}

/** What makes the page wider than its window, so that it would have to be pushed sideways to be read. */
function wider(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth <= clientWidth) return [];
    const right = (element: Element) => element.getBoundingClientRect().right + window.scrollX;
    const sticksOut = [...document.body.querySelectorAll('*')].filter(
      (element) => right(element) > clientWidth + 0.5,
    );
    return sticksOut.map((element) => `${element.outerHTML.slice(0, 120)} ends at ${right(element)} px`);
  });
}

/**
 * What can be tapped and is smaller than 44 by 44 px, the figure of WCAG 2.2, 2.5.5. As there, links within prose are
 * let off; a blank, which is a word in a sentence, only from the width, and 24 px (2.5.8) is the least for it.
 */
function narrowTargets(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const boxOf = (element: Element) => {
      // A box to tick or a round one is tapped by its words as well.
      const label = element instanceof HTMLInputElement ? element.closest('label') : null;
      return (label ?? element).getBoundingClientRect();
    };
    const targets = [
      ...document.querySelectorAll('a[href], button, input, select, textarea, summary, [role=button]'),
    ];
    return targets.flatMap((target) => {
      if (!target.checkVisibility({ visibilityProperty: true })) return [];
      // Nobody taps it: a button asks it for a file.
      if (target.matches('[aria-hidden=true]')) return [];
      // Waits beside the page until it has the focus.
      if (target.matches('.skip')) return [];
      if (target.matches('p a[href], li p a[href]')) return [];
      const { width, height } = boxOf(target);
      const least = target.matches('.sentence *') ? 24 : 44;
      return width >= least && height >= 44
        ? []
        : [`${target.outerHTML.slice(0, 160)} is ${width} by ${height} px`];
    });
  });
}
