import { valueAt } from '../files/index.ts';
import { beyondAlong, isFolded, type LayoutCode, type LayoutProblem, type Span } from '../layout/index.ts';
import {
  type Axis,
  type Box,
  bottomOf,
  type Edge,
  type Length,
  lengthOfTicks,
  minus,
  rightOf,
  roundTo,
  sum,
  times,
  zero,
} from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import {
  type Ailing,
  along,
  anchoredAt,
  axisOf,
  distanceOf,
  filling,
  lengthSet,
  mending,
  mendingOf,
  resized,
  setting,
  shifted,
  spanned,
} from './ailing.ts';
import { type Change, changesTo } from './change.ts';
import { type Edit, partMoved, partTaken } from './edit.ts';
import { partLaidOn } from './layingOn.ts';
import { placesChanged } from './placeText.ts';
import { typingOf } from './typing.ts';
import { usualBorder } from './usualBorder.ts';

/** What may mend a problem of a part, what keeps most of what was typed first; none of it has been tried. */
export function layoutMends(ailing: Ailing, problem: LayoutProblem, marks: Length): readonly Edit[] {
  return mendsByCode[problem.code]({ ...ailing, problem, marks }).filter((edit) => edit !== null);
}

/** What may mend a problem of the base. */
export function baseMends(inHand: Ailing['inHand'], problem: LayoutProblem): readonly Edit[] {
  const turn = (value: 'locked' | undefined) => changesTo(inHand.file, ['base', 'turn'], value);
  const edits = {
    allowanceTooLarge: () =>
      mendingOf(
        { kind: 'base' },
        inHand,
        { by: 'usual allowance' },
        changesTo(inHand.file, ['base', 'allowance'], undefined),
      ),
    directionFreed: () => mendingOf({ kind: 'base' }, inHand, { by: 'print locked' }, turn(undefined)),
    foldMayCrossGrain: () => mendingOf({ kind: 'base' }, inHand, { by: 'locked' }, turn('locked')),
    foldAcrossGrain: () =>
      inHand.layout.base.turn === 'locked'
        ? mendingOf({ kind: 'base' }, inHand, { by: 'either way' }, turn(undefined))
        : null,
  }[problem.code as string];
  return [edits?.() ?? null].filter((edit) => edit !== null);
}

interface Case extends Ailing {
  readonly problem: LayoutProblem;
  readonly marks: Length;
}

type Tried = readonly (Edit | null)[];

const nothing = (): Tried => [];

const mendsByCode = {
  sumOff,
  noRoom,
  insetTooLarge,
  roomsDiffer,
  tornAway,
  nothingSeen,
  stripTooShort,
  overlapTooLong,
  foldedOverItself,
  loopsOff,
  // A file in which it could be is not read.
  neighbourElsewhere: nothing,
  // Of the base.
  allowanceTooLarge: nothing,
  noInside,
  largerThanCard: tooLarge,
  largerThanPart: tooLarge,
  overCardEdge: overEdge,
  negativeBorder: overEdge,
  overPartEdge: overEdge,
  overhang: overEdge,
  unevenBorder,
  overlap,
  negativeGap,
  hidden,
  piecesStacked,
  // Which door it is glued to is hers to say.
  acrossSlit: nothing,
  noLeftovers: nothing,
  // Problems of the base.
  foldAcrossGrain: nothing,
  foldMayCrossGrain: nothing,
  directionFreed: (one: Case) => [mending(one, { by: 'print locked' }, setting(one, ['turn'], undefined))],
} as const satisfies Record<LayoutCode, (one: Case) => Tried>;

// --- Sums and rooms ---

