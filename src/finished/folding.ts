import { type Arrangement, foldedBase, type Layout, turnOf } from '../layout/index.ts';
import {
  flatPanels,
  grainFor,
  isFlatFold,
  isThickStock,
  openedSize,
  openingAxis,
  type Panel,
  panelsOf,
  type Score,
  scoresOf,
  scoringOf,
  scoringRules,
  takesAllowance,
} from '../making/index.ts';
import { type Axis, type Length, lengthOfTicks, type Size, sum } from '../measure/index.ts';
import { heaviestCards } from './likeCards.ts';
import { sectionOf } from './section.ts';
import { type Thickness, thicknessOf } from './thickness.ts';

/** How the base of a set is folded. */
export interface Folding {
  /** The axis that its panels follow one another on. */
  readonly axis: Axis;
  readonly opened: Size;
  /** From left, or from the top, the inside up. */
  readonly panels: readonly Panel[];
  readonly scores: readonly Score[];
  /** The axis that the fibres should run along. */
  readonly grain: Axis;
  /** Of a fold with panels that lie within others. */
  readonly within: Within | null;
  /** Those the bases are cut from; none where they are bought. */
  readonly papers: readonly PaperFolded[];
  /** The sheets of those papers, folded as they are by the printers' rule; none where a fold has no such rule. */
  readonly sheets: readonly SheetFolded[];
}

/** What lies folded up between the front and the panel that it is opened from. */
export interface Within {
  /** How much its panels are narrower. */
  readonly allowance: Length;
  /** How thick it is at its thickest, with all that is on the inside: about so far the front stays back when closed. */
  readonly thickness: Length;
}

/** How a paper takes a fold. */
export interface PaperFolded {
  readonly paper: string;
  readonly thickness: Thickness;
  readonly do: 'score' | 'fold';
  /** How many of so many printed rules ask for a score. */
  readonly asked: number;
  readonly rules: number;
  /** Whether it is scored twice for every fold, a thickness apart. */
  readonly twice: boolean;
}

/** A sheet folded edge to edge. */
export interface SheetFolded {
  readonly paper: string;
  /** From 0, of the sheets of the paper. */
  readonly sheet: number;
  /** How long the sheet is across its folds. */
  readonly flat: Length;
  readonly panels: readonly Length[];
  /** What the panels leave of it, to be cut off. */
  readonly rest: Length;
}

/** How the base is folded; `null` for a flat card. */
export function foldingOf(layout: Layout, arrangement: Arrangement): Folding | null {
  const base = foldedBase(layout);
  const [axis, grain] = [openingAxis(base), grainFor(base)];
  if (axis === null || grain === null) return null;
  return {
    axis,
    opened: openedSize(base),
    panels: panelsOf(base),
    scores: scoresOf(base),
    grain,
    within: takesAllowance(base.fold)
      ? { allowance: base.allowance, thickness: withinThickness(layout, arrangement) }
      : null,
    papers: papersFolded(layout),
    sheets: sheetsFolded(layout, axis),
  };
}

/** How the papers that the bases are cut from take a fold. */
export function papersFolded({ base, papers }: Layout): readonly PaperFolded[] {
  return [...new Set(base.papers)].map((id) => {
    const paper = papers.get(id)!;
    const thickness = thicknessOf(paper);
    return {
      paper: id,
      thickness,
      ...scoringOf({ thickness: thickness.length, gsm: paper.gsm }),
      rules: scoringRules.length,
      twice: isThickStock(thickness.length),
    };
  });
}

/** Through all that lies on the inside and the panels over it, at its thickest on any card. */
function withinThickness(layout: Layout, arrangement: Arrangement): Length {
  const inside = arrangement.parts.map(({ face }) => face === 'inside');
  const alone: Layout = { ...layout, parts: layout.parts.filter((_, index) => inside[index]) };
  const laid: Arrangement = {
    ...arrangement,
    parts: arrangement.parts.filter((_, index) => inside[index]),
  };
  const panels = panelsOf(foldedBase(layout));
  return lengthOfTicks(
    Math.max(
      ...heaviestCards(alone).map(({ card }) => {
        const { layers } = sectionOf(alone, laid, card).thickest;
        const between = layers.filter(({ what, piece, face }) =>
          what === 'base' ? panels[piece]!.is === 'inner' : face === 'inside',
        );
        return sum(...between.map(({ thickness }) => thickness));
      }),
    ),
  );
}

function sheetsFolded(layout: Layout, axis: Axis): readonly SheetFolded[] {
  const { base, papers } = layout;
  const { fold } = base;
  if (!isFlatFold(fold)) return [];
  return [...new Set(base.papers)].flatMap((id) => {
    const paper = papers.get(id)!;
    return paper.sheets.flatMap(({ size, scrap }, sheet) => {
      if (scrap) return [];
      const flats = turnOf(base, paper) === 'free' ? [size.width, size.height] : [size[axis]];
      return [...new Set(flats)].map((flat) => ({ paper: id, sheet, flat, ...flatPanels(fold, flat) }));
    });
  });
}
