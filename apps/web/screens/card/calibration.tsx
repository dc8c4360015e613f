import { type ReactNode, useState } from 'react';
import { useMessages } from '../../messages/messages.ts';
import type { TrueSize } from './useTrueSize.ts';

/** ISO/IEC 7810, ID-1: 85.60 mm by 53.98 mm. */
const bankCard = { widthMm: 85.6, heightMm: 53.98 };

/** Measures the screen: a frame is made as large as a bank card that is held to it. */
export function Calibration({
  trueSize: { pxPerPt, measure },
  onDone,
}: {
  readonly trueSize: TrueSize;
  readonly onDone: () => void;
}): ReactNode {
  const { card } = useMessages();
  const [widthPx, setWidthPx] = useState<number | null>(null);
  const shown = widthPx ?? Math.round(((bankCard.widthMm * 72) / 25.4) * pxPerPt);
  const by = (step: number) => setWidthPx(Math.min(most, Math.max(least, shown + step)));
  return (
    <section className="calibration" aria-label={card.calibrate.heading}>
      <h3>{card.calibrate.heading}</h3>
      <p>{card.calibrate.says}</p>
      <svg
        className="bank-card"
        style={{ width: `${shown}px` }}
        viewBox={`0 0 ${bankCard.widthMm} ${bankCard.heightMm}`}
        role="img"
        aria-label={card.calibrate.frame}
      >
        <rect x="0.3" y="0.3" width={bankCard.widthMm - 0.6} height={bankCard.heightMm - 0.6} rx="3.18" />
      </svg>
      <p>
        <label>
          {card.calibrate.slider}
          <input
            className="slide"
            type="range"
            min={least}
            max={most}
            value={shown}
            onChange={(event) => setWidthPx(Number(event.currentTarget.value))}
          />
        </label>
      </p>
      <div className="says">
        <button type="button" className="say" onClick={() => by(-1)}>
          {card.calibrate.smaller}
        </button>
        <button type="button" className="say" onClick={() => by(1)}>
          {card.calibrate.larger}
        </button>
        <button
          type="button"
          className="say"
          onClick={() => {
            measure(shown / bankCard.widthMm);
            onDone();
          }}
        >
          {card.calibrate.done}
        </button>
      </div>
    </section>
  );
}

/** From a coarse screen to a very fine one. */
const least = 150;
const most = 1000;
