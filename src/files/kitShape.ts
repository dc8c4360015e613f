import * as z from 'zod/mini';
import type { Units } from '../measure/index.ts';
import { expecting } from './expectation.ts';
import { described, fields, idText, inUnits, maybe, oneOf, shownText, wholeNumber } from './field.ts';

/** How much one kit file may hold. */
export const kitLimits = { layouts: 20, seats: 1_000, each: 20, things: 100, instead: 200 } as const;

/** What version 1 of a kit file holds, but for its papers and layouts, which are read as those of layout files are. */
export type KitShape = z.infer<ReturnType<typeof shapeIn>>;

/** The shape of a kit file. */
export const kitShape = inUnits(shapeIn);

function shapeIn(_: Units) {
  const list = { low: 1, high: kitLimits.layouts };
  const layout = fields('kit-layout', {
    id: described(idText(), 'What the kit calls it; no two layouts have the same.'),
    each: maybe(wholeNumber(1, kitLimits.each), 'How many cards of it are made from one bag; 1 unless said.'),
    layout: maybe(
      z.unknown(),
      'The layout itself, as a layout file has it; papers of the kit may be left out.',
    ),
    file: maybe(
      z.string({ error: expecting('kit-file') }).check(z.minLength(1, { error: expecting('kit-file') })),
      'The path of its file from the folder of the kit, instead of the layout itself.',
    ),
  });
  const thing = fields('kit-thing', {
    name: described(shownText(), 'What people call it.'),
    each: described(wholeNumber(1, 1_000), 'How many are in each bag.'),
    spare: maybe(wholeNumber(0, 100_000), 'How many more to have at hand; 0 unless said.'),
  });
  const instead = fields('kit-stand-in', {
    layout: described(idText(), 'The layout.'),
    part: described(idText(), 'The part of it; base for its base.'),
    paper: described(idText('paper-id'), 'The paper that is short.'),
    by: described(idText('paper-id'), 'The paper of the kit that stands in for it.'),
    cards: described(wholeNumber(1, 100_000), 'On how many cards, the last that would have it.'),
  });
  return fields('file', {
    $schema: maybe(z.string({ error: expecting('text') }), 'Where an editor finds this schema.'),
    cardwright_kit: described(z.literal(1, { error: expecting('version') }), 'The version of this shape.'),
    title: maybe(shownText(), 'What the class or the working party is called.'),
    units: described(oneOf(['in', 'mm']), 'What a length without a unit is in.'),
    seats: described(wholeNumber(1, kitLimits.seats), 'Bags for those who make the cards.'),
    teacher: maybe(wholeNumber(0, kitLimits.seats), 'Bags for the teacher’s samples; 0 unless said.'),
    spare: maybe(wholeNumber(0, kitLimits.seats), 'Bags beyond those, in case; 0 unless said.'),
    papers: maybe(
      z.unknown(),
      'The shared papers by their ids, as in a layout file; they stand for those of the same ids in the layouts.',
    ),
    layouts: z
      .array(layout, { error: expecting('kit-layouts', list) })
      .check(
        z.minLength(list.low, { error: expecting('kit-layouts', list) }),
        z.maxLength(list.high, { error: expecting('kit-layouts', list) }),
      )
      .register(z.globalRegistry, { description: 'The layouts that everybody makes.' }),
    envelopes: maybe(
      z.boolean({ error: expecting('flag') }),
      'Whether a bag has an envelope for each of its cards; true unless said.',
    ),
    bought: maybe(
      z
        .array(thing, { error: expecting('kit-things') })
        .check(z.maxLength(kitLimits.things, { error: expecting('kit-things') })),
      'What is bought and put in each bag besides.',
    ),
    instead: maybe(
      z
        .array(instead, { error: expecting('kit-instead') })
        .check(z.maxLength(kitLimits.instead, { error: expecting('kit-instead') })),
      'Papers that stand in for others on some of the cards.',
    ),
  });
}
