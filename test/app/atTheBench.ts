import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { leftSaid, lengthOf, plain, type SaidLine, type Sizes } from './imaginaryTable.ts';

/** A line at the bench as it stands on the page. */
export interface ShownLine extends SaidLine {
  /** Of a line of cutting; `null` for what is done by other means. */
  readonly cutting: {
    /** Where the red line is on the ruler, by the numbers beside it. */
    readonly ruler: number;
    /** What the ruler is called for who cannot see it. */
    readonly rulerSays: string;
    /** Whether the ruler's numbers grow to the right. */
    readonly growsRight: boolean;
    /** What stands in the picture. */
    readonly figures: readonly string[];
    /** The smallest type of the line, in words, on the ruler and in the picture, as it is on the screen. */
    readonly leastPx: number;
    /** The side of the work at which the heavy rule stands. */
    readonly edge: 'left' | 'right';
    /** Whether the paper wears a hatch. */
    readonly isHatched: boolean;
  } | null;
}

/** The line to do now; `null` when all is done. */
export async function presentLine(page: Page): Promise<ShownLine | null> {
  await page.waitForFunction(
    () =>
      document.querySelector('.present-line') === null ||
      document.querySelector('.present-line .ruler') === null ||
      document.querySelector('.present-line figure svg') !== null,
  );
  return page.evaluate(() => {
    const line = document.querySelector('.present-line');
    if (line === null) return null;
    const texts = (of: Element, what: string) =>
      [...of.querySelectorAll(what)].map(({ textContent }) => textContent);
    const said = {
      heading: texts(line, 'h3').join(),
      // What is at stake comes a moment later.
      sentences: [...line.querySelectorAll('p')]
        .map(({ textContent }) => textContent)
        .filter((sentence) => !sentence.startsWith('Point of no return')),
    };
    const ruler = line.querySelector('.ruler');
    const picture = line.querySelector('figure svg');
    if (ruler === null || picture === null) return { ...said, cutting: null };

    const numbers = [...ruler.querySelectorAll('text')].map((text) => ({
      x: text.x.baseVal[0]!.value,
      at: Number(text.textContent),
    }));
    const [first, last] = [numbers[0]!, numbers.at(-1)!];
    const here = ruler.querySelector<SVGPathElement>('.ruler-here')!.getBBox().x;
    const perX = (last.at - first.at) / (last.x - first.x);

    const boxes = (what: string) =>
      [...picture.querySelectorAll<SVGGraphicsElement>(what)].map((mark) => mark.getBBox());
    const paper = boxes('path[fill]:not([fill=none])');
    const middle =
      (Math.min(...paper.map(({ x }) => x)) + Math.max(...paper.map(({ x, width }) => x + width))) / 2;
    const lines = [...picture.querySelectorAll('line')];
    const weight = (one: SVGLineElement) => Number(one.getAttribute('stroke-width'));
    const heaviest = lines.reduce((heavy, one) => (weight(one) > weight(heavy) ? one : heavy));
    return {
      ...said,
      cutting: {
        ruler: first.at + (here - first.x) * perX,
        rulerSays: ruler.getAttribute('aria-label') ?? '',
        growsRight: perX > 0,
        figures: texts(picture, 'text'),
        leastPx: Math.min(
          ...[...line.querySelectorAll('h3 span, p, text')].map((text) => {
            const drawn = text instanceof SVGTextElement ? text.getScreenCTM()! : { a: 1, b: 0 };
            return Number.parseFloat(getComputedStyle(text).fontSize) * Math.hypot(drawn.a, drawn.b);
          }),
        ),
        edge: heaviest.x1.baseVal.value < middle ? ('left' as const) : ('right' as const),
        // Drawn as one path of many short lines.
        isHatched: [...picture.querySelectorAll('path')].some(
          (path) => (path.getAttribute('d')?.match(/M/gu) ?? []).length > 10,
        ),
      },
    };
  });
}

/** All that a line says. */
export function inWords({ heading, sentences }: SaidLine): string {
  return plain([heading, ...sentences].join(' '));
}

/** Expects the setting of a line to be the same in words, on the ruler and in the picture; the setting. */
export function expectOneSetting(line: ShownLine): number {
  const { cutting } = line;
  if (cutting === null) throw new Error(`“${line.heading}” is no line of cutting`);
  const said = /Set ([^.]*)\.$/u.exec(plain(line.heading))![1]!;
  const set = lengthOf(said);
  expect(cutting.ruler, line.heading).toBeCloseTo(set, 3);
  expect(plain(cutting.rulerSays)).toContain(said);
  expect(cutting.figures.map(plain)).toContain(said);
  const passes = /\d+ pass(?:es)?/u.exec(line.sentences.map(plain).join(' '))![0];
  expect(cutting.figures.map(plain).join()).toContain(passes);
  return set;
}

/** Says that the present line is done: by tap, or by a key as who has the button under the finger. */
export async function tellDone(page: Page, how: 'tap' | 'Enter' | 'Space'): Promise<void> {
  const done = page.getByRole('button', { name: english.bench.done, exact: true });
  if (how === 'tap') return done.click();
  await done.focus();
  await page.keyboard.press(how);
}

/** Begins the set, and taps Done at line after line until all is done; how many that were. */
export async function goThrough(page: Page): Promise<number> {
  await page.getByRole('button', { name: english.bench.begin, exact: true }).click();
  const stands = page.locator('.docket-strip > .stands');
  for (let lines = 0; ; lines += 1) {
    if ((await stands.textContent()) === english.bench.allDone) return lines;
    await tellDone(page, 'tap');
  }
}

/** The lines of cutting as Trimming says them, but for what only it tells: what is at stake. */
export async function linesOnTrimming(page: Page): Promise<readonly SaidLine[]> {
  // Each list is drawn as soon as its width is known.
  await page.waitForFunction(() => {
    const lists = [...document.querySelectorAll('.cutting-steps')];
    return lists.length > 0 && lists.every((list) => list.querySelector('figcaption') !== null);
  });
  return page.locator('.cutting-steps figcaption').evaluateAll((captions) =>
    captions.map((caption) => {
      const [setting, ...others] = [...caption.querySelectorAll('p')];
      return {
        heading: [...setting!.querySelectorAll('.unseen, [lang]')]
          .map(({ textContent }) => textContent)
          .join(' '),
        sentences: others
          .map(({ textContent }) => textContent)
          .filter((sentence) => !sentence.startsWith('Point of no return')),
      };
    }),
  );
}

/** What Trimming lists as left over, by paper: the size of each piece, as often as it is there. */
export async function leftOnTrimming(page: Page): Promise<Readonly<Record<string, readonly Sizes[]>>> {
  const papers = await page.locator('.paper-cut').evaluateAll((sections) =>
    sections.map((section) => ({
      paper: section.querySelector('h3')!.textContent,
      says: [...section.querySelectorAll('h4 + p')].map(({ textContent }) => textContent).join(' '),
    })),
  );
  return Object.fromEntries(
    papers.flatMap(({ paper, says }) => (says === '' ? [] : [[paper, leftSaid(plain(says))]])),
  );
}
