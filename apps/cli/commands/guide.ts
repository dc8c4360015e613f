import { guideOf } from '../../../src/guide/index.ts';
import { cannot, done, type Outcome } from '../outcome.ts';
import type { World } from '../world.ts';
import { planFile } from './plan.ts';

export interface GuideOptions {
  readonly output: string;
  readonly sheet?: 'letter' | 'a4';
  readonly units?: 'in' | 'mm';
  readonly trimmer?: string;
}

/** `cardwright guide`: the printed guide as a PDF at true scale. */
export async function guide(file: string, options: GuideOptions, world: World): Promise<Outcome> {
  const planned = await planFile(file, options, world);
  if (planned === null) return cannot;
  const { printPdf, typefaceOf } = await import('../../../src/printing/index.ts');
  const fonts = {
    regular: await world.asset('fonts/SourceSans3_400Regular.ttf'),
    semibold: await world.asset('fonts/SourceSans3_600SemiBold.ttf'),
  };
  const units = options.units ?? planned.layout.units;
  const booklet = guideOf({
    ...planned,
    units,
    sheetFormat: options.sheet ?? (planned.layout.units === 'in' ? 'letter' : 'a4'),
    typeface: typefaceOf(fonts),
  });
  await world.write(options.output, await printPdf(booklet, fonts, { madeAt: world.now() }));
  if (options.output !== '-') world.err(`Wrote ${options.output}, ${booklet.pages.length} pages.\n`);
  return done;
}
