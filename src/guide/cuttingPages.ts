import {
  type Block,
  besideOf,
  black,
  groupOf,
  largePrintPt,
  lineWidthPt,
  type Mark,
  magnified,
  type Row,
  rubric,
  setParagraph,
  stackOf,
} from '../drawing/index.ts';
import type { Paper } from '../stash/index.ts';
import {
  docketOf,
  effortSentence,
  leftoverSentences,
  planSentence,
  type SittingBreak,
  type StepWords,
  slackSentences,
} from '../words/index.ts';
import { cuttingPictures } from './cuttingPictures.ts';
import type { Matter } from './matter.ts';
import { smallestPt } from './stepPicture.ts';

/** Everything that is cut from one paper: its docket, what it comes to, each setting drawn and said, what is left. */
export function cuttingPages(
  matter: Matter,
  paper: Paper,
  breaks: readonly SittingBreak[],
): readonly Block[] {
  const { plan, showing, styles, typeface, widthPt } = matter;
  const line = (words: string, beforePt = 3): Block =>
    setParagraph({ words, widthPt, style: styles.body, typeface, beforePt });
  return [
    setParagraph({
      words: `Cutting ${paper.name}`,
      widthPt,
      style: styles.heading,
      typeface,
      role: 'heading',
      beforePt: 26,
      withNext: true,
    }),
    { content: docketOf(paper, showing).map((sentence) => line(sentence)), withNext: true },
    {
      ...line(`${planSentence(paper, plan)} ${effortSentence(paper, plan, matter.trimmer)}`),
      withNext: true,
    },
    ...slackSentences(paper, plan, showing).map((sentence) => ({
      ...careful(matter, sentence, widthPt),
      withNext: true,
    })),
    ...stepBlocks(matter, paper, breaks),
    ...leftoverBlocks(matter, paper),
  ];
}

/** A sentence that must not be overread: a heavy rule stands at its left. */
export function careful(
  { styles, typeface }: Pick<Matter, 'styles' | 'typeface'>,
  words: string,
  widthPt: number,
): Block {
  const paragraph = setParagraph({
    words: [{ text: words, weight: 'semibold' }],
    widthPt: widthPt - 12,
    style: styles.body,
    typeface,
    role: null,
  });
  const set = stackOf([paragraph]);
  const row: Row = {
    heightPt: set.heightPt + 4,
    marks: [
      {
        kind: 'line',
        from: { xPt: 1.5, yPt: 1 },
        to: { xPt: 1.5, yPt: set.heightPt + 3 },
        stroke: { colour: black, widthPt: 3 },
      },
      { kind: 'group', marks: set.marks, move: { xPt: 12, yPt: 2 } },
    ],
  };
  return { role: 'paragraph', content: [row], beforePt: 6, afterPt: 4 };
}

const gutterPt = 18;

/** Room for the numbers of the steps, so that the largest of them stands clear of what is said. */
function numeralPt({ plan, styles, typeface }: Matter): number {
  const widths = plan.steps.map(({ step }) =>
    typeface.widthPt(String(step), styles.heading.sizePt, 'semibold'),
  );
  return Math.max(30, ...widths.map((width) => width + styles.heading.sizePt * 0.6));
}

function stepBlocks(matter: Matter, paper: Paper, breaks: readonly SittingBreak[]): readonly Block[] {
  const { widthPt } = matter;
  // In large print the picture stands under the words, the least of its numbers as large as they are.
  const { sizePt } = matter.styles.body;
  const magnification = sizePt < largePrintPt ? 1 : sizePt / smallestPt;
  const large = magnification > 1;
  const numeral = numeralPt(matter);
  const picturePt = large ? (widthPt - numeral) / magnification : (widthPt - numeral - gutterPt) * 0.52;
  const steps = cuttingPictures(matter, paper, { widthPt: picturePt, heightPt: large ? 60 : 150 });
  return [
    {
      role: 'list',
      beforePt: 8,
      content: steps.flatMap(({ words, says, draw }): Block[] => {
        const picture = draw();
        return [
          {
            role: 'listItem',
            together: true,
            beforePt: 6,
            content: large
              ? largeRows(matter, words, { says, picture }, magnification)
              : [stepRow(matter, words, { says, picture }, picturePt)],
          },
          ...breaks
            .filter(({ step }) => step === words.step)
            .map((rest): Block => ({ role: 'listItem', content: [careful(matter, rest.says, widthPt)] })),
        ];
      }),
    },
  ];
}

