import { describe, expect, test } from 'vitest';
import { type JsonObject, readSavedLayout, type SavedLayout } from '../files/index.ts';
import { fileProblemSentence } from '../words/index.ts';
import { changed } from './change.ts';
import { weightSet } from './paperWeight.ts';

const file = (paper: JsonObject): SavedLayout => ({
  cardwright: 1,
  units: 'in',
  cards: 1,
  base: { size: ['4 in', '5 in'], fold: 'left', paper: 'sand' },
  papers: { sand: { ...paper, sheets: [{ size: ['8 1/2 in', '11 in'], count: null }] } },
  parts: [],
});

/** The paper as the file then has it, or what is wrong with the file. */
function typed(text: string | undefined, paper: JsonObject = {}) {
  const before = file(paper);
  const edit = weightSet(before, 'sand', text);
  const { file: after } = changed(before, edit.changes);
  const read = readSavedLayout(after);
  if ('problems' in read) return read.problems.map(fileProblemSentence);
  const { sheets: _, ...rest } = (after.papers as Record<string, JsonObject>).sand!;
  return { ...rest, is: Math.round(read.layout.papers.get('sand')!.gsm ?? 0) };
}

describe('the weight of a paper is typed', () => {
  test('in grams per square metre, with or without saying so', () => {
    expect(typed('216')).toEqual({ gsm: 216, is: 216 });
    expect(typed('162,5 g/m²')).toEqual({ gsm: 162.5, is: 163 });
    expect(typed('216 gsm', { lb: { pounds: 65, of: 'cover' } })).toEqual({ gsm: 216, is: 216 });
  });

  // 80 lb cover is 216 g/m² and 110 lb index 199 g/m² in the equivalence tables of two printers' manuals.
  test('in pounds of a kind, which take the place of the grams', () => {
    expect(typed('80 lb cover', { gsm: 100 })).toEqual({ lb: { pounds: 80, of: 'cover' }, is: 216 });
    expect(typed('110lb Index')).toEqual({ lb: { pounds: 110, of: 'index' }, is: 199 });
    expect(typed('60# offset')).toEqual({ lb: { pounds: 60, of: 'text' }, is: 89 });
  });

  test('not at all, whichever stood there', () => {
    expect(typed(undefined, { gsm: 100 })).toEqual({ is: 0 });
    expect(typed(undefined, { lb: { pounds: 80, of: 'cover' } })).toEqual({ is: 0 });
  });

  test('pounds without their kind are refused with the reason, and so is what is no weight', () => {
    expect(typed('110 lb')).toEqual([expect.stringContaining('110 lb index is lighter than 80 lb cover')]);
    expect(typed('80 lb card')).toEqual([expect.stringContaining('holds "card"; it may hold "bond"')]);
    expect(typed('heavy')).toEqual([expect.stringContaining('holds "heavy"; it may hold a number')]);
  });
});
