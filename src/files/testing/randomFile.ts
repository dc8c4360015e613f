import fc from 'fast-check';
import { readLength, type Units } from '../../measure/index.ts';
import type { JsonObject } from '../json.ts';

/** Random layout files with nothing wrong: every field, every way to write it, fields of other tools anywhere. */
export function randomFile(): fc.Arbitrary<JsonObject> {
  return fc.constantFrom<'in' | 'mm'>('in', 'mm').chain((units) =>
    fc.uniqueArray(id(), { maxLength: 5 }).chain((papers) =>
      fc.uniqueArray(partId(), { maxLength: 6 }).chain((parts) =>
        object({
          cardwright: fc.constant(1),
          title: optional(shownText()),
          units: fc.constant(units),
          cards: fc.integer({ min: 1, max: 100_000 }),
          base: object({
            size: fc.tuple(positive(), positive()),
            ...dealt(papers),
            room: room(['width', 'height'], units),
          }).chain(foldedSomehow),
          papers: table(papers),
          smallestScrap: optional(positive()),
          envelope: optional(
            object({
              name: optional(shownText()),
              size: fc.tuple(positive(), positive()),
              gsm: optional(fc.integer({ min: 1, max: 400 })),
              ...bought(),
            }),
          ),
          post: oneOf('us', 'uk', 'ca', 'de', 'au'),
          adhesives: optional(adhesives()),
          order:
            parts.length === 0 ? fc.constant(absent) : optional(fc.shuffledSubarray(parts, { minLength: 1 })),
          making: optional(making()),
          parts: pile(parts, papers, units),
        }),
      ),
    ),
  );
}

/** A base with a fold of any kind, and what that may say. */
function foldedSomehow(base: JsonObject): fc.Arbitrary<JsonObject> {
  const opens = oneOf('sideways', 'upwards');
  const within = { opens, allowance: optional(positive()) };
  return fc
    .oneof(
      object({ fold: fc.constantFrom('left', 'top', 'none') }),
      object({ fold: fc.constantFrom('gate', 'shutter', 'z'), opens }),
      object({ fold: fc.constantFrom('trifold', 'roll', 'parallel'), ...within }),
    )
    .map((fold) => ({ ...base, ...fold }));
}

function adhesives(): fc.Arbitrary<JsonObject> {
  const one = (kinds: readonly string[], also: Record<string, fc.Arbitrary<unknown>>) =>
    optional(
      object({
        kind: oneOf(...kinds),
        width: optional(positive()),
        thickness: optional(positive()),
        inset: optional(fc.oneof(positive(), fc.constant('0'))),
        span: optional(positive()),
        handle: optional(fc.integer({ min: 0, max: 20_160 })),
        dry: optional(fc.integer({ min: 0, max: 20_160 })),
        shows: optional(fc.boolean()),
        ...also,
      }),
    );
  const roll = { roll: optional(positive()) };
  const pack = { pack: optional(fc.integer({ min: 1, max: 100_000 })) };
  return object({
    flat: one(['liquid-glue', 'double-sided-tape'], roll),
    raised: one(['foam-tape', 'foam-squares'], { ...roll, ...pack }),
    spots: one(['glue-spots'], pack),
    holding: one(['removable-tape'], roll),
  });
}

function making(): fc.Arbitrary<JsonObject> {
  const minutes = () => optional(fc.integer({ min: 0, max: 6_000 }).map((hundredths) => hundredths / 100));
  return object({
    helpers: fc.integer({ min: 20, max: 40 }),
    stations: optional(fc.integer({ min: 1, max: 20 })),
    dryAtOnce: optional(fc.oneof(fc.constant(null), fc.integer({ min: 1, max: 100_000 }))),
    minutes: optional(object({ cut: minutes(), score: minutes(), close: minutes() })),
  });
}

const absent = Symbol('absent');

function optional<Value>(value: fc.Arbitrary<Value>): fc.Arbitrary<Value | typeof absent> {
  return fc.oneof(value, fc.constant<typeof absent>(absent));
}

