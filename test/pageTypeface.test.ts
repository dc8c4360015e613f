import { existsSync, readFileSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openFonts } from '../apps/cli/fonts.ts';
import { realWorld } from '../apps/cli/world.ts';
import { typefaceOf } from '../src/printing/index.ts';

const texts = [
  'A',
  '5 1\u20442 in',
  '4 15\u204416 \u00d7 11 in',
  'Torn panel, Lanterns print',
  'WAVE Tö Yf AV',
  '133.35 mm',
  'bought',
  '3 passes on 2 sheets',
];

const chromiumPath = '/usr/bin/chromium';

let browser: Browser | undefined;
beforeAll(async () => {
  if (!existsSync(chromiumPath)) return;
  browser = await chromium.launch({
    executablePath: chromiumPath,
    args: ['--no-sandbox'],
  });
});
afterAll(() => browser?.close());

it.skipIf(!existsSync(chromiumPath))(
  `type is as wide on the page as in print (needs ${chromiumPath})`,
  async () => {
    const built = await build({
      configFile: false,
      logLevel: 'silent',
      define: { 'process.env.NODE_ENV': '"production"' },
      build: {
        write: false,
        lib: { entry: 'apps/web/pictures/typeface.ts', formats: ['es'], fileName: 'typeface' },
      },
    });
    const [bundle] = Array.isArray(built) ? built : [];
    const code = bundle?.output[0].code ?? '';
    const face = (weight: number, file: string) =>
      `@font-face { font-family: "Source Sans 3"; font-weight: ${weight}; src: url(data:font/woff2;base64,${readFileSync(`assets/fonts/${file}.woff2`).toString('base64')}); }`;
    const page = await browser!.newPage();
    await page.setContent(
      `<style>${face(400, 'SourceSans3_400Regular')}${face(600, 'SourceSans3_600SemiBold')}</style>`,
    );
    await page.addScriptTag({
      type: 'module',
      content: `${code.replace(/export\s*\{[^}]*\};?\s*$/u, '')};
      Promise.all([400, 600].map((weight) => document.fonts.load(weight + ' 17px "Source Sans 3"')))
        .then(() => { globalThis.measured = ${nameOf(code, 'pageTypeface')}(); });`,
    });
    await page.waitForFunction('globalThis.measured !== undefined');
    const printed = typefaceOf(await openFonts(realWorld()));
    for (const weight of ['regular', 'semibold'] as const) {
      for (const text of texts) {
        const width = Number(
          await page.evaluate(`globalThis.measured.widthPt(${JSON.stringify(text)}, 10, '${weight}')`),
        );
        const expected = printed.widthPt(text, 10, weight);
        expect(Math.abs(width - expected) / expected, `${text} ${weight}`).toBeLessThan(0.01);
      }
    }
    expect(printed.capHeight).toBeCloseTo(0.66, 2);
  },
);

/** What the bundle calls the export inside. */
function nameOf(code: string, exported: string): string {
  return new RegExp(`(\\w+) as ${exported}\\b`, 'u').exec(code)?.[1] ?? exported;
}
