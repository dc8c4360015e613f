import { knotMeasures, lengthOfLoops, overlapOfLoops, ribbonMeasures } from '../making/index.ts';
import { minus } from '../measure/index.ts';
import { foldedStripOf, isFolded, loopsOf, ribbonOf, stripOf } from './foldedShape.ts';
import type { FoldedShape, Layout } from './layout.ts';
import { type LayoutProblem, partProblem } from './layoutProblem.ts';

/** What keeps a strip from being folded at all: its problem without the part it belongs to. */
export function notFolded(
  shape: FoldedShape,
): [code: 'stripTooShort' | 'overlapTooLong', field: string, numbers: Readonly<Record<string, number>>] {
  switch (shape.kind) {
    case 'ribbon': {
      const { least } = ribbonMeasures(ribbonOf(shape));
      return tooShort(shape, least);
    }
    case 'loops':
      return ['overlapTooLong', 'overlap', { overlap: shape.overlap, template: shape.template }];
    case 'knot':
      return tooShort(shape, knotMeasures(stripOf(shape)).least);
  }
}

function tooShort(shape: FoldedShape, least: number): ReturnType<typeof notFolded> {
  const { length } = stripOf(shape);
  return ['stripTooShort', lengthField(shape), { length, least }];
}

/** Strips that can be folded as the layout says, and come out wrong: over themselves, or of another length than is cut. */
export function foldProblems(layout: Layout): readonly LayoutProblem[] {
  return layout.parts.flatMap(({ shape }, index) => {
    if (!isFolded(shape) || foldedStripOf(shape) === null) return [];
    if (shape.kind === 'ribbon') return overItself(layout, index, shape);
    return shape.kind === 'loops' ? loopsOff(layout, index, shape) : [];
  });
}

type Of<Kind extends FoldedShape['kind']> = Extract<FoldedShape, { kind: Kind }>;

function overItself(layout: Layout, index: number, shape: Of<'ribbon'>): readonly LayoutProblem[] {
  const { gap } = ribbonMeasures(ribbonOf(shape));
  if (gap >= 0) return [];
  const { width } = stripOf(shape);
  const steep = Math.abs(shape.slant);
  // The slant that leaves no gap, in tenths of a degree, and the template that does at this slant.
  const slant = Math.ceil((Math.atan(width / shape.template) * 1_800) / Math.PI) / 10;
  const template = Math.ceil(width / Math.tan((steep * Math.PI) / 180));
  const asLong = Number.isSafeInteger(template) ? { template } : {};
  return [
    partProblem(layout, index, 'foldedOverItself', 'slant', {
      over: -gap,
      slant,
      ...asLong,
    }),
  ];
}

function loopsOff(layout: Layout, index: number, shape: Of<'loops'>): readonly LayoutProblem[] {
  const { length } = stripOf(shape);
  const wanted = lengthOfLoops(loopsOf(shape));
  // A tick for each length that was read: the template counts as often as it is laid.
  const read = 2 + 2 * shape.loops;
  if (Math.abs(length - wanted) <= read) return [];
  return [
    partProblem(layout, index, 'loopsOff', lengthField(shape), {
      length,
      wanted,
      difference: minus(length, wanted),
      loops: shape.loops,
      template: shape.template,
      overlap: shape.overlap,
      left: overlapOfLoops(shape, length),
    }),
  ];
}

/** The field that says how long the strip is. */
function lengthField({ strip }: FoldedShape): string {
  return strip.height > strip.width ? 'size[1]' : 'size[0]';
}
