import type { Layout, LayoutSum } from '../layout/index.ts';
import { type Glyphs, showLengthWithUnit, showSize, type Units } from '../measure/index.ts';
import type { Plan, Recast, RecastLength, RecastReason, RecastRefusal, Shortage } from '../planning/index.ts';
import { capital, counted, countWord, either, listed } from './count.ts';
import { layoutProblemSentence } from './layoutProblem.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';
import { sumSentence } from './sum.ts';

/** What is to be told of a layout that was planned again, each a list of sentences. */
export interface RecastWords {
  /** What it was brought to. */
  readonly head: readonly string[];
  /** Every length that changed, and every true size that was kept, with the reason. */
  readonly changes: readonly string[];
  /** Paper by paper what a sheet gives and how many the set takes, before and now. */
  readonly papers: readonly string[];
  /** What is worse about it than it was drawn; empty as a rule. */
  readonly worse: readonly string[];
  /** What converting each length by itself would have done. */
  readonly conversion: readonly string[];
}

/** What changed and why, beside what a conversion would have done wrong; `drawn` is the layout as it was. */
export function recastWords(recast: Recast, drawn: Layout, glyphs: Glyphs = 'typed'): RecastWords {
  const told: Told = { recast, drawn, from: drawn.units, to: recast.layout.units, glyphs };
  return {
    head: headSentences(told),
    changes: changeSentences(told),
    papers: paperSentences(told),
    worse: worseSentences(told),
    conversion: conversionSentences(told),
  };
}

interface Told {
  readonly recast: Recast;
  readonly drawn: Layout;
  /** The units of before and of now. */
  readonly from: Units;
  readonly to: Units;
  readonly glyphs: Glyphs;
}

function headSentences({ recast, to, glyphs }: Told): readonly string[] {
  const marks = showLengthWithUnit(recast.marks, to, glyphs);
  const head = `Planned again in ${to === 'in' ? 'inches' : 'millimetres'}, every length on marks of ${marks}.`;
  const { cards } = recast.layout;
  switch (recast.suiting) {
    case 'enough':
      return [
        head,
        `${capital(counted(cards, 'card'))} ${cards === 1 ? 'comes' : 'come'} out of the papers.`,
      ];
    case 'suited':
      return [
        head,
        `The papers were short at first; sizes were moved until ${counted(cards, 'card')} came out.`,
      ];
    case 'short':
      return [
        head,
        `The papers are short. No sizes near these were found that give ${counted(cards, 'card')}; the most that was found is ${recast.cards}.`,
      ];
  }
}

// --- What changed ---

function changeSentences(told: Told): readonly string[] {
  const { recast, drawn, from } = told;
  const parts = ['base', ...drawn.parts.map(({ id }) => id)];
  const sentences = parts.flatMap((part) => {
    const own = recast.lengths.filter((length) => length.part === part && isTold(length));
    const reasons = [...new Set(own.map(({ why }) => why))];
    return reasons.map((why) => {
      // Pieces with places of their own may say the same.
      const lengths = [
        ...new Set(own.filter((length) => length.why === why).map((length) => lengthWords(length, told))),
      ];
      const down = drawn.base.papers.length === 0 ? boughtDown : baseDown;
      const reason = part === 'base' && why === 'mark' ? down : reasonWords[why];
      return `${part === 'base' ? 'The base' : partName(drawn, part)}: ${listed(lengths)}; ${reason}.`;
    });
  });
  const sheets = [...recast.sheets].map(([id, stocks]) => {
    const was = drawn.papers.get(id)!;
    const now = listed(stocks.map(({ size }) => showSize(size, told.to, told.glyphs)));
    const before = listed(was.sheets.map(({ size }) => showSize(size, from, told.glyphs)));
    const known = was.sheets.some(({ price, grain }) => price !== null || grain !== null);
    const lost = known ? ' Their price and grain are not known; add them to the file.' : '';
    return `${was.name}: sheets of ${now}, were ${before}; as asked.${lost}`;
  });
  const { allowance: within } = recast;
  const allowance =
    within === null
      ? []
      : [
          `What lies within the base: ${showLengthWithUnit(within.to, told.to, told.glyphs)} narrower (was ${showLengthWithUnit(within.from, from, told.glyphs)}); ${reasonWords.mark}.`,
        ];
  const cards = recast.layout.cards;
  return [
    ...(cards === drawn.cards ? [] : [`${counted(cards, 'card')}, were ${drawn.cards}; as asked.`]),
    ...sheets,
    ...sentences,
    ...allowance,
    ...(sentences.length + allowance.length === 0 ? ['No length had to change.'] : []),
  ];
}

