import {
  type Block,
  besideOf,
  groupOf,
  largePrintPt,
  magnified,
  type Row,
  setFigure,
  setParagraph,
  stackOf,
  type Words,
} from '../drawing/index.ts';
import { assemblyOf, holdingOf } from '../finished/index.ts';
import { type AssemblyWords, assemblyWords, listed } from '../words/index.ts';
import { type AssemblyPlate, assemblyPlates } from './assemblyPlate.ts';
import { heading } from './heading.ts';
import { lengthIn, letterFor, type Matter } from './matter.ts';
import { pileApart } from './pileApart.ts';
import { pileSection } from './pileSection.ts';

/** The pile edge-on and drawn apart, and each step of putting a card together in words and a plate; nothing of a bare card. */
export function assemblyPages(matter: Matter): readonly Block[] {
  const { layout, arrangement, showing } = matter;
  const steps = assemblyWords(layout, arrangement, showing);
  if (steps.length === 0) return [];
  const isLarge = matter.styles.body.sizePt >= largePrintPt;
  const magnification = isLarge ? matter.styles.body.sizePt / platePt : 1;
  const widthPt = isLarge
    ? (matter.widthPt - labelPt(matter)) / magnification
    : (matter.widthPt - labelPt(matter) - gutterPt) * 0.54;
  const plates = assemblyPlates({
    layout,
    arrangement,
    card: 0,
    assembly: assemblyOf(layout, arrangement),
    holding: holdingOf(layout, arrangement),
    room: { widthPt, heightPt: isLarge ? 90 : 130 },
  });
  return [
    heading(matter, 'Putting a card together'),
    ...pilePlates(matter),
    {
      role: 'list',
      beforePt: 4,
      content: steps.map((step): Block => {
        const plate = plates.find((one) => one.step.part === step.part);
        const words: Words = [
          { text: `${letterFor(layout, step.part)} ${step.name}. `, weight: 'semibold' },
          { text: saidOf(step) },
        ];
        return {
          role: 'listItem',
          together: true,
          beforePt: 8,
          content: stepRows(matter, { number: step.step.number, words, plate, magnification }),
        };
      }),
    },
  ];
}

/** All that is said of a step. */
function saidOf({ first, prepare, lay }: AssemblyWords): string {
  return [first, prepare, lay].filter((sentence) => sentence !== '').join(' ');
}

/** The least type in a plate. */
const platePt = 9;
const gutterPt = 18;

/** Room for the numbers of the steps. */
function labelPt({ styles }: Matter): number {
  return styles.body.sizePt * 2;
}

function stepRows(
  matter: Matter,
  {
    number,
    words,
    plate,
    magnification,
  }: {
    readonly number: number;
    readonly words: Words;
    readonly plate: AssemblyPlate | undefined;
    readonly magnification: number;
  },
): readonly Row[] {
  const { styles, typeface, widthPt } = matter;
  const label = stackOf([
    setParagraph({
      words: `${number}.`,
      widthPt: labelPt(matter),
      style: styles.body,
      typeface,
      role: null,
    }),
  ]);
  const labelled: Row = {
    heightPt: label.heightPt,
    marks: [groupOf({ role: 'label', content: [] }, label.marks)],
  };
  const platesPt = plate === undefined || magnification > 1 ? 0 : plate.widthPt + gutterPt;
  const said = stackOf([
    setParagraph({ words, widthPt: widthPt - labelPt(matter) - platesPt, style: styles.body, typeface }),
  ]);
  const text = [
    { xPt: 0, row: labelled },
    { xPt: labelPt(matter), row: said },
  ];
  if (plate === undefined) return [besideOf(text)];
  const figure: Row = {
    heightPt: plate.heightPt * magnification,
    marks: [
      groupOf(
        {
          role: 'figure',
          says: plate.says,
          content: [],
        },
        magnification > 1 ? magnified(plate.marks, magnification) : plate.marks,
      ),
    ],
  };
  return magnification > 1
    ? [besideOf(text), besideOf([{ xPt: labelPt(matter), row: figure }])]
    : [besideOf([...text, { xPt: widthPt - plate.widthPt, row: figure }])];
}

/** The pile of the front edge-on, and drawn apart where there is something to draw apart. */
function pilePlates(matter: Matter): readonly Block[] {
  const { layout, arrangement, styles, typeface, widthPt } = matter;
  const section = pileSection({ layout, arrangement, typeface }, widthPt);
  const direction =
    section.along === 'width'
      ? 'cut across from left to right'
      : 'cut down from top to bottom, the top at the left';
  const drawn = (thickened: number, estimated: boolean) =>
    `${thickened === 1 ? 'thickness true' : `drawn ${thickened} times as thick as it is`}${estimated ? ', partly by estimate' : ''}`;
  const letters = listed(layout.parts.map((part) => `${letterFor(layout, part.id)} ${part.name}`));
  const plate = (
    picture: Row & { readonly widthPt: number },
    { says, caption }: { readonly says: string; readonly caption: string },
  ): Block =>
    setFigure({
      marks: picture.marks,
      heightPt: picture.heightPt,
      xPt: Math.max(0, (widthPt - picture.widthPt) / 2),
      says,
      caption: { words: caption, widthPt, style: styles.small, typeface },
      beforePt: 6,
      afterPt: 8,
    });
  const apart = pileApart({ layout, arrangement, typeface, length: lengthIn(matter.showing) }, widthPt);
  return [
    plate(section, {
      says: `The pile of the front seen edge-on, bottom first: A base, ${letters}.`,
      caption: [
        `Plate 2. The pile seen edge-on, ${direction}; ${drawn(section.thickened, section.estimated)}.`,
        ...(section.missed.length === 0 ? [] : [`The cut misses ${listed(section.missed)}.`]),
      ].join(' '),
    }),
    plate(apart, {
      says: `The same pile drawn apart, bottom first, with how thick each layer is.`,
      caption: `Plate 3. The same pile drawn apart; ${drawn(apart.thickened, apart.estimated)}.`,
    }),
  ];
}
