import type { Page } from 'playwright-core';
import { allOnShelf } from './appPage.ts';

/* The blanks of the sentences on a screen, as a person fills them. */

/** The blank of that label, closed. */
export function blank(page: Page, label: string) {
  return page.locator('main button.blank').filter({ hasText: `${label}: ` });
}

/** Opens a blank onto its choices and takes one. */
export async function choose(page: Page, label: string, says: string): Promise<void> {
  await blank(page, label).click();
  await page.locator('.opened').getByRole('radio', { name: says, exact: true }).click();
  await page.locator('.opened').waitFor({ state: 'detached' });
}

/** Opens a blank and types into it, in place of what stands there. */
export async function type(page: Page, label: string, text: string): Promise<void> {
  await blank(page, label).click();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
  await page.locator('.opened').waitFor({ state: 'detached' });
}

/** The text of the only layout that is on the shelf. */
export async function kept(page: Page): Promise<string> {
  const [only] = await allOnShelf(page);
  return only!.text;
}
