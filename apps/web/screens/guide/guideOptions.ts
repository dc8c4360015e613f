import { isObject, type Json } from '../../../../src/files/index.ts';
import type { Hand } from '../../../../src/guide/index.ts';
import type { Layout } from '../../../../src/layout/index.ts';
import type { Units } from '../../../../src/measure/index.ts';
import { usePreference } from '../../state/preference.ts';

/** On what and how a guide is printed. */
export type GuideOptions = {
  readonly sheetFormat: 'letter' | 'a4';
  readonly units: Units;
  /** Whose hand it is for; `usual`: that of the trimmer. */
  readonly hand: Hand | 'usual';
  readonly type: keyof typeof typeSizes;
};

/** The hand that is asked for, as `GuideAsked` has it. */
export function handOf({ hand }: GuideOptions): Hand | null {
  return hand === 'usual' ? null : hand;
}

/** Sizes of the body text in points; from 16 on it counts as large print. */
export const typeSizes = { usual: 10.5, large: 16, larger: 20 } as const;

/**
 * The options for a layout: letter paper and inches, or A4 and millimetres, as it is measured, until others are chosen.
 *
 * What was chosen is kept and holds for every layout: it goes by the person's printer, ruler and eyes.
 */
export function useGuideOptions(
  layout: Layout,
): readonly [GuideOptions, (change: Partial<GuideOptions>) => void] {
  const [chosen, prefer] = usePreference<Chosen>('guide', knownOptions);
  const { units } = layout;
  const sheetFormat = units === 'in' ? 'letter' : 'a4';
  const usual = { sheetFormat, units, hand: 'usual', type: 'usual' } as const;
  return [{ ...usual, ...chosen }, (change) => prefer({ ...chosen, ...change })];
}

/** What was chosen at all. */
type Chosen = { readonly [Option in keyof GuideOptions]?: GuideOptions[Option] };

/** What is known of what was kept; a later version may know more. */
function knownOptions(kept: Json): Chosen | null {
  if (!isObject(kept)) return null;
  const { sheetFormat, units, hand, type } = kept;
  return {
    ...(sheetFormat === 'letter' || sheetFormat === 'a4' ? { sheetFormat } : {}),
    ...(units === 'in' || units === 'mm' ? { units } : {}),
    ...(hand === 'usual' || hand === 'left' || hand === 'right' ? { hand } : {}),
    ...(type === 'usual' || type === 'large' || type === 'larger' ? { type } : {}),
  };
}
