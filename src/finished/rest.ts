import type { Arrangement, Layout } from '../layout/index.ts';
import { type Length, zero } from '../measure/index.ts';
import { intersection, isEmpty, type Region, union } from '../shape/index.ts';
import { pliesOf } from './plies.ts';
import type { Shown } from './shown.ts';

/** A piece of a part, as far as it is asked what it rests on. */
export type Lying = Pick<Shown, 'part' | 'piece' | 'face' | 'region'>;

/** How high foam and spots hold each piece in all, by its part and its number. */
export function liftsOf(layout: Layout, arrangement: Arrangement): ReadonlyMap<string, Length> {
  return new Map(pliesOf(layout, arrangement, 0).map(({ part, piece, lift }) => [`${part} ${piece}`, lift]));
}

/** Where a piece rests on what lies below it: on what foam holds highest, since that holds it away from all else. */
export function restOf(one: Lying, lying: readonly Lying[], lifts: ReadonlyMap<string, Length>): Region {
  const below = lying
    .filter((other) => isOver(one, other, lying))
    .map(({ part, piece, region }) => ({
      lift: part === 'base' ? zero : (lifts.get(`${part} ${piece}`) ?? zero),
      common: intersection(region, one.region),
    }))
    .filter(({ common }) => !isEmpty(common));
  const highest = Math.max(...below.map(({ lift }) => lift));
  return union(below.filter(({ lift }) => lift === highest).map(({ common }) => common));
}

/** Whether `upper` lies higher in the pile of the same face. */
export function isOver(upper: Lying, lower: Lying, lying: readonly Lying[]): boolean {
  return upper.face === lower.face && lying.indexOf(upper) > lying.indexOf(lower);
}