/** An object of the fields that are there, sometimes with a field of another tool. */
function object(fields: Readonly<Record<string, fc.Arbitrary<unknown>>>): fc.Arbitrary<JsonObject> {
  const foreign = fc.oneof(
    { weight: 9, arbitrary: fc.constant({}) },
    { weight: 1, arbitrary: fc.record({ 'x-tool': otherTool() }) },
  );
  return fc.tuple(fc.record(fields), foreign).map(([own, other]) => {
    const entries = Object.entries(own).filter(([, value]) => value !== absent);
    return JSON.parse(JSON.stringify({ ...Object.fromEntries(entries), ...other })) as JsonObject;
  });
}

/** Anything but the one name that is refused even there. */
function otherTool(): fc.Arbitrary<unknown> {
  return fc.jsonValue({ maxDepth: 3 }).filter((value) => !JSON.stringify(value).includes('__proto__'));
}

function id(): fc.Arbitrary<string> {
  // Whole numbers are left out: objects put those names first, which is no order of the file.
  const letters = [...'abcXYZ09-_'];
  return fc.oneof(
    fc.string({ unit: fc.constantFrom(...letters), minLength: 1, maxLength: 8 }).map((text) => `p${text}`),
    fc.constantFrom('constructor', 'toString', 'valueOf', 'x-mas', 'length'),
  );
}

function partId(): fc.Arbitrary<string> {
  return id().filter((text) => !['base', 'inside', 'back'].includes(text));
}

function shownText(): fc.Arbitrary<string> {
  return fc.oneof(
    fc.constantFrom('', 'Côte d’azur', 'דף', '"\\', '🌙 moon'),
    fc.string({ unit: 'grapheme-ascii' }),
  );
}

/** Lengths that are no more than 8 in, so that margins leave something of every sheet. */
function positive(): fc.Arbitrary<string> {
  return fc.oneof(
    fc
      .tuple(fc.integer({ min: 0, max: 7 }), fc.integer({ min: 1, max: 15 }))
      .map(([whole, parts]) => `${whole} ${parts}/16 in`),
    fc.integer({ min: 1, max: 2_000 }).map((tenths) => `${tenths / 10} mm`),
    fc.integer({ min: 1, max: 8 }).map(String),
    fc.constantFrom('3 1/7 in', '5¼"', '13,3 cm', '1/3 in'),
  );
}

function distance(): fc.Arbitrary<string> {
  return fc.oneof(positive(), fc.constantFrom('0', '-1/8 in', '-2 mm'));
}

function oneOf(...words: readonly string[]): fc.Arbitrary<string | typeof absent> {
  return optional(fc.constantFrom(...words));
}

function dealt(papers: readonly string[]): Record<string, fc.Arbitrary<unknown>> {
  const one = papers.length === 0 ? fc.constant(null) : fc.constantFrom(...papers);
  const list =
    papers.length === 0 ? one : fc.array(fc.constantFrom(...papers), { minLength: 1, maxLength: 4 });
  return {
    paper: fc.oneof(fc.constant(null), one, list),
    side: oneOf('front', 'back'),
    turn: oneOf('locked', 'free'),
    spare: optional(fc.integer({ min: 0, max: 100_000 })),
  };
}

function edges(length: fc.Arbitrary<string>): fc.Arbitrary<JsonObject> {
  return object({
    left: optional(length),
    right: optional(length),
    top: optional(length),
    bottom: optional(length),
  });
}

function table(papers: readonly string[]): fc.Arbitrary<JsonObject> {
  return fc
    .tuple(...papers.map(() => paper()))
    .map((values) => Object.fromEntries(papers.map((name, index) => [name, values[index] ?? null])));
}

