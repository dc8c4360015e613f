import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  isObject,
  type Json,
  type JsonObject,
  layoutSchemaText,
  type Path,
  pathText,
} from '../files/index.ts';
import { plainLayout } from '../files/testing/plainLayout.ts';
import { readLength } from '../measure/index.ts';
import { editSentence, fieldWords } from '../words/index.ts';
import { settingOf } from './edit.ts';
import { inHandOf } from './testing/handmade.ts';

const { file } = inHandOf(JSON.parse(plainLayout()) as JsonObject);

describe('what was set', () => {
  const told = (path: Path, value: Json | undefined) => editSentence(settingOf(file, path, value).told);
  const printed = (path: Path, value: Json | undefined) =>
    editSentence(settingOf(file, path, value).told, 'printed');
  const width: Path = ['parts', 1, 'size', 0];

  it('is told in plain words, whatever the field', () => {
    const panel = (...path: Path) => ['parts', 1, ...path];
    const meadow = (...path: Path) => ['papers', 'meadow', ...path];
    expect(told(panel('on'), 'base')).toBe('Panel: lies on the front instead of mat.');
    expect(told(['parts', 6, 'on'], 'back')).toBe('Note: lies on the back instead of the inside.');
    expect(told(panel('paper'), 'ivory')).toBe(
      'Panel: paper Ivory cardstock instead of Meadow print and bark in turn.',
    );
    expect(told(panel('paper'), null)).toBe(
      'Panel: paper none (bought) instead of Meadow print and bark in turn.',
    );
    expect(told(panel('size'), ['2', 'fill'])).toBe('Panel: size 2 x fill instead of 2 1/4 in x 5 in.');
    expect(told(panel('spare'), 3)).toBe('Panel: spares 3 instead of 1.');
    expect(told(panel('adhere'), 'spots')).toBe('Panel: adhered spots instead of flat.');
    expect(told(panel('lies'), 'sideways')).toBe('Panel: print lies sideways.');
    expect(told(panel('stamped'), true)).toBe('Panel: stamped.');
    expect(told(['parts', 3, 'dieCut'], undefined)).toBe('Moon: not die-cut.');
    expect(told(panel('place'), { left: '1/4 in', below: 'mat' })).toBe(
      'Panel: place from the left 1/4 in, below mat instead of from the left 1/8 in.',
    );
    expect(told(panel('room', 'width'), ['1', '2'])).toBe(
      'Panel: room for the width 1 to 2 instead of 2 in to 2 1/2 in.',
    );
    expect(told(['parts', 2, 'place', 'gap', 1], '1/8')).toBe('Side strip: gap down 1/8 instead of 0.');
    expect(told(['parts', 5, 'place', 1, 'right'], '1/8')).toBe(
      'Dot: piece 2, from the right 1/8 instead of 1/4 in.',
    );
    expect(told(meadow('sheets', 0, 'count'), null)).toBe(
      'Meadow print: sheets on hand as many as needed instead of 2.',
    );
    expect(told(meadow('sheets', 0, 'size', 0), '11')).toBe('Meadow print: sheet width 11 instead of 12 in.');
    expect(told(['papers', 'ivory', 'sheets', 1, 'count'], 4)).toBe(
      'Ivory cardstock: sheets no. 2, sheets on hand 4 instead of 3.',
    );
    expect(told(meadow('up'), 'any')).toBe('Meadow print: print any way up instead of one way up.');
    expect(told(meadow('gsm'), 170)).toBe('Meadow print: grammage 170 instead of 160.');
    expect(told(['base', 'fold'], 'top')).toBe('The base: fold at the top instead of at the side.');
    expect(told(['units'], 'mm')).toBe('The set: units millimetres instead of inches.');
  });

  it('is told in the characters of a printed page there, and only lengths are', () => {
    expect(printed(width, '2-3/4')).toBe('Panel: width 2\u00a03⁄4 instead of 2\u00a01⁄4\u00a0in.');
    expect(printed(['parts', 1, 'size'], ['2 1/2 in', 'fill'])).toBe(
      'Panel: size 2\u00a01⁄2\u00a0in\u00a0× fill instead of 2\u00a01⁄4\u00a0in\u00a0× 5\u00a0in.',
    );
    expect(printed(['parts', 1, 'place'], { left: '-1/4"' })).toBe(
      'Panel: place from the left −1⁄4" instead of from the left 1⁄8\u00a0in.',
    );
    expect(printed(['papers', 'meadow', 'name'], '1/2 price')).toBe(
      'Meadow print: name 1/2 price instead of Meadow print.',
    );
  });

  it('is the same length printed as it is typed', () => {
    const count = fc.integer({ min: 1, max: 99 });
    const fraction = fc
      .tuple(count, fc.constantFrom(2, 3, 4, 8, 16, 32, 64))
      .filter(([top, bottom]) => top < bottom)
      .map(([top, bottom]) => `${top}/${bottom}`);
    const number = fc.oneof(
      fraction,
      fc.tuple(count, fc.constantFrom(' ', '-', '  '), fraction).map((texts) => texts.join('')),
      fc.tuple(count, fc.constantFrom('.', ','), count).map((texts) => texts.join('')),
    );
    const typed = fc.tuple(fc.constantFrom('', '-'), number, fc.constantFrom('', ' in', '"', 'mm', ' cm'));
    fc.assert(
      fc.property(typed, (texts) => {
        const text = texts.join('');
        const shown = printed(width, text).slice('Panel: width '.length).split(' instead of')[0]!;
        expect(shown).not.toContain('/');
        expect(readLength(shown, 'in')).toEqual(readLength(text, 'in'));
      }),
    );
  });

  it('has words for every field of the schema', () => {
    const schema = JSON.parse(layoutSchemaText()) as Json;
    const found = new Set<string>();
    const resolved = (value: Json | undefined): Json | undefined => {
      const reference = isObject(value) ? value.$ref : undefined;
      if (typeof reference !== 'string') return value;
      return reference
        .replace('#/', '')
        .split('/')
        .reduce<Json | undefined>((at, key) => (isObject(at) ? at[key] : undefined), schema);
    };
    const walk = (given: Json | undefined, path: Path) => {
      const value = resolved(given);
      if (!isObject(value)) return;
      if (path.length > 0) found.add(pathText(path));
      for (const one of [value.anyOf, value.oneOf].flat())
        if (isObject(one) && !('required' in one)) walk(one, path);
      for (const [name, one] of Object.entries((value.properties ?? {}) as Record<string, Json>))
        walk(one, [...path, name]);
      for (const [index, one] of ((value.prefixItems ?? []) as readonly Json[]).entries())
        walk(one, [...path, index]);
      if (value.items !== undefined) walk(value.items, [...path, 1]);
      if (isObject(value.additionalProperties)) walk(value.additionalProperties, [...path, 'meadow']);
    };
    walk(schema, []);
    expect(found.size).toBeGreaterThan(80);
    const below = [...found].map((path) => path.replace(/^(?:parts\[1\]|papers\.meadow|base)\.?/, ''));
    expect(below.filter((field) => field !== '' && fieldWords(field) === null)).toEqual([]);
  });
});
