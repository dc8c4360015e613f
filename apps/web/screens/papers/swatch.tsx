import { type ReactNode, useMemo } from 'react';
import {
  black,
  type Mark,
  outlineStroke,
  type Page,
  rectangle,
  upArrow,
} from '../../../../src/drawing/index.ts';
import { hatchOf } from '../../../../src/guide/index.ts';
import type { Layout } from '../../../../src/layout/index.ts';
import type { Size } from '../../../../src/measure/index.ts';
import { Drawing } from '../../pictures/drawing.tsx';

/** The longest side that is drawn, and the room for the arrow beside it, in points. */
const longestPt = 108;
const besidePt = 18;

/**
 * A sheet of a paper in its colour and with the hatch that it is known by, all sheets of the stash at one scale. Where
 * its print has a top, an arrow beside it shows where; one that stands half round as well has both its ends.
 */
export function SheetSwatch({
  layout,
  id,
  size,
  longest,
  says,
}: {
  readonly layout: Layout;
  readonly id: string;
  readonly size: Size;
  /** The longest side of any sheet of the stash. */
  readonly longest: number;
  readonly says: string;
}): ReactNode {
  const page = useMemo((): Page => {
    const scale = longestPt / longest;
    const [widthPt, heightPt] = [size.width * scale, size.height * scale];
    const sheet = { xPt: 1, yPt: 1, widthPt, heightPt };
    const { up } = layout.papers.get(id)!;
    const arrow = (turnDegrees: number) =>
      upArrow({
        at: { xPt: widthPt + besidePt / 2 + 3, yPt: heightPt / 2 },
        sizePt: Math.min(30, heightPt),
        turnDegrees,
        colour: black,
      });
    const arrows = { any: [], 'one-way': [arrow(0)], 'two-way': [arrow(0), arrow(180)] } as const;
    const marks: Mark[] = [
      {
        kind: 'path',
        path: rectangle(sheet),
        fill: { hatch: hatchOf(layout, id, { manner: 'coloured' }) },
        stroke: outlineStroke,
      },
      ...arrows[up],
    ];
    return { widthPt: longestPt + besidePt + 4, heightPt: heightPt + 2, marks };
  }, [layout, id, size, longest]);
  return <Drawing page={page} says={says} className="sheet-swatch" />;
}

/** A patch of a paper in a colour of it, with its hatch. */
export function Patch({
  layout,
  id,
  side = 'front',
  says,
}: {
  readonly layout: Layout;
  readonly id: string;
  readonly side?: 'front' | 'back';
  readonly says: string;
}): ReactNode {
  const page = useMemo((): Page => {
    const frame = { xPt: 0.5, yPt: 0.5, widthPt: 47, heightPt: 23 };
    const hatch = hatchOf(layout, id, { manner: 'coloured', side });
    return {
      widthPt: 48,
      heightPt: 24,
      marks: [{ kind: 'path', path: rectangle(frame), fill: { hatch }, stroke: outlineStroke }],
    };
  }, [layout, id, side]);
  return <Drawing page={page} says={says} className="patch" />;
}
