import type { ReactNode } from 'react';
import type { Frame } from '../../../../src/drawing/index.ts';
import type { Laid } from '../../../../src/editing/index.ts';
import { lengthOfTicks, pointsOf, showLength, type Units } from '../../../../src/measure/index.ts';

/** Ink ticks beside the card where a dragged piece comes to lie true, with the distances written small. */
export function LayTicks({
  laid,
  card,
  units,
}: {
  readonly laid: readonly Laid[];
  readonly card: Frame;
  readonly units: Units;
}): ReactNode {
  return (
    <g className="lay-ticks" aria-hidden="true">
      {laid.map(({ line }) => (
        <g key={line.axis}>
          {line.spans.map(({ from, to }) => {
            const [fromPt, toPt] = [pointsOf(from), pointsOf(to)];
            const middlePt = (fromPt + toPt) / 2;
            const number = from === to ? '' : showLength(lengthOfTicks(to - from), units, 'printed');
            return line.axis === 'width' ? (
              <g key={`${from} ${to}`}>
                <path d={ticksAt([fromPt, toPt], (at) => `M${at} ${card.yPt - 3}v-11`)} />
                <text x={middlePt} y={card.yPt - 17} textAnchor="middle">
                  {number}
                </text>
              </g>
            ) : (
              <g key={`${from} ${to}`}>
                <path d={ticksAt([fromPt, toPt], (at) => `M${card.xPt - 3} ${at}h-11`)} />
                <text x={card.xPt - 16} y={middlePt + 3} textAnchor="end">
                  {number}
                </text>
              </g>
            );
          })}
        </g>
      ))}
    </g>
  );
}

function ticksAt(places: readonly number[], tick: (at: number) => string): string {
  return [...new Set(places)].map(tick).join('');
}
