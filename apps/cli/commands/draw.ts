import { svgOf } from '../../../src/drawing/index.ts';
import { frontDrawing } from '../../../src/guide/index.ts';
import { arrange, checkLayout } from '../../../src/layout/index.ts';
import { layoutProblemSentence } from '../../../src/words/index.ts';
import { openLayout } from '../opening.ts';
import { cannot, done, type Outcome, wrongUsage } from '../outcome.ts';
import type { World } from '../world.ts';

export interface DrawOptions {
  readonly output: string;
  readonly card: string;
  readonly dimensions?: boolean;
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
  const arrangement = arrange(layout);
  if (arrangement.parts.some(({ cut }) => cut === null)) {
    const errors = checkLayout(layout, arrangement).filter(({ severity }) => severity === 'error');
    world.err(
      errors.map((problem) => `${problem.where}: ${layoutProblemSentence(problem, layout.units)}\n`).join(''),
    );
    return cannot;
  }
  const page = frontDrawing(layout, arrangement, card - 1, { dimensions: options.dimensions ?? false });
  await world.write(options.output, svgOf(page, { units: layout.units, title: layout.title }));
  if (options.output !== '-') world.err(`Wrote ${options.output}.\n`);
  return done;
}
