import { useEffect, useState } from 'react';
import { useWorld } from '../../world.ts';

/** How large the screen shows things. */
export interface TrueSize {
  /** Pixels of the page to a point of paper, 1/72 in. */
  readonly pxPerPt: number;
  /** Whether the screen was measured; else the browser's own guess of 96 pixels to the inch stands. */
  readonly measured: boolean;
  /** Keeps what was measured: pixels to a millimetre. */
  readonly measure: (pxPerMm: number) => void;
}

/** The name under which it is kept. */
const preference = 'pixels to a millimetre';

/** The true size of this screen, as it was measured by a bank card once. */
export function useTrueSize(): TrueSize {
  const { shelf } = useWorld();
  const [pxPerMm, setPxPerMm] = useState<number | null>(null);
  useEffect(() => {
    void shelf.preference(preference).then((kept) => {
      if (typeof kept === 'number' && kept > 0) setPxPerMm(kept);
    });
  }, [shelf]);
  return {
    pxPerPt: ((pxPerMm ?? 96 / 25.4) * 25.4) / 72,
    measured: pxPerMm !== null,
    measure(measured) {
      setPxPerMm(measured);
      void shelf.prefer(preference, measured);
    },
  };
}
