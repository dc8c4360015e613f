import type { Arrangement, Layout } from '../../layout/index.ts';

/**
 * Looks at what holds a card point by point, for piles of rectangles and ovals on the front, every part of one piece.
 * Knows shapes by their formulas and shares nothing with how rooms and rows are found; lengths are plain ticks.
 */
export interface GridAsks {
  /** How far the edges of a piece have to be kept clear. */
  readonly inset: number;
  /** How high foam and spots lie. */
  readonly foam: number;
  readonly spots: number;
}

interface Thing {
  readonly id: string;
  readonly height: number;
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly isOval: boolean;
  readonly isSeenThrough: boolean;
  readonly lift: number;
  /** How high the highest lies that it meets below it. */
  readonly high: number;
}

type Outlined = Pick<Thing, 'x0' | 'x1' | 'y0' | 'y1' | 'isOval'>;

/** The things of a pile from the card up, as the grid sees them. */
export function thingsOf(layout: Layout, arrangement: Arrangement, asks: GridAsks): readonly Thing[] {
  const card: Thing = {
    id: 'base',
    height: -1,
    x0: 0,
    y0: 0,
    x1: arrangement.card.width,
    y1: arrangement.card.height,
    isOval: false,
    isSeenThrough: false,
    lift: 0,
    high: 0,
  };
  const things: Thing[] = [card];
  arrangement.parts.forEach(({ part, pieces: [piece] }, height) => {
    const box = piece!.box!;
    const one = {
      id: part.id,
      height,
      x0: box.left,
      y0: box.top,
      x1: box.left + box.width,
      y1: box.top + box.height,
      isOval: part.shape.kind === 'oval',
      isSeenThrough: part.papers.some((paper) => layout.papers.get(paper)!.seeThrough),
    };
    const own = { raised: asks.foam, spots: asks.spots, flat: 0 }[part.adhere];
    const under = things.filter((other) => meet(one, other)).map(({ lift }) => lift);
    things.push({ ...one, lift: own + Math.max(0, ...under), high: Math.max(...under) });
  });
  return things;
}

/** Whether glue may be at that point under the thing: `''`, or what is the matter; edges are passed over by `slack`. */
export function wrongAt(
  x: number,
  y: number,
  thing: Thing,
  things: readonly Thing[],
  asks: GridAsks,
  slack: number,
): string {
  if (clearance(x, y, thing) < asks.inset - slack) return 'too near the edge';
  const under = things.filter(({ height }) => height < thing.height);
  if (!under.some((other) => other.lift === thing.high && clearance(x, y, other) > -slack))
    return 'on nothing';
  if (!thing.isSeenThrough) return '';
  const isCovered = things.some(
    (other) => other.height > thing.height && !other.isSeenThrough && clearance(x, y, other) > -slack,
  );
  return isCovered ? '' : 'seen through';
}

/** How far a point is from the outline of a thing, negative outside; of an oval by points of its outline, closer and closer. */
export function clearance(x: number, y: number, { x0, y0, x1, y1, isOval }: Outlined): number {
  if (!isOval) {
    const inside = Math.min(x - x0, x1 - x, y - y0, y1 - y);
    return inside >= 0 ? inside : -Math.hypot(Math.max(x0 - x, 0, x - x1), Math.max(y0 - y, 0, y - y1));
  }
  const [a, b, cx, cy] = [(x1 - x0) / 2, (y1 - y0) / 2, (x0 + x1) / 2, (y0 + y1) / 2];
  const to = (angle: number) => Math.hypot(x - cx - a * Math.cos(angle), y - cy - b * Math.sin(angle));
  let [nearest, least, apart] = [0, to(0), Math.PI / 90];
  for (let step = 1; step < 180; step += 1) {
    const there = to(step * apart);
    if (there < least) [nearest, least] = [step * apart, there];
  }
  for (; apart * Math.max(a, b) > 1; apart /= 2) {
    for (const angle of [nearest - apart / 2, nearest + apart / 2]) {
      const there = to(angle);
      if (there < least) [nearest, least] = [angle, there];
    }
  }
  return ((x - cx) / a) ** 2 + ((y - cy) / b) ** 2 <= 1 ? least : -least;
}

/** Whether a point is in a thing. */
export function isInside(x: number, y: number, { x0, y0, x1, y1, isOval }: Outlined): boolean {
  if (!isOval) return x0 <= x && x <= x1 && y0 <= y && y <= y1;
  return ((2 * x - x0 - x1) / (x1 - x0)) ** 2 + ((2 * y - y0 - y1) / (y1 - y0)) ** 2 <= 1;
}

function meet(one: Outlined, other: Outlined): boolean {
  const [x0, x1] = [Math.max(one.x0, other.x0), Math.min(one.x1, other.x1)];
  const [y0, y1] = [Math.max(one.y0, other.y0), Math.min(one.y1, other.y1)];
  if (x0 >= x1 || y0 >= y1) return false;
  if (!one.isOval && !other.isOval) return true;
  // Of ovals: whether any point of a fine grid is in both.
  for (let i = 0; i <= 200; i += 1) {
    for (let j = 0; j <= 200; j += 1) {
      const [x, y] = [x0 + ((x1 - x0) * i) / 200, y0 + ((y1 - y0) * j) / 200];
      if (isInside(x, y, one) && isInside(x, y, other)) return true;
    }
  }
  return false;
}
