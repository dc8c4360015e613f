import type { Dealt, Layout, Part } from '../layout/index.ts';
import { type Length, lengthOfTicks, millimetres, ticksPerMillimetre } from '../measure/index.ts';
import type { Paper } from '../stash/index.ts';
import { adhesiveFor } from './adhesive.ts';

/** A thickness, and whether it was measured or only estimated. */
export interface Thickness {
  readonly length: Length;
  readonly estimated: boolean;
}

/**
 * How thick the paper is: as the layout says, else from its weight, else what is usual for its kind.
 *
 * By weight: bulk times grammage (ISO 534 defines the bulk). By kind: common practice, no source.
 */
export function thicknessOf(paper: Pick<Paper, 'thickness' | 'gsm' | 'kind'>): Thickness {
  if (paper.thickness !== null) return { length: paper.thickness, estimated: false };
  if (paper.gsm !== null) {
    return {
      length: lengthOfTicks(Math.round((paper.gsm * bulk * ticksPerMillimetre) / 1000)),
      estimated: true,
    };
  }
  return { length: usual[paper.kind ?? ''] ?? usual.other, estimated: true };
}

/** Bulk of usual paper in cm³/g, which is µm over g/m²: 80 g/m² paper is 0.1 mm thick. */
export const bulk = 1.25;

/** The thickness of a paper of the layout; things that are bought (`null`) are taken as cardstock. */
function thicknessOfPaper(layout: Layout, id: string | null): Thickness {
  const paper = layout.papers.get(id ?? '');
  return paper === undefined ? { length: usual.cardstock, estimated: true } : thicknessOf(paper);
}

/** How thick what is dealt is on a card: its paper, or what is bought by what the layout says of it, else as cardstock. */
export function thicknessOfDealt(
  layout: Layout,
  dealt: Dealt & { readonly thickness: Length | null },
  paper: string | null,
): Thickness {
  return paper === null && dealt.thickness !== null
    ? { length: dealt.thickness, estimated: false }
    : thicknessOfPaper(layout, paper);
}

/**
 * The foam under a raised part: as the layout says of the part, else of its foam, else as crafters use it most, 1/16 in
 * or 1.5 mm (common practice, no source). Foam gives when it is pressed; that is left out.
 */
export function foamOf({ foam }: Part, layout: Pick<Layout, 'adhesives' | 'units'>): Thickness {
  if (foam !== null) return { length: foam, estimated: false };
  const { thickness, thicknessSaid } = adhesiveFor(layout, 'raised');
  return { length: thickness, estimated: !thicknessSaid };
}

/** Spots of glue, pressed flat: as the layout says, else as is usual (common practice, no source). */
export function spotsOf(layout: Pick<Layout, 'adhesives' | 'units'>): Thickness {
  const { thickness, thicknessSaid } = adhesiveFor(layout, 'spots');
  return { length: thickness, estimated: !thicknessSaid };
}

const usual: Readonly<Record<string, Length>> & { readonly cardstock: Length; readonly other: Length } = {
  cardstock: millimetres(0.28),
  vellum: millimetres(0.09),
  other: millimetres(0.18),
};
