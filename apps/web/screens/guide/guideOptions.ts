import { useState } from 'react';
import type { Layout } from '../../../../src/layout/index.ts';
import type { Units } from '../../../../src/measure/index.ts';

/** On what and how a guide is printed. */
export interface GuideOptions {
  readonly sheetFormat: 'letter' | 'a4';
  readonly units: Units;
  readonly type: keyof typeof typeSizes;
}

/** Sizes of the body text in points; from 16 on it counts as large print. */
export const typeSizes = { usual: 10.5, large: 16, larger: 20 } as const;

/** The options for a layout: letter paper and inches, or A4 and millimetres, as it is measured, until others are chosen. */
export function useGuideOptions(
  layout: Layout,
): readonly [GuideOptions, (change: Partial<GuideOptions>) => void] {
  const [chosen, setChosen] = useState<Partial<GuideOptions>>({});
  const { units } = layout;
  const usual = { sheetFormat: units === 'in' ? 'letter' : 'a4', units, type: 'usual' } as const;
  return [{ ...usual, ...chosen }, (change) => setChosen((before) => ({ ...before, ...change }))];
}
