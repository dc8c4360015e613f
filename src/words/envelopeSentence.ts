import {
  type Closed,
  envelopeFit,
  envelopeNeeded,
  largestCard,
  type Sides,
  smallestEnvelope,
} from '../finished/index.ts';
import type { Layout } from '../layout/index.ts';
import { inches, type Length, millimetres, showLengthWithUnit, showSize } from '../measure/index.ts';
import { aboutThick } from './aboutThick.ts';
import type { Showing } from './showing.ts';

/**
 * Whether the cards go into the envelope of the layout and with how much to spare, else which is the smallest usual one
 * that they go into; and the largest card of that thickness that goes into an envelope they do not fit.
 */
export function envelopeSentences({ section }: Closed, layout: Layout, showing: Showing): readonly string[] {
  const { envelope, units } = layout;
  const length = (of: Length) => showLengthWithUnit(of, showing.units, showing.glyphs);
  const smallest = smallestEnvelope(section, units);
  const needed = envelopeNeeded(section, units);
  const usual =
    smallest === null
      ? `No usual envelope takes it; it needs one of ${sidesWords(needed, showing)} or more.`
      : `The smallest usual envelope that takes it is ${smallest.name}, ${sidesWords(smallest, showing)}.`;
  if (envelope === null) return [usual, clearanceReason(showing)];
  const fit = envelopeFit(section, envelope.size, units);
  const name = envelope.name === '' ? 'the envelope' : `the envelope ${envelope.name}`;
  const whole = `${name}, ${sidesWords(fit.envelope, showing)}`;
  const takes = aboutThick(fit.height.thickness, showing);
  if (fit.is === 'tooSmall') {
    const largest = largestCard(section, fit.envelope, units);
    return [
      `It does not go into ${whole}.`,
      usual,
      ...(largest === null
        ? []
        : [`The largest card as thick that goes into ${name} is ${sidesWords(largest, showing)}.`]),
      clearanceReason(showing),
    ];
  }
  return [
    `It goes ${fit.is === 'tight' ? 'only tightly ' : ''}into ${whole}, with ${length(fit.length.spare)} to spare along its longer side and ${length(fit.height.spare)} along its shorter; of each its thickness takes about ${takes}.`,
    ...(fit.is === 'tight' ? [usual] : []),
    clearanceReason(showing),
  ];
}

/** What the room beside a card is by, and why thickness counts. */
function clearanceReason({ glyphs }: Showing): string {
  const inch = showLengthWithUnit(inches(1, 8), 'in', glyphs);
  const millimetre = showLengthWithUnit(millimetres(3), 'mm', glyphs);
  return `An envelope goes round the thickness of a card; beside that, ${inch} or ${millimetre} in each direction is the least that is usual (common practice, no source), and more slides in more easily.`;
}

/** Longer by shorter side. */
function sidesWords({ length, height }: Sides, { units, glyphs }: Showing): string {
  return showSize({ width: length, height }, units, glyphs);
}
