import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';

/** A hand that taps and types, and counts its taps. */
export interface Hand {
  tap(what: Locator): Promise<void>;
  /** Opens a blank by a tap, types over what stands there, and is done with it by the Enter key. */
  fill(blank: Locator, text: string): Promise<void>;
  /** Opens a blank by a tap and taps one of the words it opens onto. */
  choose(blank: Locator, word: string): Promise<void>;
  taps(): number;
}

/** A hand on a page. */
export function handOn(page: Page): Hand {
  let taps = 0;
  const tap = async (what: Locator) => {
    taps += 1;
    await what.click();
  };
  return {
    tap,
    async fill(blank, text) {
      await tap(blank);
      await typeOver(page, text);
    },
    async choose(blank, word) {
      await tap(blank);
      await tap(page.getByRole('radio', { name: word, exact: true }));
    },
    taps: () => taps,
  };
}

/** A hand that has nothing but the keys. */
export interface Keys {
  /** Goes on by the Tab key, or back by Shift with it, until that has the focus. */
  reach(what: Locator, back?: 'back'): Promise<void>;
  /** Reaches it and presses Enter. */
  press(what: Locator, back?: 'back'): Promise<void>;
  /** Opens a blank, types over what stands there, and is done with it. */
  fill(blank: Locator, text: string): Promise<void>;
  /** Opens a blank of a few words, goes to one of them by the arrow keys, and is done with it. */
  choose(blank: Locator, word: string): Promise<void>;
  /** How often the Tab key was pressed. */
  tabs(): number;
}

/** More stops than any screen has. */
const mostStops = 150;

/** The keys of a page. */
export function keysOf(page: Page): Keys {
  let tabs = 0;
  const isReached = (what: Locator) =>
    what.evaluateAll((found) => found.some((element) => element === document.activeElement));
  const reach: Keys['reach'] = async (what, back) => {
    for (let stops = 0; !(await isReached(what)); stops += 1) {
      if (stops === mostStops) throw new Error(`The Tab key leads to ${what}`);
      await page.keyboard.press(back === undefined ? 'Tab' : 'Shift+Tab');
      tabs += 1;
    }
  };
  const press: Keys['press'] = async (what, back) => {
    await reach(what, back);
    await page.keyboard.press('Enter');
  };
  return {
    reach,
    press,
    async fill(blank, text) {
      await press(blank);
      await typeOver(page, text);
    },
    async choose(blank, word) {
      await press(blank);
      const radio = page.getByRole('radio', { name: word, exact: true });
      await radio.waitFor();
      for (let steps = 0; !(await radio.isChecked()); steps += 1) {
        if (steps === mostStops) throw new Error(`The arrow keys lead to “${word}”`);
        await page.keyboard.press('ArrowDown');
      }
      await page.keyboard.press('Enter');
      await radio.waitFor({ state: 'detached' });
    },
    tabs: () => tabs,
  };
}

/** Types over what stands in the blank that is open, and closes it by the Enter key. */
async function typeOver(page: Page, text: string): Promise<void> {
  const input = page.locator('.blank-input');
  await input.waitFor();
  await page.keyboard.type(text);
  expect(await input.inputValue()).toBe(text);
  await page.keyboard.press('Enter');
  await input.waitFor({ state: 'detached' });
}
