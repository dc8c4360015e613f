import type { Booklet } from '../../../src/drawing/index.ts';
import { guideOf, kitGuideOf } from '../../../src/guide/index.ts';
import { arrange } from '../../../src/layout/index.ts';
import { type Fonts, printPdf, typefaceOf } from '../../../src/printing/index.ts';
import type { GuideAsked, GuideFailed, GuideLaid, GuideMade, KitGuideAsked } from './messages.ts';

/** The guide that is asked for, as a PDF; whatever goes wrong comes out as data. */
export async function madeGuide(
  asked: GuideAsked | KitGuideAsked,
  openFonts: () => Promise<Fonts>,
): Promise<GuideMade | GuideFailed> {
  return orFailed(async () => {
    const fonts = await openFonts();
    const booklet = bookletOf(asked, fonts);
    const pdf = await printPdf(booklet, fonts, {
      madeAt: new Date(asked.madeAt),
      uncompressed: asked.uncompressed ?? false,
    });
    return { kind: 'made', pdf: new Uint8Array(pdf), pages: booklet.pages.length };
  });
}

/** The very pages that `madeGuide` prints, to be looked at. */
export async function laidGuide(
  asked: GuideAsked | KitGuideAsked,
  openFonts: () => Promise<Fonts>,
): Promise<GuideLaid | GuideFailed> {
  return orFailed(async () => ({ kind: 'laid', pages: bookletOf(asked, await openFonts()).pages }));
}

function bookletOf(asked: GuideAsked | KitGuideAsked, fonts: Fonts): Booklet {
  if ('report' in asked) {
    const { report, sheetFormat, units, bodyPt } = asked;
    return kitGuideOf({ report, sheetFormat, units, bodyPt, typeface: typefaceOf(fonts) });
  }
  const { layout, plan, stakes, trimmer, hand, post, sheetFormat, units, bodyPt } = asked;
  return guideOf({
    layout,
    arrangement: arrange(layout),
    plan,
    stakes,
    trimmer,
    hand,
    post,
    sheetFormat,
    units,
    typeface: typefaceOf(fonts),
    bodyPt,
  });
}

async function orFailed<Done>(work: () => Promise<Done>): Promise<Done | GuideFailed> {
  try {
    return await work();
  } catch (problem) {
    return { kind: 'failed', message: problem instanceof Error ? problem.message : String(problem) };
  }
}
