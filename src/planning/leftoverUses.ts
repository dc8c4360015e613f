import { bestPattern, type CutTree, unlimited } from '../cutting/index.ts';
import { type ArrangedPart, type Extra, isFolded, type Layout, regionIn, turnOf } from '../layout/index.ts';
import {
  inches,
  type Length,
  lengthOfTicks,
  millimetres,
  minus,
  roundTo,
  type Size,
  zero,
} from '../measure/index.ts';
import {
  areaOf,
  type NestPlace,
  nested,
  type QuarterTurns,
  type Region,
  withMargin,
} from '../shape/index.ts';
import type { Paper } from '../stash/index.ts';
import { smallestUseful, worthKeeping } from '../trimming/index.ts';
import type { CardSet } from './cardSet.ts';
import { usualMarks } from './checkSet.ts';
import type { Plan } from './plan.ts';

/** What the leftovers that a plan keeps can still give. */
export interface LeftoverUses {
  /** Leftovers that the layout's extras are laid on, in the order of the plan; none is used twice. */
  readonly used: readonly UsedLeftover[];
  /** Every leftover that is kept, as it goes into the stash once the extras are taken off, in the order of the plan. */
  readonly kept: readonly KeptLeftover[];
  /** By extra of the layout, in its order. */
  readonly extras: readonly ExtraFound[];
  /** What else could be had of what is kept then: each for itself, not all of it together. */
  readonly others: readonly OtherUse[];
}

/** A leftover that extras are laid on. */
export interface UsedLeftover {
  readonly id: string;
  readonly paper: string;
  readonly size: Size;
  readonly places: readonly ExtraPlace[];
  /** The rectangles that remain and are worth keeping, by their left upper corner on the leftover. */
  readonly rests: readonly Bed[];
}

/** Where an extra lies on a leftover, by the left upper corner of its box, without its margin, with the pattern upright. */
export interface ExtraPlace extends NestPlace {
  /** Index into the layout's extras. */
  readonly extra: number;
}

/** A rectangle of a leftover. */
export interface Bed extends Size {
  readonly left: Length;
  readonly top: Length;
}

/** What goes into the stash, or a whole leftover. */
export interface KeptLeftover {
  /** Id of the leftover that it is, or is a rest of. */
  readonly id: string;
  readonly paper: string;
  /** The stock of the sheet it was cut from: index into the paper's `sheets`; `null`: it was found on the table. */
  readonly stock: number | null;
  readonly size: Size;
}

export interface ExtraFound {
  readonly found: number;
  /** `null`: as many as there are. */
  readonly wanted: number | null;
  /** No more than so many have room on the leftovers it may be of, by their area; with more wanted, no proof that fewer are the most. */
  readonly atMost: number;
}

/** One thing that leftovers could give beside the extras. */
export interface OtherUse {
  readonly what: OtherKind;
  /** The part whose shape it is; `null`: none. */
  readonly part: string | null;
  readonly size: Size;
  /** How many by the id of the leftover, those that give none left out. */
  readonly counts: ReadonlyMap<string, number>;
  readonly total: number;
}

/** `shape`: cut out of the same paper as on the card; the others are usual things (common practice, no source). */
export type OtherKind = 'shape' | 'tag' | 'inside strip' | 'envelope lining';

/**
 * What the leftovers of a plan can still give.
 *
 * The extras are laid on one after another, each on the smallest leftover that gives all that is still wanted of it, else
 * on the one that gives most; what remains beside them is there for the next. How they lie was found, and need not be the
 * most: but never fewer than edge-to-edge cuts of the rectangles around them give. All places are at whole marks of the
 * trimmer where that costs none.
 */
