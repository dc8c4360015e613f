import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { readLayoutFile } from './layoutFile.ts';
import { layoutSchemaText } from './layoutSchema.ts';
import { starterLayout } from './starterLayout.ts';
import { plainLayout } from './testing/plainLayout.ts';
import { slips } from './testing/slips.ts';

// `npx vitest run src/files -u` writes the published file anew.
test('the published schema is what the code makes', async () => {
  await expect(layoutSchemaText()).toMatchFileSnapshot('../../schema/card.schema.json');
});

const validate = new Ajv2020({ strict: true, strictTypes: false, strictRequired: false }).compile(
  JSON.parse(layoutSchemaText()),
);

test('ajv accepts what is a layout', () => {
  for (const text of [plainLayout(), starterLayout({ units: 'in' }), starterLayout({ units: 'mm' })]) {
    expect(readLayoutFile(text)).toHaveProperty('layout');
    expect(validate(JSON.parse(text)), JSON.stringify(validate.errors)).toBe(true);
  }
});

const folders = ['examples', 'test/sets'];
test.each(
  folders.flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith('.card.json'))
      .map((name) => `${folder}/${name}`),
  ),
)('%s is a layout, and ajv accepts it', (path) => {
  const text = readFileSync(path, 'utf8');
  expect(readLayoutFile(text)).toHaveProperty('layout');
  expect(validate(JSON.parse(text)), JSON.stringify(validate.errors)).toBe(true);
});

test('ajv lets in the fields of other tools, and checks a paper whose id begins with x-', () => {
  const file = JSON.parse(plainLayout()) as {
    papers: Record<string, unknown>;
    parts: { place?: unknown }[];
  };
  file.papers['x-colours.of'] = { any: ['thing'] };
  file.parts[0]!.place = { 'x-hint': 1 };
  expect(validate(file), JSON.stringify(validate.errors)).toBe(true);
  file.papers['x-mas'] = { sheets: [{ size: ['1 in'], count: 1 }] };
  expect(validate(file)).toBe(false);
});

test.each(slips.filter((slip) => slip.structural))('ajv refuses, as we do: $name', ({ file }) => {
  expect(validate(JSON.parse(file))).toBe(false);
});
