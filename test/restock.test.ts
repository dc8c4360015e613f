import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { cardwright, scratchFolder } from './commandLine.ts';

const folder = scratchFolder();
afterAll(folder.remove);

/** Two mats of 4 x 5 come of a sheet of 8 x 8 in, which leaves 8 x 3 in, and two tags take 3 x 3 of that. */
const plumTags = {
  cardwright: 1,
  title: 'Plum tags',
  units: 'in',
  cards: 2,
  base: { size: ['4 1/4', '5 1/2'], fold: 'none', paper: null },
  papers: { plum: { name: 'Plum', up: 'two-way', sheets: [{ size: ['8', '8'], count: 3 }] } },
  extras: [{ name: 'Gift tag', size: ['1 1/2', '3'], count: 2 }],
  parts: [{ id: 'mat', size: ['4', '5'], paper: 'plum' }],
};

interface Written {
  readonly papers: Readonly<Record<string, { readonly sheets: readonly unknown[] }>>;
}

function file(name: string, content: unknown): string {
  const path = folder.path(name);
  writeFileSync(path, JSON.stringify(content));
  return path;
}

describe('restock', () => {
  it('writes the layout with the used sheets out and the leftovers in', async () => {
    const to = folder.path('next.card.json');
    const { status, out } = await cardwright(['restock', file('tags.card.json', plumTags), '-o', to]);
    expect(status).toBe(0);
    expect(out).toContain('Gift tag: two, from what is left of Plum (8 x 3 in).');
    expect(out).toContain('Back into the stash: one scrap of Plum, 5 x 3 in.');
    expect((JSON.parse(readFileSync(to, 'utf8')) as Written).papers.plum!.sheets).toEqual([
      { size: ['8', '8'], count: 2 },
      { size: ['5 in', '3 in'], count: 1, scrap: true },
    ]);
  });

  it('puts the leftovers alone to another layout, and names papers that it has not', async () => {
    const to = folder.path('other-next.card.json');
    const other = { ...plumTags, cards: 1, extras: [], title: 'Other' };
    const into = file('other.card.json', other);
    const moss = { ...other, papers: { moss: other.papers.plum }, parts: [] };
    const tags = file('tags.card.json', plumTags);
    await cardwright(['restock', tags, '--into', into, '-o', to]);
    const written = JSON.parse(readFileSync(to, 'utf8')) as Written & { readonly title: string };
    expect(written.title).toBe('Other');
    expect(written.papers.plum!.sheets).toEqual([
      { size: ['8', '8'], count: 3 },
      { size: ['5 in', '3 in'], count: 1, scrap: true },
    ]);
    const { out } = await cardwright(['restock', tags, '--into', file('moss.card.json', moss), '-o', to]);
    expect(out).toContain('The other layout has no paper with the id of Plum (plum)');
  });

  it('writes nothing where the papers are short', async () => {
    const short = { ...plumTags, cards: 99 };
    const to = folder.path('never.card.json');
    const { status, out } = await cardwright(['restock', file('short.card.json', short), '-o', to]);
    expect([status, out]).toEqual([1, '']);
    expect(() => readFileSync(to)).toThrow();
  });
});
