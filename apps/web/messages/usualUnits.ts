import type { Units } from '../../../src/measure/index.ts';

/**
 * What a person of these languages is likely to measure in: inches in the places of the US system of measures
 * (Unicode CLDR, `measurementData`; the list from memory) and in Canada, where crafts go by inches (common practice,
 * no source), millimetres elsewhere. Only what is proposed: every layout says its own.
 */
export function usualUnits(languages: readonly string[]): Units {
  const [first] = languages;
  try {
    const region = first === undefined ? undefined : new Intl.Locale(first).maximize().region;
    return region !== undefined && inInches.includes(region) ? 'in' : 'mm';
  } catch {
    // A browser may name a language that is none.
    return 'mm';
  }
}

const inInches = ['US', 'PR', 'LR', 'MM', 'CA'];
