import { type EnvelopeSize, envelopeSizes } from '../making/index.ts';
import {
  inches,
  type Length,
  lengthOfTicks,
  millimetres,
  minus,
  type Size,
  sum,
  type Units,
  zero,
} from '../measure/index.ts';
import type { Section } from './section.ts';

/** An upright or lying rectangle by its longer and its shorter side. */
export interface Sides {
  readonly length: Length;
  readonly height: Length;
}

/** How a card goes into an envelope, its longer side along the longer one. */
export interface EnvelopeFit {
  readonly envelope: Sides;
  readonly length: Clearance;
  readonly height: Clearance;
  /** `fits`: with the usual room; `tight`: it goes in with less; `tooSmall`: it does not go in. */
  readonly is: 'fits' | 'tight' | 'tooSmall';
}

/** What is left beside a card in one direction of an envelope. */
export interface Clearance {
  readonly card: Length;
  readonly envelope: Length;
  /** The envelope's measure less the card's, for both sides together. */
  readonly spare: Length;
  /** What the thickness of the card takes of that, since the envelope goes round it. */
  readonly thickness: Length;
  /** What is then left; negative: the envelope does not close over it. */
  readonly left: Length;
}

/**
 * What an envelope has to have more than the card, in each direction and for both sides together.
 *
 * `flat`: 1/8 in or 3 mm, what the closest usual pair of card and envelope has (4 1/4 in in 4 3/8 in); a quarter inch is
 * said as often. `slip`: what is left once the envelope has gone round the thickness, so that the card slides in. Both
 * are common practice, no source.
 */
const clearances = {
  in: { flat: inches(1, 8), slip: inches(1, 32), mark: inches(1, 16) },
  mm: { flat: millimetres(3), slip: millimetres(0.75), mark: millimetres(1) },
} as const satisfies Record<Units, { flat: Length; slip: Length; mark: Length }>;

/** Whether a card with that section goes into an envelope, and with how much to spare in each direction. */
export function envelopeFit(section: Section, envelope: Size, units: Units): EnvelopeFit {
  const { flat, slip } = clearances[units];
  const card = sidesOfCard(section);
  const sides = sidesOf(envelope);
  const clearance = (side: 'length' | 'height'): Clearance => {
    const { flat: extent, thickness } = card[side];
    const spare = minus(sides[side], extent);
    return { card: extent, envelope: sides[side], spare, thickness, left: minus(spare, thickness) };
  };
  const [length, height] = [clearance('length'), clearance('height')];
  const both = [length, height];
  const is = both.some(({ left }) => left < 0)
    ? 'tooSmall'
    : both.some(({ spare, left }) => spare < flat || left < slip)
      ? 'tight'
      : 'fits';
  return { envelope: sides, length, height, is };
}

/** The smallest envelope that a card with that section goes into with the usual room. */
export function envelopeNeeded(section: Section, units: Units): Sides {
  const card = sidesOfCard(section);
  return { length: neededFor(card.length, units), height: neededFor(card.height, units) };
}

/** The smallest envelope usually sold where those units are used that the card fits; `null`: none does. */
export function smallestEnvelope(section: Section, units: Units): EnvelopeSize | null {
  return (
    envelopeSizes[units].find(
      ({ length, height }) => envelopeFit(section, { width: length, height }, units).is === 'fits',
    ) ?? null
  );
}

/**
 * The largest card, in whole marks of 1/16 in or 1 mm, that fits an envelope when it is as thick as one with that section;
 * `null`: it leaves no card.
 */
export function largestCard(section: Section, envelope: Sides, units: Units): Sides | null {
  const { mark } = clearances[units];
  const card = sidesOfCard(section);
  const room = (side: 'length' | 'height') => {
    const beside = minus(neededFor(card[side], units), card[side].flat);
    const most = envelope[side] - beside;
    return lengthOfTicks(most - (most % mark));
  };
  const [length, height] = [room('length'), room('height')];
  return height > 0 ? { length, height } : null;
}

/** The longer side and the shorter. */
export function sidesOf({ width, height }: Size): Sides {
  return width >= height ? { length: width, height } : { length: height, height: width };
}

interface Side {
  /** From edge to edge. */
  readonly flat: Length;
  /** What is further half the way round it. */
  readonly thickness: Length;
}

function sidesOfCard({ extent, round }: Section): { readonly length: Side; readonly height: Side } {
  const across: Side = { flat: extent.width, thickness: beyond(round.width, extent.width) };
  const down: Side = { flat: extent.height, thickness: beyond(round.height, extent.height) };
  return extent.width >= extent.height ? { length: across, height: down } : { length: down, height: across };
}

function beyond(round: Length, extent: Length): Length {
  return round > extent ? minus(round, extent) : zero;
}

function neededFor({ flat, thickness }: Side, units: Units): Length {
  const { flat: beside, slip } = clearances[units];
  return sum(flat, lengthOfTicks(Math.max(beside, thickness + slip)));
}
