import { svgOf, type Typeface } from '../../../src/drawing/index.ts';
import { frontDrawing } from '../../../src/guide/index.ts';
import { openFonts } from '../fonts.ts';
import { openLayout, openPile } from '../opening.ts';
import { cannot, done, type Outcome, wrongUsage } from '../outcome.ts';
import type { World } from '../world.ts';

export interface DrawOptions {
  readonly output: string;
  readonly card: string;
  readonly dimensions?: boolean;
  readonly coloured?: boolean;
}

/** `cardwright draw`: one card's finished front as SVG at its physical size. */
export async function draw(file: string, options: DrawOptions, world: World): Promise<Outcome> {
  const opened = await openLayout(file, world);
  if ('problems' in opened) return cannot;
  const layout = opened.value;
  const card = Number(options.card);
  if (!Number.isInteger(card) || card < 1 || card > layout.cards) {
    world.err(`--card is a number from 1 to ${layout.cards}, not “${options.card}”.\n`);
    return wrongUsage;
  }
  const arrangement = openPile(layout, world);
  if (arrangement === null) return cannot;
  const page = frontDrawing(
    layout,
    arrangement,
    card - 1,
    options.dimensions ? { units: layout.units, typeface: await openTypeface(world) } : null,
    options.coloured ? 'coloured' : 'printed',
  );
  await world.write(options.output, svgOf(page, { units: layout.units, title: layout.title }), {
    not: [file],
  });
  if (options.output !== '-') world.err(`Wrote ${options.output}.\n`);
  return done;
}

async function openTypeface(world: World): Promise<Typeface> {
  const { typefaceOf } = await import('../../../src/printing/index.ts');
  return typefaceOf(await openFonts(world));
}
