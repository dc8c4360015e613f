import {
  type Bag,
  type BagLayout,
  type BagPiece,
  type CutList,
  type CutSize,
  type KitOffer,
  type KitProblem,
  type KitReport,
  layoutName,
  type PlannedKit,
} from '../kits/index.ts';
import type { KitLayout, Layout } from '../layout/index.ts';
import { type Size, showSize } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { capital, counted, countedInWords, countWord, listed, numbersListed } from './count.ts';
import { finishedProblemSentence } from './finishedProblem.ts';
import { layoutProblemSentence } from './layoutProblem.ts';
import { partName } from './partName.ts';
import { planningProblemSentence } from './planningProblem.ts';
import { paperSentences } from './shortageSentence.ts';
import type { Showing } from './showing.ts';
import { changeWords, effectSentences } from './sizeChange.ts';

/** `16 kits: 14 seats, one for the teacher and one spare; 48 cards of three layouts.` */
export function kitSentence({ kit, bags, cards }: KitReport): string {
  const whose = listed([
    countedInWords(kit.seats, 'seat'),
    ...(kit.teacher === 0 ? [] : [`${countWord(kit.teacher)} for the teacher`]),
    ...(kit.spare === 0 ? [] : [`${countWord(kit.spare)} spare`]),
  ]);
  return `${counted(bags, 'kit')}: ${whose}; ${counted(cards, 'card')} of ${countedInWords(kit.layouts.length, 'layout')}.`;
}

/** Which bags: `Every bag`, `Bags 1 to 14 and 16`. */
export function bagsName({ bags }: Bag, { contents }: Pick<KitReport, 'contents'>): string {
  if (contents.length === 1) return 'Every bag';
  return `${bags.length === 1 ? 'Bag' : 'Bags'} ${numbersListed(bags)}`;
}

/** What is in a bag altogether: `19 pieces of paper, 3 envelopes, 1 Strip of foam squares.` */
export function bagSentence({ pieces, layouts, bought }: Bag): string {
  const envelopes = layouts.reduce((sum, { envelopes: each }) => sum + each, 0);
  const parts = layouts.flatMap(({ layout, bought: things }) =>
    things.map(({ name, count }) => `${count} ${boughtName(layout.layout, name)}`),
  );
  return `${listed([
    `${counted(pieces, 'piece')} of paper`,
    ...(envelopes === 0 ? [] : [counted(envelopes, 'envelope')]),
    ...parts,
    ...bought.map(({ name, count }) => `${count} ${name}`),
  ])}.`;
}

/** What is in a bag for one layout, a line for each kind of piece, as a bag label has it. */
export function bagLines(
  { layout: { layout }, pieces, bought, envelopes }: BagLayout,
  showing: Showing,
): readonly string[] {
  return [
    ...pieces.map((piece) => `${piece.count} ${pieceWords(layout, piece, showing)}`),
    ...bought.map(({ name, count }) => `${count} ${boughtName(layout, name)}`),
    ...(envelopes === 0 ? [] : [`${envelopes} ${envelopeName(layout, envelopes, showing)}`]),
  ];
}

function pieceWords(layout: Layout, { part, paper, size }: BagPiece, showing: Showing): string {
  const from = layout.papers.get(paper)?.name ?? paper;
  const name = part === 'base' ? 'Base' : partName(layout, part);
  return `${name}, ${from}${size === null ? '' : `, ${showSize(size, showing.units, showing.glyphs)}`}`;
}

function boughtName(layout: Layout, part: string): string {
  return part === 'base' ? 'bought base' : partName(layout, part);
}

function envelopeName({ envelope }: Layout, count: number, showing: Showing): string {
  const noun = count === 1 ? 'envelope' : 'envelopes';
  if (envelope === null) return noun;
  const size = showSize(envelope.size, showing.units, showing.glyphs);
  return `${noun}, ${envelope.name === '' ? size : `${envelope.name}, ${size}`}`;
}

