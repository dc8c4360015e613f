import { describe, expect, it } from 'vitest';
import type { Json, JsonObject } from '../../../src/files/index.ts';
import { standardsKeptIn, usualStandards } from './standards.ts';

const counter: JsonObject = {
  cardwright_post: 1,
  units: 'mm',
  country: 'Fernland',
  asOf: '2026-11',
  source: 'invented',
  classes: [{ name: 'letter', grams: { most: 20 } }, { name: 'thick letter' }],
};

function place(kept: Record<string, Json> = {}) {
  return {
    kept,
    preference: (name: string) => Promise.resolve(kept[name]),
    prefer: (name: string, value: Json) => {
      kept[name] = value;
      return Promise.resolve();
    },
  };
}

describe('what a person holds her cards to', () => {
  it('is one set in twenty and the posts that are known, until she says otherwise', async () => {
    const standards = standardsKeptIn(place());
    await standards.known;
    expect(standards.getState()).toEqual({ oneSetIn: 20, post: null });
  });

  it('is found again by the next page', async () => {
    const shelf = place();
    const standards = standardsKeptIn(shelf);
    await standards.known;
    standards.putUpWith(200);
    expect(standards.goBy(counter)).toBeNull();
    const next = standardsKeptIn(shelf);
    await next.known;
    expect(next.getState()).toMatchObject({
      oneSetIn: 200,
      post: {
        file: counter,
        table: { country: 'Fernland', classes: [{ name: 'letter' }, { name: 'thick letter' }] },
      },
    });
    next.goByKnownPosts();
    const last = standardsKeptIn(shelf);
    await last.known;
    expect(last.getState()).toEqual({ oneSetIn: 200, post: null });
  });

  it('stays as it is where a post file is refused', async () => {
    const standards = standardsKeptIn(place());
    await standards.known;
    standards.goBy(counter);
    const before = standards.getState();
    expect(standards.goBy({ ...counter, classes: [] })).toMatchObject([{ where: 'classes' }]);
    expect(standards.getState()).toBe(before);
  });

  it.each([
    { oneSetIn: 1 },
    { oneSetIn: 'often' },
    { oneSetIn: 20.5 },
    { post: 'mine' },
    { post: { classes: 3 } },
  ])('is the usual where what was kept is nothing that is known: %j', async (kept) => {
    const standards = standardsKeptIn(place(kept));
    await standards.known;
    expect(standards.getState()).toEqual(usualStandards);
  });
});
