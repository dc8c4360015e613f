import { expect, test } from 'vitest';
import { circle, type Mark, magnified, svgOf } from './index.ts';
import { allOf, readXml } from './testing/xmlReader.ts';

const marks: readonly Mark[] = [
  {
    kind: 'line',
    from: { xPt: 1, yPt: 2 },
    to: { xPt: 3, yPt: 4 },
    stroke: { colour: '#000000', widthPt: 0.5, dashPt: [1, 2] },
  },
  {
    kind: 'path',
    path: circle({ xPt: 9, yPt: 9 }, 4),
    fill: { hatch: { ground: '#ffffff', ink: '#000000', pattern: 'lines', turnDegrees: 0, spacingPt: 2 } },
  },
  {
    kind: 'group',
    move: { xPt: 5, yPt: 6 },
    clip: { xPt: 0, yPt: 0, widthPt: 7, heightPt: 8 },
    marks: [
      {
        kind: 'text',
        at: { xPt: 1, yPt: 1 },
        text: 'A',
        sizePt: 10,
        weight: 'regular',
        colour: '#000000',
        anchor: 'start',
      },
    ],
  },
];

test('twice as large is what a page of half the size shows when it is blown up', () => {
  const numbers = (drawn: readonly Mark[]) =>
    allOf(readXml(svgOf({ widthPt: 100, heightPt: 100, marks: drawn }, { units: 'in', title: 'A' }))).flatMap(
      ({ name, attributes }) =>
        name === 'svg'
          ? []
          : ['d', 'x1', 'y1', 'x2', 'y2', 'x', 'y', 'transform', 'stroke-dasharray', 'font-size'].flatMap(
              (attribute) => [...(attributes[attribute] ?? '').matchAll(/-?[\d.]+/g)].map(Number),
            ),
    );
  const [once, twice] = [numbers(marks), numbers(magnified(marks, 2))];
  expect(twice.length).toBe(once.length);
  // A hatch is kept to thousandths of a point.
  const off = twice.map((number, index) => Math.abs(number - 2 * once[index]!));
  expect(Math.max(...off)).toBeLessThan(0.002);
});