function paper(): fc.Arbitrary<JsonObject> {
  const up = oneOf('any', 'one-way', 'two-way');
  const colour = oneOf('#d9c7a3', '#000000', '#FFeedD');
  const weights = fc.constantFrom<Readonly<Record<string, fc.Arbitrary<unknown>>>>(
    { gsm: optional(fc.oneof(fc.integer({ min: 1, max: 400 }), fc.constant(162.5))) },
    {
      lb: object({
        pounds: fc.constantFrom(20, 65, 80, 110.5),
        of: fc.constantFrom('bond', 'cover', 'index'),
      }),
    },
  );
  return fc.tuple(fc.boolean(), weights).chain(([priced, weight]) =>
    object({
      name: optional(shownText()),
      kind: oneOf('cardstock', 'patterned', 'vellum', ''),
      ...weight,
      thickness: optional(positive()),
      up,
      colour,
      core: colour,
      seeThrough: optional(fc.boolean()),
      back: optional(object({ name: shownText(), up, colour })),
      sheets: fc.array(sheet(priced), { maxLength: 3 }),
    }),
  );
}

function sheet(priced: boolean): fc.Arbitrary<JsonObject> {
  const wide = fc.constantFrom('20 in', '600 mm', '50.8 cm');
  return object({
    size: fc.tuple(wide, wide),
    count: fc.oneof(fc.constant(null), fc.integer({ min: 0, max: 1_000_000 })),
    price: priced ? fc.constantFrom('0.35', '1', '0,4', '12.3456', '0') : fc.constant(absent),
    grain: oneOf('width', 'height'),
    scrap: optional(fc.boolean()),
    margin: optional(fc.oneof(positive(), fc.constant('0'), edges(positive()))),
  });
}

type Face = 'base' | 'inside' | 'back';

/** Each part on a face of its own choice; it lies on, and beside, earlier parts of that face only. */
function pile(
  ids: readonly string[],
  papers: readonly string[],
  units: Units,
): fc.Arbitrary<readonly JsonObject[]> {
  const face = fc.constantFrom<Face>('base', 'base', 'base', 'inside', 'back');
  return fc.tuple(...ids.map(() => face)).chain((faces) =>
    fc.tuple(
      ...ids.map((own, index) => {
        const earlier = ids.filter((_, other) => other < index && faces[other] === faces[index]);
        return part(own, faces[index] ?? 'base', earlier, papers).chain((made) => withRoom(made, units));
      }),
    ),
  );
}

function part(
  own: string,
  face: Face,
  earlier: readonly string[],
  papers: readonly string[],
): fc.Arbitrary<JsonObject> {
  const on = fc.constantFrom(face, ...earlier);
  const fill = fc.oneof(positive(), fc.constant('fill'));
  return fc.integer({ min: 1, max: 3 }).chain((count) => {
    const common = {
      id: fc.constant(own),
      name: optional(shownText()),
      on: face === 'base' ? optional(on) : on,
      dieCut: optional(fc.boolean()),
      stamped: optional(fc.boolean()),
      margin: optional(positive()),
      lies: oneOf('upright', 'sideways'),
      ...dealt(papers),
      count: count === 1 ? optional(fc.constant(1)) : fc.constant(count),
      place: optional(
        fc.oneof(place(earlier), fc.array(place(earlier), { minLength: count, maxLength: count })),
      ),
    };
    const { dieCut: _dieCut, margin: _margin, ...folded } = common;
    const tuck = optional(edges(positive()));
    const size = fc.tuple(fill, fill);
    const made = fc.oneof(
      object({ ...common, size, torn: optional(edges(positive())), tuck }),
      object({ ...common, inset: positive(), shape: oneOf('rectangle'), ...tornAlike(), tuck }),
      object({ ...common, shape: fc.constant('circle'), diameter: positive() }),
      object({ ...common, shape: fc.constant('oval'), size }),
      object({ ...common, shape: fc.constant('rounded'), size, corner: positive() }),
      object({
        ...common,
        shape: fc.constant('outline'),
        size,
        outline: fc.constantFrom('M0 0H20V10Z', 'M0 0C0 9 9 9 9 0Z', 'm0,0h9v9h-9zm3,3h3v3h-3z'),
      }),
      object({
        ...folded,
        shape: fc.constant('ribbon'),
        size: fc.tuple(positive(), positive()),
        template: positive(),
        slant: fc.integer({ min: -850, max: 850 }).map((tenths) => tenths / 10),
      }),
      object({
        ...folded,
        shape: fc.constant('loops'),
        size: fc.tuple(positive(), positive()),
        template: positive(),
        loops: fc.integer({ min: 1, max: 100 }),
        overlap: optional(positive()),
      }),
      object({ ...folded, shape: fc.constant('knot'), size: fc.tuple(positive(), positive()) }),
      object({
        ...common,
        shape: fc.constant('banner'),
        size,
        ends: object({ right: fc.constantFrom('notched', 'pointed', 'slanted'), top: oneOf('pointed') }),
        endDepth: optional(positive()),
      }),
    );
    return fc
      .tuple(made, adhering(), object(bought()))
      .map(([one, adhere, things]) => ({ ...one, ...adhere, ...(one.paper === null ? things : {}) }));
  });
}

