import {
  type Block,
  grey,
  type Mark,
  outlineStroke,
  type PathStep,
  polygon,
  rectangle,
  setFigure,
  setParagraph,
  upArrow,
  wideStroke,
} from '../drawing/index.ts';
import { type Extra, regionIn } from '../layout/index.ts';
import {
  inches,
  type Length,
  lengthOfTicks,
  millimetres,
  pointsOf,
  quarterTurned,
  roundTo,
} from '../measure/index.ts';
import { type ExtraPlace, leftoverUses, type UsedLeftover } from '../planning/index.ts';
import { movedTo, turnedRegion } from '../shape/index.ts';
import {
  capital,
  countedInWords,
  countWord,
  extraSentences,
  fromLeftoversSentences,
  keptSentences,
  listed,
} from '../words/index.ts';
import { shapePath } from './face.ts';
import { lengthIn, type Matter, numberIn, paperOf, sizeIn } from './matter.ts';

/**
 * What is made of the leftovers, each of them drawn with the extras that are laid on it, and what goes back into the stash;
 * nothing where the layout asks for nothing of them.
 */
export function leftoverSection(matter: Matter): readonly Block[] {
  const { layout, arrangement, plan, trimmer, showing, styles, typeface, widthPt } = matter;
  const parts = fromLeftoversSentences(layout, plan);
  if ((layout.extras ?? []).length === 0 && parts.length === 0) return [];
  const uses = leftoverUses({ layout, arrangement, trimmer }, plan);
  const says = [...parts, ...extraSentences(uses, layout, showing), ...keptSentences(uses, layout, showing)];
  return [
    setParagraph({
      words: 'From what is left',
      widthPt,
      style: styles.heading,
      typeface,
      role: 'heading',
      beforePt: 26,
      withNext: true,
    }),
    ...says.map((words) => setParagraph({ words, widthPt, style: styles.body, typeface, beforePt: 4 })),
    ...uses.used.map((used) => leftoverFigure(matter, used)),
  ];
}

/** A leftover as it lies with its pattern upright: plain, its size and up lightly written, what is laid on it in ink. */
function leftoverFigure(matter: Matter, used: UsedLeftover): Block {
  const { layout, showing, styles, typeface, widthPt } = matter;
  const size = sizeIn(showing);
  const scale = Math.min(0.5, (widthPt - 60) / pointsOf(used.size.width), 260 / pointsOf(used.size.height));
  const pt = (length: number) => pointsOf(lengthOfTicks(length)) * scale;
  const [widePt, highPt] = [pt(used.size.width), pt(used.size.height)];
  const extras = layout.extras ?? [];
  const directed = paperOf(layout, used.paper).up !== 'any';
  const topPt = 16;
  const marks: readonly Mark[] = [
    {
      kind: 'path',
      path: rectangle({ xPt: 0, yPt: topPt, widthPt: widePt, heightPt: highPt }),
      stroke: wideStroke,
    },
    {
      kind: 'text',
      at: { xPt: 0, yPt: topPt - 5 },
      text: size(used.size),
      sizePt: 8,
      weight: 'regular',
      colour: grey,
      anchor: 'start',
    },
    ...(directed
      ? [upArrow({ at: { xPt: widePt + 12, yPt: topPt + highPt / 2 }, sizePt: 15, colour: grey })]
      : []),
    ...used.rests.map(
      (rest): Mark => ({
        kind: 'path',
        path: rectangle({
          xPt: pt(rest.left),
          yPt: topPt + pt(rest.top),
          widthPt: pt(rest.width),
          heightPt: pt(rest.height),
        }),
        stroke: { colour: grey, widthPt: 0.5, dashPt: [3, 2] },
      }),
    ),
    {
      kind: 'group',
      marks: used.places.map((place) => ({
        kind: 'path',
        path: placePath(extras[place.extra]!, place, scale),
        stroke: outlineStroke,
      })),
      move: { xPt: 0, yPt: topPt },
    },
  ];
  const laid = [...new Set(used.places.map(({ extra }) => extra))];
  const rests = used.rests.map(size);
  const kept = rests.length === 0 ? 'Nothing of it is kept.' : `Keep ${listed(rests)}, drawn in dashes.`;
  return setFigure({
    marks,
    xPt: (widthPt - widePt) / 2,
    heightPt: topPt + highPt + 4,
    says: `A leftover of ${paperOf(layout, used.paper).name}, ${size(used.size)}, with ${listed(
      laid.map((extra) => {
        const count = used.places.filter((place) => place.extra === extra).length;
        return `${countWord(count)} of ${extras[extra]!.name}`;
      }),
    )}.`,
    caption: {
      words: [
        `${capital(paperOf(layout, used.paper).name)}, ${size(used.size)}. From its left and its upper edge to the left and the upper end of each:`,
        ...laid.map((extra) => placesWords(matter, used, extra)),
        kept,
      ].join(' '),
      widthPt,
      style: styles.small,
      typeface,
    },
    beforePt: 12,
  });
}

/** No more places than this are written out; the picture shows the others. */
const mostWritten = 12;

/** `Gift tag 1/16 and 1/16; 1 5/8 and 1/16.` What lies between marks is rounded to what can be read on a ruler. */
function placesWords({ layout, showing }: Matter, { places }: UsedLeftover, extra: number): string {
  const fine = showing.units === 'in' ? inches(1, 32) : millimetres(0.5);
  const number = (length: Length) => numberIn(showing)(roundTo(length, fine, 'nearest'));
  const own = places.filter((place) => place.extra === extra);
  const shown = own.slice(0, mostWritten);
  const rounded = shown.some(({ left, top }) => left % fine !== 0 || top % fine !== 0);
  const written = shown.map(({ left, top }) => `${number(left)} and ${number(top)}`);
  const more = own.length - shown.length;
  const others = more === 0 ? '' : `; and ${countedInWords(more, 'more place')}, as drawn`;
  const note = rounded ? ` (rounded to ${lengthIn(showing)(fine)})` : '';
  return `${layout.extras![extra]!.name}${note} ${written.join('; ')}${others}.`;
}

/** The outline of an extra where it lies. */
function placePath(
  { shape, size }: Extra,
  { left, top, turns }: ExtraPlace,
  scale: number,
): readonly PathStep[] {
  if (shape.kind !== 'outline') {
    const turned = turns % 2 === 0 ? size : quarterTurned(size);
    return shapePath(shape, { left, top, ...turned }, scale);
  }
  const zeroBox = { left: lengthOfTicks(0), top: lengthOfTicks(0), ...size };
  const region = movedTo(turnedRegion(regionIn(shape, zeroBox), turns), left, top);
  const pt = (length: Length) => pointsOf(length) * scale;
  return region.rings.flatMap((ring) => polygon(ring.map(({ x, y }) => ({ xPt: pt(x), yPt: pt(y) }))));
}
