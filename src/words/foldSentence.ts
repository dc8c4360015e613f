import type { FinishedProblem, Folding } from '../finished/index.ts';
import { foldedBase, type Layout } from '../layout/index.ts';
import {
  type Length,
  lengthOfTicks,
  minus,
  showLength,
  showLengthWithUnit,
  showSize,
  sum,
} from '../measure/index.ts';
import { aboutThick } from './aboutThick.ts';
import { capital, countWord, listed } from './count.ts';
import { foldWord, panelWord } from './foldWords.ts';
import type { Showing } from './showing.ts';

/** How the base of a set is folded, in sentences; none for a flat card. */
export function foldingSentences(
  folding: Folding | null,
  layout: Layout,
  showing: Showing,
): readonly string[] {
  if (folding === null) return [];
  const { axis, opened, panels, scores, grain, papers, sheets } = folding;
  const base = foldedBase(layout);
  const shown = (length: Length) => showLengthWithUnit(length, showing.units, showing.glyphs);
  const named = panels.map(({ length }, index) => `${panelWord(base, index)} ${shown(length)}`);
  const several = scores.length > 1;
  const mixed = scores.some(({ folds }) => folds === 'mountain');
  const places = listed(scores.map(({ at, folds }) => `${shown(at)}${mixed ? ` (a ${folds})` : ''}`));
  const closed = Math.max(...panels.map(({ level }) => level)) + 1;
  return [
    `${capital(foldWord(base))}: the base opens to ${showSize(opened, showing.units, showing.glyphs)}, and closed it is ${countWord(closed)} layers of paper.`,
    `Its panels from the ${axis === 'width' ? 'left' : 'top'}, the inside up: ${listed(named)}; scored at ${places}${several && !mixed ? ', all of them valleys' : ''}.`,
    ...withinSentences(folding, layout, showing),
    ...(papers.length === 0
      ? []
      : [
          `The grain should run ${grain === 'height' ? 'from top to bottom' : 'from left to right'}, along the ${several ? 'folds' : 'fold'}.`,
        ]),
    ...papers.map((paper) => paperSentence(paper, layout, showing)),
    // The rule counts in parts of an inch.
    ...(showing.units === 'in' ? sheets.map((sheet) => sheetSentence(sheet, layout, showing)) : []),
  ];
}

/** What is wrong with what lies within a folded base. */
export function foldingProblemSentence(
  { numbers }: FinishedProblem,
  _layout: Layout,
  showing: Showing,
): string {
  const length = (key: string) => lengthOfTicks(numbers[key] ?? 0);
  const allowance = showLengthWithUnit(length('allowance'), showing.units, showing.glyphs);
  return `What lies within the base is about ${aboutThick(length('thickness'), showing)} thick, but its panels there are only ${allowance} narrower: they stand against the fold, and the front does not close over them. Give it an allowance of more than that, or lay less on the inside.`;
}

function withinSentences({ within }: Folding, { base }: Layout, showing: Showing): readonly string[] {
  if (within === null) return [];
  const narrower = showLengthWithUnit(within.allowance, showing.units, showing.glyphs);
  const roll =
    base.fold === 'roll' ? '; the third panel by half as much again, and the last by that once more' : '';
  const usual = base.allowance === null ? ', as is usual' : '';
  return [
    `What lies within is ${narrower} narrower${usual}${roll}. Printed figures go from 1/32 in for thin paper to 1/8 in for cover.`,
    `Between the front and what it closes over lie about ${aboutThick(within.thickness, showing)} at the thickest; the edge of the front stays back by about as much.`,
  ];
}

function paperSentence(
  { paper: id, thickness, asked, rules, twice }: Folding['papers'][number],
  { papers }: Layout,
  showing: Showing,
): string {
  const name = papers.get(id)?.name ?? id;
  const thick = `${thickness.estimated ? 'about ' : ''}${aboutThick(thickness.length, showing)}`;
  const verdict =
    asked === 0
      ? 'no printed rule asks for a score'
      : asked === rules
        ? 'every printed rule asks for a score'
        : `${countWord(asked)} of ${countWord(rules)} printed rules ${asked === 1 ? 'asks' : 'ask'} for a score, so score it`;
  return `${name}, ${thick} thick: ${verdict}${twice ? '; so thick a paper is scored twice for each fold' : ''}.`;
}

/** A sheet folded as it is, from edge to edge: what a printer's rule makes of it. */
function sheetSentence(
  { paper: id, flat, panels, rest }: Folding['sheets'][number],
  { papers }: Layout,
  showing: Showing,
): string {
  const name = papers.get(id)?.name ?? id;
  const long = showLengthWithUnit(flat, showing.units, showing.glyphs);
  const parts = `${listed(panels.map((panel) => showLength(panel, showing.units, showing.glyphs)))} ${showing.units}`;
  const over = showLengthWithUnit(rest, showing.units, showing.glyphs);
  const left =
    rest === 0
      ? 'which is all of it'
      : rest > 0
        ? `which leaves ${over}: cut that off first`
        : `which is ${showLengthWithUnit(minus(sum(...panels), flat), showing.units, showing.glyphs)} more than there is`;
  const front = showLengthWithUnit(panels[0]!, showing.units, showing.glyphs);
  return `A sheet of ${name} ${long} long, folded as it is, makes a front of ${front} by the printers' rule: panels of ${parts}, ${left}.`;
}
