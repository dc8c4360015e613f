import type { Arrangement, Layout } from '../../layout/index.ts';

/**
 * How thick a card is, worked out the simple way, for layouts of nothing but rectangles: the plane is cut along every
 * edge there is, and at the middle of each field the things that lie there are counted up. Shares nothing with
 * `sectionOf` but the thicknesses handed in.
 */
export interface GridThickness {
  /** Ticks of each paper, by its id; of bought things under `''`. */
  readonly papers: Readonly<Record<string, number>>;
  /** Ticks of foam under each raised part. */
  readonly foam: number;
}

/** Area in square ticks by thickness in ticks, of everything that is thicker than nothing. */
export function boxGrid(
  layout: Layout,
  arrangement: Arrangement,
  { papers, foam }: GridThickness,
): Map<number, number> {
  const { width, height } = arrangement.card;
  const boxes: {
    face: string;
    x0: number;
    x1: number;
    y0: number;
    y1: number;
    thick: number;
    lift: number;
  }[] = [];
  for (const { part, face, pieces } of arrangement.parts) {
    for (const { box } of pieces) {
      if (box === null) continue;
      const left = face === 'back' ? width - box.left - box.width : box.left;
      const one = { face, x0: left, x1: left + box.width, y0: box.top, y1: box.top + box.height };
      const carriers = boxes.filter(
        (other) =>
          other.face === face &&
          other.x0 < one.x1 &&
          one.x0 < other.x1 &&
          other.y0 < one.y1 &&
          one.y0 < other.y1,
      );
      const lift =
        Math.max(0, ...carriers.map((other) => other.lift)) + (part.adhere === 'raised' ? foam : 0);
      boxes.push({ ...one, thick: papers[part.papers[0] ?? '']!, lift });
    }
  }
  const sheets = sheetsOf(layout, width, height);
  const xs = [...new Set([0, width, ...[...boxes, ...sheets].flatMap(({ x0, x1 }) => [x0, x1])])].sort(
    (a, b) => a - b,
  );
  const ys = [...new Set([0, height, ...[...boxes, ...sheets].flatMap(({ y0, y1 }) => [y0, y1])])].sort(
    (a, b) => a - b,
  );
  const areas = new Map<number, number>();
  for (let i = 0; i + 1 < xs.length; i += 1) {
    for (let j = 0; j + 1 < ys.length; j += 1) {
      const x = (xs[i]! + xs[i + 1]!) / 2;
      const y = (ys[j]! + ys[j + 1]!) / 2;
      const here = boxes.filter(({ x0, x1, y0, y1 }) => x0 < x && x < x1 && y0 < y && y < y1);
      const onCard = x > 0 && x < width && y > 0 && y < height;
      const panels = sheets.filter(({ x0, x1, y0, y1 }) => x0 < x && x < x1 && y0 < y && y < y1);
      let thick = onCard ? papers[layout.base.papers[0] ?? '']! * panels.length : 0;
      for (const face of ['base', 'inside', 'back']) {
        const pile = here.filter((box) => box.face === face);
        thick +=
          pile.reduce((total, box) => total + box.thick, 0) + Math.max(0, ...pile.map(({ lift }) => lift));
      }
      if (thick > 0)
        areas.set(thick, (areas.get(thick) ?? 0) + (xs[i + 1]! - xs[i]!) * (ys[j + 1]! - ys[j]!));
    }
  }
  return areas;
}

/** The panels of the closed base, each from where to where; worked out by hand for every fold with its usual allowance. */
function sheetsOf({ base, units }: Layout, width: number, height: number) {
  const upwards = base.fold === 'top' || (base.fold !== 'left' && base.opens === 'upwards');
  const along = upwards ? height : width;
  const half = Math.floor(along / 2);
  const narrower = units === 'in' ? 2_540 : 3_200;
  const whole = [0, along];
  const spans: Readonly<Record<string, readonly (readonly number[])[]>> = {
    none: [whole],
    left: [whole, whole],
    top: [whole, whole],
    gate: [whole, [0, half], [half, along]],
    shutter: [whole, [0, half], [half, along], [0, half], [half, along]],
    trifold: [whole, [narrower, along], whole],
    roll: [whole, whole, [1.5 * narrower, along], [1.5 * narrower, along - narrower]],
    parallel: [whole, whole, [narrower, along], [narrower, along]],
    z: [whole, whole, whole],
  };
  return spans[base.fold]!.map(([from, to]) =>
    upwards ? { x0: 0, x1: width, y0: from!, y1: to! } : { x0: from!, x1: to!, y0: 0, y1: height },
  );
}
