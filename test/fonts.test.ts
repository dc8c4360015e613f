import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { compress } from 'wawoff2';

// WOFF2 is a lossless packing of the whole font (W3C, WOFF File Format 2.0), so that the page is set in the very type
// of the guide; `GOLDEN=write` packs it anew.
it.each(['400Regular', '600SemiBold'])('the page’s %s is the guide’s, packed', async (weight) => {
  const font = `assets/fonts/SourceSans3_${weight}`;
  const packed = Buffer.from(await compress(readFileSync(`${font}.ttf`)));
  if (process.env.GOLDEN === 'write') writeFileSync(`${font}.woff2`, packed);
  expect(readFileSync(`${font}.woff2`).equals(packed)).toBe(true);
});
