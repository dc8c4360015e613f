import { type MouseEvent, type PointerEvent, type ReactNode, useState } from 'react';
import {
  type Length,
  lengthOfTicks,
  lineSpacings,
  type Marking,
  roundTo,
  showLength,
  showLengthWithUnit,
} from '../../../src/measure/index.ts';
import { useMessages } from '../messages/messages.ts';

/** How much of the ruler the strip shows on either side, in ticks: an inch and a half, or 40 mm. */
const reach = { in: 60_960, mm: 64_000 } as const;
/** The strip's own units: 100 to an inch or to 26 mm. */
const ticksPerUnit = { in: 406.4, mm: 416 } as const;
const height = 64;
/** Nearer than this to an end of the strip a number would be cut off. */
const roomOfNumber = 16;

/**
 * A strip of the trimmer's ruler around a length, the length marked in red; a tap or a drag on it takes the nearest
 * mark, where there is someone to take it. While it is dragged the strip stays where it is.
 */
export function RulerStrip({
  length,
  marking,
  grows = 'right',
  onMark = null,
}: {
  readonly length: Length;
  readonly marking: Marking;
  /** Where its numbers grow to: on a trimmer a ruler grows away from the blade. */
  readonly grows?: 'left' | 'right';
  readonly onMark?: ((mark: Length) => void) | null;
}): ReactNode {
  const { form } = useMessages();
  const [held, setHeld] = useState<Length | null>(null);
  const { units, step } = marking;
  const middle = held ?? length;
  const [from, to] = [middle - reach[units], middle + reach[units]];
  const x = (ticks: number) => (grows === 'right' ? ticks - from : to - ticks) / ticksPerUnit[units];
  const width = (to - from) / ticksPerUnit[units];

  const markAt = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const along = ((event.clientX - box.left) / box.width) * (to - from);
    const ticks = grows === 'right' ? from + along : to - along;
    return roundTo(lengthOfTicks(Math.round(ticks)), step, 'nearest');
  };
  const dragged = (take: (mark: Length) => void) => ({
    onPointerDown(event: PointerEvent<SVGSVGElement>) {
      event.currentTarget.setPointerCapture(event.pointerId);
      setHeld(middle);
      take(markAt(event));
    },
    onPointerMove(event: PointerEvent<SVGSVGElement>) {
      if (held !== null) take(markAt(event));
    },
    onPointerUp: () => setHeld(null),
    onPointerCancel: () => setHeld(null),
    // A tap on the strip leaves what is typed where it is.
    onMouseDown: (event: MouseEvent) => event.preventDefault(),
  });
  return (
    <svg
      className={onMark === null ? 'ruler' : 'ruler dragged'}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={form.ruler(showLengthWithUnit(length, units, 'printed'))}
      {...(onMark === null ? {} : dragged(onMark))}
    >
      <path className="ruler-body" d={`M0 1H${width}V${height - 1}H0Z`} />
      <path className="ruler-here" d={`M${x(length)} 0V${height}`} />
      {marksBetween(from, to, marking).map(({ at, rank, number }) => (
        <g key={at}>
          <path className="ruler-mark" d={`M${x(at)} 1v${8 + rank * 5}`} />
          {number === null || x(at) < roomOfNumber || x(at) > width - roomOfNumber ? null : (
            <text className="ruler-number" x={x(at)} y={46}>
              {number}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}

interface DrawnMark {
  readonly at: number;
  /** 0 for the shortest lines. */
  readonly rank: number;
  /** At the numbered marks: whole inches, whole centimetres. */
  readonly number: string | null;
}

function marksBetween(from: number, to: number, marking: Marking): readonly DrawnMark[] {
  const spacings = lineSpacings(marking);
  const first = Math.max(0, Math.ceil(from / marking.step));
  const count = Math.max(0, Math.floor(to / marking.step) - first + 1);
  return Array.from({ length: count }, (_, index) => {
    const at = (first + index) * marking.step;
    const rank = spacings.findLastIndex((spacing) => at % spacing === 0);
    return {
      at,
      rank,
      number: rank === spacings.length - 1 ? showLength(lengthOfTicks(at), marking.units, 'printed') : null,
    };
  });
}
