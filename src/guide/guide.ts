import {
  a4Format,
  type Block,
  type Booklet,
  flow,
  letterFormat,
  type Mark,
  type Page,
  runningLines,
  setFigure,
  setParagraph,
  type Typeface,
  textStyles,
  textWidthPt,
} from '../drawing/index.ts';
import { assemblyOf, closedCards, holdingOf, postingOf } from '../finished/index.ts';
import type { Arrangement, Layout } from '../layout/index.ts';
import { type PostTable, postTableOf } from '../making/index.ts';
import { pointsOf, type Units } from '../measure/index.ts';
import { type Plan, type StepStakes, settledBy } from '../planning/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import {
  capital,
  cautionsFor,
  countedInWords,
  dryingSentence,
  envelopeSentences,
  exactnessSentences,
  foldWord,
  heldSentence,
  liftSentences,
  listed,
  needSentence,
  postSentences,
  sectionSentences,
  sittingBreaks,
  takenOf,
  toBuy,
  toolsFor,
  trimmerSentences,
  weightSentences,
} from '../words/index.ts';
import { assemblyPages } from './assemblyPages.ts';
import { cuttingPages } from './cuttingPages.ts';
import { frontFigure } from './frontFigure.ts';
import { type Hand, handSentence, trimmerFor } from './handed.ts';
import { heading } from './heading.ts';
import { leftoverSection } from './leftoverPages.ts';
import { lengthIn, letterFor, type Matter, paperOf, sizeIn } from './matter.ts';
import { piecesTable } from './piecesTable.ts';
import { printable } from './printable.ts';
import { ribbonSection, ribbonTemplates } from './ribbonPages.ts';
import { scorePage } from './scorePage.ts';
import { tearSection, tearTemplates } from './tearPages.ts';
import { timePages } from './timePages.ts';
import { trueSizePage } from './trueSizePage.ts';

/** What a guide is made from. */
export interface GuideRequest {
  readonly layout: Layout;
  readonly arrangement: Arrangement;
  readonly plan: Plan;
  /** What is at stake at its steps (`stakesOf`); points of no return are told where it is given. */
  readonly stakes?: readonly StepStakes[];
  /** `null`: nobody said which, and pieces come off at the left. */
  readonly trimmer: Trimmer | null;
  /** Whose hand it is for, as `trimmerFor` has it; when absent the hand of the trimmer. */
  readonly hand?: Hand | null;
  /** The person's own post, instead of the one that the layout names. */
  readonly post?: PostTable | null;
  readonly sheetFormat: 'letter' | 'a4';
  readonly units: Units;
  readonly typeface: Typeface;
  /** Size of the body text; 10.5 when absent, 16 for large print. */
  readonly bodyPt?: number;
}

/**
 * The printed guide: the card and its measures, what to cut, each setting drawn and said, scoring, tearing, putting
 * together, cautions, what is exact, the front and templates to tear against at true size.
 */
export function guideOf(request: GuideRequest): Booklet {
  const format = request.sheetFormat === 'letter' ? letterFormat : a4Format;
  const made = settledBy({ layout: request.layout, arrangement: request.arrangement }, request.plan.dealt);
  const layout = printable(made.layout, request.typeface);
  const hand = request.hand ?? null;
  const matter: Matter = {
    layout,
    arrangement: made.arrangement,
    plan: request.plan,
    stakes: request.stakes ?? [],
    trimmer: trimmerFor(hand, request.trimmer),
    showing: { units: request.units, glyphs: 'printed' },
    typeface: request.typeface,
    styles: textStyles(request.bodyPt),
    widthPt: textWidthPt(format),
  };
  const cut = [...request.plan.papers.keys()].map((id) => paperOf(layout, id));
  const breaks = sittingBreaks(request.plan, request.trimmer);
  const body: readonly Block[] = [
    ...needed(matter),
    ...piecesTable(matter),
    ...picturesExplained(matter, handSentence(hand, request.trimmer)),
    ...cut.flatMap((paper) => cuttingPages(matter, paper, breaks)),
    ...leftoverSection(matter),
    ...scorePage(matter),
    ...tearSection(matter),
    ...ribbonSection(matter),
    ...assemblyPages(matter),
    ...heldAndDry(matter),
    ...timePages(matter),
    ...closed(matter, request.post ?? null),
    ...cautions(matter),
    ...exactness(matter),
    ...trueSizePage(matter, format),
    ...tearTemplates(matter, format),
    ...ribbonTemplates(matter, format),
  ];
  const pagesWith = (contents: readonly Folioed[]): readonly Page[] =>
    flow([...opening(matter, contents), ...body], {
      format,
      furniture: runningLines({
        format,
        style: matter.styles.small,
        head: { left: layout.title },
        folio: ({ folio }) => String(folio),
      }),
    });
  // The contents line must not move what it points to: set it first with the headings and no true numbers.
  const unnumbered = body.flatMap(headingsOf).map((heading) => ({ heading, folio: 1 }));
  let pages = pagesWith(unnumbered);
  for (let round = 0; round < 2; round += 1) pages = pagesWith(foliosOf(pages));
  return { title: layout.title, language: 'en', pages };
}

