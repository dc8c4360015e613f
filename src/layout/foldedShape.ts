import {
  type Facet,
  facetsOfLoops,
  knotFacets,
  type Loops,
  type Ribbon,
  ribbonFacets,
  ribbonMeasures,
  type Strip,
  sizeOfKnot,
  sizeOfLoops,
} from '../making/index.ts';
import type { Length, Size } from '../measure/index.ts';
import type { FoldedShape, Shape } from './layout.ts';

/** A strip as it lies when it is folded. */
export interface FoldedStrip {
  /** The box round it. */
  readonly size: Size;
  /** From the lowest to the highest, the top left corner of the box at the origin; `turned` shows the other side of the paper. */
  readonly facets: readonly Facet[];
}

/** Whether a shape is folded of a strip, so that what is seen of it is not what is cut. */
export function isFolded(shape: Shape): shape is FoldedShape {
  return 'strip' in shape;
}

/** A shape as it lies when it is folded; `null` where its strip is too short for that, or an overlap longer than a loop. */
export function foldedStripOf(shape: FoldedShape): FoldedStrip | null {
  const folded = foldedLevel(shape);
  if (folded === null || !isUpright(shape.strip)) return folded;
  const { width, height } = folded.size;
  return {
    size: { width: height, height: width },
    facets: folded.facets.map(({ corners, turned }) => ({
      corners: corners.map(({ x, y }) => ({ x: height - y, y: x })),
      turned,
    })),
  };
}

/** The strip by its width and its length. */
export function stripOf({ strip }: FoldedShape): Strip & { readonly width: Length; readonly length: Length } {
  const { width, height } = strip;
  return isUpright(strip) ? { width, length: height } : { width: height, length: width };
}

/** The folded ribbon of that shape. */
export function ribbonOf(shape: Extract<FoldedShape, { kind: 'ribbon' }>): Ribbon {
  return { ...stripOf(shape), template: shape.template, slant: shape.slant };
}

/** The loops of that shape, with the overlap that it names. */
export function loopsOf(shape: Extract<FoldedShape, { kind: 'loops' }>): Loops {
  const { template, loops, overlap } = shape;
  return { width: stripOf(shape).width, template, loops, overlap };
}

function foldedLevel(shape: FoldedShape): FoldedStrip | null {
  switch (shape.kind) {
    case 'ribbon': {
      const ribbon = ribbonOf(shape);
      return laid(ribbonMeasures(ribbon).overall, ribbonFacets(ribbon));
    }
    case 'loops': {
      const loops = loopsOf(shape);
      return laid(sizeOfLoops(loops), facetsOfLoops(loops));
    }
    case 'knot':
      return laid(sizeOfKnot(stripOf(shape)), knotFacets(stripOf(shape)));
  }
}

function laid(size: Size | null, facets: readonly Facet[] | null): FoldedStrip | null {
  return size === null || facets === null ? null : { size, facets };
}

function isUpright({ width, height }: Size): boolean {
  return height > width;
}

/** The strip of a shape, where its part has other sizes now. */
export function withStrip(shape: Shape, width: Length | null, height: Length | null): Shape {
  if (!isFolded(shape)) return shape;
  return {
    ...shape,
    strip: {
      width: width ?? shape.strip.width,
      height: height ?? shape.strip.height,
    },
  };
}