/** A picture of a step and what it shows. */
interface Drawn {
  readonly says: string;
  readonly picture: Row;
}

/** The size of text that pictures are drawn for. */

/** A step: its number, what is said of it, and its picture to the right. */
function stepRow(matter: Matter, words: StepWords, { says, picture }: Drawn, picturePt: number): Row {
  const numeral = numeralPt(matter);
  const textPt = matter.widthPt - numeral - gutterPt - picturePt;
  return underlined(
    matter,
    besideOf([
      { xPt: 0, row: numeralRow(matter, words) },
      { xPt: numeral, row: saidRow(matter, words, textPt) },
      { xPt: numeral + textPt + gutterPt, row: figureRow(says, picture) },
    ]),
  );
}

/** A step in large print: its number and what is said of it, and its picture below. */
function largeRows(
  matter: Matter,
  words: StepWords,
  { says, picture }: Drawn,
  magnification: number,
): readonly Row[] {
  const numeral = numeralPt(matter);
  const large: Row = {
    heightPt: picture.heightPt * magnification,
    marks: magnified(picture.marks, magnification),
  };
  return [
    besideOf([
      { xPt: 0, row: numeralRow(matter, words) },
      { xPt: numeral, row: saidRow(matter, words, matter.widthPt - numeral) },
    ]),
    underlined(matter, besideOf([{ xPt: numeral, row: figureRow(says, large) }])),
  ];
}

function saidRow(matter: Matter, words: StepWords, textPt: number): Row {
  const { styles, typeface } = matter;
  const paragraph = (text: string, beforePt: number): readonly Block[] =>
    text === ''
      ? []
      : [setParagraph({ words: text, widthPt: textPt, style: styles.body, typeface, beforePt })];
  return stackOf([
    setParagraph({
      words: words.set,
      widthPt: textPt,
      style: { ...styles.heading, leadingPt: styles.heading.sizePt * 1.1 },
      typeface,
    }),
    ...paragraph(words.mark, 1),
    ...paragraph([words.take, words.lay].filter((sentence) => sentence !== '').join(' '), 4),
    ...paragraph([words.cut, words.prove].filter((sentence) => sentence !== '').join(' '), 4),
    ...paragraph([words.gives, words.rest].filter((sentence) => sentence !== '').join(' '), 4),
    ...[words.care, words.stake]
      .filter((sentence) => sentence !== '')
      .map((sentence) => careful(matter, sentence, textPt)),
  ]);
}

function numeralRow({ styles }: Matter, words: StepWords): Row {
  const numeral: Mark = groupOf({ role: 'label', content: [] }, [
    {
      kind: 'text',
      at: { xPt: 0, yPt: styles.heading.sizePt * 0.95 },
      text: String(words.step),
      sizePt: styles.heading.sizePt,
      weight: 'semibold',
      colour: rubric,
      anchor: 'start',
    },
  ]);
  return { heightPt: 0, marks: [numeral] };
}

function figureRow(says: string, picture: Row): Row {
  const figure = groupOf({ role: 'figure', says, content: [] }, picture.marks);
  return { heightPt: picture.heightPt, marks: [figure] };
}

/** A row with the rule under it that ends a step. */
function underlined({ widthPt }: Matter, row: Row): Row {
  return {
    heightPt: row.heightPt + 8,
    marks: [
      ...row.marks,
      {
        kind: 'line',
        from: { xPt: 0, yPt: row.heightPt + 7 },
        to: { xPt: widthPt, yPt: row.heightPt + 7 },
        stroke: { colour: black, widthPt: lineWidthPt.hatch },
      },
    ],
  };
}

function leftoverBlocks(matter: Matter, paper: Paper): readonly Block[] {
  const { plan, showing, styles, typeface, widthPt } = matter;
  const sentences = leftoverSentences(paper, plan, showing);
  if (sentences.length === 0) return [];
  return [
    setParagraph({
      words: [{ text: `Left of ${paper.name}. `, weight: 'semibold' }, { text: sentences.join(' ') }],
      widthPt,
      style: styles.body,
      typeface,
      beforePt: 8,
    }),
  ];
}