function sumOff(one: Case): Tried {
  const axis = axisIn(one.problem);
  const { part, seen } = one.arranged;
  const { span, start, end } = along[axis];
  const { start: before, end: after } = part.places[one.piece]![span];
  const off = numberIn(one.problem, 'difference');
  if (before === null || after === null || seen === null) return [];
  const ends = (at: Length | null, to: Length | null) =>
    spanned(one, axis, one.piece, (now) => {
      const begun = at === null || now.start === null ? now : withEnd(now, 'start', at);
      return to === null || now.end === null ? begun : withEnd(begun, 'end', to);
    });
  const [first, last] = [distanceOf(before), distanceOf(after)];
  const alike = first === last && off % 2 === 0;
  const both = lengthOfTicks(alike ? first - off / 2 : 0);
  const size = lengthOfTicks(seen[axis] - off);
  const gaps = before.from === 'part' && after.from === 'part';
  const atStart = lengthOfTicks(first - off);
  const atEnd = lengthOfTicks(last - off);
  return [
    alike && both > 0
      ? mending(
          one,
          gaps ? { by: 'length', of: 'gap', to: both } : { by: 'both borders', axis, to: both },
          ends(both, both),
        )
      : null,
    mending(one, { by: 'length', of: axis, to: cutOf(one, axis, size) }, resized(one, axis, size)),
    gaps || atEnd < 0
      ? null
      : mending(one, { by: 'length', of: after.from === 'part' ? 'gap' : end, to: atEnd }, ends(null, atEnd)),
    gaps || atStart < 0
      ? null
      : mending(
          one,
          { by: 'length', of: before.from === 'part' ? 'gap' : start, to: atStart },
          ends(atStart, null),
        ),
    after.from === 'edge'
      ? mending(
          one,
          { by: 'leave out', edge: end },
          spanned(one, axis, one.piece, (now) => ({ ...now, end: null })),
        )
      : null,
    mending(one, { by: 'fill', axis }, filling(one, axis)),
  ];
}

// --- Folded strips ---

function stripTooShort(one: Case): Tried {
  return [stripOfLength(one, roundTo(lengthOfTicks(numberIn(one.problem, 'least')), one.marks, 'up'))];
}

function overlapTooLong(one: Case): Tried {
  const to = lengthOfTicks(numberIn(one.problem, 'template'));
  return [mending(one, { by: 'length', of: 'overlap', to }, lengthSet(one, ['overlap'], to))];
}

function foldedOverItself(one: Case): Tried {
  const { shape } = one.arranged.part;
  const { template } = one.problem.numbers;
  if (shape.kind !== 'ribbon') return [];
  const degrees = numberIn(one.problem, 'slant') * (shape.slant < 0 ? -1 : 1);
  const to = template === undefined ? null : roundTo(lengthOfTicks(template), one.marks, 'up');
  return [
    mending(one, { by: 'slant', degrees }, setting(one, ['slant'], degrees)),
    to === null ? null : mending(one, { by: 'length', of: 'template', to }, lengthSet(one, ['template'], to)),
  ];
}

function loopsOff(one: Case): Tried {
  const left = lengthOfTicks(numberIn(one.problem, 'left'));
  const isOverlap = left >= 0 && left <= numberIn(one.problem, 'template');
  return [
    stripOfLength(one, lengthOfTicks(numberIn(one.problem, 'wanted'))),
    isOverlap
      ? mending(one, { by: 'length', of: 'overlap', to: left }, lengthSet(one, ['overlap'], left))
      : null,
  ];
}

/** The strip cut to another length. */
function stripOfLength(one: Case, to: Length): Edit | null {
  const { shape } = one.arranged.part;
  if (!isFolded(shape)) return null;
  const axis = shape.strip.height > shape.strip.width ? 'height' : 'width';
  return mending(one, { by: 'length', of: axis, to }, lengthSet(one, ['size', along[axis].side], to));
}

/** A cut size from a seen one. */
function cutOf({ arranged }: Ailing, axis: Axis, seen: Length): Length {
  return sum(seen, beyondAlong(arranged.part, axis));
}

function noRoom(one: Case): Tried {
  const axis = axisIn(one.problem);
  const { span, start, end } = along[axis];
  const place = one.arranged.part.places[one.piece]![span];
  const border = usualBorderOf(one);
  const set = (which: 'start' | 'end', to: Length) => {
    const anchor = place[which];
    if (anchor === null || distanceOf(anchor) <= to) return null;
    const of = anchor.from === 'part' ? 'gap' : which === 'start' ? start : end;
    return mending(
      one,
      { by: 'length', of, to },
      spanned(one, axis, one.piece, (now) => withEnd(now, which, to)),
    );
  };
  const both =
    place.start?.from === 'edge' && place.end?.from === 'edge'
      ? mending(
          one,
          { by: 'both borders', axis, to: border },
          spanned(one, axis, one.piece, ({ start: first, end: last }) => ({
            start: first && anchoredAt(first, border),
            end: last && anchoredAt(last, border),
          })),
        )
      : null;
  return [both, set('end', border), set('start', border), set('end', zero), set('start', zero)];
}

