import { type Axis, type Edge, type Length, showLengthWithUnit } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { withStrip } from './foldedShape.ts';
import type { Anchor, Extent, Layout, Part, Place } from './layout.ts';

/** A length that a layout was drawn with: the sizes and places of everything on the card follow from these. */
export interface Dimension {
  /** Its place in the file (`parts[2].size[0]`), as in `Layout.typed`; no two have the same. */
  readonly path: string;
  /** Id of the part it belongs to; `base` for the base. */
  readonly part: string;
  readonly kind: DimensionKind;
  /** What it is called among the lengths of its part. */
  readonly name: DimensionName;
  /** The axis it lies along; `both` where one length serves both. */
  readonly axis: Axis | 'both';
  readonly length: Length;
}

/**
 * `size`: the closed front or what is cut; `border`: from an edge of what a part lies on; `gap`: from a neighbour;
 * `inset`: a border all round; `beyond`: what of the cut size is not seen (`beyondSeen`).
 */
export type DimensionKind = 'size' | 'border' | 'gap' | 'inset' | 'beyond';

export type DimensionName =
  | Axis
  | 'diameter'
  | 'inset'
  | 'gap'
  | Edge
  | `torn ${Edge}`
  | `tuck ${Edge}`
  | 'margin';

/** Every length that the layout was drawn with, the base first, then in the order of the pile. */
export function dimensionsOf(layout: Layout): readonly Dimension[] {
  const found = new Map<string, Dimension>();
  redrawn(layout, (dimension) => {
    const same = found.get(dimension.path);
    const both = same !== undefined && same.axis !== dimension.axis;
    found.set(dimension.path, both ? { ...same, axis: 'both' } : (same ?? dimension));
    return dimension.length;
  });
  return [...found.values()];
}

/**
 * The layout drawn with other lengths, given by the paths of `dimensionsOf`; what is not named stays as it is.
 *
 * Nothing is checked: an arrangement says whether it works out. Throws on a path that is no dimension's.
 */
export function withLengths(layout: Layout, lengths: ReadonlyMap<string, Length>): Layout {
  if (lengths.size === 0) return layout;
  const used = new Set<string>();
  const changed = redrawn(layout, ({ path, length }) => {
    used.add(path);
    return lengths.get(path) ?? length;
  });
  for (const path of lengths.keys())
    assert(used.has(path), 'A length is changed where there is one', { path });
  const typed = new Map(layout.typed);
  for (const [path, length] of lengths) typed.set(path, showLengthWithUnit(length, layout.units));
  return { ...changed, typed };
}

/** Asks for every dimension what its length shall be; asks twice for one that serves both axes. */
function redrawn(layout: Layout, lengthOf: (dimension: Dimension) => Length): Layout {
  const { base } = layout;
  const front = (axis: Axis) =>
    lengthOf({
      path: `base.size[${indexOf[axis]}]`,
      part: 'base',
      kind: 'size',
      name: axis,
      axis,
      length: base.size[axis],
    });
  return {
    ...layout,
    base: { ...base, size: { width: front('width'), height: front('height') } },
    parts: layout.parts.map((part, index) => redrawnPart(layout, part, index, lengthOf)),
  };
}

const indexOf = { width: 0, height: 1 } as const satisfies Record<Axis, 0 | 1>;

type LengthOf = (dimension: Dimension) => Length;

function redrawnPart(layout: Layout, part: Part, index: number, lengthOf: LengthOf): Part {
  const path = `parts[${index}]`;
  const own = (about: Omit<Dimension, 'part' | 'path'>, field: string) =>
    lengthOf({ path: `${path}.${field}`, part: part.id, ...about });

  const extentOf = (extent: Extent): Extent => {
    switch (extent.by) {
      case 'inset': {
        const about = { kind: 'inset', name: 'inset', axis: 'both', length: extent.inset } as const;
        return { by: 'inset', inset: own(about, 'inset') };
      }
      case 'diameter': {
        const about = { kind: 'size', name: 'diameter', axis: 'both', length: extent.diameter } as const;
        return { by: 'diameter', diameter: own(about, 'diameter') };
      }
      case 'size': {
        const side = (axis: Axis): Length | null => {
          const length = extent[axis];
          if (length === null) return null;
          return own({ kind: 'size', name: axis, axis, length }, `size[${indexOf[axis]}]`);
        };
        return { by: 'size', width: side('width'), height: side('height') };
      }
    }
  };
  const byEdge = (field: 'torn' | 'tuck') => {
    const at = (edge: Edge): Length => {
      const length = part[field][edge];
      if (length === 0) return length;
      return own(
        { kind: 'beyond', name: `${field} ${edge}`, axis: axisOf[edge], length },
        `${field}.${edge}`,
      );
    };
    return { left: at('left'), right: at('right'), top: at('top'), bottom: at('bottom') };
  };

  const extent = extentOf(part.extent);
  const torn = byEdge('torn');
  const tuck = byEdge('tuck');
  const margin =
    part.margin === 0
      ? part.margin
      : own({ kind: 'beyond', name: 'margin', axis: 'both', length: part.margin }, 'margin');

  // One place for all pieces is one thing in the file, and stays one.
  const [first] = part.places;
  const listed = [...layout.typed.keys()].some((typed) => typed.startsWith(`${path}.place[`));
  const shared = !listed && part.places.every((place) => place === first);
  const together =
    shared && first !== undefined ? redrawnPlace(layout, part, first, `${path}.place`, lengthOf) : null;
  return {
    ...part,
    extent,
    shape: extent.by === 'size' ? withStrip(part.shape, extent.width, extent.height) : part.shape,
    torn,
    tuck,
    margin,
    places: part.places.map(
      (place, piece) => together ?? redrawnPlace(layout, part, place, `${path}.place[${piece}]`, lengthOf),
    ),
  };
}

const axisOf = { left: 'width', right: 'width', top: 'height', bottom: 'height' } as const satisfies Record<
  Edge,
  Axis
>;

function redrawnPlace(layout: Layout, part: Part, place: Place, path: string, lengthOf: LengthOf): Place {
  // A gap is one length for both axes unless it was written as two.
  const gaps = (['across', 'down'] as const).map((span) =>
    [place[span].start, place[span].end].flatMap((anchor) => (anchor?.from === 'part' ? [anchor.gap] : [])),
  );
  const twoGaps = layout.typed.has(`${path}.gap[0]`) || new Set(gaps.flat()).size > 1;
  const anchorAt = (edge: Edge, anchor: Anchor | null): Anchor | null => {
    if (anchor === null) return null;
    const axis = axisOf[edge];
    const about = { part: part.id, axis };
    if (anchor.from === 'edge') {
      const { distance: length } = anchor;
      return {
        from: 'edge',
        distance: lengthOf({ ...about, path: `${path}.${edge}`, kind: 'border', name: edge, length }),
      };
    }
    const field = twoGaps ? `gap[${indexOf[axis]}]` : 'gap';
    const gap = lengthOf({
      ...about,
      path: `${path}.${field}`,
      kind: 'gap',
      name: 'gap',
      length: anchor.gap,
    });
    return { ...anchor, gap };
  };
  return {
    across: { start: anchorAt('left', place.across.start), end: anchorAt('right', place.across.end) },
    down: { start: anchorAt('top', place.down.start), end: anchorAt('bottom', place.down.end) },
  };
}
