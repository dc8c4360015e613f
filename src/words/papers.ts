import type { Layout } from '../layout/index.ts';
import { type Axis, showSize, type Units } from '../measure/index.ts';
import type { Plan } from '../planning/index.ts';
import type { Paper, SheetStock, Up } from '../stash/index.ts';
import { capital, counted, countedInWords, countWord } from './count.ts';
import { foldWord } from './foldWords.ts';
import type { Showing } from './showing.ts';

/**
 * The papers on hand as an order docket reads, a sentence for each size of sheet:
 * `Meadow, 12 x 12 in, two on hand, stands upright.`
 */
export function docketOf(paper: Paper, showing: Showing): readonly string[] {
  return paper.sheets.map((stock) => sentence([paper.name, ...stockWords(paper, stock, showing)]));
}

/**
 * What a plan takes of a paper, a sentence for each size of sheet that is cut:
 * `1 sheet of Meadow, 12 x 12 in, two on hand, stands upright.`
 */
export function takenOf(paper: Paper, plan: Plan, showing: Showing): readonly string[] {
  return paper.sheets.flatMap((stock, index) => {
    const count = plan.sheets.filter((sheet) => sheet.paper === paper.id && sheet.stock === index).length;
    if (count === 0) return [];
    const sheets = counted(count, stock.scrap ? 'scrap' : 'sheet');
    return [sentence([`${sheets} of ${paper.name}`, ...stockWords(paper, stock, showing)])];
  });
}

function stockWords(paper: Paper, stock: SheetStock, showing: Showing): readonly string[] {
  // “Ivory cardstock” says what it is already.
  const says = paper.kind !== null && paper.name.toLowerCase().includes(paper.kind.toLowerCase());
  return [
    ...(paper.kind === null || says ? [] : [paper.kind]),
    ...weightWords(paper),
    showSize(stock.size, showing.units, showing.glyphs),
    onHand(stock),
    ...(stock.grain === null ? [] : [grainWords(stock.grain)]),
    standing(paper.up),
    ...(paper.back === null ? [] : [`other side ${paper.back.name}, ${standing(paper.back.up)}`]),
  ];
}

function weightWords({ gsm, pounds }: Paper): readonly string[] {
  if (gsm === null) return [];
  return pounds === undefined
    ? [`${gsm} g/m²`]
    : [`${pounds.pounds} lb ${pounds.of} (${Math.round(gsm)} g/m²)`];
}

/** How a print may lie under the blade, in a few words. */
export function standing(up: Up): string {
  return standings[up];
}

const standings = {
  any: 'may lie any way',
  'one-way': 'stands upright',
  'two-way': 'stands upright or half round',
} as const satisfies Record<Up, string>;

/** What the set takes of things that are not on hand in a known number. */
export interface ToBuy {
  /** Sheets of the papers that are bought as needed, with how many the plan takes. */
  readonly papers: readonly string[];
  /** Bases and parts that are bought ready made. */
  readonly parts: readonly string[];
}

/** The shopping list of a plan: sentences, empty where there is nothing to buy. */
export function toBuy(layout: Layout, plan: Plan, showing: Showing): ToBuy {
  const papers: string[] = [];
  for (const paper of layout.papers.values()) {
    for (const [index, stock] of paper.sheets.entries()) {
      if (stock.count !== null) continue;
      const used = plan.sheets.filter((sheet) => sheet.paper === paper.id && sheet.stock === index).length;
      if (used === 0) continue;
      papers.push(
        sentence([
          `${countedInWords(used, 'sheet')} of ${paper.name}`,
          showSize(stock.size, showing.units, showing.glyphs),
        ]),
      );
    }
  }
  const parts: string[] = [];
  if (layout.base.papers.length === 0) {
    const bases = layout.cards + layout.base.spare;
    parts.push(
      sentence([
        countedInWords(bases, 'base'),
        'bought ready made',
        `${showSize(layout.base.size, showing.units, showing.glyphs)} closed`,
        ...(layout.base.fold === 'none' ? [] : [foldWord(layout.base)]),
      ]),
    );
  }
  for (const part of layout.parts) {
    if (part.papers.length > 0) continue;
    const each = part.places.length;
    const all = layout.cards * each + part.spare;
    parts.push(
      sentence([
        part.name,
        countWord(all),
        each === 1 ? 'one for each card' : `${countWord(each)} for each card`,
        ...(part.spare === 0 ? [] : [`${countWord(part.spare)} of them spare`]),
      ]),
    );
  }
  return { papers, parts };
}

/** What lies ready on the table besides paper, in the order it is taken up. */
export function toolsFor(layout: Layout, units: Units): readonly string[] {
  const adheres = new Set(layout.parts.map((part) => part.adhere));
  const torn = layout.parts.some((part) => Object.values(part.torn).some((depth) => depth > 0));
  return [
    `a trimmer, and a ruler marked in ${units === 'in' ? 'inches' : 'millimetres'} to measure the sheets first`,
    ...(layout.base.fold === 'none' || layout.base.papers.length === 0
      ? []
      : ['a scoring tool and a bone folder']),
    ...(torn ? ['a ruler with a firm edge, to tear against'] : []),
    ...(layout.parts.some(({ dieCut }) => dieCut) ? ['the dies, and the machine that presses them'] : []),
    ...(layout.parts.some(({ stamped }) => stamped) ? ['stamps and ink'] : []),
    ...(adheres.has('flat') ? ['liquid glue or tape, for what lies flat'] : []),
    ...(adheres.has('raised') ? ['foam tape, for what is raised'] : []),
    ...(adheres.has('spots') ? ['glue spots'] : []),
  ];
}

/** `two on hand`, `as many as needed`, `a scrap`. */
function onHand({ count, scrap }: SheetStock): string {
  if (count === null) return 'as many as needed';
  if (!scrap) return `${count === 0 ? 'none' : countWord(count)} on hand`;
  return count === 1 ? 'a scrap' : countedInWords(count, 'scrap');
}

function grainWords(axis: Axis): string {
  return axis === 'height' ? 'grain up and down' : 'grain from side to side';
}

function sentence(parts: readonly string[]): string {
  return `${capital(parts.join(', '))}.`;
}