/** The span with an end as far off as that; along one axis both gaps are one. */
function withEnd(span: Span, which: 'start' | 'end', to: Length): Span {
  const set = (end: 'start' | 'end') => {
    const anchor = span[end];
    const follows = anchor?.from === 'part' && span[which]?.from === 'part';
    return anchor !== null && (end === which || follows) ? anchoredAt(anchor, to) : anchor;
  };
  return { start: set('start'), end: set('end') };
}

function insetTooLarge(one: Case): Tried {
  const under = one.arranged.pieces.flatMap((piece) => (piece.under === null ? [] : [piece.under]));
  const room = Math.min(
    numberIn(one.problem, 'room'),
    ...under.map(({ width, height }) => Math.min(width, height)),
  );
  const largest = roundTo(lengthOfTicks(Math.ceil(room / 2) - 1), one.marks, 'down');
  const usual = usualBorderOf(one);
  return [
    ...(2 * usual < room ? [usual] : []),
    ...(largest > 0 ? [largest] : []),
    lengthOfTicks(Math.max(1, Math.floor(room / 4))),
  ].map((to) => mending(one, { by: 'length', of: 'inset', to }, lengthSet(one, ['inset'], to)));
}

/** The border that the rest of the layout uses most: what is wrong with this part is nothing to go by. */
function usualBorderOf({ inHand: { layout }, index }: Ailing): Length {
  return usualBorder({ ...layout, parts: layout.parts.filter((_, other) => other !== index) });
}

function roomsDiffer(one: Case): Tried {
  const axis = axisIn(one.problem);
  const seen = lengthOfTicks(numberIn(one.problem, 'smallest'));
  const size = resized(one, axis, seen);
  const loose = spanned(one, axis, null, ({ start, end }) => ({ start, end: start === null ? end : null }));
  return [mending(one, { by: 'length', of: axis, to: cutOf(one, axis, seen) }, size && [...size, ...loose])];
}

function tornAway(one: Case): Tried {
  const axis = axisIn(one.problem);
  const cut = lengthOfTicks(numberIn(one.problem, 'cut'));
  const size = resized(one, axis, cut);
  const { start, end } = along[axis];
  const left = Object.keys((valueAt(one.inHand.file, ['parts', one.index, 'torn']) ?? {}) as object);
  const goes = left.filter((edge) => edge === start || edge === end);
  const whole =
    goes.length === left.length
      ? setting(one, ['torn'], undefined)
      : goes.flatMap((edge) => setting(one, ['torn', edge], undefined));
  return [
    mending(one, { by: 'length', of: axis, to: cutOf(one, axis, cut) }, size),
    mending(one, { by: 'not torn', axis }, whole),
  ];
}

function nothingSeen(one: Case): Tried {
  const axis = axisIn(one.problem);
  const cut = lengthOfTicks(numberIn(one.problem, 'cut'));
  const longer = { by: 'length', of: axis, to: cutOf(one, axis, cut) } as const;
  return [mending(one, longer, resized(one, axis, cut))];
}

// --- Faces, and what is too large or over an edge ---

function noInside(one: Case): Tried {
  const laid = (face: 'base' | 'back') => {
    const result = partLaidOn(one.inHand, one.index, face);
    return 'edit' in result ? mending(one, { by: 'laid on', face }, result.edit.changes) : null;
  };
  const fold = changesTo(one.inHand.file, ['base', 'fold'], 'left');
  return [laid('back'), mendingOf({ kind: 'base' }, one.inHand, { by: 'side fold' }, fold), laid('base')];
}

function tooLarge(one: Case): Tried {
  const axis = axisIn(one.problem);
  const { part, cut, pieces } = one.arranged;
  const under = pieces[one.piece]?.under;
  if (under === undefined || under === null || cut === null) return [];
  const border = usualBorderOf(one);
  const framed = minus(under[axis], times(border, 2));
  const size = (seen: Length) =>
    mending(
      one,
      { by: 'length', of: part.extent.by === 'diameter' ? 'diameter' : axis, to: cutOf(one, axis, seen) },
      resized(one, axis, seen),
    );
  const smaller = lengthOfTicks(Math.min(under.width, under.height));
  if (part.extent.by === 'diameter') return [size(minus(smaller, times(border, 2))), size(smaller)];
  const turned = one.problem.names.turned === 'fits' && part.extent.by === 'size';
  const sides = turned
    ? [...lengthSet(one, ['size', 0], cut.height), ...lengthSet(one, ['size', 1], cut.width)]
    : null;
  return [
    mending(one, { by: 'turned size', width: cut.height, height: cut.width }, sides),
    mending(one, { by: 'fill', axis }, filling(one, axis)),
    size(framed),
    size(under[axis]),
  ];
}

