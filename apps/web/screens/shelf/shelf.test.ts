import { describe, expect, it } from 'vitest';
import { settingOf } from '../../../../src/editing/index.ts';
import { arrange } from '../../../../src/layout/index.ts';
import type { DocumentRecord } from '../../storage/database.ts';
import { inOrder } from './catalogue.tsx';
import { draftOf, heightEdit } from './newSet.ts';

const record = (id: string, besides: string | null = null): DocumentRecord => ({
  id,
  revision: 0,
  title: id,
  besides,
  binned: null,
  copied: null,
});

describe('the order of the shelf', () => {
  const order = (documents: readonly DocumentRecord[]) =>
    inOrder(documents).map(({ document, below }) => (below ? `- ${document.id}` : document.id));

  it('has second versions below what they are one of', () => {
    expect(
      order([record('a'), record('b', 'd'), record('c', 'b'), record('d'), record('e', 'gone')]),
    ).toEqual(['a', 'd', '- b', '- c', 'e']);
  });

  it('has everything once, whatever a file says of them', () => {
    expect(order([record('a', 'b'), record('b', 'a'), record('c', 'c')])).toEqual(['c', 'a', '- b']);
  });
});

describe('a new set', () => {
  it('comes out even in any usual size, in inches and millimetres', () => {
    const sizes = [
      ['in', '5 1/2 in'],
      ['in', '4 1/4 in'],
      ['in', '3'],
      ['in', '8 1/2 in'],
      ['mm', '148 mm'],
      ['mm', '105'],
      ['mm', '75 mm'],
    ] as const;
    for (const [units, height] of sizes) {
      const draft = draftOf(units, 'Moths', 7);
      expect(draft.make(heightEdit(draft.getState().history.file, height, units))).toBeNull();
      const { layout } = draft.getState().history;
      expect(layout).toMatchObject({ title: 'Moths', cards: 7, units });
      expect(arrange(layout).problems).toEqual([]);
      for (const { cut } of arrange(layout).parts) expect(cut!.height).toBeGreaterThan(0);
    }
  });

  it('may be flat or folded at the top', () => {
    const draft = draftOf('in', 'Moths', 7);
    for (const fold of ['none', 'top', 'left'])
      expect(draft.make(settingOf(draft.getState().history.file, ['base', 'fold'], fold))).toBeNull();
  });
});
