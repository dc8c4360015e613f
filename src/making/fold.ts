import {
  type Axis,
  inches,
  type Length,
  lengthOfTicks,
  millimetres,
  minus,
  type Size,
  sum,
  times,
  type Units,
  zero,
} from '../measure/index.ts';

/**
 * The kinds of base. `left` is a side fold, `top` a top fold, `none` a flat card; `gate` has two doors that meet in the
 * middle of the front, `shutter` two that are folded back on themselves; `trifold` (a letter fold) and `roll` are rolled
 * up, `parallel` is folded in half twice, `z` to and fro.
 */
export type FoldKind = 'left' | 'top' | 'gate' | 'shutter' | 'trifold' | 'roll' | 'parallel' | 'z' | 'none';

/** Which way a base of several panels opens: they follow one another from left to right, or from top to bottom. */
export type Opens = 'sideways' | 'upwards';

/** A base by all that says how it is folded. */
export interface FoldedBase {
  /** The closed front. */
  readonly size: Size;
  readonly fold: FoldKind;
  /** Of a kind that opens either way. */
  readonly opens: Opens;
  /** How much a panel that lies within others is narrower than they; see `usualAllowance`. */
  readonly allowance: Length;
}

/** A panel of a base: what lies between two scores, or a score and an edge. */
export interface Panel {
  readonly length: Length;
  /** From the left or top edge of the opened base, its inside up. */
  readonly at: Length;
  /** From the left or top edge of the front to its own, when the card is closed. */
  readonly closedAt: Length;
  /** From 0 at the back of the closed card; panels of one level lie beside one another. */
  readonly level: number;
  /** Whether its inner side faces the front of the closed card. */
  readonly insideUp: boolean;
  /** What it is to whoever opens the card; `inner`: none of these. */
  readonly is: 'front' | 'inside' | 'inner';
}

/** One score line of the opened base, from edge to edge. */
export interface Score {
  /** The axis the distance runs along; the line itself runs across it. */
  readonly axis: Axis;
  /** From the left or top edge of the opened base, its inside up. */
  readonly at: Length;
  /** As it is seen on the inside: a valley's two panels come together there, a mountain's part. */
  readonly folds: 'valley' | 'mountain';
}

/** What one kind of fold makes of a closed front. */
interface Fold {
  /** The axis that its panels follow one another on; `either`: the base says. */
  readonly along: Axis | 'either' | null;
  /** Whether panels that lie within others are narrower. */
  readonly narrows: boolean;
  /** Their lengths, from left (top), the inside of the base up. */
  panels(front: Length, allowance: Length): readonly Length[];
  /** Which of them is seen beside the inner side of the front when the card is opened: it is as large as the front. */
  readonly inside: number;
  /** How they lie on one another in the closed card, from the back. */
  readonly stack: readonly (readonly number[])[];
}

const folds = {
  left: { along: 'width', narrows: false, panels: (front) => [front, front], inside: 1, stack: [[1], [0]] },
  top: { along: 'height', narrows: false, panels: (front) => [front, front], inside: 1, stack: [[1], [0]] },
  gate: {
    along: 'either',
    narrows: false,
    panels: (front) => [halfOf(front), front, restOf(front)],
    inside: 1,
    stack: [[1], [0, 2]],
  },
  shutter: {
    along: 'either',
    narrows: false,
    panels: (front) => [halfOf(front), halfOf(front), front, restOf(front), restOf(front)],
    inside: 2,
    stack: [[2], [1, 3], [0, 4]],
  },
  trifold: {
    along: 'either',
    narrows: true,
    panels: (front, allowance) => [front, front, minus(front, allowance)],
    inside: 1,
    stack: [[1], [2], [0]],
  },
  roll: {
    along: 'either',
    narrows: true,
    panels: (front, allowance) => {
      const third = minus(front, lengthOfTicks(Math.ceil((allowance * 3) / 2)));
      return [front, front, third, minus(third, allowance)];
    },
    inside: 1,
    stack: [[1], [3], [2], [0]],
  },
  parallel: {
    along: 'either',
    narrows: true,
    panels: (front, allowance) => [front, front, minus(front, allowance), minus(front, allowance)],
    inside: 1,
    stack: [[1], [2], [3], [0]],
  },
  z: {
    along: 'either',
    narrows: false,
    panels: (front) => [front, front, front],
    inside: 1,
    stack: [[2], [1], [0]],
  },
  none: { along: null, narrows: false, panels: (front) => [front], inside: 0, stack: [[0]] },
} as const satisfies Record<FoldKind, Fold>;