function isTold({ from, to, why }: RecastLength): boolean {
  return from !== to || why !== 'stays';
}

function lengthWords({ name, from, to }: RecastLength, told: Told): string {
  const was = showLengthWithUnit(from, told.from, told.glyphs);
  // A true size is told as it was typed.
  if (from === to) return `${name} ${was}`;
  return `${name} ${showLengthWithUnit(to, told.to, told.glyphs)} (was ${was})`;
}

const baseDown = 'brought down to a mark, so that it still fits its envelope and its sheets';

const boughtDown =
  'brought down to a mark; a base bought at its own size shows that little more at the edges';

const reasonWords = {
  asked: 'as asked',
  mark: 'rounded to a mark',
  fills: 'what borders and gaps leave, so that they add up and stay even',
  share: 'the same share of what it lies on',
  follows: 'goes with what lies around it',
  suits: 'moved so that the cards come out',
  die: 'its die keeps its size, and the piece is cut no smaller',
  stamp: 'its stamp keeps its size, and the piece is cut no smaller',
  bought: 'bought, so it keeps its size',
  folded: 'folded of a strip, so it keeps its size',
  fixed: 'it may not move',
  stays: 'as it was',
} as const satisfies Record<RecastReason, string>;

// --- Papers ---

function paperSentences({ recast, drawn, from, to, glyphs }: Told): readonly string[] {
  return recast.papers.flatMap(({ paper: id, sheets }) => {
    const paper = drawn.papers.get(id)!;
    const taken =
      sheets.from === null || sheets.to === null
        ? ''
        : `; the set takes ${sheetChange(sheets.from, sheets.to)}`;
    const pieces = recast.pieces
      .filter((piece) => piece.paper === id)
      .map(({ part, size, perSheet }) => {
        const each =
          perSheet.from === null || perSheet.to === null
            ? ''
            : `, ${countWord(perSheet.to)} a sheet${perSheet.to === perSheet.from ? '' : ` (was ${countWord(perSheet.from)})`}`;
        const stays = size.from.width === size.to.width && size.from.height === size.to.height && from === to;
        const was = stays ? '' : ` (was ${showSize(size.from, from, glyphs)})`;
        return `${nameOf(drawn, part)} ${showSize(size.to, to, glyphs)}${was}${each}`;
      });
    return pieces.length === 0 ? [] : [`${paper.name}: ${listed(pieces)}${taken}.`];
  });
}

function sheetChange(from: number, to: number): string {
  const now = counted(to, 'sheet');
  return from === to ? `${now} as before` : `${now} (was ${from})`;
}

// --- What is wrong ---

function worseSentences({ recast, drawn, to, glyphs }: Told): readonly string[] {
  const { uneven } = recast.worse;
  const parts = drawn.parts.filter(({ id }) => uneven.has(id)).map(({ name }) => name);
  return [
    ...(parts.length > 0 ? [`Not as even as it was drawn: look at ${listed(parts)}.`] : []),
    ...recast.problems.map((problem) => layoutProblemSentence(problem, { units: to, glyphs })),
    ...drawn.parts
      .filter(({ id }) => recast.squeezed.includes(id))
      .map(
        ({ name, dieCut }) =>
          `${name} is smaller than it was: see that its ${dieCut ? 'die' : 'stamp'} still fits.`,
      ),
  ];
}

function conversionSentences(told: Told): readonly string[] {
  const { recast, to, glyphs } = told;
  const { uneven, betweenMarks, problems, answer, layout } = recast.conversion;
  const showing = { units: to, glyphs } as const;
  const said = (sum: LayoutSum) => sumSentence(sum, layout, showing).replace(/\.$/, '');
  const wrong = [
    ...uneven.map((sum) => `${said(sum)}: no longer even.`),
    ...betweenMarks
      .filter((sum) => !uneven.includes(sum))
      .map((sum) => `${said(sum)}: borders between the marks.`),
    ...problems.map((problem) => layoutProblemSentence(problem, showing)),
    ...yieldSentences(told),
    ...(answer === null
      ? ['A size is left unknown, so nothing can be cut.']
      : [...cutSentences(answer, told), ...moreSheets(answer, told)]),
  ];
  return wrong.length === 0 ? ['It would have come out as well.'] : [...new Set(wrong)];
}

