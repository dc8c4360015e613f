import * as z from 'zod/mini';
import type { FoldedShape, ShapeKind } from '../layout/index.ts';
import { type AdhesiveUse, adhesivesFor, foldKinds, postIds, poundKinds } from '../making/index.ts';
import type { Units } from '../measure/index.ts';
import type { BannerEnd } from '../shape/index.ts';
import { expecting } from './expectation.ts';
import {
  described,
  fields,
  idForm,
  idText,
  inUnits,
  type LengthRange,
  lengthOrFill,
  lengthText,
  longestId,
  maybe,
  numberIn,
  oneOf,
  pathText,
  shownText,
  wholeNumber,
} from './field.ts';

/** How much one layout file may hold; more is refused before anything else is looked at. */
export const limits = {
  parts: 500,
  papers: 200,
  sheets: 1_000,
  extras: 100,
  papersDealt: 200,
  pieces: 1_000,
  loops: 100,
  helpers: 40,
  stations: 20,
} as const;

/** The faces of a card, which are no part's id. */
export const faces = ['base', 'inside', 'back'] as const;

/** The fields of `place` that name a neighbour, with the end they fix. */
export const neighbourFields = ['below', 'above', 'rightOf', 'leftOf'] as const;

/** What a part may look like. */
export const shapeKinds = [
  'rectangle',
  'circle',
  'oval',
  'rounded',
  'banner',
  'outline',
  'ribbon',
  'loops',
  'knot',
] as const satisfies readonly ShapeKind[];

/** Of these, what is folded of a strip. */
export const foldedKinds = ['ribbon', 'loops', 'knot'] as const satisfies readonly FoldedShape['kind'][];

/** The fields that say more of a shape, with the shapes that they belong to. */
export const shapeFields = {
  corner: ['rounded'],
  ends: ['banner'],
  endDepth: ['banner'],
  outline: ['outline'],
  template: ['ribbon', 'loops'],
  slant: ['ribbon'],
  loops: ['loops'],
  overlap: ['loops'],
} as const satisfies Record<string, readonly ShapeKind[]>;

/** What an extra may look like. */
const extraShapes = [
  'rectangle',
  'circle',
  'oval',
  'rounded',
  'outline',
] as const satisfies readonly ShapeKind[];

const bannerEnds = ['notched', 'pointed', 'slanted'] as const satisfies readonly BannerEnd[];

/** What version 1 of a layout file holds, its fields checked one by one; what must go together is `layoutRelations`. */
export type LayoutShape = z.infer<ReturnType<typeof shapeIn>>;

/** The shape of a layout file whose lengths without a unit are in `units`. */
export const layoutShape = inUnits(shapeIn);

