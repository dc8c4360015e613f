import { type Block, type PageFormat, setFigure, setParagraph, textWidthPt } from '../drawing/index.ts';
import { closedCards, type FoldedMade, foldedMade, ribbonsMade } from '../finished/index.ts';
import { inches, type Length, millimetres, roundTo } from '../measure/index.ts';
import { ribbonMeasuresSentences } from '../words/index.ts';
import { lengthIn, letterFor, type Matter } from './matter.ts';
import { type RibbonFigure, ribbonFigure, stripEnd } from './ribbonFigure.ts';
import { trueSizeHead } from './trueSizeHead.ts';

/** What folded strips and bands measure, in words; nothing where there is none. How they are folded stands where they are laid on. */
export function ribbonSection(matter: Matter): readonly Block[] {
  const { layout, arrangement, showing, styles, typeface, widthPt } = matter;
  const hasSome = layout.parts.some(
    (part) => foldedMade(part) !== null || Object.values(part.tuck).some((depth) => depth > 0),
  );
  if (!hasSome) return [];
  const thickest = closedCards(layout, arrangement).section.thickest.thickness;
  const told = ribbonsMade(layout, arrangement, thickest).flatMap((made) =>
    ribbonMeasuresSentences(made, layout, showing),
  );
  if (told.length === 0) return [];
  return [
    setParagraph({
      words: 'Ribbon',
      widthPt,
      style: styles.heading,
      typeface,
      role: 'heading',
      beforePt: 24,
      withNext: true,
    }),
    ...told.map((words) => setParagraph({ words, widthPt, style: styles.body, typeface, beforePt: 4 })),
  ];
}

/**
 * The templates that strips are folded round at true size, to be traced, with the two bars that tell whether the page was
 * printed true: a page for each strip that is folded and fits.
 */
export function ribbonTemplates(matter: Matter, format: PageFormat): readonly Block[] {
  const { layout } = matter;
  const alike = new Set<string>();
  return layout.parts.flatMap((part): readonly Block[] => {
    const made = foldedMade(part);
    if (made === null) return [];
    const key = JSON.stringify(made.shape);
    if (alike.has(key)) return [];
    alike.add(key);
    return templatePage(matter, format, { ...made, name: `${letterFor(layout, part.id)} ${part.name}` });
  });
}

function templatePage(
  matter: Matter,
  format: PageFormat,
  made: FoldedMade & { readonly name: string },
): readonly Block[] {
  const { showing, styles, typeface, widthPt } = matter;
  const step = showing.units === 'in' ? inches(1, 64) : millimetres(0.1);
  const length = (of: Length) => lengthIn(showing)(roundTo(of, step, 'nearest'));
  const request = { length, typeface, widestPt: Math.min(widthPt, textWidthPt(format)) };
  const figure = ribbonFigure(made, request);
  if (figure === null) return [];
  const plate = (drawn: RibbonFigure, says: string, caption: string): Block =>
    setFigure({
      marks: drawn.marks,
      heightPt: drawn.heightPt,
      xPt: Math.max(0, (widthPt - drawn.widthPt) / 2),
      says,
      caption: { words: caption, widthPt, style: styles.small, typeface },
      beforePt: 14,
    });
  const { heading, use, says, caption } = wordsFor(made, length);
  const shortened = figure.isShortened ? ' The tails are longer than they are drawn.' : '';
  const end = made.kind === 'ribbon' ? stripEnd(made, request) : null;
  return [
    ...trueSizeHead(matter, { heading, use }),
    plate(figure, says, `${caption}${shortened}`),
    ...(end === null
      ? []
      : [
          plate(
            end,
            'The left end of the strip lying flat at true size, with its first crease.',
            `The left end of the strip of ${made.name}, lying flat; the line of long and short dashes is its first crease. Turned half round, its other end is the same.`,
          ),
        ]),
  ];
}

/** What is said on the page of a template. */
function wordsFor(
  made: FoldedMade & { readonly name: string },
  length: (of: Length) => string,
): Readonly<Record<'heading' | 'use' | 'says' | 'caption', string>> {
  const { name } = made;
  switch (made.kind) {
    case 'ribbon': {
      const { slant, template } = made.shape;
      const way = `${slant < 0 ? 'falls' : 'rises'} by ${Math.round(Math.abs(slant) * 10) / 10}°`;
      return {
        heading: `Folding template for ${name}`,
        use: 'Trace the heavy outline onto card and cut it out. Lay it under the strip, its slanted ends on the creases, and fold both ends of the strip behind round it: they then lie as the broken lines have them.',
        says: `The middle of the ribbon at true size, between its two creases, and the tails behind it.`,
        caption: `${name}: the template is ${length(template)} from the middle of one crease to that of the other, measured level, and ${way}.`,
      };
    }
    case 'loops':
      return {
        heading: `Folding template for ${name}`,
        use: 'Trace the outline onto card and cut it out. Fold the strip flat round it for each loop, and draw it out.',
        says: 'The template of the loops at true size.',
        caption: `${name}: each loop is ${length(made.shape.template)} wide.`,
      };
    case 'knot':
      return {
        heading: `${name} at true size`,
        use: 'Lay the knot on its outline before you crease it: five sides alike, and two tails.',
        says: 'The knot and its tails at true size.',
        caption: `${name}: each side of the pentagon is ${length(made.measures.side)}.`,
      };
  }
}