function yieldSentences({ recast, drawn, to, glyphs }: Told): readonly string[] {
  return recast.conversion.pieces.flatMap(({ piece, part, paper, size, perSheet: { from, to: now } }) => {
    const again = recast.pieces.find((other) => other.piece === piece)?.perSheet.to ?? null;
    // What is no better planned again is no fault of the conversion.
    if (from === null || now === null || now >= from || (again !== null && again <= now)) return [];
    const name = drawn.papers.get(paper)!.name;
    return [
      `A sheet of ${name} would give ${countWord(now)} of ${nameOf(drawn, part)} (${showSize(size.to, to, glyphs)}), not ${countWord(from)}.`,
    ];
  });
}

function cutSentences(answer: Plan | Shortage, { recast, drawn }: Told): readonly string[] {
  if (answer.kind === 'plan') return [];
  const { before } = recast;
  // What the papers do not give as it was drawn is not for the conversion to answer for.
  if (before.kind === 'short' && before.nearest.cards <= answer.nearest.cards) return [];
  const papers = answer.papers.map(({ paper }) => drawn.papers.get(paper)!.name);
  const { cards, proved } = answer.nearest;
  return [
    `${listed(papers)} would be short: ${counted(cards, 'card')} of ${recast.layout.cards}${proved ? '' : ', as far as was found'}.`,
  ];
}

function moreSheets(answer: Plan | Shortage, { recast, drawn }: Told): readonly string[] {
  if (answer.kind === 'short' || recast.before.kind === 'short') return [];
  return [...answer.papers].flatMap(([id, { sheets }]) => {
    const had = recast.papers.find(({ paper }) => paper === id)?.sheets.from ?? null;
    if (had === null || sheets <= had) return [];
    return [`${drawn.papers.get(id)!.name} would take ${counted(sheets, 'sheet')}, not ${had}.`];
  });
}

// --- Refusals ---

/** Why a wish cannot be followed, and what may be wished. */
export function recastRefusalSentence(
  refusal: RecastRefusal,
  layout: Layout,
  { units, glyphs }: Showing,
): string {
  const paperOf = (id: string) => layout.papers.get(id)?.name ?? id;
  switch (refusal.code) {
    case 'noMarks':
      return `Marks ${showLengthWithUnit(refusal.marks, units, glyphs)} apart are no marks. Write a length above 0, such as 1 mm or 1/16 in.`;
    case 'noCards':
      return `${refusal.cards} is no number of cards for a set. Write a whole number from 1 to ${refusal.most}.`;
    case 'noSize': {
      const of = refusal.of === 'base' ? 'A base' : 'A sheet';
      return `${of} of ${showSize(refusal.size, units, glyphs)} has no size. Both measures have to be above 0.`;
    }
    case 'noSuchPaper':
      return `The layout has no paper “${refusal.paper}”. It has ${either(refusal.papers)}.`;
    case 'noSuchSheets': {
      const of = refusal.paper === null ? 'No paper of the layout' : `${paperOf(refusal.paper)}`;
      const has = refusal.paper === null ? 'has' : 'has no';
      return `${of} ${has} sheets of ${showSize(refusal.size, units, glyphs)} that others could stand for.`;
    }
    case 'baseTooLarge':
      return (
        `A base of ${showSize(refusal.size, units, glyphs)} is ${showSize(refusal.opened, units, glyphs)} lying open, larger than any sheet ` +
        `of ${paperOf(refusal.paper)} as it has to lie. Ask for a smaller base or larger sheets.`
      );
    case 'baseUnderMark':
      return `The base (${showSize(refusal.size, units, glyphs)}) is smaller than one mark of ${showLengthWithUnit(refusal.marks, units, glyphs)}. Ask for finer marks.`;
    case 'nothingLeft': {
      const parts = refusal.parts.map((id) => partName(layout, id));
      return `On a base of ${showSize(refusal.size, units, glyphs)} borders and gaps leave nothing for ${listed(parts)}. Ask for a larger base or finer marks.`;
    }
  }
}

function nameOf(layout: Layout, part: string): string {
  return part === 'base' ? 'the base' : partName(layout, part);
}