/** Every kind of fold there is, in the order they are offered. */
export const foldKinds = Object.keys(folds) as readonly FoldKind[];

/** Whether the base itself has to say which way it opens. */
export function opensEitherWay(fold: FoldKind): boolean {
  return folds[fold].along === 'either';
}

/** Whether panels that lie within others are made narrower, by an allowance. */
export function takesAllowance(fold: FoldKind): boolean {
  return folds[fold].narrows;
}

/**
 * How much a panel that lies within others is made narrower unless said: 1/16 in, of printed figures between 1/32 in for
 * thin paper and 1/8 in for cover (five commercial printers); 2 mm, which is within the 1/16 to 3/32 in of one of them
 * and stands on the marks of a ruler. Of a roll the third panel is narrower by half as much again, and the fourth
 * by this once more: 3/32 in, then 1/16 in.
 */
export const usualAllowance = {
  in: inches(1, 16),
  mm: millimetres(2),
} as const satisfies Record<Units, Length>;

/** The most that an allowance may be: a quarter of the front, so that every panel is some. */
export function largestAllowance({ size, fold, opens }: Omit<FoldedBase, 'allowance'>): Length {
  const axis = openingAxis({ fold, opens });
  return axis === null ? zero : lengthOfTicks(Math.floor(size[axis] / 4));
}

/** The axis that the panels of a base follow one another on; `null` for a flat card. */
export function openingAxis({ fold, opens }: Pick<FoldedBase, 'fold' | 'opens'>): Axis | null {
  const { along } = folds[fold];
  if (along !== 'either') return along;
  return opens === 'sideways' ? 'width' : 'height';
}

/**
 * The panels of a base from left to right, or from top to bottom, its inside up; of a flat card the one that it is.
 *
 * Where a front is halved and does not halve in whole ticks, the doors on the right (at the bottom) are a tick
 * broader. Law, tested: laid out from the inside panel and folded at every score, they lie as `closedAt` says.
 */
export function panelsOf(base: FoldedBase): readonly Panel[] {
  const { panels, inside, stack }: Fold = folds[base.fold];
  const front = base.size[openingAxis(base) ?? 'width'];
  const lengths = panels(front, base.allowance);
  const closed = closedPlaces(lengths, inside);
  const last = stack.length - 1;
  return lengths.map((length, index) => {
    const level = stack.findIndex((panels) => panels.includes(index));
    return {
      length,
      at: sum(...lengths.slice(0, index)),
      closedAt: closed[index]!,
      level,
      insideUp: (index - inside) % 2 === 0,
      is: level === last ? 'front' : index === inside ? 'inside' : 'inner',
    };
  });
}

/** The size to cut: the base lying open, width then height as the card stands. */
export function openedSize(base: FoldedBase): Size {
  const axis = openingAxis(base);
  if (axis === null) return base.size;
  return { ...base.size, [axis]: sum(...panelsOf(base).map(({ length }) => length)) };
}

/**
 * How long the closed front is along an axis when the base lies open as long as `opened` there, rounded down to a tick;
 * kind and allowance are those of `base`. Zero or less where so little is no base.
 */
