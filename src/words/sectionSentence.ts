import type { Layer, Section } from '../finished/index.ts';
import type { Layout } from '../layout/index.ts';
import { type Length, showLengthWithUnit, sum } from '../measure/index.ts';
import { aboutThick } from './aboutThick.ts';
import { listed } from './count.ts';
import { panelWord } from './foldWords.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';

/**
 * How thick a closed card is, in sentences: where it is thickest, what lies there, how even it is, and what of it is
 * estimated. Figures are no finer than paper is.
 */
export function sectionSentences(section: Section, layout: Layout, showing: Showing): readonly string[] {
  const { thickest, thinnest, evenness } = section;
  const about = (length: Length) => aboutThick(length, showing);
  const foam = sum(
    ...thickest.layers.filter(({ what }) => what === 'foam').map(({ thickness }) => thickness),
  );
  const top = thickest.layers.at(-1)!;
  const where = top.part === 'base' ? '' : ` where ${partName(layout, top.part)} lies`;
  const ofFoam =
    foam > 0 ? `; of that ${showLengthWithUnit(foam, showing.units, showing.glyphs)} is foam` : '';
  return [
    `Closed, the card is about ${about(thickest.thickness)} at its thickest${where}${ofFoam}.`,
    `There lie, from the back up: ${listed(thickest.layers.map((layer) => layerWords(layer, layout, showing)))}.`,
    evenness.step === 0
      ? 'It is as thick everywhere.'
      : `At its thinnest it is about ${about(thinnest.thickness)}, and what is nearer to the thickest takes about ${partWords(evenness.share)} of its face. ${
          evenness.isUneven
            ? 'A post may call that uneven.'
            : 'That is even enough for a letter, as posts are usually understood; none of them says a figure.'
        }`,
    estimateSentence(thickest.layers, thickest.estimated, { layout, showing }),
  ];
}

function layerWords(layer: Layer, layout: Layout, showing: Showing): string {
  const { what, part, thickness, estimated } = layer;
  const name = part === 'base' ? baseWords(layer, layout) : partName(layout, part);
  const thing = {
    base: name,
    part: name,
    fold: `${name} folded over itself`,
    tuck: `the end of ${name} that goes behind`,
    foam: `foam under ${name}`,
    spots: `spots of glue under ${name}`,
    air: `air under ${name}`,
  }[what];
  return `${thing} (${estimated ? 'about ' : ''}${aboutThick(thickness, showing)})`;
}

function baseWords({ piece }: Layer, { base }: Layout): string {
  return base.fold === 'none' ? 'the base' : `the ${panelWord(base, piece)} of the base`;
}

function estimateSentence(
  layers: readonly Layer[],
  estimated: Length,
  { layout, showing }: { readonly layout: Layout; readonly showing: Showing },
): string {
  if (estimated === 0)
    return 'All these thicknesses are as the layout says them; foam gives a little when it is pressed.';
  const names = layers
    .filter((layer) => layer.estimated)
    .map(({ what, part }) => {
      if (what === 'foam') return 'the foam';
      if (what === 'spots') return 'the spots of glue';
      return part === 'base' ? 'the base' : partName(layout, part);
    });
  const papers = layers.some((layer) => layer.estimated && (layer.what === 'base' || layer.what === 'part'));
  return `Estimated, ${aboutThick(estimated, showing)} of that: ${listed([...new Set(names)])}.${
    papers ? ' Measure ten sheets of a paper together to know better.' : ''
  }`;
}

/** A share in the fraction that people would say: `a quarter`, `a third`, `nine tenths`. */
function partWords(share: number): string {
  const said = fractions.reduce((best, one) =>
    Math.abs(one.of - share) < Math.abs(best.of - share) ? one : best,
  );
  return said.words;
}

const fractions = [
  { of: 0.02, words: 'a fiftieth' },
  { of: 0.05, words: 'a twentieth' },
  { of: 0.1, words: 'a tenth' },
  { of: 0.15, words: 'a seventh' },
  { of: 0.2, words: 'a fifth' },
  { of: 0.25, words: 'a quarter' },
  { of: 1 / 3, words: 'a third' },
  { of: 0.4, words: 'two fifths' },
  { of: 0.5, words: 'half' },
  { of: 0.6, words: 'three fifths' },
  { of: 2 / 3, words: 'two thirds' },
  { of: 0.75, words: 'three quarters' },
  { of: 0.9, words: 'nine tenths' },
  { of: 1, words: 'all' },
] as const;