function overEdge(one: Case): Tried {
  const { edge } = one.problem.names;
  const { part, pieces } = one.arranged;
  const { borders } = pieces[one.piece]!;
  if (borders === null) return [];
  const middle = (axis: Axis) => spanned(one, axis, one.piece, () => ({ start: null, end: null }));
  if (edge === 'rim') {
    return [mending(one, { by: 'centre', axis: 'both' }, bothMiddle(one)), ...smallerOnCircle(one)];
  }
  const over = edge as Edge;
  const axis = axisOf(over);
  const fills = part.extent.by === 'size' && part.extent[axis] === null;
  const border = usualBorderOf(one);
  const until = (to: Length) => {
    const by = over === along[axis].start ? to - borders[over] : borders[over] - to;
    return mending(one, { by: 'border', edge: over, to }, shifted(one, axis, by));
  };
  const distance = (to: Length) => {
    const which = over === along[axis].start ? 'start' : 'end';
    const changes = spanned(one, axis, one.piece, (now) => ({
      ...now,
      [which]: { from: 'edge', distance: to },
    }));
    return fills ? mending(one, { by: 'length', of: over, to }, changes) : null;
  };
  const filled = spanFilling(one, axis);
  return [
    until(zero),
    distance(zero),
    part.extent.by === 'inset' || !fills ? mending(one, { by: 'centre', axis }, middle(axis)) : null,
    until(border),
    mending(one, { by: 'fill', axis }, filled),
  ];
}

/** What lets a part fill all of what it lies on along an axis, wherever it lay. */
function spanFilling(one: Case, axis: Axis): readonly Change[] | null {
  const fill = filling(one, axis);
  return fill && [...fill, ...spanned(one, axis, null, () => ({ start: null, end: null }))];
}

function bothMiddle(one: Case): readonly Change[] {
  // One change of the whole place, since the second would be made to what the first left.
  const path = ['parts', one.index, 'place'];
  const { file } = one.inHand;
  return valueAt(file, [...path, one.piece]) === undefined
    ? changesTo(file, path, undefined)
    : changesTo(file, [...path, one.piece], {});
}

/** Of a rectangle or circle over the rim of a circle: the largest of its proportions that goes in the middle of it. */
function smallerOnCircle(one: Case): Tried {
  const { part, seen, pieces } = one.arranged;
  const bed = one.inHand.layout.parts.find(({ id }) => id === part.on);
  if (bed?.shape.kind !== 'circle') return [];
  const under = pieces[one.piece]?.under;
  if (seen === null || under === undefined || under === null) return [];
  const diagonal = part.shape.kind === 'circle' ? seen.width : Math.hypot(seen.width, seen.height);
  const share = under.width / diagonal;
  if (share >= 1) return [];
  const side = (axis: Axis) => roundTo(lengthOfTicks(Math.floor(seen[axis] * share)), one.marks, 'down');
  const [width, height] = [side('width'), side('height')];
  const [wide, high] = [resized(one, 'width', width), resized(one, 'height', height)];
  if (wide === null || high === null) return [];
  const told =
    part.extent.by === 'diameter'
      ? ({ by: 'length', of: 'diameter', to: width } as const)
      : ({ by: 'size', width: cutOf(one, 'width', width), height: cutOf(one, 'height', height) } as const);
  const size = part.extent.by === 'diameter' ? wide : [...wide, ...high];
  return [mending(one, told, [...size, ...bothMiddle(one)])];
}

// --- Borders and gaps ---