export function leftoverUses(
  { layout, arrangement, trimmer }: Pick<CardSet, 'layout' | 'arrangement' | 'trimmer'>,
  plan: Plan,
): LeftoverUses {
  const marks = trimmer === null ? usualMarks(layout) : trimmer.marks;
  const smallest = layout.smallestScrap ?? smallestUseful;
  const whole = keptOf(plan);
  const nest = new Nest(marks);
  const beds = new Map<string, readonly Bed[]>(
    whole.map(({ id, size }) => [id, [{ left: zero, top: zero, ...size }]]),
  );
  const places = new Map<string, ExtraPlace[]>();

  // The extras, one after another.
  const extras = (layout.extras ?? []).map((extra, index): ExtraFound => {
    const thing = thingOf(extra);
    const allowed = whole.filter(({ paper }) => extra.papers.length === 0 || extra.papers.includes(paper));
    const wanted = extra.count ?? mostExtras;
    let found = 0;
    while (found < wanted) {
      const choices = allowed.flatMap((leftover) =>
        beds.get(leftover.id)!.map((bed) => {
          const paper = layout.papers.get(leftover.paper)!;
          return { leftover, bed, nested: nest.on(bed, thing, turnsOf(extra, paper), wanted - found) };
        }),
      );
      const best = bestChoice(choices, wanted - found);
      if (best === null) break;
      const { leftover, bed, nested: laid } = best;
      found += laid.places.length;
      places.set(leftover.id, [
        ...(places.get(leftover.id) ?? []),
        ...laid.places.map(({ left, top, turns }) => ({
          extra: index,
          left: lengthOfTicks(bed.left + left),
          top: lengthOfTicks(bed.top + top),
          turns,
        })),
      ]);
      beds.set(
        leftover.id,
        beds
          .get(leftover.id)!
          .flatMap((other) => (other === bed ? restsOf(bed, laid.reach, marks) : [other])),
      );
    }
    const room = allowed.reduce(
      (sum, { size }) => sum + Math.floor((size.width * size.height) / thing.area),
      0,
    );
    return { found, wanted: extra.count, atMost: Math.max(found, room) };
  });

  // What goes into the stash.
  const restsWorth = (id: string) => beds.get(id)!.filter((rest) => worthKeeping(rest, trimmer, smallest));
  const kept = whole.flatMap((leftover) =>
    places.has(leftover.id)
      ? restsWorth(leftover.id).map(({ width, height }) => ({ ...leftover, size: { width, height } }))
      : [leftover],
  );
  const used = whole.flatMap(({ id, paper, size }) => {
    const own = places.get(id);
    return own === undefined ? [] : [{ id, paper, size, places: own, rests: restsWorth(id) }];
  });
  return { used, kept, extras, others: othersOf(layout, arrangement.parts, kept, { nest, marks }) };
}

/** The outline of an extra or of a part with its margin, and how large it is. */
export interface Thing {
  readonly region: Region;
  readonly size: Size;
  readonly margin: Length;
  /** Margin among it. */
  readonly area: number;
}

/** The outline of an extra in a box at the origin. */
export function thingOf({ shape, size, margin }: Pick<Extra, 'shape' | 'size' | 'margin'>): Thing {
  const region = regionIn(shape, { left: zero, top: zero, ...size });
  return { region, size, margin, area: areaOf(withMargin(region, margin)) };
}

/** No more of one thing than this are looked for. */
const mostExtras = 500;

function keptOf(plan: Plan): readonly KeptLeftover[] {
  const sheetOf = new Map(plan.sheets.map((sheet) => [sheet.id, sheet]));
  for (const { take, gives, rest } of plan.steps) {
    take.forEach((id, index) => {
      for (const made of [...gives[index]!, rest[index]!])
        if (made !== null) sheetOf.set(made, sheetOf.get(id)!);
    });
  }
  return plan.leftovers.flatMap(({ id, size, keep }) => {
    const { paper, stock } = sheetOf.get(id)!;
    return keep ? [{ id, paper, stock, size }] : [];
  });
}

/** How an extra may be turned on a paper: half round where the print has no one way up, by a quarter where it is free. */
function turnsOf({ turn }: Pick<Extra, 'turn'>, paper: Paper): readonly QuarterTurns[] {
  const free = turnOf({ papers: [paper.id], side: 'front', turn, spare: 0 }, paper) === 'free';
  if (free) return [0, 1, 2, 3];
  return paper.up === 'one-way' ? [0] : [0, 2];
}