function shapeIn(units: Units) {
  const up = described(
    oneOf(['any', 'one-way', 'two-way']),
    'How a print may stand: any way (the default), only upright, or upright and half round.',
  );
  const positive = (description: string) => maybe(lengthText(units, 'positive'), description);
  const flag = (description: string) => maybe(z.boolean({ error: expecting('flag') }), description);
  const colour = (description: string) =>
    maybe(
      z.string({ error: expecting('colour') }).check(z.regex(colourForm, { error: expecting('colour') })),
      description,
    );
  const edges = (range: 'positive' | 'not negative') => ({
    left: z.optional(lengthText(units, range)),
    right: z.optional(lengthText(units, range)),
    top: z.optional(lengthText(units, range)),
    bottom: z.optional(lengthText(units, range)),
  });
  const minutes = (of: string) => maybe(numberIn(minutesRange), `Minutes for ${of}.`);
  const grams = (of: string) => maybe(numberIn(gramsRange), `How much ${of} weighs, in grams.`);
  const bought = {
    thickness: positive('How thick it is; only of what is bought.'),
    grams: grams('one piece; only of what is bought,'),
  };
  const dealt = {
    paper: described(
      z.union(
        [
          idText('paper-id'),
          z
            .array(idText('paper-id'), { error: paperChoice })
            .check(
              z.minLength(1, { error: paperChoice }),
              z.maxLength(limits.papersDealt, { error: paperChoice }),
            ),
          z.null({ error: paperChoice }),
        ],
        { error: paperChoice },
      ),
      'The paper it is cut from; a list is dealt to cards 1, 2, 3 … in turn and round again; null: bought, not cut.',
    ),
    side: maybe(oneOf(['front', 'back']), 'The side of the paper that is seen.'),
    turn: maybe(
      oneOf(['locked', 'free']),
      "locked: the piece's width runs along the sheet's width. Without it: locked on a paper with a direction, free on one without.",
    ),
    spare: maybe(
      wholeNumber(0, 100_000),
      'Extra pieces for the whole set, dealt to the papers of the list in turn from its first; 0 unless said.',
    ),
  };

  const room = (range: LengthRange, of: string) =>
    maybe(
      z.tuple([lengthText(units, range), lengthText(units, range)], { error: expecting('room-pair', pair) }),
      `The least and the most that ${of} may be.`,
    );
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

  const size = (description: string) =>
    described(
      z.tuple([lengthText(units, 'positive'), lengthText(units, 'positive')], {
        error: expecting('size', pair),
      }),
      description,
    );
  const base = fields('base', {
    size: size('The closed front: width, then height.'),
    fold: described(
      oneOf(foldKinds),
      'left: a side fold; top: a top fold; gate: doors that meet in the middle of the front; shutter: doors that are folded back; trifold and roll: rolled up; parallel: folded in half twice; z: to and fro; none: a flat card.',
    ),
    opens: maybe(
      oneOf(['sideways', 'upwards']),
      'Which way a base of more than two panels opens: its panels follow one another from left to right (the default), or from top to bottom.',
    ),
    allowance: positive(
      'How much narrower panels are that lie within others, of a trifold, roll or double parallel fold; 1/16 in or 2 mm unless said.',
    ),
    ...dealt,
    ...bought,
    room: maybe(
      z.union([baseRoom, none], { error: expecting('room') }),
      'How far the closed front may move; without it, not at all.',
    ),
  });

  const sheet = fields('sheet', {
    size: size('The true size as measured: width, then height, with the pattern upright.'),
    count: described(
      z.nullable(wholeNumber(0, 1_000_000, 'sheet-count')),
      'How many there are; null: as many as needed.',
    ),
    price: maybe(
      z.string({ error: expecting('price') }).check(z.regex(priceForm, { error: expecting('price') })),
      'The price of one sheet. All sheets of a paper that are no scraps have one, or none has.',
    ),
    grain: maybe(oneOf(['width', 'height']), 'The direction the fibres run, where known.'),
    scrap: flag('Already cut into: costs nothing and is used first.'),
    margin: maybe(
      z.union([lengthText(units, 'not negative'), fields('margin', edges('not negative'))], {
        error: expecting('margin'),
      }),
      'What cannot be used along every edge, or along each; it is cut off first.',
    ),
  });

  const paper = fields('paper', {
    name: maybe(shownText(), 'What people call it; the id unless said.'),
    kind: maybe(shownText(longestId), 'What it is, as the trade sorts it: cardstock, patterned, vellum …'),
    gsm: maybe(numberIn(gsmRange), 'Grammage in grams per square metre.'),
    lb: maybe(
      fields('pounds', {
        pounds: described(
          numberIn(poundsRange),
          'What 500 sheets of the basis size of its kind weigh, in pounds.',
        ),
        of: described(
          z.enum(poundKinds, { error: expecting('pound-kind') }),
          'The kind of paper that these are pounds of: those of one kind are not those of another.',
        ),
      }),
      'Its weight as it is sold in North America, instead of gsm.',
    ),
    thickness: positive('How thick one sheet is.'),
    colour: colour('Its main colour: red, green and blue in hexadecimal, such as "#d9c7a3".'),
    core: colour('The colour inside it, which a tear may show, as the main colour.'),
    seeThrough: flag('Whether what lies below it is seen through it; vellum is seen through unless said.'),
    up: z.optional(up),
    back: maybe(
      fields('back', {
        name: shownText(),
        up: z.optional(up),
        colour: colour('The main colour of the other side.'),
      }),
      'The other side, seen when the sheet is turned over about its vertical axis.',
    ),
    sheets: z
      .array(sheet, { error: expecting('sheets') })
      .register(z.globalRegistry, { description: 'The sheets on hand.', maxItems: limits.sheets }),
  }).register(z.globalRegistry, { id: 'paper', description: 'A paper and the sheets of it.' });

  const distance = (edge: string) =>
    maybe(
      lengthText(units, 'any'),
      `From the seen ${edge} edge of what it lies on to its own; negative: it hangs over.`,
    );
  const neighbour = (fixed: string, how: string) =>
    maybe(idText('neighbour'), `The part it lies ${how}: fixes its ${fixed} edge, a gap away.`);
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
    gap: maybe(
      z.union([gap, z.tuple([gap, gap], { error: expecting('gap', pair) })], { error: expecting('gap') }),
      'What is left free between it and its neighbours: one length, or across and down.',
    ),
  }).register(z.globalRegistry, {
    id: 'place',
    description: 'Where it lies; an axis with nothing named is centred.',
  });

  const part = fields('part', {
    id: described(
      z
        .string({ error: expecting('part-id') })
        .check(
          z.maxLength(longestId, { error: expecting('part-id', { high: longestId }) }),
          z.regex(partIdForm, { error: expecting('part-id') }),
        ),
      'What other parts call it; base, inside and back are taken.',
    ),
    name: maybe(shownText(), 'What people call it; the id unless said.'),
    on: maybe(
      idText('on'),
      'base (the front, unless said otherwise), inside, back, or a part that stands earlier in the list.',
    ),
    shape: maybe(oneOf(shapeKinds), 'A rectangle unless said.'),
    corner: positive('The radius of the corners, of the shape "rounded".'),
    ends: maybe(
      fields('banner-ends', {
        left: z.optional(oneOf(bannerEnds)),
        right: z.optional(oneOf(bannerEnds)),
        top: z.optional(oneOf(bannerEnds)),
        bottom: z.optional(oneOf(bannerEnds)),
      }),
      'How the ends are cut, of the shape "banner".',
    ),
    outline: maybe(
      pathText(),
      'SVG path data of closed contours, of the shape "outline": it is made as large as the part is seen.',
    ),
    endDepth: positive(
      'How deep the ends of a banner are cut; half of what it measures across there unless said.',
    ),
    template: positive(
      'What a strip is folded round: of the shape "ribbon" how far apart the middles of its creases are, level; of "loops" the width of a loop.',
    ),
    slant: maybe(
      numberIn(slantRange),
      'How steeply the middle of a "ribbon" rises to the right, in degrees; negative: it falls.',
    ),
    loops: maybe(wholeNumber(1, limits.loops), 'How many loops a strip of the shape "loops" makes.'),
    overlap: maybe(
      lengthText(units, 'not negative'),
      'How much of the end of "loops" lies over its beginning; nothing unless said.',
    ),
    size: maybe(
      z.tuple([lengthOrFill(units), lengthOrFill(units)], { error: expecting('part-size', pair) }),
      'The size that is cut: width, then height; "fill" takes the room that its place leaves.',
    ),
    inset: positive('How far its seen edges lie inside those of what it lies on.'),
    diameter: positive('Of a circle.'),
    torn: maybe(fields('edges', edges('positive')), 'How much is torn off an edge after cutting.'),
    tear: maybe(
      fields('tear', {
        least: positive('The shallowest that its tears go.'),
        usual: positive('How deep they usually go; what is torn off unless said.'),
        most: positive('The deepest.'),
        core: positive('How broad the core of the paper shows along the tear.'),
      }),
      'How deep its tears go.',
    ),
    tuck: maybe(
      fields('edges', edges('positive')),
      'How much of it goes round an edge of what it lies on, and behind.',
    ),
    margin: positive('What is left all round when its shape is cut out.'),
    dieCut: flag('Whether its shape is cut out of the piece with a die; false unless said.'),
    stamped: flag('Whether the piece is stamped; false unless said.'),
    place: maybe(
      z.union([place, z.array(place, { error: expecting('place') })], { error: expecting('place') }),
      'Where it lies, or a list, one for each of count pieces.',
    ),
    ...dealt,
    from: maybe(
      oneOf(['leftovers']),
      'leftovers: it is cut from what the other pieces leave, of the first of its papers that has leftovers for a card; only what these do not give takes a new sheet.',
    ),
    count: maybe(wholeNumber(1, limits.pieces), 'Pieces on each card; 1 unless said.'),
    lies: maybe(oneOf(['upright', 'sideways']), 'sideways: the print lies on its side on the card.'),
    adhere: maybe(oneOf(['flat', 'raised', 'spots']), 'How it is held; flat unless said.'),
    foam: positive('How high foam raises it, where it is raised.'),
    minutes: maybe(
      fields('part-minutes', {
        ready: minutes('tearing, cutting out, stamping and folding one piece, all together'),
        lay: minutes('putting one piece on'),
      }),
      'How long one piece of it takes; what is usual unless said.',
    ),
    ...bought,
    room: maybe(
      z.union([partRoom, none], { error: expecting('room') }),
      'How far its lengths may move; none: not at all.',
    ),
  }).register(z.globalRegistry, { id: 'part', description: 'Anything laid on the card.' });

  const extra = fields('extra', {
    name: described(shownText(), 'What people call it.'),
    shape: maybe(oneOf(extraShapes), 'A rectangle unless said; a circle where it has a diameter.'),
    size: maybe(
      z.tuple([lengthText(units, 'positive'), lengthText(units, 'positive')], {
        error: expecting('size', pair),
      }),
      'What it measures: width, then height.',
    ),
    diameter: positive('Of a circle, instead of its size.'),
    corner: positive('The radius of the corners, of the shape "rounded".'),
    outline: maybe(
      pathText(),
      'SVG path data of closed contours, of the shape "outline": it is made as large as its size.',
    ),
    margin: positive('What is left all round when its shape is cut out.'),
    count: maybe(
      z.nullable(wholeNumber(1, limits.pieces, 'extra-count')),
      'How many are wanted; null: as many as there are, which is what is done unless said.',
    ),
    paper: maybe(
      z.union(
        [
          idText('paper-id'),
          z
            .array(idText('paper-id'), { error: extraPapers })
            .check(
              z.minLength(1, { error: extraPapers }),
              z.maxLength(limits.papersDealt, { error: extraPapers }),
            ),
        ],
        { error: extraPapers },
      ),
      'The papers it may be of; any unless said.',
    ),
    turn: maybe(
      oneOf(['locked', 'free']),
      'locked: it lies as the print stands. Without it: locked on a paper with a direction, free on one without.',
    ),
  }).register(z.globalRegistry, {
    id: 'extra',
    description: 'A small thing beside the cards that leftovers may give.',
  });

  const envelope = fields('envelope', {
    name: maybe(shownText(), 'What people call it.'),
    size: size('Closed: width, then height.'),
    gsm: maybe(numberIn(gsmRange), 'Grammage of its paper in grams per square metre.'),
    thickness: positive('How thick it is when it is empty.'),
    grams: grams('one of it'),
  });

  const adhesive = (use: AdhesiveUse) => ({
    kind: maybe(oneOf(adhesivesFor[use]), `What it is; ${adhesivesFor[use][0]} unless said.`),
    width: positive('How wide the tape or the line of glue is, or how far it is across a spot or a square.'),
    thickness: positive('How thick it lies.'),
    inset: maybe(lengthText(units, 'not negative'), 'How far from the edges of a part it stays.'),
    span: positive('How far any point of a part may lie from the nearest of it.'),
    handle: maybe(wholeNumber(0, mostMinutes), 'Minutes until the work can be taken up and turned over.'),
    dry: maybe(wholeNumber(0, mostMinutes), 'Minutes until it holds for good.'),
    shows: flag('Whether it is seen through paper that is seen through; true unless said.'),
  });
  const roll = { roll: positive('How much is on a roll.') };
  const pack = { pack: maybe(wholeNumber(1, 100_000), 'How many are in a pack.') };
  const adhesives = fields('adhesives', {
    flat: maybe(fields('adhesive', { ...adhesive('flat'), ...roll }), 'What holds parts that lie flat.'),
    raised: maybe(
      fields('adhesive', { ...adhesive('raised'), ...roll, ...pack }),
      'The foam under parts that are raised.',
    ),
    spots: maybe(
      fields('adhesive', { ...adhesive('spots'), ...pack }),
      'What holds parts that are held by spots.',
    ),
    holding: maybe(
      fields('adhesive', { ...adhesive('holding'), ...roll }),
      'The tape that only holds the ends of a band until they are covered.',
    ),
  });

  const making = fields('making', {
    helpers: maybe(wholeNumber(1, limits.helpers), 'How many make the set; 1 unless said.'),
    stations: maybe(
      wholeNumber(1, limits.stations),
      'How many stations the cards go through; without it each helper makes her share from beginning to end.',
    ),
    dryAtOnce: maybe(
      z.nullable(wholeNumber(1, 100_000, 'dry-at-once')),
      'How many cards there is room for where cards lie to dry, at each such place; null, as without it: as many as come.',
    ),
    minutes: maybe(
      fields('making-minutes', {
        cut: minutes('cutting one piece'),
        score: minutes('scoring and folding one base'),
        close: minutes('putting one card into its envelope'),
      }),
      'How long it takes; what is usual unless said.',
    ),
  });

  return fields('file', {
    $schema: maybe(z.string({ error: expecting('text') }), 'Where an editor finds this schema.'),
    cardwright: described(z.literal(1, { error: expecting('version') }), 'The version of this shape.'),
    title: maybe(shownText(), 'What the set is called.'),
    units: described(oneOf(['in', 'mm']), 'What a length without a unit is in.'),
    cards: described(wholeNumber(1, 100_000), 'How many cards in the set.'),
    base,
    papers: z.record(idText(), paper, { error: expecting('paper-table') }).register(z.globalRegistry, {
      description: 'The papers by their ids.',
      maxProperties: limits.papers,
    }),
    smallestScrap: positive('Shortest side of a leftover that is worth keeping; 1 in unless said.'),
    extras: z.optional(
      z.array(extra, { error: expecting('extras') }).register(z.globalRegistry, {
        description: 'What the leftovers may give beside the cards, what is wanted most first.',
        maxItems: limits.extras,
      }),
    ),
    envelope: maybe(envelope, 'The envelope the card goes in.'),
    post: maybe(oneOf(postIds), 'Which post the cards are sent by.'),
    adhesives: maybe(adhesives, 'What parts are held with; what is usual unless said.'),
    order: maybe(
      z
        .array(idText('part-id'), { error: expecting('order') })
        .check(z.minLength(1, { error: expecting('order') })),
      'Ids of parts in the order in which they are put on; parts that are not named find their own turn.',
    ),
    making: maybe(making, 'How the set is made, and how long that takes.'),
    parts: z
      .array(part, { error: expecting('parts') })
      .register(z.globalRegistry, { description: 'The pile, bottom first.', maxItems: limits.parts }),
  });
}

const extraPapers = expecting('extra-papers', { high: limits.papersDealt });
const paperChoice = expecting('paper-choice', { high: limits.papersDealt });
const pair = { low: 2, high: 2 };
/** A fortnight. */
const mostMinutes = 20_160;
const minutesRange = { low: 0, high: 600 };
const gsmRange = { low: 1, high: 10_000 };
const gramsRange = { low: 0.001, high: 10_000 };
const slantRange = { low: -85, high: 85 };
const poundsRange = { low: 1, high: 1_000 };
/** Up to 9 digits, then up to 4 decimals after a point or a comma. */
export const priceForm = /^\d{1,9}(?:[.,]\d{1,4})?$/;
/** CSS Color's six digits for red, green and blue. */
const colourForm = /^#[0-9A-Fa-f]{6}$/;
const partIdForm = new RegExp(`^(?!(?:${faces.join('|')})$)${idForm.source.slice(1)}`);