export function frontFor(base: FoldedBase, axis: Axis, opened: Length): Length {
  if (axis !== openingAxis(base)) return opened;
  // Of a front of an even number of ticks no half is rounded.
  const front = times(base.allowance, 4) + 2;
  const { panels }: Fold = folds[base.fold];
  const fronts = sum(...panels(lengthOfTicks(2), zero)) / 2;
  const narrower = front * fronts - sum(...panels(lengthOfTicks(front), base.allowance));
  return lengthOfTicks(Math.floor((opened + narrower) / fronts));
}

/** Where the opened base is scored, left to right or top to bottom; nothing for a flat card. */
export function scoresOf(base: FoldedBase): readonly Score[] {
  const axis = openingAxis(base);
  if (axis === null) return [];
  const panels = panelsOf(base);
  return panels.slice(1).map((panel, index): Score => {
    const before = panels[index]!;
    // Inner sides meet where the upper of the two looks down on the other.
    const meet = before.insideUp === panel.level > before.level;
    return { axis, at: panel.at, folds: meet ? 'valley' : 'mountain' };
  });
}

/**
 * The axis of the opened base that the paper's fibres should run along, so that it folds with the grain; `null`
 * for a flat card.
 *
 * "Fold parallel to the grain": six printing and binding pages agree; a fold across it cracks and springs open.
 */
export function grainFor(base: Pick<FoldedBase, 'fold' | 'opens'>): Axis | null {
  const along = openingAxis(base);
  if (along === null) return null;
  return along === 'width' ? 'height' : 'width';
}

/** Where doors meet on the front, from its left or top edge; `null` where the front is one panel. */
export function slitOf(base: FoldedBase): { readonly axis: Axis; readonly at: Length } | null {
  const axis = openingAxis(base);
  const doors = panelsOf(base).filter(({ is }) => is === 'front');
  if (axis === null || doors.length < 2) return null;
  return { axis, at: lengthOfTicks(Math.max(...doors.map(({ closedAt }) => closedAt))) };
}

/**
 * The edges of a closed front that it opens at, `start` its left or top one: both of a front with doors, none of a flat
 * card.
 */
export function hingesOf(fold: FoldKind): readonly ('start' | 'end')[] {
  const { inside, stack }: Fold = folds[fold];
  if (fold === 'none') return [];
  return stack.at(-1)!.map((panel) => (panel < inside ? 'start' : 'end'));
}

/**
 * Whether a face of the closed card shows the side of its paper that the front shows. Of most folds the inside shows the
 * other; doors that are folded back show the same, and so the back the other; of a `z` the last panel shows its inner
 * side at the back.
 */
export function showsSideOfFront(fold: FoldKind, face: 'base' | 'inside' | 'back'): boolean {
  const { inside, stack }: Fold = folds[fold];
  const isInside = (panel: number) => (panel - inside) % 2 === 0;
  const front = isInside(stack.at(-1)![0]!);
  if (face === 'base') return true;
  return face === 'inside' ? front : front !== isInside(stack[0]![0]!);
}

function halfOf(front: Length): Length {
  return lengthOfTicks(Math.floor(front / 2));
}

function restOf(front: Length): Length {
  return minus(front, halfOf(front));
}

/** Where panels lie once they are folded to and fro over the inside one, from its own left or top edge. */
function closedPlaces(lengths: readonly Length[], inside: number): readonly Length[] {
  const places = lengths.map(() => zero);
  /** Goes outwards from a crease; every panel lies back from where the one before it ended. */
  const walk = (panels: readonly number[], crease: Length, inwards: 1 | -1) => {
    let at = crease;
    let towards = inwards;
    for (const panel of panels) {
      const end = lengthOfTicks(at + towards * lengths[panel]!);
      places[panel] = lengthOfTicks(Math.min(at, end));
      at = end;
      towards = towards === 1 ? -1 : 1;
    }
  };
  const all = lengths.map((_, index) => index);
  walk(all.slice(inside + 1), lengths[inside]!, -1);
  walk(all.slice(0, inside).toReversed(), zero, 1);
  return places;
}
