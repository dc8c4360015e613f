import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { builtApp, chromiumPath, eachScreen, hasChromium } from './appPage.ts';

const look = 'apps/web/look';
const page = readFileSync(join(look, 'page.css'), 'utf8');

/** The colours of a ground, by their names. */
type Theme = Readonly<Record<string, string>>;

/** The custom properties of the rule that opens with `selector`. */
function themeOf(selector: string): Theme {
  const rule = page.slice(page.indexOf(selector));
  const body = rule.slice(rule.indexOf('{') + 1, rule.indexOf('}'));
  return Object.fromEntries(
    [...body.matchAll(/--([a-z-]+):\s*(#[0-9a-f]{3,6});/gu)].map(([, name, colour]) => [name, colour]),
  ) as Theme;
}

const themes = {
  light: themeOf(':root {'),
  dark: themeOf(':root[data-ground="dark"] {'),
  'dark by the device': themeOf(':root:not([data-ground]) {'),
  printed: themeOf('@media print {'),
};

/** Relative luminance of an sRGB colour, from 0 for black to 1 for white: WCAG 2.2, its definition. */
function luminance(colour: string): number {
  const digits =
    colour.length === 4 ? [...colour.slice(1)].map((digit) => digit + digit).join('') : colour.slice(1);
  const [red, green, blue] = [0, 2, 4].map((at) => {
    const value = Number.parseInt(digits.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast ratio of two colours, from 1 to 21: WCAG 2.2, its definition. */
function contrast(one: string, other: string): number {
  const [darker, lighter] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (lighter + 0.05) / (darker + 0.05);
}

/* A second opinion on the text, from what a browser shows: axe, in `accessible.test.ts`. */

describe('colours of the page', () => {
  it('are measured as WCAG does: black on white 21, and its own grey that just passes', () => {
    expect(contrast('#000', '#ffffff')).toBeCloseTo(21, 10);
    // The lightest grey that may carry text on white, well known among those who test pages; no source at hand.
    expect(contrast('#767676', '#fff')).toBeGreaterThanOrEqual(4.5);
    expect(contrast('#777777', '#fff')).toBeLessThan(4.5);
  });

  it.each(Object.entries(themes))(
    'are told apart by everyone as text: %s (WCAG 2.2, 1.4.6: 7)',
    (_, theme) => {
      for (const name of ['ink', 'soft-ink', 'rubric']) {
        expect(contrast(theme[name]!, theme.ground!), name).toBeGreaterThanOrEqual(7);
      }
    },
  );

  it('are the same dark ones whether she or her device chose them', () => {
    expect(themes['dark by the device']).toEqual(themes.dark);
    expect(Object.keys(themes.dark).sort()).toEqual(Object.keys(themes.light).sort());
  });

  it('stand in one place: no other file of the look names one', () => {
    for (const file of readdirSync(look).filter((name) => name.endsWith('.css'))) {
      const text = readFileSync(join(look, file), 'utf8').replace(/\/\*[\s\S]*?\*\//gu, '');
      const outside = file === 'page.css' ? text.replace(/--[a-z-]+:[^;]*;/gu, '') : text;
      expect(outside.match(/#[0-9a-f]{3,8}\b|\b(?:rgba?|hsla?|oklch|lab)\(/giu), file).toBeNull();
    }
  });
});

describe.skipIf(!hasChromium)(`colours as a browser shows them (needs ${chromiumPath})`, () => {
  const app = builtApp();
  const example = readFileSync('examples/kite-day.card.json', 'utf8');

  it('show the edges of blanks and the ruler on either ground (WCAG 2.2, 1.4.11: 3)', async () => {
    const opened = await app.page();
    let edges = 0;
    let rulers = 0;
    await eachScreen(opened, example, async (name) => {
      const blanks = opened.locator('main button.blank');
      if ((await blanks.count()) === 0) return;
      // The first that opens onto a ruler, if there is one.
      for (let index = 0; index < (await blanks.count()); index += 1) {
        await blanks.nth(index).evaluate((blank: HTMLElement) => blank.click());
        await opened.locator('.opened').waitFor();
        if ((await opened.locator('.opened .ruler').count()) > 0) break;
        await opened.keyboard.press('Escape');
      }
      for (const ground of ['light', 'dark'] as const) {
        await opened.emulateMedia({ colorScheme: ground });
        const shown = await opened.evaluate(() => ({
          ground: getComputedStyle(document.body).backgroundColor,
          blanks: [...document.querySelectorAll('.blank, .blank-input')].map(
            (blank) => getComputedStyle(blank).borderBottomColor,
          ),
          ruler: [...document.querySelectorAll('.ruler path')].map((path) => getComputedStyle(path).stroke),
        }));
        expect(hexOf(shown.ground), `${name}, ${ground}`).toBe(themes[ground].ground);
        for (const edge of [...shown.blanks, ...shown.ruler])
          expect(
            contrast(hexOf(edge), hexOf(shown.ground)),
            `${name}, ${ground}: ${edge}`,
          ).toBeGreaterThanOrEqual(3);
        edges += shown.blanks.length;
        rulers += shown.ruler.length;
      }
      await opened.keyboard.press('Escape');
    });
    expect(edges).toBeGreaterThan(0);
    expect(rulers).toBeGreaterThan(0);
  }, 120_000);
});

/** `rgb(29, 26, 22)` as `#1d1a16`. */
function hexOf(colour: string): string {
  const channels = /^rgb\((\d+), (\d+), (\d+)\)$/u.exec(colour)?.slice(1);
  if (channels === undefined) throw new Error(`An opaque colour was expected, not ${colour}`);
  return `#${channels.map((channel) => Number(channel).toString(16).padStart(2, '0')).join('')}`;
}
