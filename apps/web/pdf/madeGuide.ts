import { guideOf } from '../../../src/guide/index.ts';
import { arrange } from '../../../src/layout/index.ts';
import { type Fonts, printPdf, typefaceOf } from '../../../src/printing/index.ts';
import type { GuideAnswer, GuideAsked } from './messages.ts';

/** The guide that is asked for, as a PDF; whatever goes wrong comes out as data. */
export async function madeGuide(asked: GuideAsked, openFonts: () => Promise<Fonts>): Promise<GuideAnswer> {
  try {
    const { layout, plan, stakes, trimmer, sheetFormat, units, bodyPt } = asked;
    const fonts = await openFonts();
    const booklet = guideOf({
      layout,
      arrangement: arrange(layout),
      plan,
      stakes,
      trimmer,
      sheetFormat,
      units,
      typeface: typefaceOf(fonts),
      bodyPt,
    });
    const pdf = await printPdf(booklet, fonts, {
      madeAt: new Date(asked.madeAt),
      uncompressed: asked.uncompressed ?? false,
    });
    return { kind: 'made', pdf: new Uint8Array(pdf), pages: booklet.pages.length };
  } catch (problem) {
    return { kind: 'failed', message: problem instanceof Error ? problem.message : String(problem) };
  }
}
