import type { PostFault } from '../making/index.ts';
import { lengthOfTicks, showLengthWithUnit } from '../measure/index.ts';
import { aboutThick } from './aboutThick.ts';
import type { Showing } from './showing.ts';

/**
 * Why a piece is not of a class, as the end of “it is no letter, for …”: `it is 6 1/2 in high and 6 1/8 in is the most`.
 */
export function postFaultWords({ code, is, limit }: PostFault, showing: Showing): string {
  const length = (ticks: number) => showLengthWithUnit(lengthOfTicks(ticks), showing.units, showing.glyphs);
  const most = (what: string) => `its envelope is ${length(is)} ${what} and ${length(limit)} is the most`;
  const least = (what: string) => `its envelope is ${length(is)} ${what} and ${length(limit)} is the least`;
  return {
    tooLong: () => most('long'),
    tooShort: () => least('long'),
    tooHigh: () => most('high'),
    tooLow: () => least('high'),
    tooThick: () =>
      `it is ${aboutThick(lengthOfTicks(is), showing)} thick in its envelope and ${length(limit)} is the most`,
    tooThin: () =>
      `it is ${aboutThick(lengthOfTicks(is), showing)} thick in its envelope and ${aboutThick(lengthOfTicks(limit), showing)} is the least`,
    tooHeavy: () => `it weighs ${gramsWords(is, showing)} and ${gramsWords(limit, showing)} is the most`,
    tooLight: () => `it weighs ${gramsWords(is, showing)} and ${gramsWords(limit, showing)} is the least`,
    tooSquare: () =>
      limit > 1
        ? `its envelope is ${ratio(is)} times as long as high and has to be ${ratio(limit)} times: ${is === 1 ? 'it is square' : 'it is too near to a square'}`
        : 'its envelope is square',
    tooNarrow: () =>
      `its envelope is ${ratio(is)} times as long as high and may be no more than ${ratio(limit)} times`,
    uneven: () => 'it is thick in some places only',
    rigid: () => 'something in it may not bend',
  }[code]();
}

/** A weight in whole grams (`11 g`), in tenths below ten; where inches are used, in ounces too. */
export function gramsWords(grams: number, { units }: Pick<Showing, 'units'>): string {
  const shown = grams < 10 ? String(Math.round(grams * 10) / 10) : String(Math.round(grams));
  if (units === 'mm') return `${shown} g`;
  const ounces = Number((grams / gramsPerOunce).toPrecision(2));
  return `${shown} g (${ounces} oz)`;
}

/** A sixteenth of a pound of 453.59237 g (international yard and pound agreement, 1959). */
const gramsPerOunce = 28.349523125;

function ratio(of: number): string {
  return String(Math.round(of * 100) / 100);
}