/** A heading and the page it stands on. */
interface Folioed {
  readonly heading: string;
  readonly folio: number;
}

/** Title, what the set is, the contents line and the front. */
function opening(matter: Matter, contents: readonly Folioed[]): readonly Block[] {
  const { layout, arrangement, trimmer, styles, typeface, widthPt, showing } = matter;
  const size = sizeIn(showing);
  const cards = capital(countedInWords(matter.plan.cards, 'card'));
  const fold = layout.base.fold === 'none' ? 'flat' : foldWord(layout.base);
  const scale = Math.min(
    0.75,
    330 / pointsOf(arrangement.card.height),
    (widthPt - 190) / pointsOf(arrangement.card.width),
  );
  const figure = frontFigure(matter, { card: 0, scale, lettered: true });
  return [
    setParagraph({ words: layout.title, widthPt, style: styles.title, typeface, role: 'title' }),
    setParagraph({
      words: `${cards}, ${size(arrangement.card)}, ${fold}. ${trimmerWords(trimmer, matter)}${roundedWords(matter)}`,
      widthPt,
      style: styles.body,
      typeface,
      beforePt: 2,
    }),
    setParagraph({
      words: contents.flatMap(({ heading, folio }, index) => [
        { text: `${index === 0 ? '' : '  ·  '}${heading} ` },
        { text: String(folio), weight: 'semibold' as const },
      ]),
      widthPt,
      style: styles.small,
      typeface,
      beforePt: 10,
      afterPt: 14,
    }),
    setFigure({
      marks: figure.marks,
      heightPt: figure.heightPt,
      xPt: Math.max(0, (widthPt - figure.widthPt) / 2),
      says: frontSays(matter),
      caption: {
        words: frontCaption(matter),
        widthPt,
        style: styles.small,
        typeface,
      },
    }),
  ];
}

/** For whose trimmer the guide is. */
function trimmerWords(trimmer: Trimmer | null, matter: Matter): string {
  if (trimmer === null) return 'For any trimmer that can be set to these lengths.';
  return trimmerSentences(trimmer, matter.showing).join(' ');
}

/** Warns when the lengths of the layout can only be rounded in the units of the guide. */
function roundedWords({ plan, showing }: Matter): string {
  const length = lengthIn(showing);
  if (!plan.steps.some(({ set }) => length(set).startsWith('about'))) return '';
  const [here, there] = showing.units === 'in' ? ['inches', 'millimetres'] : ['millimetres', 'inches'];
  return ` This layout is measured in ${there}; in ${here} its lengths fall between the marks and are rounded here, so set by ${there} if you can.`;
}

function frontSays({ layout, arrangement, showing }: Matter): string {
  const parts = layout.parts.map((part) => `${letterFor(layout, part.id)} ${part.name}`);
  const size = sizeIn(showing)(arrangement.card);
  return `The front, ${size}, with ${parts.length === 0 ? 'nothing on it' : listed(parts)}.`;
}

/** The plate's caption: letters and names. */
function frontCaption({ layout, arrangement, showing }: Matter): string {
  const parts = layout.parts.map((part) => `${letterFor(layout, part.id)} ${part.name}`);
  const unit = showing.units === 'in' ? 'inches' : 'millimetres';
  const rounded = [arrangement.card.width, arrangement.card.height]
    .map(lengthIn(showing))
    .join()
    .includes('about');
  return `Plate 1. The front; measures in ${unit}${rounded ? ', rounded' : ''}. ${[`A base`, ...parts].join(', ')}.`;
}

/** Stock, shopping list and tools. */
function needed(matter: Matter): readonly Block[] {
  const { layout, plan, showing } = matter;
  const used = [...plan.papers.keys()].map((id) => paperOf(layout, id));
  const { papers, parts } = toBuy(layout, plan, showing);
  return [
    heading(matter, 'What you need'),
    ...used.flatMap((paper) => takenOf(paper, plan, showing)).map((line) => paragraphOf(matter, '', line)),
    ...[...papers, ...parts].map((line) => paragraphOf(matter, 'Still to get', line)),
    ...holdingOf(layout, matter.arrangement).needs.map((need) =>
      paragraphOf(matter, 'To hold it', needSentence(need, layout, showing)),
    ),
    paragraphOf(matter, 'Tools', `${capital(toolsFor(layout, showing.units).join('; '))}.`),
  ];
}