function unevenBorder(one: Case): Tried {
  const { numbers, names } = one.problem;
  if (numbers.across !== undefined)
    return unlikeBorders(one, lengthOfTicks(numbers.across), lengthOfTicks(numberIn(one.problem, 'down')));
  const axis: Axis = numbers.left === undefined ? 'height' : 'width';
  const { start, end } = along[axis];
  const before = lengthOfTicks(numberIn(one.problem, start));
  const after = lengthOfTicks(numberIn(one.problem, end));
  const even = after - before;
  const last = names.last === one.arranged.part.name ? one : lastOf(one);
  const { seen } = one.arranged;
  if (last === one) {
    const smaller = lengthOfTicks(Math.min(before, after));
    const size = seen === null ? null : lengthOfTicks(seen[axis] + Math.abs(even));
    return [
      mending(
        one,
        { by: 'centre', axis },
        spanned(one, axis, null, () => ({ start: null, end: null })),
      ),
      size === null
        ? null
        : mending(
            one,
            { by: 'even size', axis, to: cutOf(one, axis, size), border: smaller },
            withMiddle(one, axis, resized(one, axis, size)),
          ),
      even % 2 === 0
        ? mending(
            one,
            { by: 'border', edge: start, to: lengthOfTicks(before + even / 2) },
            shifted(one, axis, even / 2),
          )
        : null,
    ];
  }
  if (last === null) return [];
  const shown = last.arranged.seen;
  const grown = shown === null ? null : lengthOfTicks(shown[axis] + even);
  return [
    mending(last, { by: 'border', edge: end, to: before }, shifted(last, axis, even)),
    grown === null
      ? null
      : mending(last, { by: 'length', of: axis, to: cutOf(last, axis, grown) }, resized(last, axis, grown)),
    mending(one, { by: 'border', edge: start, to: after }, shifted(one, axis, -(before - after))),
    even % 2 === 0
      ? mending(
          one,
          { by: 'border', edge: start, to: lengthOfTicks(before + even / 2) },
          shifted(one, axis, even / 2),
        )
      : null,
  ];
}

function withMiddle(one: Case, axis: Axis, size: readonly Change[] | null): readonly Change[] | null {
  return size && [...size, ...spanned(one, axis, null, () => ({ start: null, end: null }))];
}

/** The part that ends a row, on the same thing as its first. */
function lastOf(one: Case): Case | null {
  const { parts } = one.inHand.arrangement;
  const index = parts.findLastIndex(
    ({ part }) => part.name === one.problem.names.last && part.on === one.arranged.part.on,
  );
  const arranged = parts[index];
  return arranged === undefined ? null : { ...one, index, arranged, piece: 0 };
}

function unlikeBorders(one: Case, across: Length, down: Length): Tried {
  const { part, seen } = one.arranged;
  if (seen === null) return [];
  const less = across < down ? across : down;
  const size = (axis: Axis, from: Length, to: Length) => {
    const shown = lengthOfTicks(seen[axis] + 2 * (from - to));
    const told = { by: 'even size', axis, to: cutOf(one, axis, shown), border: to } as const;
    return mending(one, told, withMiddle(one, axis, resized(one, axis, shown)));
  };
  const torn = Object.values(part.torn).some((depth) => depth > 0);
  const framed =
    part.extent.by === 'size' && !torn
      ? [
          ...setting(one, ['size'], undefined),
          ...setting(one, ['inset'], typingOf(one.inHand.layout)(less)),
          ...setting(one, ['place'], undefined),
          ...(valueAt(one.inHand.file, ['parts', one.index, 'room']) === undefined
            ? []
            : setting(one, ['room'], undefined)),
        ]
      : null;
  return [
    across < down ? size('height', down, across) : size('width', across, down),
    mending(one, { by: 'equal border', to: less }, framed),
    across < down ? size('width', across, down) : size('height', down, across),
  ];
}

function negativeGap(one: Case): Tried {
  const border = usualBorderOf(one);
  return [border, zero].map((to) => {
    const after = one.arranged.part.places.map(({ across, down }) => ({
      across: withGap(across, to),
      down: withGap(down, to),
    }));
    const changes = after.every(
      (_, piece) => JSON.stringify(after[piece]) === JSON.stringify(one.arranged.part.places[piece]),
    )
      ? null
      : gapsChanged(one, after);
    return mending(one, { by: 'length', of: 'gap', to }, changes);
  });
}

function withGap({ start, end }: Span, to: Length): Span {
  const negative = [start, end].some((anchor) => anchor?.from === 'part' && anchor.gap < 0);
  const set = (anchor: Span['start']) =>
    negative && anchor?.from === 'part' ? { ...anchor, gap: to } : anchor;
  return { start: set(start), end: set(end) };
}

