import type { Problem } from '../problem/index.ts';
import type { SvgProblemCode } from '../words/index.ts';
import { excerpt } from './excerpt.ts';
import { svgProblem, type TextPlace } from './svgProblem.ts';

/** An element that draws, with the attributes it has. */
export interface DrawnShape {
  readonly element: string;
  readonly place: TextPlace;
  readonly attributes: readonly {
    readonly name: string;
    readonly value: string;
    readonly place: TextPlace;
  }[];
}

/** The path data that an element stands for, before its transforms, or what is wrong with its description. */
export function pathOfShape(
  drawn: DrawnShape,
): { readonly path: string } | { readonly problem: Problem<SvgProblemCode> } {
  const { element, place } = drawn;
  if (element === 'path') return { path: drawn.attributes.find(({ name }) => name === 'd')?.value ?? '' };
  if (element === 'line') return { problem: svgProblem('svgOpen', place, { element }) };
  if (element === 'polygon' || element === 'polyline') return pathOfPoints(drawn);

  const numbers: Record<string, number | undefined> = {};
  for (const { name, value, place: at } of drawn.attributes) {
    if (!measured.has(name) || (value.trim() === 'auto' && /^r[xy]$/.test(name))) continue;
    const number = readNumber(value);
    if (number === null) return { problem: svgProblem('svgNumber', at, namesOf(element, name, value)) };
    if (number < 0 && lengths.has(name)) {
      return { problem: svgProblem('svgNegative', at, namesOf(element, name, value)) };
    }
    numbers[name] = number;
  }
  const path = element === 'rect' ? pathOfRect(numbers) : pathOfOval(element, numbers);
  return path === null ? { problem: svgProblem('svgFlat', place, { element }) } : { path };
}

const measured = new Set(['x', 'y', 'width', 'height', 'rx', 'ry', 'cx', 'cy', 'r']);
const lengths = new Set(['width', 'height', 'rx', 'ry', 'r']);

type Numbers = Readonly<Record<string, number | undefined>>;

/** A number of the document's units, with px or without; null where it is anything else or beyond all measure. */
function readNumber(text: string): number | null {
  if (!/^\s*[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?(?:px)?\s*$/i.test(text)) return null;
  const number = Number.parseFloat(text);
  return Math.abs(number) <= 1e9 ? number : null;
}

/** Rounded corners are no more than half a side, and one radius that is not given is the other (SVG 1.1, section 9.2). */
function pathOfRect({ x = 0, y = 0, width = 0, height = 0, rx, ry }: Numbers): string | null {
  if (width === 0 || height === 0) return null;
  const across = Math.min(rx ?? ry ?? 0, width / 2);
  const down = Math.min(ry ?? rx ?? 0, height / 2);
  if (across === 0 || down === 0) return `M${x} ${y}H${x + width}V${y + height}H${x}Z`;
  const corner = (toX: number, toY: number) => `A${across} ${down} 0 0 1 ${toX} ${toY}`;
  const [right, bottom] = [x + width, y + height];
  return [
    `M${x + across} ${y}H${right - across}`,
    corner(right, y + down),
    `V${bottom - down}`,
    corner(right - across, bottom),
    `H${x + across}`,
    corner(x, bottom - down),
    `V${y + down}`,
    corner(x + across, y),
    'Z',
  ].join('');
}

function pathOfOval(element: string, { cx = 0, cy = 0, r = 0, rx, ry }: Numbers): string | null {
  const across = element === 'circle' ? r : (rx ?? ry ?? 0);
  const down = element === 'circle' ? r : (ry ?? rx ?? 0);
  if (across === 0 || down === 0) return null;
  const half = (x: number) => `A${across} ${down} 0 0 1 ${x} ${cy}`;
  return `M${cx - across} ${cy}${half(cx + across)}${half(cx - across)}Z`;
}

function pathOfPoints({
  element,
  place,
  attributes,
}: DrawnShape): { readonly path: string } | { readonly problem: Problem<SvgProblemCode> } {
  const points = attributes.find(({ name }) => name === 'points');
  const text = points?.value ?? '';
  const numbers = text.match(/[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/gi) ?? [];
  const between = text.replace(/[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/gi, '0');
  const isList = /^[\s,0]*$/.test(between) && !/,\s*,/.test(between) && numbers.length % 2 === 0;
  if (points === undefined || !isList || numbers.length < 6) {
    return { problem: svgProblem('svgPoints', points?.place ?? place, namesOf(element, 'points', text)) };
  }
  const [x, y, ...others] = numbers.map((number) => Number(number));
  const [lastX, lastY] = others.slice(-2);
  if (element === 'polyline' && (lastX !== x || lastY !== y)) {
    return { problem: svgProblem('svgOpen', place, { element }) };
  }
  return { path: `M${x} ${y}L${others.join(' ')}Z` };
}

function namesOf(element: string, attribute: string, value: string) {
  return { element, attribute, found: excerpt(value) };
}