/** How to read the cutting pictures; `otherHand` is what becomes of them for another hand. */
function picturesExplained(matter: Matter, otherHand: string): readonly Block[] {
  const edge = matter.trimmer?.measuringEdge ?? 'left';
  const directed = [...matter.layout.papers.values()].some(({ up }) => up !== 'any');
  const words = [
    `Each setting has its picture. The sheet lies as you turn it under the blade, and the blade runs up and down the page. The heavy rule on the ${edge} is the measuring edge: push the work against it, and the pieces come off on that side, drawn a little apart.`,
    ...(matter.trimmer === null ? [] : [handWords[matter.trimmer.hand]]),
    ...(otherHand === '' ? [] : [otherHand]),
    ...(matter.plan.steps.some(({ otherSide }) => otherSide)
      ? ['Where the heavy rule stands on the other side of the work, measure on that side of the blade.']
      : []),
    'Letters name the finished parts; the strokes under a picture count the passes of the blade. What is left over is drawn empty, with its size.',
    ...(directed
      ? [
          'The arrow points to the top of the print. Turn the sheet as the arrow stands, and no print will lie on its side.',
        ]
      : []),
    ...(matter.trimmer === null && edge === 'left'
      ? [
          'If your trimmer measures on the right, left and right change places, but the print still stands as the arrow says.',
        ]
      : []),
  ].join(' ');
  return [heading(matter, 'How to read the cutting pictures'), paragraphOf(matter, '', words)];
}

const handWords = {
  left: 'Your left hand works the blade; the right holds the work and stays behind the guard.',
  right: 'Your right hand works the blade; the left holds the work and stays behind the guard.',
} as const satisfies Record<Trimmer['hand'], string>;

/** What is under the parts that are raised or held by spots, and how long all of it takes. */
function heldAndDry(matter: Matter): readonly Block[] {
  const { layout, arrangement, showing } = matter;
  const holding = holdingOf(layout, arrangement);
  const held = holding.parts.flatMap((part) => heldSentence(part, layout, showing) ?? []);
  const lifts = liftSentences(assemblyOf(layout, arrangement), layout);
  const wet = holding.needs.filter(({ adhesive }) => adhesive.dry > 0);
  return [
    ...(held.length === 0 ? [] : [paragraphOf(matter, 'Underneath', held.join(' '))]),
    ...lifts.map((sentence) => paragraphOf(matter, 'As one', sentence)),
    ...wet.map(({ adhesive }) => paragraphOf(matter, 'Drying', dryingSentence(adhesive))),
  ];
}

/** How thick and heavy a card is when it is done, which envelope takes it, and how the post does where one is named. */
function closed(matter: Matter, own: PostTable | null): readonly Block[] {
  const { layout, arrangement, showing } = matter;
  const cards = closedCards(layout, arrangement);
  const table = own ?? (layout.post === null ? null : postTableOf(layout.post));
  const told: readonly (readonly [topic: string, sentences: readonly string[]])[] = [
    ['Thickness', sectionSentences(cards.section, layout, showing)],
    ['Weight', weightSentences(cards, layout, showing)],
    ['Envelope', envelopeSentences(cards, layout, showing)],
    ...(table === null
      ? []
      : [['Post', postSentences(postingOf(layout, arrangement, table, cards), layout, showing)] as const]),
  ];
  return [
    heading(matter, 'The card when it is closed'),
    ...told.map(([topic, sentences]) => paragraphOf(matter, topic, sentences.join(' '))),
  ];
}

function cautions(matter: Matter): readonly Block[] {
  const { layout } = matter;
  const all = cautionsFor({
    scored: layout.base.fold !== 'none',
    glued: layout.parts.length > 0,
    bought: layout.parts.some((part) => part.papers.length === 0),
  });
  return [heading(matter, 'Take care'), ...all.map(({ topic, says }) => paragraphOf(matter, topic, says))];
}

function exactness(matter: Matter): readonly Block[] {
  return [
    heading(matter, 'What is exact and what is not'),
    ...exactnessSentences(matter.layout, matter.plan).map((sentence) => paragraphOf(matter, '', sentence)),
  ];
}

/** A paragraph that may begin with the word it is about. */
function paragraphOf({ styles, typeface, widthPt }: Matter, topic: string, words: string): Block {
  return setParagraph({
    words: [...(topic === '' ? [] : [{ text: `${topic}. `, weight: 'semibold' as const }]), { text: words }],
    widthPt,
    style: styles.body,
    typeface,
    beforePt: 4,
  });
}

/** The headings among the blocks, in order. */
function headingsOf(block: Block): readonly string[] {
  if (block.role === 'heading') {
    return [block.content.flatMap((row) => ('marks' in row ? textsOf(row.marks) : [])).join('')];
  }
  return block.content.flatMap((item) => ('content' in item ? headingsOf(item) : []));
}

/** The headings and where they stand. */
function foliosOf(pages: readonly Page[]): readonly Folioed[] {
  return pages.flatMap(({ marks }, index) =>
    headingMarks(marks).map((text) => ({ heading: text, folio: index + 1 })),
  );
}

function headingMarks(marks: readonly Mark[]): readonly string[] {
  return marks.flatMap((mark) => {
    if (mark.kind !== 'group') return [];
    return mark.role === 'heading' ? [textsOf(mark.marks).join('')] : headingMarks(mark.marks);
  });
}

function textsOf(marks: readonly Mark[]): readonly string[] {
  return marks.flatMap((mark) => {
    if (mark.kind === 'group') return textsOf(mark.marks);
    return mark.kind === 'text' ? [mark.text] : [];
  });
}