/** What all the bags take together, and what is made beside them. */
export function kitTotalsSentences({ kit, bags, pieces, envelopes, contents }: KitReport): readonly string[] {
  const bought = (contents[0]?.layouts ?? []).flatMap(({ layout, bought: things }) =>
    things.map(
      ({ name, count }) => `${boughtName(layout.layout, name)} (${layoutName(layout)}): ${count * bags}.`,
    ),
  );
  return [
    `${counted(pieces.inBags, 'cut piece')} in all${envelopes === 0 ? '' : ` and ${counted(envelopes, 'envelope')}`}.`,
    ...(pieces.spare === 0
      ? []
      : [`${capital(countedInWords(pieces.spare, 'piece'))} more, to spare beside the bags.`]),
    ...bought.map(capital),
    ...kit.bought.map(
      ({ name, each, spare }) =>
        `${name}: ${each * bags + spare}${spare === 0 ? '' : `, ${spare} of them spare`}.`,
    ),
  ];
}

/** What is cut from one paper, a sentence or two for each size; `layout` is that of the kit as one set. */
export function cutListSentences(
  { paper, sheets, whole, sizes }: CutList,
  layout: Layout,
  showing: Showing,
): readonly string[] {
  const shown = (size: Size) => showSize(size, showing.units, showing.glyphs);
  const onHand = paper.sheets.map(({ size, count }) =>
    count === null ? shown(size) : `${shown(size)}, ${count === 0 ? 'none' : countWord(count)} on hand`,
  );
  const stay =
    whole === null || whole === 0 ? '' : `; ${countWord(whole)} ${whole === 1 ? 'stays' : 'stay'} whole`;
  const taken =
    sheets === null ? '' : sheets === 0 ? ': nothing is cut from it' : `: ${counted(sheets, 'sheet')}${stay}`;
  return [
    `${paper.name} (${listed(onHand)})${taken}.`,
    ...sizes.map(({ size, pieces, need, yield: made }) => {
      const kinds = pieces.map((piece) => `${piece.need} for ${partName(layout, piece.part)}`);
      const all = pieces.length === 1 ? '' : `, ${need} in all`;
      const each = made === null ? '' : ` ${yieldSentence(made)}`;
      return `${shown(size)}: ${listed(kinds)}${all}.${each}`;
    }),
  ];
}

function yieldSentence({ perSheet, over }: NonNullable<CutSize['yield']>): string {
  const gives = `A sheet gives ${countWord(perSheet)}`;
  return over === 0 ? `${gives}: exactly enough.` : `${gives}: ${countWord(over)} more could be had.`;
}

/** What is short and which layouts that leaves without, paper by paper, and the most kits that can be filled. */
export function kitShortSentences(
  { set, shortage }: PlannedKit,
  bags: number,
  showing: Showing,
): readonly string[] {
  if (shortage === null) return [];
  const { nearest, pieces } = shortage;
  return [
    ...shortage.papers.flatMap((short) =>
      paperSentences(short, { layout: set.layout, pieces, ids: false }, showing),
    ),
    nearest.cards === 0
      ? `These papers fill not even one bag${nearest.proved ? '' : ', as far as was found'}.`
      : `These papers fill ${counted(nearest.cards, 'bag')} of ${bags}${nearest.proved ? ', and no more' : '; whether more is not proved'}.`,
  ];
}

/** How many kits the shared papers are enough for, and what runs out first. */
export function kitEnoughSentence({ enough, set }: PlannedKit): string {
  const { cards, limit, proved } = enough;
  if (cards === null) return 'Nothing limits how many kits these papers are enough for.';
  const first = listed(limit.map((id) => set.layout.papers.get(id)?.name ?? id));
  const sure = proved ? ', and no more' : '; whether more is not proved';
  return `The papers are enough for ${counted(cards, 'kit')}${sure}${first === '' ? '' : `. What runs out first: ${first}`}.`;
}

