/** A chance, and how far off it may be where it was found by drawing. */
export interface ToldChance {
  readonly chance: number;
  readonly standardError?: number;
}

/**
 * How often it happens: `1 card in 40`, `3 sets in 5`, `nearly every card`, `fewer than 1 set in 10 000`. Two figures
 * at the most, and one where the chance was drawn and is no better known.
 */
export function chanceWords({ chance, standardError = 0 }: ToldChance, noun: string): string {
  if (chance <= 0 && standardError === 0) return `no ${noun}`;
  if (chance === 1) return `every ${noun}`;
  const off = standardError / Math.max(chance, standardError);
  if (off > 0.5) return fewer(chance + 2 * standardError, noun);
  if (chance >= 0.15) {
    const tenths = Math.round(chance * 10);
    if (tenths === 10) return `nearly every ${noun}`;
    const shared = [5, 2].find((each) => tenths % each === 0) ?? 1;
    const count = tenths / shared;
    return `${count} ${noun}${count === 1 ? '' : 's'} in ${10 / shared}`;
  }
  if (chance < 1 / rarest) return fewer(chance, noun);
  const ofOne = figures(1 / chance, off > 0.1 ? 1 : 2);
  return `1 ${noun} in ${spaced(Math.round(ofOne))}`;
}

/** A risk that was wanted: `1 set in 20`; `3 sets in 10`. */
export function riskWords(risk: number, noun: string): string {
  const ofOne = 1 / risk;
  return Math.abs(ofOne - Math.round(ofOne)) < 1e-9
    ? `1 ${noun} in ${spaced(Math.round(ofOne))}`
    : chanceWords({ chance: risk }, noun);
}

/** Rarer than that nobody can tell apart. */
const rarest = 10_000;

function fewer(chance: number, noun: string): string {
  const ofOne = Math.min(rarest, figures(1 / chance, 1));
  return `fewer than 1 ${noun} in ${spaced(ofOne)}`;
}

function figures(value: number, count: number): number {
  return Number(value.toPrecision(count));
}

function spaced(count: number): string {
  return count >= 10_000 ? String(count).replace(/(\d)(?=(\d{3})+$)/g, '$1 ') : String(count);
}
