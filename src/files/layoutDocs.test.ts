import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readLength } from '../measure/index.ts';
import { longestFile } from './fileText.ts';
import { readLayoutFile } from './layoutFile.ts';
import { layoutSchemaText } from './layoutSchema.ts';
import { limits } from './layoutShape.ts';
import { plainLayout } from './testing/plainLayout.ts';
import { readTrimmerFile } from './trimmerFile.ts';

/** What the documentation of the file says, held to the code that reads it. */
const [layoutDocs = '', trimmerDocs = ''] = readFileSync('docs/layout-file.md', 'utf8').split(
  '# The trimmer file',
);

interface Schema {
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly enum?: readonly unknown[];
  readonly [keyword: string]: unknown;
}

/** Every schema inside a schema, itself included. */
function within(schema: unknown): Schema[] {
  if (typeof schema !== 'object' || schema === null) return [];
  return [schema as Schema, ...Object.values(schema).flatMap(within)];
}

const schemas = within(JSON.parse(layoutSchemaText()));

test('every field of a layout is named, and every word that a field may hold', () => {
  const fields = schemas.flatMap(({ properties }) => Object.keys(properties ?? {}));
  expect(fields.length).toBeGreaterThan(50);
  for (const field of fields)
    expect(layoutDocs, field).toMatch(new RegExp(`[\`"]${field.replace('$', '\\$')}[\`"]`));
  for (const word of schemas.flatMap((schema) => schema.enum ?? []))
    expect(layoutDocs, String(word)).toContain(`"${String(word)}"`);
});

test('a field is called needed where it is', () => {
  const tables = layoutDocs.matchAll(/^\| `(\$?\w+)` \| (needed)? ?\|/gm);
  const documented = new Map<string, Set<boolean>>();
  for (const [, field = '', needed] of tables)
    documented.set(field, (documented.get(field) ?? new Set()).add(needed !== undefined));
  expect(documented.size).toBeGreaterThan(20);
  for (const [field, needs] of documented) {
    const holders = schemas.filter(({ properties }) => properties?.[field] !== undefined);
    const required = holders.map(
      (holder) => (holder.required as string[] | undefined)?.includes(field) ?? false,
    );
    for (const needed of needs) expect(required, field).toContain(needed);
  }
});

test('limits are those of the code', () => {
  const figure = (limit: number) => String(limit).replace(/(?<=\d)(?=(?:\d{3})+$)/g, ' ');
  for (const limit of Object.values(limits))
    expect(layoutDocs).toMatch(new RegExp(`(?:to|up to) ${figure(limit)}\\b`));
  expect(layoutDocs).toContain(`no more than ${figure(longestFile)} characters`);
});

describe('what is shown can be read', () => {
  const [, lengths = ''] = /^## Lengths$(.*?)^## /ms.exec(layoutDocs) ?? [];
  test.each([...lengths.matchAll(/`"([^"`]+)"`/g)].map(([, text = '']) => text))('the length %s', (text) => {
    expect(readLength(text, 'in')).toHaveProperty('ok', true);
  });

  const [borders = '', room = '', ribbons = ''] = [...layoutDocs.matchAll(/```jsonc\n(.*?)```/gs)].map(
    ([, text]) => text,
  );
  test.each([
    ['parts that follow their borders', borders, 2],
    ['a part with room', room, 1],
    ['a folded ribbon and a bow', ribbons, 2],
  ])('the example of %s', (_, parts, count) => {
    const example = JSON.parse(`[${parts}]`) as [];
    expect(example).toHaveLength(count);
    const mat = { id: 'mat', inset: '1/8 in', paper: 'ivory' };
    expect(readLayoutFile(plainLayout({ parts: [mat, ...example] }))).toHaveProperty('layout');
  });
});

test('the fields of a trimmer are all named, with their defaults', () => {
  const least = { cardwright_trimmer: 1, units: 'in' };
  const unknown = readTrimmerFile(JSON.stringify({ ...least, longset: '1' }));
  const fields = 'problems' in unknown ? (unknown.problems[0]?.names.fields ?? '').split(', ') : [];
  const documented = [...trimmerDocs.matchAll(/^\| `(\$?\w+)` \|/gm)].map(([, field]) => field);
  expect(documented.toSorted()).toEqual(fields.toSorted());

  const read = readTrimmerFile(JSON.stringify(least));
  const trimmer = 'trimmer' in read ? read.trimmer : null;
  expect(trimmerDocs).toContain(`"${trimmer?.measuringEdge}"\` (default)`);
  expect(trimmerDocs).toContain(`"${trimmer?.hand}"\` (default)`);
  expect(trimmerDocs).toContain(`${trimmer?.sheetsAtOnce} unless said`);
});
