import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import buttonTin from '../../../examples/button-tin.card.json?raw';
import kiteDay from '../../../examples/kite-day.card.json?raw';
import lanternWalk from '../../../examples/lantern-walk.card.json?raw';
import { black, grey, type Mark, type Page, svgOf } from '../../../src/drawing/index.ts';
import { plainTypeface } from '../../../src/drawing/testing/plainTypeface.ts';
import { allOf, readXml, type XmlElement } from '../../../src/drawing/testing/xmlReader.ts';
import { readLayoutFile } from '../../../src/files/index.ts';
import { cuttingPictures, frontDrawing, guideOf } from '../../../src/guide/index.ts';
import { planned, tideSet } from '../../../src/guide/testing/sets.ts';
import { arrange } from '../../../src/layout/index.ts';
import { Drawing, type Lying } from './drawing.tsx';

function drawn(page: Page, on: Lying): readonly XmlElement[] {
  return allOf(readXml(renderToStaticMarkup(<Drawing page={page} says="Front" on={on} />)));
}

/** Every element that shows, clips and names left out, with what it is and says. */
function shown(elements: readonly XmlElement[]) {
  return elements
    .filter(({ name }) => ['g', 'path', 'line', 'text'].includes(name))
    .map(({ name, attributes, text }) => {
      const { 'clip-path': clip, ...own } = attributes;
      return { name, own, isClipped: clip !== undefined, text: name === 'text' ? text : '' };
    })
    .filter(({ name, own }) => name !== 'path' || 'fill' in own || 'stroke' in own);
}

function expectSame(page: Page) {
  const written = allOf(readXml(svgOf(page, { units: 'in', title: 'Front' })));
  expect(shown(drawn(page, 'paper'))).toEqual(shown(written));
}

describe('on paper it is what svgOf writes, element by element', () => {
  test.each(Object.entries({ lanternWalk, kiteDay, buttonTin }))('the front of %s', (_, text) => {
    const read = readLayoutFile(text);
    if (!('layout' in read)) throw new Error('The examples can be read');
    const { layout } = read;
    for (const manner of ['printed', 'coloured'] as const) {
      const typeface = plainTypeface;
      expectSame(frontDrawing(layout, arrange(layout), 1, { units: layout.units, typeface }, manner));
    }
  });

  test('every page of a guide, with roles and all', async () => {
    const set = await planned(tideSet());
    const { pages } = guideOf({ ...set, sheetFormat: 'letter', units: 'in', typeface: plainTypeface });
    expect(pages.length).toBeGreaterThan(4);
    for (const page of pages) expectSame(page);
  });
});

describe('on the ground of the page', () => {
  test('only what lies on drawn paper keeps its ink', async () => {
    const set = await planned(tideSet());
    const matter = {
      ...set,
      stakes: [],
      showing: { units: 'in', glyphs: 'printed' },
      typeface: plainTypeface,
    } as const;
    const [picture] = cuttingPictures(matter, set.layout.papers.get('tide')!, {
      widthPt: 240,
      heightPt: 150,
    });
    const page = { widthPt: 240, ...picture!.draw() };
    const elements = drawn(page, 'page');
    const inks = elements.flatMap(({ name, attributes: { fill, stroke } }) =>
      [fill, stroke].flatMap((ink) => (ink === undefined || ink === 'none' ? [] : [[name, ink]])),
    );
    expect(new Set(inks.filter(([name]) => name === 'text').map(([, ink]) => ink))).toEqual(
      new Set(['currentColor', 'var(--soft-ink, currentColor)']),
    );
    // The hatch and the outline of the paper.
    expect(inks).toContainEqual(['path', black]);
    expect(inks.filter(([name, ink]) => name === 'line' && ink === black)).toEqual([]);
    expect(inks.map(([, ink]) => ink)).not.toContain(grey);
  });

  test('a picture has a name, and clips have ids of their own', () => {
    const clip: Mark = {
      kind: 'group',
      clip: { xPt: 1, yPt: 2, widthPt: 3, heightPt: 4 },
      marks: [
        {
          kind: 'line',
          from: { xPt: 0, yPt: 0 },
          to: { xPt: 9, yPt: 9 },
          stroke: { colour: black, widthPt: 1 },
        },
      ],
    };
    const elements = drawn({ widthPt: 10, heightPt: 10, marks: [clip, clip] }, 'page');
    expect(elements[0]?.attributes).toMatchObject({
      role: 'img',
      'aria-label': 'Front',
      viewBox: '0 0 10 10',
    });
    const ids = elements.filter(({ name }) => name === 'clipPath').map(({ attributes }) => attributes.id);
    expect(new Set(ids).size).toBe(2);
    const used = elements.flatMap(({ attributes }) => attributes['clip-path'] ?? []);
    expect(used).toEqual(ids.map((id) => `url(#${id})`));
  });
});
