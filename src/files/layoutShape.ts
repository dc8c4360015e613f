import * as z from 'zod';
import { foldKinds } from '../making/index.ts';
import type { Units } from '../measure/index.ts';
import { expecting } from './expectation.ts';
import {
  fields,
  idForm,
  idText,
  type LengthRange,
  lengthOrFill,
  lengthText,
  longestId,
  oneOf,
  shownText,
  wholeNumber,
} from './field.ts';

/** How much one layout file may hold; more is refused before anything else is looked at. */
export const limits = { parts: 500, papers: 200, sheets: 1_000, papersDealt: 200, pieces: 1_000 } as const;

/** The faces of a card, which are no part's id. */
export const faces = ['base', 'inside', 'back'] as const;

/** The fields of `place` that name a neighbour, with the end they fix. */
export const neighbourFields = ['below', 'above', 'rightOf', 'leftOf'] as const;

/** What version 1 of a layout file holds, its fields checked one by one; what must go together is `layoutRelations`. */
export type LayoutShape = z.infer<ReturnType<typeof shapeIn>>;

/** The shape of a layout file whose lengths without a unit are in `units`. */
export function layoutShape(units: Units): ReturnType<typeof shapeIn> {
  return shapes[units];
}

function shapeIn(units: Units) {
  const up = oneOf(['any', 'one-way', 'two-way']).meta({
    description: 'How a print may stand: any way (the default), only upright, or upright and half round.',
  });
  const positive = (description: string) => lengthText(units, 'positive').meta({ description });
  const flag = (description: string) =>
    z
      .boolean({ error: expecting('flag') })
      .optional()
      .meta({ description });
  const colour = (description: string) =>
    z
      .string({ error: expecting('colour') })
      .regex(colourForm, { error: expecting('colour') })
      .optional()
      .meta({ description });
  const edges = (range: 'positive' | 'not negative') => ({
    left: lengthText(units, range).optional(),
    right: lengthText(units, range).optional(),
    top: lengthText(units, range).optional(),
    bottom: lengthText(units, range).optional(),
  });
  const size = (description: string) =>
    z
      .tuple([lengthText(units, 'positive'), lengthText(units, 'positive')], {
        error: expecting('size', pair),
      })
      .meta({ description });
  const dealt = {
    paper: z
      .union(
        [
          idText('paper-id'),
          z
            .array(idText('paper-id'), { error: paperChoice })
            .min(1, { error: paperChoice })
            .max(limits.papersDealt, { error: paperChoice }),
          z.null({ error: paperChoice }),
        ],
        { error: paperChoice },
      )
      .meta({
        description:
          'The paper it is cut from; a list is dealt to cards 1, 2, 3 … in turn and round again; null: bought, not cut.',
      }),
    side: oneOf(['front', 'back']).optional().meta({ description: 'The side of the paper that is seen.' }),
    turn: oneOf(['locked', 'free']).optional().meta({
      description:
        "locked: the piece's width runs along the sheet's width. Without it: locked on a paper with a direction, free on one without.",
    }),
    spare: wholeNumber(0, 100_000).optional().meta({
      description:
        'Extra pieces for the whole set, dealt to the papers of the list in turn from its first; 0 unless said.',
    }),
  };

  const room = (range: LengthRange, of: string) =>
    z
      .tuple([lengthText(units, range), lengthText(units, range)], { error: expecting('room-pair', pair) })
      .optional()
      .meta({ description: `The least and the most that ${of} may be.` });
  const sizeRooms = {
    width: room('positive', 'the width'),
    height: room('positive', 'the height'),
  };
  // Of the two ways to write it, the object is looked at first: `shapeProblems` takes the first that could be meant.
  const none = z.literal('none', { error: expecting('room') });
  const baseRoom = fields('room', sizeRooms);
  const partRoom = fields('room', {
    ...sizeRooms,
    diameter: room('positive', 'the diameter'),
    inset: room('positive', 'the inset'),
    gap: room('any', 'every gap to its neighbours'),
    left: room('any', 'the distance from the left edge'),
    right: room('any', 'the distance from the right edge'),
    top: room('any', 'the distance from the top edge'),
    bottom: room('any', 'the distance from the bottom edge'),
  });

  const base = fields('base', {
    size: size('The closed front: width, then height.'),
    fold: oneOf(foldKinds).meta({ description: 'left: a side fold; top: a top fold; none: a flat card.' }),
    ...dealt,
    room: z
      .union([baseRoom, none], { error: expecting('room') })
      .optional()
      .meta({ description: 'How far the closed front may move; without it, not at all.' }),
  });

  const sheet = fields('sheet', {
    size: size('The true size as measured: width, then height, with the pattern upright.'),
    count: wholeNumber(0, 1_000_000, 'sheet-count')
      .nullable()
      .meta({ description: 'How many there are; null: as many as needed.' }),
    price: z
      .string({ error: expecting('price') })
      .regex(priceForm, { error: expecting('price') })
      .optional()
      .meta({
        description:
          'The price of one sheet. All sheets of a paper that are no scraps have one, or none has.',
      }),
    grain: oneOf(['width', 'height'])
      .optional()
      .meta({ description: 'The direction the fibres run, where known.' }),
    scrap: flag('Already cut into: costs nothing and is used first.'),
    margin: z
      .union([lengthText(units, 'not negative'), fields('margin', edges('not negative'))], {
        error: expecting('margin'),
      })
      .optional()
      .meta({
        description: 'What cannot be used along every edge, or along each; it is cut off first.',
      }),
  });

  const paper = fields('paper', {
    name: shownText().optional().meta({ description: 'What people call it; the id unless said.' }),
    kind: shownText(longestId)
      .optional()
      .meta({ description: 'What it is, as the trade sorts it: cardstock, patterned, vellum …' }),
    gsm: z
      .number({ error: expecting('number', gsm) })
      .min(gsm.low, { error: expecting('number', gsm) })
      .max(gsm.high, { error: expecting('number', gsm) })
      .optional()
      .meta({ description: 'Grammage in grams per square metre.' }),
    thickness: positive('How thick one sheet is.').optional(),
    colour: colour('Its main colour: red, green and blue in hexadecimal, such as "#d9c7a3".'),
    up: up.optional(),
    back: fields('back', {
      name: shownText(),
      up: up.optional(),
      colour: colour('The main colour of the other side.'),
    })
      .optional()
      .meta({
        description: 'The other side, seen when the sheet is turned over about its vertical axis.',
      }),
    sheets: z.array(sheet, { error: expecting('sheets') }).meta({
      description: 'The sheets on hand.',
      maxItems: limits.sheets,
    }),
  }).meta({ id: 'paper', description: 'A paper and the sheets of it.' });

  const distance = (edge: string) =>
    lengthText(units, 'any')
      .optional()
      .meta({
        description: `From the seen ${edge} edge of what it lies on to its own; negative: it hangs over.`,
      });
  const neighbour = (fixed: string, how: string) =>
    idText('neighbour')
      .optional()
      .meta({ description: `The part it lies ${how}: fixes its ${fixed} edge, a gap away.` });
  const gap = lengthText(units, 'any');
  const place = fields('one-place', {
    left: distance('left'),
    right: distance('right'),
    top: distance('top'),
    bottom: distance('bottom'),
    below: neighbour('top', 'below'),
    above: neighbour('bottom', 'above'),
    rightOf: neighbour('left', 'to the right of'),
    leftOf: neighbour('right', 'to the left of'),
    gap: z
      .union([gap, z.tuple([gap, gap], { error: expecting('gap', pair) })], { error: expecting('gap') })
      .optional()
      .meta({
        description: 'What is left free between it and its neighbours: one length, or across and down.',
      }),
  }).meta({ id: 'place', description: 'Where it lies; an axis with nothing named is centred.' });

  const part = fields('part', {
    id: z
      .string({ error: expecting('part-id') })
      .max(longestId, { error: expecting('part-id', { high: longestId }) })
      .regex(partIdForm, { error: expecting('part-id') })
      .meta({ description: 'What other parts call it; base, inside and back are taken.' }),
    name: shownText().optional().meta({ description: 'What people call it; the id unless said.' }),
    on: idText('on').optional().meta({
      description:
        'base (the front, unless said otherwise), inside, back, or a part that stands earlier in the list.',
    }),
    shape: oneOf(['rectangle', 'circle']).optional().meta({ description: 'A rectangle unless said.' }),
    size: z
      .tuple([lengthOrFill(units), lengthOrFill(units)], { error: expecting('part-size', pair) })
      .optional()
      .meta({
        description: 'The size that is cut: width, then height; "fill" takes the room that its place leaves.',
      }),
    inset: positive('How far its seen edges lie inside those of what it lies on.').optional(),
    diameter: positive('Of a circle.').optional(),
    torn: fields('edges', edges('positive'))
      .optional()
      .meta({ description: 'How much is torn off an edge after cutting.' }),
    dieCut: flag('Whether its shape is cut out of the piece with a die; false unless said.'),
    stamped: flag('Whether the piece is stamped; false unless said.'),
    place: z
      .union([place, z.array(place, { error: expecting('place') })], { error: expecting('place') })
      .optional()
      .meta({ description: 'Where it lies, or a list, one for each of count pieces.' }),
    ...dealt,
    count: wholeNumber(1, limits.pieces)
      .optional()
      .meta({ description: 'Pieces on each card; 1 unless said.' }),
    lies: oneOf(['upright', 'sideways'])
      .optional()
      .meta({ description: 'sideways: the print lies on its side on the card.' }),
    adhere: oneOf(['flat', 'raised', 'spots'])
      .optional()
      .meta({ description: 'How it is held; flat unless said.' }),
    room: z
      .union([partRoom, none], { error: expecting('room') })
      .optional()
      .meta({ description: 'How far its lengths may move; none: not at all.' }),
  }).meta({ id: 'part', description: 'Anything laid on the card.' });

  return fields('file', {
    $schema: z
      .string({ error: expecting('text') })
      .optional()
      .meta({ description: 'Where an editor finds this schema.' }),
    cardwright: z
      .literal(1, { error: expecting('version') })
      .meta({ description: 'The version of this shape.' }),
    title: shownText().optional().meta({ description: 'What the set is called.' }),
    units: oneOf(['in', 'mm']).meta({ description: 'What a length without a unit is in.' }),
    cards: wholeNumber(1, 100_000).meta({ description: 'How many cards in the set.' }),
    base,
    papers: z
      .record(idText(), paper, { error: expecting('paper-table') })
      .meta({ description: 'The papers by their ids.', maxProperties: limits.papers }),
    smallestScrap: positive(
      'Shortest side of a leftover that is worth keeping; 1 in unless said.',
    ).optional(),
    parts: z.array(part, { error: expecting('parts') }).meta({
      description: 'The pile, bottom first.',
      maxItems: limits.parts,
    }),
  });
}

const paperChoice = expecting('paper-choice', { high: limits.papersDealt });
const pair = { low: 2, high: 2 };
const gsm = { low: 1, high: 10_000 };
/** Up to 9 digits, then up to 4 decimals after a point or a comma. */
export const priceForm = /^\d{1,9}(?:[.,]\d{1,4})?$/;
/** CSS Color's six digits for red, green and blue. */
const colourForm = /^#[0-9A-Fa-f]{6}$/;
const partIdForm = new RegExp(`^(?!(?:${faces.join('|')})$)${idForm.source.slice(1)}`);

const shapes = { in: shapeIn('in'), mm: shapeIn('mm') };
