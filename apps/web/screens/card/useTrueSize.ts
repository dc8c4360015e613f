import type { Json } from '../../../../src/files/index.ts';
import { usePreference } from '../../state/preference.ts';

/** How large the screen shows things. */
export interface TrueSize {
  /** Pixels of the page to a point of paper, 1/72 in. */
  readonly pxPerPt: number;
  /** Whether the screen was measured; else the browser's own guess of 96 pixels to the inch stands. */
  readonly measured: boolean;
  /** Keeps what was measured: pixels to a millimetre. */
  readonly measure: (pxPerMm: number) => void;
}

/** The true size of this screen, as it was measured by a bank card once. */
export function useTrueSize(): TrueSize {
  const [pxPerMm, measure] = usePreference('pixels to a millimetre', knownScale);
  return { pxPerPt: ((pxPerMm ?? 96 / 25.4) * 25.4) / 72, measured: pxPerMm !== null, measure };
}

function knownScale(kept: Json): number | null {
  return typeof kept === 'number' && kept > 0 ? kept : null;
}
