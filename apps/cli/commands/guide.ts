import { guideOf } from '../../../src/guide/index.ts';
import type { KindnessGoal } from '../../../src/planning/index.ts';
import { openFonts } from '../fonts.ts';
import { openPost } from '../opening.ts';
import { cannot, done, type Outcome, wrongUsage } from '../outcome.ts';
import type { World } from '../world.ts';
import { planFile, stakesTold } from './plan.ts';

export interface GuideOptions {
  readonly output: string;
  readonly sheet?: 'letter' | 'a4';
  readonly units?: 'in' | 'mm';
  readonly hand?: 'left' | 'right';
  readonly trimmer?: string;
  /** A file with the person's own table of a post. */
  readonly post?: string;
  readonly withSpares?: boolean;
  readonly prefer?: readonly KindnessGoal[];
  readonly type?: string;
}

/** Sizes of the body text that a page can be set in, in points. */
const typeSizes = { smallest: 8, largest: 24 } as const;

/** `cardwright guide`: the printed guide as a PDF at true scale. */
export async function guide(file: string, options: GuideOptions, world: World): Promise<Outcome> {
  const bodyPt = options.type === undefined ? undefined : Number(options.type);
  if (bodyPt !== undefined && !(bodyPt >= typeSizes.smallest && bodyPt <= typeSizes.largest)) {
    const { smallest, largest } = typeSizes;
    world.err(`--type is a size of type from ${smallest} to ${largest} points, not “${options.type}”.\n`);
    return wrongUsage;
  }
  const post = await openPost(options.post, world);
  if ('problems' in post) return cannot;
  const planned = await planFile(file, options, world);
  if (planned === null) return cannot;
  const { printPdf, typefaceOf } = await import('../../../src/printing/index.ts');
  const fonts = await openFonts(world);
  const units = options.units ?? planned.layout.units;
  const booklet = guideOf({
    ...planned,
    stakes: stakesTold(planned),
    units,
    hand: options.hand ?? null,
    post: post.value,
    sheetFormat: options.sheet ?? (planned.layout.units === 'in' ? 'letter' : 'a4'),
    typeface: typefaceOf(fonts),
    ...(bodyPt === undefined ? {} : { bodyPt }),
  });
  await world.write(options.output, await printPdf(booklet, fonts, { madeAt: world.now() }), {
    not: [file, options.trimmer, options.post],
  });
  if (options.output !== '-') world.err(`Wrote ${options.output}, ${booklet.pages.length} pages.\n`);
  return done;
}
