import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { a4Format, circle, letterFormat, type Mark, type Page, polyline, svgOf, testBars } from './index.ts';
import { allOf, readXml, type XmlElement } from './testing/xmlReader.ts';

const thin = { colour: '#000000', widthPt: 0.5 };

function page(...marks: readonly Mark[]): Page {
  return { widthPt: 306, heightPt: 396, marks };
}

function read(drawn: Page, units: 'in' | 'mm' = 'in'): XmlElement {
  return readXml(svgOf(drawn, { units, title: 'Front' }));
}

function elements(drawn: Page, name: string): readonly XmlElement[] {
  return allOf(read(drawn)).filter((element) => element.name === name);
}

describe('size', () => {
  test('is physical, in inches or millimetres, with points inside', () => {
    // CSS Values 4: 1 in = 96 px = 72 pt = 25.4 mm.
    expect(read(page()).attributes).toMatchObject({
      width: '4.25in',
      height: '5.5in',
      viewBox: '0 0 306 396',
    });
    expect(read(page(), 'mm').attributes).toMatchObject({ width: '107.95mm', height: '139.7mm' });
    expect(read({ ...a4Format, marks: [] }, 'mm').attributes).toMatchObject({
      width: '210mm',
      height: '297mm',
    });
    expect(read({ ...letterFormat, marks: [] }).attributes).toMatchObject({ width: '8.5in', height: '11in' });
  });

  test('of the test bars is 72 and 56.692913 units of 1/72 in', () => {
    const bars = testBars({ xPt: 10, yPt: 10 }, { inch: '1 in', millimetres: '20 mm', says: 'Two bars' });
    const lengths = elements(page(bars), 'path').map(({ attributes }) => {
      const [from, , to] = (attributes.d ?? '').match(/[\d.]+/g)!.map(Number);
      return to! - from!;
    });
    expect(lengths.some((length) => Math.abs(length - 72) < 1e-9)).toBe(true);
    expect(lengths.some((length) => Math.abs(length - 56.692_913) < 1e-6)).toBe(true);
  });
});

describe('numbers', () => {
  test('come back as they were drawn, to the noise of binary fractions', () => {
    const coordinate = fc.double({ min: -1e4, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(coordinate, coordinate, (xPt, yPt) => {
        const [path] = elements(
          page({
            kind: 'path',
            path: polyline([
              { xPt: 0, yPt: 0 },
              { xPt, yPt },
            ]),
            stroke: thin,
          }),
          'path',
        );
        const numbers = (path!.attributes.d ?? '').match(/-?[\d.]+(?:e-?\d+)?/g)!.map(Number);
        expect(numbers[2]).toBeCloseTo(xPt, 9);
        expect(numbers[3]).toBeCloseTo(yPt, 9);
      }),
    );
  });
});

describe('words', () => {
  test('are escaped, whatever they are, and come back the same', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1 }), (words) => {
        const drawn = page({
          kind: 'text',
          at: { xPt: 1, yPt: 1 },
          text: words,
          sizePt: 9,
          weight: 'regular',
          colour: '#000000',
          anchor: 'start',
        });
        const [text] = elements(drawn, 'text');
        // What XML cannot hold is replaced by a visible stand-in; nothing else changes.
        expect([...text!.text].length).toBe([...words].length);
      }),
    );
  });

  test('of title, figures and groups are there for those who listen', () => {
    const moon: Mark = {
      kind: 'group',
      role: 'figure',
      says: 'A moon & <stars>',
      marks: [{ kind: 'path', path: circle({ xPt: 9, yPt: 9 }, 5), stroke: thin }],
    };
    const root = read(page(moon));
    expect(root.children[0]).toMatchObject({ name: 'title', text: 'Front' });
    const figure = allOf(root).find(
      ({ attributes }) => attributes.role === 'img' && attributes['aria-label'] !== undefined,
    );
    expect(figure?.attributes['aria-label']).toBe('A moon & <stars>');
  });

  test('are wanted of every figure', () => {
    expect(() => read(page({ kind: 'group', role: 'figure', marks: [] }))).toThrow(/A figure says/);
  });
});

describe('clips', () => {
  test('have ids of their own, so that pictures can share a web page', () => {
    const clipped: Mark = { kind: 'group', clip: { xPt: 0, yPt: 0, widthPt: 9, heightPt: 9 }, marks: [] };
    const both = [
      svgOf(page(clipped, clipped), { units: 'in', title: 'A', idPrefix: 'a' }),
      svgOf(page(clipped), { units: 'in', title: 'B', idPrefix: 'b' }),
    ];
    const ids = both.flatMap((source) =>
      allOf(readXml(source)).flatMap(({ attributes }) => attributes.id ?? []),
    );
    expect(new Set(ids).size).toBe(3);
    for (const source of both) {
      const used = [...source.matchAll(/url\(#([^)]*)\)/g)].map(([, id]) => id);
      expect(used.every((id) => ids.includes(id!))).toBe(true);
    }
  });
});

test('the same page gives the same text', () => {
  const drawn = page({
    kind: 'path',
    path: circle({ xPt: 90, yPt: 90 }, 20),
    fill: { hatch: { ground: '#ffffff', ink: '#000000', pattern: 'waves', turnDegrees: 30, spacingPt: 6 } },
  });
  expect(svgOf(drawn, { units: 'in', title: 'A' })).toBe(svgOf(drawn, { units: 'in', title: 'A' }));
});
