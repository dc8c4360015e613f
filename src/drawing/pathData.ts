import { assert } from '../problem/index.ts';
import type { PathStep } from './mark.ts';

/** A path as SVG's path data, numbers in points. */
export function pathData(path: readonly PathStep[]): string {
  return path.map(stepData).join('');
}

/** A number for SVG: 15 significant digits, which drops nothing but the noise of binary fractions. */
export function svgNumber(value: number): string {
  if (isShort(value)) return String(value + 0);
  assert(Number.isFinite(value), 'A drawn number is finite', { value });
  return String(Number(value.toPrecision(15)) + 0);
}

/**
 * Whether it is the very number that some thousandths are read as. Such a one has no more than 15 digits, so it has no
 * noise to drop; most drawn numbers are of this kind, and to find their digits twice is the greatest part of the work.
 */
function isShort(value: number): boolean {
  return Math.abs(value) < 1e11 && Math.round(value * 1000) / 1000 === value;
}

function stepData(step: PathStep): string {
  switch (step.to) {
    case 'move':
      return `M${svgNumber(step.xPt)} ${svgNumber(step.yPt)}`;
    case 'line':
      return `L${svgNumber(step.xPt)} ${svgNumber(step.yPt)}`;
    case 'curve': {
      const { x1Pt, y1Pt, x2Pt, y2Pt, xPt, yPt } = step;
      return `C${[x1Pt, y1Pt, x2Pt, y2Pt, xPt, yPt].map(svgNumber).join(' ')}`;
    }
    case 'close':
      return 'Z';
  }
}
