import { type Length, lengthOfTicks } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { isSure, type TearDepth } from './tear.ts';

/** One tear of a sum: added, or taken away. */
export interface TearTerm {
  readonly tear: TearDepth;
  readonly sign: 1 | -1;
}

/** How the sum of some independent tears is spread. Lengths and means in ticks. */
export interface TearSum {
  readonly least: Length;
  readonly most: Length;
  /** The sum of (least + usual + most) / 3. */
  readonly mean: number;
  /** Root of the variance, the sum of (a² + b² + c² - ab - ac - bc) / 18. */
  readonly deviation: number;
  /** The chance that it is less than so many ticks. */
  below(at: number): number;
  /** The chance that it is more than so many ticks; true to the last small figures where it is tiny. */
  above(at: number): number;
  /** The least whole tick that it does not pass with at least that chance. */
  quantile(chance: number): Length;
}

/**
 * The spread of a sum or a difference of tears, in closed form.
 *
 * The density of one tear with depths a, b, c is made of straight pieces, which is to say of truncated powers:
 * p (x - a)⁺ - (p + q) (x - b)⁺ + q (x - c)⁺ with p = 2 / ((c - a)(b - a)), q = 2 / ((c - a)(c - b)), where x⁺ is x or 0.
 * Where b is a or c a step takes the place of a slope, and a tear that is sure is a point. Two truncated powers
 * x^i / i! and x^j / j! that begin at k and l fold into x^(i + j + 1) / (i + j + 1)! that begins at k + l (Euler's beta
 * integral; a point counts as the power -1), so the sum of n tears is a sum of 3^n powers, and its integral is one
 * power more. Derived here; for equal symmetric tears it is the law of Irwin and Hall.
 *
 * A difference adds the tear mirrored about zero. Each tail is summed from its own end, where few terms count. The
 * powers are summed in whole numbers, so that nothing is lost where they nearly cancel, however lopsided the tears are.
 */
export function tearSum(terms: readonly TearTerm[]): TearSum {
  const tears = terms.map(({ tear, sign }) => (sign === 1 ? tear : mirrored(tear)));
  const least = total(tears.map((tear) => tear.least));
  const most = total(tears.map((tear) => tear.most));
  const fromBelow = powersOf(tears);
  const fromAbove = powersOf(tears.map(mirrored));
  const sure = tears.every(isSure);

  const below = (at: number): number => {
    if (at <= least) return 0;
    if (sure || at >= most) return 1;
    return 2 * at <= least + most ? clamped(summed(fromBelow, at - least)) : 1 - above(at);
  };
  const above = (at: number): number => {
    if (at >= most) return 0;
    if (sure || at <= least) return 1;
    return 2 * at >= least + most ? clamped(summed(fromAbove, most - at)) : 1 - below(at);
  };
  return {
    least: lengthOfTicks(least),
    most: lengthOfTicks(most),
    mean: total(tears.map((tear) => (tear.least + tear.usual + tear.most) / 3)),
    deviation: Math.sqrt(total(tears.map(variance))),
    below,
    above,
    quantile: (chance) => {
      assert(chance >= 0 && chance <= 1, 'A chance is between 0 and 1', { chance });
      const isEnough = (at: number) => (chance > 0.5 ? above(at) <= 1 - chance : 1 - above(at) >= chance);
      let [short, enough] = [least - 1, most];
      while (enough - short > 1) {
        const middle = Math.floor((short + enough) / 2);
        if (isEnough(middle)) enough = middle;
        else short = middle;
      }
      return lengthOfTicks(enough);
    },
  };
}

/** weight × (x - from)⁺ to the power, over the factorial of the power. */
interface Power {
  readonly weight: bigint;
  readonly from: number;
  readonly power: number;
}

/** A sum of such powers, all over the same number. */
interface Powers {
  readonly terms: readonly Power[];
  readonly over: bigint;
}

/** The chance of being below, as powers of the distance from the least sum. */
function powersOf(tears: readonly TearDepth[]): Powers {
  const density = tears.map(densityPowers).reduce(
    (all, next) => ({
      terms: all.terms.flatMap((one) =>
        next.terms.map((other) => ({
          weight: one.weight * other.weight,
          from: one.from + other.from,
          power: one.power + other.power + 1,
        })),
      ),
      over: all.over * next.over,
    }),
    { terms: [{ weight: 1n, from: 0, power: -1 }], over: 1n },
  );
  return { ...density, terms: density.terms.map((term) => ({ ...term, power: term.power + 1 })) };
}

/** Of one tear, from its least depth. */
function densityPowers({ least, usual, most }: TearDepth): Powers {
  const [rise, fall, whole] = [usual - least, most - usual, most - least];
  if (whole === 0) return { terms: [{ weight: 1n, from: 0, power: -1 }], over: 1n };
  const [up, down] = [BigInt(Math.max(rise, 1)), BigInt(Math.max(fall, 1))];
  const step = 2n * up * down;
  return {
    terms: [
      rise === 0 ? { weight: step, from: 0, power: 0 } : { weight: 2n * down, from: 0, power: 1 },
      ...(rise === 0 ? [] : [{ weight: -2n * down, from: rise, power: 1 }]),
      ...(fall === 0 ? [] : [{ weight: -2n * up, from: rise, power: 1 }]),
      fall === 0 ? { weight: -step, from: whole, power: 0 } : { weight: 2n * up, from: whole, power: 1 },
    ],
    over: BigInt(whole) * up * down,
  };
}

/** Places are told apart to this share of a tick. */
const share = 1024;

/** In whole numbers, since terms that are nearly alike are subtracted; rounded once, at the end. */
function summed({ terms, over }: Powers, at: number): number {
  const place = BigInt(Math.round(at * share));
  const highest = Math.max(...terms.map(({ power }) => power));
  let sum = 0n;
  for (const { weight, from, power } of terms) {
    const beyond = place - BigInt(from * share);
    if (beyond <= 0n) continue;
    let value = weight * beyond ** BigInt(power);
    for (let factor = power + 1; factor <= highest; factor++) value *= BigInt(factor * share);
    sum += value;
  }
  let whole = over;
  for (let factor = 1; factor <= highest; factor++) whole *= BigInt(factor * share);
  return Number(sum) / Number(whole);
}

function mirrored({ least, usual, most }: TearDepth): TearDepth {
  return { least: lengthOfTicks(-most), usual: lengthOfTicks(-usual), most: lengthOfTicks(-least) };
}

function variance({ least, usual, most }: TearDepth): number {
  const [rise, whole] = [usual - least, most - least];
  return (rise * rise - rise * whole + whole * whole) / 18;
}

function total(numbers: readonly number[]): number {
  return numbers.reduce((all, number) => all + number, 0);
}

function clamped(chance: number): number {
  return Math.min(1, Math.max(0, chance));
}
