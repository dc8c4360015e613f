import ShelfPack from '@mapbox/shelf-pack';
import { pack2D } from 'binpackingjs/2d';
import { MaxRectsPacker } from 'maxrects-packer';
import type { CuttingTask } from '../src/cutting/index.ts';

/** A rectangle where a packer laid it. */
export interface Laid {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** General packers of rectangles, each: the sheets it used, as the rectangles on each. */
export const packers: Readonly<Record<string, (task: CuttingTask) => readonly (readonly Laid[])[]>> = {
  'maxrects-packer': (task) => {
    const sheet = task.sheets[0]!;
    const packer = new MaxRectsPacker(sheet.width, sheet.height, 0, {
      smart: false,
      pot: false,
      square: false,
      allowRotation: true,
      border: 0,
    });
    // Longest first, as it sorts whole lists itself.
    const items = [...task.items].sort((a, b) => Math.max(b.width, b.height) - Math.max(a.width, a.height));
    for (const item of items) {
      for (let piece = 0; piece < item.need; piece += 1) {
        packer.add(item.width, item.height, { allowRotation: item.turns });
      }
    }
    return packer.bins.map((bin) => bin.rects.map(({ x, y, width, height }) => ({ x, y, width, height })));
  },
  '@mapbox/shelf-pack': (task) => {
    const sheet = task.sheets[0]!;
    // It fills one sheet, takes pieces as they come and turns none: highest first, and what is left, on the next.
    let left = task.items
      .flatMap((item) => {
        const lies = item.width <= sheet.width && item.height <= sheet.height;
        const [width, height] = lies ? [item.width, item.height] : [item.height, item.width];
        return Array.from({ length: item.need }, () => ({ width, height }));
      })
      .sort((a, b) => b.height - a.height);
    const sheets: Laid[][] = [];
    while (left.length > 0) {
      const shelves = new ShelfPack(sheet.width, sheet.height, { autoResize: false });
      const laid: Laid[] = [];
      left = left.filter(({ width, height }) => {
        // Its types leave out that there may be no room.
        const place = shelves.packOne(width, height) as ShelfPack.Bin | null;
        if (place !== null) laid.push({ x: place.x, y: place.y, width, height });
        return place === null;
      });
      sheets.push(laid);
    }
    return sheets;
  },
  binpackingjs: (task) => {
    const sheet = task.sheets[0]!;
    const boxes = task.items.flatMap((item) =>
      Array.from({ length: item.need }, () => ({
        width: item.width,
        height: item.height,
        constrainRotation: !item.turns,
      })),
    );
    // It wants its bins counted beforehand and spreads over all it gets: as few are given as will do.
    const area = boxes.reduce((sum, box) => sum + box.width * box.height, 0);
    for (let count = Math.ceil(area / (sheet.width * sheet.height)); ; count += 1) {
      const bins = Array.from({ length: count }, () => ({ width: sheet.width, height: sheet.height }));
      const { packedBins, unpackedBoxes } = pack2D({ bins, boxes });
      if (unpackedBoxes.length > 0) continue;
      return packedBins.map((bin) => bin.boxes.map(({ x, y, width, height }) => ({ x, y, width, height })));
    }
  },
};

/** More pieces than this a packer is not given: it would take minutes over one set. */
export const mostPieces: Readonly<Record<string, number>> = { binpackingjs: 120 };

/** Whether the rectangles can be cut free by edge-to-edge cuts alone. */
export function cutsEdgeToEdge(laid: readonly Laid[]): boolean {
  if (laid.length <= 1) return true;
  for (const [near, far] of [
    ['x', 'width'],
    ['y', 'height'],
  ] as const) {
    const sorted = [...laid].sort((a, b) => a[near] - b[near]);
    let reach = 0;
    for (const [index, box] of sorted.entries()) {
      // A cut goes through where no box before reaches over this box's near edge.
      if (index > 0 && box[near] >= reach) {
        return cutsEdgeToEdge(sorted.slice(0, index)) && cutsEdgeToEdge(sorted.slice(index));
      }
      reach = Math.max(reach, box[near] + box[far]);
    }
  }
  return false;
}