/** Shapes nested on beds, each question answered once. */
class Nest {
  readonly #known = new Map<Thing, Map<string, Laid>>();

  constructor(private readonly marks: Length | null) {}

  on(bed: Size, thing: Thing, turns: readonly QuarterTurns[], most: number): Laid {
    const known = this.#known.get(thing) ?? new Map<string, Laid>();
    this.#known.set(thing, known);
    const key = `${bed.width} ${bed.height} ${turns.join()} ${most}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const laid = laidOn(bed, thing, { turns, most, marks: this.marks });
    known.set(key, laid);
    return laid;
  }
}

interface Laid {
  readonly places: readonly NestPlace[];
  readonly reach: Size;
}

function laidOn(
  bed: Size,
  { region, size, margin, area }: Thing,
  how: { readonly turns: readonly QuarterTurns[]; readonly most: number; readonly marks: Length | null },
): Laid {
  const found = nested({ region, margin, bed, ...how });
  const room = Math.min(how.most, Math.floor((bed.width * bed.height) / area));
  if (found.places.length >= room) return found;
  const cut = cutOutOf(bed, { size, margin }, how);
  return cut.places.length > found.places.length ? cut : found;
}

/** Rectangles around a thing cut edge to edge, which now and then are more than rows hold. */
function cutOutOf(
  bed: Size,
  { size, margin }: Pick<Thing, 'size' | 'margin'>,
  { turns, most }: { readonly turns: readonly QuarterTurns[]; readonly most: number },
): Laid {
  const item = { width: size.width + 2 * margin, height: size.height + 2 * margin };
  const free = turns.includes(1);
  const fits = (width: number, height: number) => width <= bed.width && height <= bed.height;
  if (!fits(item.width, item.height) && !(free && fits(item.height, item.width)))
    return { places: [], reach: { width: zero, height: zero } };
  const items = [{ ...item, need: most, turns: free }];
  const { tree } = bestPattern({ sheet: bed, items, values: [1], limits: unlimited });
  const boxes = boxesIn(tree, 0, 0).slice(0, most);
  const reach = (ends: readonly number[]) => lengthOfTicks(Math.max(0, ...ends));
  return {
    places: boxes.map(({ left, top, turned }) => ({
      left: lengthOfTicks(left + margin),
      top: lengthOfTicks(top + margin),
      turns: turned ? 1 : 0,
    })),
    reach: {
      width: reach(boxes.map(({ left, turned }) => left + (turned ? item.height : item.width))),
      height: reach(boxes.map(({ top, turned }) => top + (turned ? item.width : item.height))),
    },
  };
}

function boxesIn(
  tree: CutTree,
  left: number,
  top: number,
): readonly { readonly left: number; readonly top: number; readonly turned: boolean }[] {
  if (tree.kind === 'rest') return [];
  if (tree.kind === 'piece') return [{ left, top, turned: tree.turned }];
  let at = 0;
  return tree.parts.flatMap((part) => {
    const from = at;
    at += part[tree.axis];
    return tree.axis === 'width' ? boxesIn(part, left + from, top) : boxesIn(part, left, top + from);
  });
}

interface Choice {
  readonly leftover: KeptLeftover;
  readonly bed: Bed;
  readonly nested: Laid;
}

/** The smallest bed that gives all, else the one that gives most; `null`: none gives any. */
function bestChoice(choices: readonly Choice[], wanted: number): Choice | null {
  const area = ({ bed }: Choice) => bed.width * bed.height;
  const [best] = choices
    .filter(({ nested: { places } }) => places.length > 0)
    .toSorted(
      (a, b) =>
        Math.min(b.nested.places.length, wanted) - Math.min(a.nested.places.length, wanted) ||
        area(a) - area(b),
    );
  return best ?? null;
}

/**
 * What remains of a bed beside what reaches so far from its corner: two rectangles by two cuts from edge to edge, so that
 * the larger of them is as large as can be. The cuts are set at whole marks where there is room.
 */
function restsOf(bed: Bed, reach: Size, marks: Length | null): readonly Bed[] {
  const marked = (length: Length, end: Length) => {
    const up = marks === null ? length : roundTo(length, marks, 'up');
    return up <= end ? up : length;
  };
  const [width, height] = [marked(reach.width, bed.width), marked(reach.height, bed.height)];
  const beside = { left: lengthOfTicks(bed.left + width), top: bed.top, width: minus(bed.width, width) };
  const below = { left: bed.left, top: lengthOfTicks(bed.top + height), height: minus(bed.height, height) };
  const ways: readonly (readonly Bed[])[] = [
    [
      { ...beside, height: bed.height },
      { ...below, width },
    ],
    [
      { ...beside, height },
      { ...below, width: bed.width },
    ],
  ];
  const largest = (way: readonly Bed[]) => Math.max(...way.map((rest) => rest.width * rest.height));
  const [first, second] = ways;
  return (largest(second!) > largest(first!) ? second! : first!).filter(
    (rest) => rest.width > 0 && rest.height > 0,
  );
}

/** What else could be had of what is kept. */
function othersOf(
  layout: Layout,
  parts: readonly ArrangedPart[],
  kept: readonly KeptLeftover[],
  { nest, marks }: { readonly nest: Nest; readonly marks: Length | null },
): readonly OtherUse[] {
  const shapes = parts.flatMap(({ part, seen }) => {
    if (part.papers.length === 0 || seen === null || isFolded(part.shape)) return [];
    if (part.shape.kind === 'rectangle' && !part.dieCut) return [];
    const { id, shape, margin, papers, turn } = part;
    // A print that lies on its side on the card lies so on the paper.
    const turned = part.lies === 'sideways';
    return [{ what: 'shape' as const, part: id, size: seen, shape, margin, papers, turn, turned }];
  });
  const usual = usualThings(layout, marks).map((thing) => ({
    ...thing,
    part: null,
    shape: { kind: 'rectangle' } as const,
    margin: zero,
    papers: [] as readonly string[],
    turn: null,
    turned: false,
  }));
  return [...shapes, ...usual].flatMap(({ what, part, papers, turned, ...extra }): OtherUse[] => {
    const thing = thingOf(extra);
    const counts = new Map<string, number>();
    for (const { id, paper, size } of kept) {
      if (papers.length > 0 && !papers.includes(paper)) continue;
      const turns = turnsOf(extra, layout.papers.get(paper)!);
      const own = turned ? turns.map((turn) => ((turn + 1) % 4) as QuarterTurns) : turns;
      const count = nest.on(size, thing, own, mostExtras).places.length;
      if (count > 0) counts.set(id, (counts.get(id) ?? 0) + count);
    }
    const total = [...counts.values()].reduce((sum, count) => sum + count, 0);
    return total === 0 ? [] : [{ what, part, size: extra.size, counts, total }];
  });
}

/** Usual small things in whole marks; their sizes are common practice, no source. */
function usualThings(
  { units, base, envelope }: Layout,
  marks: Length | null,
): readonly { readonly what: OtherKind; readonly size: Size }[] {
  const inch = units === 'in';
  const down = (length: number) =>
    marks === null
      ? lengthOfTicks(Math.floor(length))
      : roundTo(lengthOfTicks(Math.floor(length)), marks, 'down');
  const sized = (width: number, height: number) => ({ width: down(width), height: down(height) });
  const clearance = inch ? inches(1, 8) : millimetres(3);
  const things = [
    {
      what: 'tag' as const,
      size: sized(inch ? inches(3, 2) : millimetres(40), inch ? inches(3) : millimetres(80)),
    },
    ...(base.fold === 'none'
      ? []
      : [
          { what: 'inside strip' as const, size: sized(base.size.width, inch ? inches(1) : millimetres(25)) },
        ]),
    ...(envelope === null
      ? []
      : [
          {
            what: 'envelope lining' as const,
            size: sized(envelope.size.width - 2 * clearance, envelope.size.height - 2 * clearance),
          },
        ]),
  ];
  return things.filter(({ size }) => size.width > 0 && size.height > 0);
}
