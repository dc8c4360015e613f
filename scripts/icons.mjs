// Makes the icons of the page (`apps/web/public/icons`) from their drawing, which holds rectangles only, so that every
// edge falls on a whole pixel and nothing has to be smoothed.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { PNG } from 'pngjs';
import { root } from './setUp.mjs';

/**
 * Each icon: its size in pixels, and how much of that its drawing takes about the middle. A device that cuts icons to
 * a shape of its own shows at least a circle of 4/5 of the width (Web Application Manifest, W3C: the safe zone).
 */
const icons = {
  '192.png': { sizePx: 192, share: 1 },
  '512.png': { sizePx: 512, share: 1 },
  '512-any-shape.png': { sizePx: 512, share: 3 / 4 },
};

/** Every icon by its file name, as the bytes of a PNG. */
export function drawnIcons() {
  const drawing = readFileSync(join(root, 'apps', 'web', 'look', 'icon.svg'), 'utf8');
  const rectangles = [...drawing.matchAll(/<rect ([^>]*)\/>/gu)].map(([, attributes]) =>
    Object.fromEntries([...attributes.matchAll(/(\w+)="([^"]*)"/gu)].map(([, name, value]) => [name, value])),
  );
  return Object.fromEntries(Object.entries(icons).map(([file, icon]) => [file, drawn(rectangles, icon)]));
}

function drawn([ground, ...rectangles], { sizePx, share }) {
  const unitsWide = Number(ground.width);
  const toPx = (units) => {
    const px = ((units - unitsWide / 2) * share + unitsWide / 2) * (sizePx / unitsWide);
    if (!Number.isInteger(px)) throw new Error(`${units} falls between two pixels of the ${sizePx} px icon`);
    return px;
  };
  const png = new PNG({ width: sizePx, height: sizePx, colorType: 2 });
  const fill = (colour, [left, top, right, bottom]) => {
    const rgb = Buffer.from(`${colour.slice(1)}ff`, 'hex');
    for (let y = top; y < bottom; y += 1)
      for (let x = left; x < right; x += 1) rgb.copy(png.data, (y * sizePx + x) * 4);
  };
  fill(ground.fill, [0, 0, sizePx, sizePx]);
  for (const each of rectangles) {
    const [x, y, width, height] = [each.x, each.y, each.width, each.height].map(Number);
    fill(each.fill, [x, y, x + width, y + height].map(toPx));
  }
  return PNG.sync.write(png, { colorType: 2 });
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href)
  for (const [file, bytes] of Object.entries(drawnIcons()))
    writeFileSync(join(root, 'apps', 'web', 'public', 'icons', file), bytes);
