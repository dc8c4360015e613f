import { type Arrangement, type Dealt, foldedBase, type Layout, paperOfCard } from '../layout/index.ts';
import { adhesiveWeights, openedSize } from '../making/index.ts';
import { type Length, type Size, ticksPerMillimetre } from '../measure/index.ts';
import { areaOf } from '../shape/index.ts';
import { type Ply, pliesOf } from './plies.ts';
import { bulk, foamOf, thicknessOfDealt } from './thickness.ts';

/** What a card weighs, thing by thing, in grams; not exact numbers. */
export interface Weight {
  readonly items: readonly WeightItem[];
  /** All of them. */
  readonly grams: number;
  /** How much of that is estimated. */
  readonly estimated: number;
}

/** What one thing adds to the weight of a card. */
export interface WeightItem {
  /** `adhesive`: what holds the part. */
  readonly what: 'base' | 'part' | 'adhesive' | 'envelope';
  /** The id of the part, `base` or `envelope`. */
  readonly part: string;
  readonly grams: number;
  readonly estimated: boolean;
}

/** Grams per square metre, and whether that was said or is only estimated. */
export interface Grammage {
  readonly gsm: number;
  readonly estimated: boolean;
}

/** Grammage of the paper of usual envelopes, 24 lb bond (common practice, no source). */
export const usualEnvelope = 90;
/** An envelope is cut from so many times its front: two sides, the seams and the flap (common practice, no source). */
const envelopeFronts = 2.4;

/**
 * What card number `card` (from 0) weighs without its envelope: the area of everything that is on it, holes, tears and
 * what a die leaves taken off, times its grammage; adhesives by the area of what they hold.
 *
 * A paper whose weight is not said is taken to be as heavy as such a thickness of usual paper is, and so is what is
 * bought without a weight. Adhesives are always estimates.
 */
export function weightOf(layout: Layout, arrangement: Arrangement, card: number): Weight {
  const { base } = layout;
  const opened = openedSize(foldedBase(layout));
  const ofBase: WeightItem = {
    what: 'base',
    part: 'base',
    ...massOf(layout, base, { card, areas: [opened.width * opened.height] }),
  };
  const plies = pliesOf(layout, arrangement, card);
  const ofParts = layout.parts.flatMap((part): readonly WeightItem[] => {
    const own = plies.filter((ply) => ply.part === part.id && ply.what !== 'base');
    const areas = own.filter(({ what }) => what === 'part').map(({ region }) => areaOf(region));
    if (areas.length === 0) return [];
    const behind = own
      .filter(({ what }) => what === 'tuck' || what === 'fold')
      .map(({ region }) => areaOf(region));
    const held = own.find(({ what }) => what === 'part')!.held;
    return [
      { what: 'part', part: part.id, ...massOf(layout, part, { card, areas, behind }) },
      {
        what: 'adhesive',
        part: part.id,
        grams: adhesiveOf(held, foamOf(part, layout).length, areas),
        estimated: true,
      },
    ];
  });
  return weighed([ofBase, ...ofParts]);
}

/** An envelope of that size: as heavy as is said, else by its paper and about the area it is cut from. */
export function envelopeWeight(envelope: {
  readonly size: Size;
  readonly gsm: number | null;
  readonly grams: number | null;
}): WeightItem {
  const { size, gsm, grams } = envelope;
  return {
    what: 'envelope',
    part: 'envelope',
    grams: grams ?? squareMetres(size.width * size.height) * envelopeFronts * (gsm ?? usualEnvelope),
    estimated: grams === null,
  };
}

/** A weight with one thing more. */
export function withItem({ items }: Weight, item: WeightItem): Weight {
  return weighed([...items, item]);
}

/** The weight of a paper of the layout: as it is said, else as that of usual paper so thick. */
export function grammageOfDealt(
  layout: Layout,
  dealt: Dealt & { readonly thickness: Length | null },
  paper: string | null,
): Grammage {
  const said = layout.papers.get(paper ?? '')?.gsm ?? null;
  if (said !== null) return { gsm: said, estimated: false };
  const micrometres = (thicknessOfDealt(layout, dealt, paper).length / ticksPerMillimetre) * 1000;
  return { gsm: micrometres / bulk, estimated: true };
}

function massOf(
  layout: Layout,
  dealt: Dealt & { readonly thickness: Length | null; readonly grams: number | null },
  {
    card,
    areas,
    behind = [],
  }: { readonly card: number; readonly areas: readonly number[]; readonly behind?: readonly number[] },
): { readonly grams: number; readonly estimated: boolean } {
  const paper = paperOfCard(dealt, card);
  if (paper === null && dealt.grams !== null) return { grams: dealt.grams * areas.length, estimated: false };
  const { gsm, estimated } = grammageOfDealt(layout, dealt, paper);
  return { grams: squareMetres(total([...areas, ...behind])) * gsm, estimated };
}

function adhesiveOf(held: Ply['held'], foam: Length, areas: readonly number[]): number {
  const { density, spread, share } =
    adhesiveWeights[held === null ? 'flat' : held.by === 'foam' ? 'raised' : 'spots'];
  const metres = squareMetres(total(areas)) * share;
  // A layer of a millimetre on a square metre is a litre.
  return metres * (spread ?? density * (foam / ticksPerMillimetre) * 1000);
}

function weighed(items: readonly WeightItem[]): Weight {
  return {
    items,
    grams: total(items.map(({ grams }) => grams)),
    estimated: total(items.filter(({ estimated }) => estimated).map(({ grams }) => grams)),
  };
}

function squareMetres(squareTicks: number): number {
  return squareTicks / (ticksPerMillimetre * 1000) ** 2;
}

function total(numbers: readonly number[]): number {
  return numbers.reduce((all, number) => all + number, 0);
}