/** What an offer is, in a sentence or several. */
export function kitOfferSentence(offer: KitOffer, report: KitReport, showing: Showing): string {
  const { kit, bags, planned } = report;
  const paperName = (id: string) => planned?.set.layout.papers.get(id)?.name ?? id;
  switch (offer.kind) {
    case 'standIn': {
      const free = planned?.wanted.every(({ paper }) => paper !== offer.by) ?? false;
      const where = offer.instead.map(({ layout, part, cards }) => {
        const one = layoutOf(kit.layouts, layout);
        const name = part === 'base' ? 'Base' : partName(one.layout, part);
        return `${name} (${layoutName(one)}) on ${cards === 1 ? 'the last card' : `the last ${countWord(cards)} cards`}`;
      });
      return `${paperName(offer.by)}${free ? ', from which nothing else is cut,' : ''} stands in for ${paperName(offer.paper)}: ${listed(where)}.`;
    }
    case 'sizes': {
      const one = layoutOf(kit.layouts, offer.layout);
      const changes = offer.changes.map((change) => changeWords(change, one.layout, showing));
      const made = offer.pieces.map(({ part, size, perSheet, inAll }) => {
        const name = part === 'base' ? 'Base' : partName(one.layout, part);
        const all = inAll === null ? '' : `, ${inAll} in all`;
        return `${name} is then ${showSize(size, showing.units, showing.glyphs)}: ${counted(perSheet, 'piece')} from a sheet of ${paperName(offer.paper)}${all}.`;
      });
      const effect = effectSentences(offer.effect, offer.changes, one.layout, showing);
      const name = `${layoutName(one)}${offer.rounder ? ', in rounder sizes' : ''}`;
      return [`${name}: ${listed(changes)}.`, ...made, ...effect].join(' ');
    }
    case 'sheets': {
      const paper = planned?.set.layout.papers.get(offer.paper);
      const size = paper?.sheets[offer.stock]?.size;
      const shown = size === undefined ? '' : ` (${showSize(size, showing.units, showing.glyphs)})`;
      const sure = offer.proved ? '' : '; whether fewer would do is not proved';
      return `${capital(countedInWords(offer.count, 'further sheet'))} of ${paperName(offer.paper)}${shown}${sure}.`;
    }
    case 'together':
      return `All at once: ${offer.offers.map((one) => kitOfferSentence(one, report, showing)).join(' ')}`;
    case 'fewer':
      return `${capital(countedInWords(offer.bags, 'kit'))} instead of ${bags}.`;
  }
}

function layoutOf(layouts: readonly KitLayout[], id: string): KitLayout {
  const found = layouts.find((one) => one.id === id);
  assert(found !== undefined, 'What is told of a kit is of its layouts', { id });
  return found;
}

/** What is wrong with a layout of the kit or with the shared sheets, with the name of the layout. */
export function kitProblemSentence(
  found: KitProblem,
  { kit, planned }: Pick<KitReport, 'kit' | 'planned'>,
  showing: Showing,
): string {
  if (found.of === 'planning') {
    assert(planned !== null, 'What is found in planning has been planned');
    return planningProblemSentence(found.problem, planned.set.layout, showing);
  }
  const one = layoutOf(kit.layouts, found.layout);
  const says =
    found.of === 'layout'
      ? layoutProblemSentence(found.problem, showing)
      : finishedProblemSentence(found.problem, one.layout, showing);
  return `${layoutName(one)}: ${says}`;
}

/** What was done to a kit, in a few words for undoing it. */
export type KitEditTold =
  | { readonly what: 'title'; readonly to: string }
  | { readonly what: 'seats' | 'teacher' | 'spare'; readonly to: number }
  | { readonly what: 'each'; readonly layout: string; readonly to: number }
  | { readonly what: 'sheets'; readonly paper: string; readonly to: number | null }
  | { readonly what: 'envelopes'; readonly to: boolean }
  | { readonly what: 'offer'; readonly kind: KitOffer['kind'] }
  | { readonly what: 'length'; readonly layout: string };

/** `14 seats`, `a paper that stands in`. */
export function kitEditSentence(told: KitEditTold): string {
  switch (told.what) {
    case 'title':
      return `called “${told.to}”`;
    case 'seats':
      return counted(told.to, 'seat');
    case 'teacher':
      return `${counted(told.to, 'bag')} for the teacher`;
    case 'spare':
      return counted(told.to, 'spare bag');
    case 'each':
      return `${counted(told.to, 'card')} of ${told.layout} from each bag`;
    case 'sheets':
      return `${told.to === null ? 'as many sheets as needed' : counted(told.to, 'sheet')} of ${told.paper}`;
    case 'envelopes':
      return told.to ? 'with envelopes' : 'without envelopes';
    case 'length':
      return `another length in ${told.layout}`;
    case 'offer':
      return offerWords[told.kind];
  }
}

const offerWords = {
  standIn: 'another paper stands in',
  sizes: 'other sizes',
  sheets: 'more sheets',
  together: 'several changes at once',
  fewer: 'fewer kits',
} as const satisfies Record<KitOffer['kind'], string>;