/** One edge torn, with depths round about what is torn off. */
function tornAlike(): Record<string, fc.Arbitrary<unknown>> {
  return {
    torn: fc.constant({ right: '1/4 in' }),
    tear: optional(
      object({
        least: oneOf('1/8 in', '1/4 in'),
        usual: oneOf('1/4 in'),
        most: oneOf('3/8 in', '1/4 in'),
        core: optional(positive()),
      }),
    ),
  };
}

function adhering(): fc.Arbitrary<JsonObject> {
  return fc.oneof(
    object({
      adhere: oneOf('flat', 'raised', 'spots'),
      minutes: optional(object({ ready: optional(fc.constant(1.5)), lay: optional(fc.constant(0.25)) })),
    }),
    object({ adhere: fc.constant('raised'), foam: positive() }),
  );
}

function bought(): Record<string, fc.Arbitrary<unknown>> {
  return {
    thickness: optional(positive()),
    grams: optional(fc.oneof(fc.integer({ min: 1, max: 50 }), fc.constant(0.25))),
  };
}

/** The part as it is, or with room for some of the lengths that it has. */
function withRoom(made: JsonObject, units: Units): fc.Arbitrary<JsonObject> {
  const places = [made.place ?? {}].flat().flatMap((one) => Object.keys(one ?? {}));
  const names = [
    ...(made.shape === 'circle' ? ['diameter'] : ['width', 'height']),
    ...(made.inset === undefined ? [] : ['inset']),
    ...['gap', 'left', 'right', 'top', 'bottom'].filter((name) => places.includes(name)),
  ];
  return room(names, units).map((rooms) => (rooms === absent ? made : { ...made, room: rooms }));
}

function room(names: readonly string[], units: Units): fc.Arbitrary<JsonObject | 'none' | typeof absent> {
  const pairs = names.map((name) => {
    const length = ['width', 'height', 'diameter', 'inset'].includes(name) ? positive() : distance();
    return [name, optional(ordered(length, units))] as const;
  });
  return fc.oneof(fc.constant(absent), fc.constant('none' as const), object(Object.fromEntries(pairs)));
}

/** Two lengths, the larger never before the smaller. */
function ordered(length: fc.Arbitrary<string>, units: Units): fc.Arbitrary<readonly string[]> {
  const ticks = (text: string): number => {
    const reading = readLength(text, units);
    return reading.ok ? reading.length : Number.NaN;
  };
  return fc.tuple(length, length).map((pair) => pair.toSorted((a, b) => ticks(a) - ticks(b)));
}

function place(earlier: readonly string[]): fc.Arbitrary<JsonObject> {
  if (earlier.length === 0)
    return object({ left: optional(distance()), right: optional(distance()), top: optional(distance()) });
  const neighbour = optional(fc.constantFrom(...earlier));
  const gap = optional(fc.oneof(distance(), fc.tuple(distance(), distance())));
  return fc.oneof(
    object({
      left: optional(distance()),
      leftOf: neighbour,
      below: fc.constantFrom(...earlier),
      bottom: optional(distance()),
      gap,
    }),
    object({ rightOf: neighbour, right: optional(distance()), above: fc.constantFrom(...earlier), gap }),
    object({ top: optional(distance()), bottom: optional(distance()) }),
  );
}
