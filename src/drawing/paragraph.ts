import type { Block, Row } from './block.ts';
import type { Mark, Role, Weight } from './mark.ts';
import type { TextStyle } from './textStyle.ts';
import type { Typeface } from './typeface.ts';

/** A stretch of text in one weight and colour; what it does not say is the paragraph's. */
export interface Run {
  readonly text: string;
  readonly weight?: Weight;
  readonly colour?: string;
}

/** Words: plain, or in runs. */
export type Words = string | readonly Run[];

export interface ParagraphRequest {
  readonly words: Words;
  readonly widthPt: number;
  readonly style: TextStyle;
  readonly typeface: Typeface;
  /** `paragraph` when absent; null: no role of its own (in a cell, in a figure). */
  readonly role?: Role | null;
  /** `start` when absent. */
  readonly align?: 'start' | 'middle' | 'end';
  readonly beforePt?: number;
  readonly afterPt?: number;
  readonly withNext?: boolean;
  readonly together?: boolean;
}

/** A paragraph as a block of lines, with the height of them all. */
export interface Paragraph extends Block {
  readonly content: readonly Row[];
  readonly heightPt: number;
}

/**
 * Text broken into lines no wider than `widthPt`.
 *
 * Breaks at spaces, after hyphens and dashes that no digit follows, and after a new-line character; never at a
 * no-break space or in a fraction made with U+2044. A word wider than the line is broken between its characters
 * and goes on without a hyphen. Spaces at a break stay at the end of their line, unseen, so the marks still hold
 * every character of the text. A first or last line is not left alone at the foot or head of a page.
 */
export function setParagraph(request: ParagraphRequest): Paragraph {
  const { widthPt, style } = request;
  const { text, width, runsOf } = measured(request);
  const content = linesOf(text, (from, to) => width(from, endOfInk(text, from, to)) <= widthPt).map(
    ([from, to]) => {
      const spare = widthPt - width(from, endOfInk(text, from, to));
      let xPt = { start: 0, middle: spare / 2, end: spare }[request.align ?? 'start'];
      const marks = runsOf(from, to).map((run): Mark => {
        const mark: Mark = {
          kind: 'text',
          at: { xPt, yPt: baselinePt(style) },
          text: run.text.replaceAll('\n', ' '),
          sizePt: style.sizePt,
          weight: run.weight,
          colour: run.colour,
          anchor: 'start',
        };
        xPt += run.widthPt;
        return mark;
      });
      return { heightPt: style.leadingPt, marks };
    },
  );
  const role = request.role === undefined ? 'paragraph' : request.role;
  return {
    content,
    heightPt: content.length * style.leadingPt,
    ...(role === null ? {} : { role }),
    ...(request.beforePt === undefined ? {} : { beforePt: request.beforePt }),
    ...(request.afterPt === undefined ? {} : { afterPt: request.afterPt }),
    ...(request.withNext === undefined ? {} : { withNext: request.withNext }),
    ...(request.together === undefined ? {} : { together: request.together }),
  };
}

/** How wide the words are on one line. */
export function wordsWidthPt(words: Words, style: TextStyle, typeface: Typeface): number {
  const { text, width } = measured({ words, style, typeface });
  return width(0, text.length);
}

/** The width of the widest thing in the words that is not to be broken. */
export function widestWordPt(words: Words, style: TextStyle, typeface: Typeface): number {
  const { text, width } = measured({ words, style, typeface });
  let widest = 0;
  let from = 0;
  for (const to of breaksOf(text)) {
    widest = Math.max(widest, width(from, endOfInk(text, from, to)));
    from = to;
  }
  return widest;
}

/** Where the baseline lies under the top of a line: the type stands in the middle of its leading. */
export function baselinePt(style: TextStyle): number {
  return (style.leadingPt - style.sizePt) / 2 + style.sizePt * 0.77;
}

interface MeasuredRun {
  readonly text: string;
  readonly weight: Weight;
  readonly colour: string;
  readonly widthPt: number;
}

/** The words as one text, with what any stretch of it is made of and how wide that is. */
function measured({ words, style, typeface }: Pick<ParagraphRequest, 'words' | 'style' | 'typeface'>): {
  readonly text: string;
  readonly width: (from: number, to: number) => number;
  readonly runsOf: (from: number, to: number) => readonly MeasuredRun[];
} {
  const given: readonly Run[] = typeof words === 'string' ? [{ text: words }] : words;
  let start = 0;
  const runs = given.map((run) => {
    const from = start;
    start += run.text.length;
    return { ...run, from, to: start };
  });
  const runsOf = (from: number, to: number): readonly MeasuredRun[] =>
    runs
      .filter((run) => run.from < to && run.to > from)
      .map((run) => {
        const text = run.text.slice(Math.max(from, run.from) - run.from, Math.min(to, run.to) - run.from);
        const weight = run.weight ?? style.weight;
        return {
          text,
          weight,
          colour: run.colour ?? style.colour,
          widthPt: typeface.widthPt(text.replaceAll('\n', ' '), style.sizePt, weight),
        };
      });
  return {
    text: given.map((run) => run.text).join(''),
    width: (from, to) => runsOf(from, to).reduce((total, run) => total + run.widthPt, 0),
    runsOf,
  };
}

/** Lines as [from, to) of the text, each as long as `fits` allows; an empty text is one empty line. */
function linesOf(
  text: string,
  fits: (from: number, to: number) => boolean,
): readonly (readonly [number, number])[] {
  const lines: (readonly [number, number])[] = [];
  let from = 0;
  let last = 0;
  const finish = (to: number): void => {
    lines.push([from, to]);
    from = to;
    last = to;
  };
  for (const to of breaksOf(text)) {
    if (!fits(from, to) && last > from) finish(last);
    if (!fits(from, to)) {
      for (const character of clustersOf(text, from, to)) {
        if (!fits(from, character) && last > from) finish(last);
        last = character;
      }
    }
    last = to;
    if (text[to - 1] === '\n') finish(to);
  }
  if (from < text.length || lines.length === 0) finish(text.length);
  return lines;
}

/** The places after which a line may end, the end of the text last. */
function breaksOf(text: string): readonly number[] {
  const places = [...text.matchAll(breakable)].map((match) => match.index + match[0].length);
  return places.at(-1) === text.length ? places : [...places, text.length];
}

/**
 * A new line; spaces that allow a break, with all that follow them; a zero-width space; hyphens and dashes between
 * letters (in `5-1/4` or `1-2` they join numbers).
 */
const breakable = /\n|[ \t\u2000-\u2006\u2008-\u200a\u200b]+\n?|(?<=\S)[-\u2010\u2013\u2014](?=[^\s\d])/gu;

/** The ends of the characters as a reader counts them, accents and fractions kept whole. */
function clustersOf(text: string, from: number, to: number): readonly number[] {
  return [...text.slice(from, to).matchAll(cluster)].map((match) => from + match.index + match[0].length);
}

const cluster = /\d+\u2044\d+|(?:\P{M}|^)(?:\p{M}|(?:\u200d|\u2060)\P{M}?)*/gu;

/** `to` without the spaces before it, which take no room at the end of a line. */
function endOfInk(text: string, from: number, to: number): number {
  let end = to;
  while (end > from && /[ \t\n\u2000-\u2006\u2008-\u200b]/u.test(text[end - 1]!)) end -= 1;
  return end;
}
