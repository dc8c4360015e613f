import PDFDocument from 'pdfkit';
import { allShown, shownText, type Typeface, type Weight } from '../drawing/index.ts';

/** The bytes of the two fonts a booklet is set in (TrueType or OpenType). */
export interface Fonts {
  readonly regular: Uint8Array;
  readonly semibold: Uint8Array;
}

/**
 * The measures of the fonts, laid out by the very code that prints them: kerning and the fractions formed around
 * U+2044 are in the widths, and a character the fonts lack is as wide as the box that stands for it.
 *
 * Opening the fonts takes some tens of milliseconds; widths of words are kept.
 */
export function typefaceOf(fonts: Fonts): Typeface {
  const document = new PDFDocument({ autoFirstPage: false, font: null });
  useFonts(document, fonts);
  const shows = shownBy(document);
  document.font('regular');
  return {
    widthPt: (text, sizePt, weight) =>
      document
        .font(weight)
        .fontSize(sizePt)
        .widthOfString(shownText(text, shows(weight))),
    has: (text) => allShown(text, shows('regular')) && allShown(text, shows('semibold')),
    capHeight: document._font.capHeight / 1000,
  };
}

/** Makes the fonts known to the document under the names of the weights. */
export function useFonts(document: PDFDocument, fonts: Fonts): void {
  document.registerFont('regular', fonts.regular);
  document.registerFont('semibold', fonts.semibold);
}

/** For each weight, which characters its font has. */
export function shownBy(document: PDFDocument): (weight: Weight) => (character: string) => boolean {
  const glyphs = (weight: Weight) => {
    const { font } = document.font(weight)._font;
    return (character: string) => font.hasGlyphForCodePoint(character.codePointAt(0)!);
  };
  const shows = { regular: glyphs('regular'), semibold: glyphs('semibold') };
  return (weight) => shows[weight];
}
