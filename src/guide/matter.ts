import { type Hatch, hatchFor, type TextStyle, type Typeface, toneOn, white } from '../drawing/index.ts';
import type { Arrangement, Layout } from '../layout/index.ts';
import { type Length, type Size, showLength, showLengthWithUnit, showSize } from '../measure/index.ts';
import type { Plan, StepStakes } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import type { Paper } from '../stash/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import type { Showing } from '../words/index.ts';
import { letterOf } from './letters.ts';

/** What is to be set: the set, its plan, and the manner in which all of it is shown. */
export interface Matter {
  readonly layout: Layout;
  readonly arrangement: Arrangement;
  readonly plan: Plan;
  /** What is at stake at its steps. */
  readonly stakes: readonly StepStakes[];
  readonly trimmer: Trimmer | null;
  readonly showing: Showing;
  readonly typeface: Typeface;
  readonly styles: Readonly<
    Record<'title' | 'heading' | 'subheading' | 'body' | 'table' | 'small', TextStyle>
  >;
  /** Between the margins. */
  readonly widthPt: number;
}

/** The letter of the base (`base`) or of a part, as the pile lies: the base is A. */
export function letterFor(layout: Layout, id: string): string {
  const index = id === 'base' ? 0 : layout.parts.findIndex((part) => part.id === id) + 1;
  assert(id === 'base' || index > 0, 'Only the base and the parts have letters', { id });
  return letterOf(index);
}

/**
 * How paper is drawn: `printed`, black hatches over the lightest of tints, which any printer does justice to; or
 * `coloured`, each in its own colour under the same hatch in a tone of it, so that colour is never alone.
 */
export type Manner = 'printed' | 'coloured';

/** How one side of a paper is drawn. */
export interface Wearing {
  /** `printed` when absent. */
  readonly manner?: Manner;
  /** `front` when absent; only `coloured` tells them apart. */
  readonly side?: 'front' | 'back';
  /** 0 when absent. */
  readonly turnDegrees?: number;
}

/** The hatch by which a paper of the layout is known throughout. */
export function hatchOf(layout: Layout, id: string, wearing: Wearing = {}): Hatch {
  const index = [...layout.papers.keys()].indexOf(id);
  assert(index >= 0, 'Only papers of the layout are drawn', { paper: id });
  const { manner = 'printed', side = 'front', turnDegrees = 0 } = wearing;
  if (manner === 'printed') return hatchFor(index, { turnDegrees });
  const ground = colourOf(paperOf(layout, id), side);
  return hatchFor(index, { turnDegrees, ground, ink: toneOn(ground) });
}

/** The colour of one side; a paper that nothing is said of is white, and one with no other side has the same on both. */
function colourOf({ colour, back }: Paper, side: 'front' | 'back'): string {
  return (side === 'back' && back !== null ? back.colour : colour) ?? white;
}

/** The paper with that id. */
export function paperOf(layout: Layout, id: string): Paper {
  const paper = layout.papers.get(id);
  assert(paper !== undefined, 'A layout names only papers it has', { id });
  return paper;
}

/** `5¼ in` */
export function lengthIn(showing: Showing): (length: Length) => string {
  return (length) => showLengthWithUnit(length, showing.units, showing.glyphs);
}

/** `5¼`, where the unit goes without saying. */
export function numberIn(showing: Showing): (length: Length) => string {
  return (length) => showLength(length, showing.units, showing.glyphs);
}

/** `4¼ × 5½ in` */
export function sizeIn(showing: Showing): (size: Size) => string {
  return (size) => showSize(size, showing.units, showing.glyphs);
}