function gapsChanged(
  one: Case,
  after: readonly { readonly across: Span; readonly down: Span }[],
): readonly Change[] {
  return placesChanged(one.inHand.file, one.inHand.layout, one.index, new Map(after.entries()));
}

// --- What lies on what ---

function overlap(one: Case): Tried {
  const { by } = one.problem.names;
  const raise = mending(one, { by: 'raised' }, setting(one, ['adhere'], 'raised'));
  const own = one.arranged.pieces[one.piece]?.box;
  if (by === undefined || own === undefined || own === null) return [raise];
  const lower = one.inHand.arrangement.parts.find(
    ({ part }, index) => index < one.index && part.name === by && part.on === one.arranged.part.on,
  );
  const box = lower?.pieces.map((piece) => piece.box).find((other) => other !== null && meet(other, own));
  if (box === undefined || box === null) return [raise];
  const ways: readonly (readonly [Edge, number])[] = [
    ['right', rightOf(box) - own.left],
    ['left', box.left - rightOf(own)],
    ['bottom', bottomOf(box) - own.top],
    ['top', box.top - bottomOf(own)],
  ];
  const beside = ways
    .toSorted((a, b) => Math.abs(a[1]) - Math.abs(b[1]))
    .map(([edge, move]) => mending(one, { by: 'beside', other: by, edge }, shifted(one, axisOf(edge), move)));
  return [...beside, raise];
}

function meet(one: Box, other: Box): boolean {
  return (
    one.left < rightOf(other) &&
    other.left < rightOf(one) &&
    one.top < bottomOf(other) &&
    other.top < bottomOf(one)
  );
}

function hidden(one: Case): Tried {
  const { layout, file, arrangement } = one.inHand;
  const { by } = one.problem.names;
  const hider = layout.parts.findLastIndex(({ name }, index) => index > one.index && name === by);
  const upper = arrangement.parts[hider];
  assert(upper !== undefined && by !== undefined, 'What hides a part lies above it', { by });
  const own = one.arranged.part.name;
  const over: Ailing = { inHand: one.inHand, index: hider, arranged: upper, piece: 0 };
  const border = usualBorderOf(one);
  const inset =
    upper.part.on === one.arranged.part.id && upper.part.extent.by === 'size'
      ? [
          ...setting(over, ['size'], undefined),
          ...setting(over, ['inset'], typingOf(layout)(border)),
          ...setting(over, ['place'], undefined),
        ]
      : null;
  return [
    mending(one, { by: 'above', other: by }, partMoved(file, one.index, hider).changes),
    mending(over, { by: 'below', other: own }, partMoved(file, hider, one.index).changes),
    mending(over, { by: 'equal border', to: border }, inset),
    mending(one, { by: 'taken off' }, partTaken(file, one.index).changes),
  ];
}

function piecesStacked(one: Case): Tried {
  const { part, pieces, seen } = one.arranged;
  const under = pieces[0]?.under;
  const count = pieces.length;
  const gap = usualBorderOf(one);
  const row = (axis: Axis) => {
    if (seen === null || under === undefined || under === null) return null;
    const whole = count * seen[axis] + (count - 1) * gap;
    if (whole > under[axis]) return null;
    const first = roundTo(lengthOfTicks(Math.floor((under[axis] - whole) / 2)), one.marks, 'down');
    const changes = spanned(one, axis, null, (_, piece) => ({
      start: { from: 'edge', distance: sum(first, times(sum(seen[axis], gap), piece)) },
      end: null,
    }));
    return mending(one, { by: 'row', axis, count, gap }, changes);
  };
  const listed = valueAt(one.inHand.file, ['parts', one.index, 'place', 0]);
  const single = [
    ...setting(one, ['count'], undefined),
    ...(listed === undefined ? [] : setting(one, ['place'], listed)),
  ];
  return [
    part.extent.by === 'inset' ? null : row('width'),
    part.extent.by === 'inset' ? null : row('height'),
    mending(one, { by: 'one piece' }, single),
  ];
}

// --- What a problem brings ---

function axisIn({ names }: LayoutProblem): Axis {
  return names.axis === 'height' ? 'height' : 'width';
}

function numberIn({ code, numbers }: LayoutProblem, name: string): number {
  const value = numbers[name];
  assert(value !== undefined, 'A problem brings its numbers', { code, name });
  return value;
}
