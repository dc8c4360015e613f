import { describe, expect, test } from 'vitest';
import { checkFinished, foldingOf } from '../finished/index.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { inch, layoutOf, mm, paper, part, type Sketch } from '../layout/testing/build.ts';
import { finishedProblemSentence } from './finishedProblem.ts';
import { foldingSentences } from './foldSentence.ts';
import { foldWord, panelWord } from './foldWords.ts';
import { scoringWords } from './scoring.ts';

const oat = (gsm: number, width = '8 1/2') => ({
  ...paper('oat', [{ size: { width: inch(width), height: inch('11') } }]),
  name: 'Oat',
  gsm,
});
const set = (sketch: Partial<Sketch>, gsm = 270): Layout =>
  layoutOf({ base: [inch('4 1/4'), inch('5 1/2')], basePapers: ['oat'], papers: [oat(gsm)], ...sketch });
const showing = { units: 'in', glyphs: 'typed' } as const;
const scored = (layout: Layout) => scoringWords(layout, 8, showing)?.says;
const folded = (layout: Layout) => foldingSentences(foldingOf(layout, arrange(layout)), layout, showing);

describe('scoring', () => {
  test('of a side fold', () => {
    expect(scored(set({}))).toBe(
      'Lay each of the 8 bases open, 8 1/2 x 5 1/2 in, and score from edge to edge 4 1/4 in from the left edge, the middle. The tool raises a ridge on the other side of the paper: fold toward it, the ridge inside. Fold along the score, and press the fold down with a bone folder.',
    );
    expect(scoringWords(set({}), 1, showing)?.says).toMatch(
      /^Lay the base open, 8 1\/2 x 5 1\/2 in, and score/,
    );
  });

  test('of a gate: two valleys, the same from either side', () => {
    expect(scored(set({ fold: 'gate' }))).toBe(
      'Lay each of the 8 bases open, 8 1/2 x 5 1/2 in, the inside up, and score from edge to edge, measured from the left edge, at 2 1/8 in and 6 3/8 in. All of them are valleys: the inside is folded together there. The tool raises a ridge on the other side of the paper: fold toward it, the ridge inside. So score valleys with the base turned over like a page. Fold both doors in until they meet in the middle of the front, and press each fold down with a bone folder.',
    );
  });

  test('of a shutter: valleys and mountains', () => {
    const says = scored(set({ base: [inch('3 1/2'), inch('5 1/2')], fold: 'shutter' }));
    expect(says).toContain(
      'at 1 3/4 in (a mountain), 3 1/2 in (a valley), 7 in (a valley) and 8 3/4 in (a mountain).',
    );
    expect(says).toContain('score valleys with the base turned over like a page, mountains as it lies.');
  });

  test('of a trifold is measured from the other side once the base is turned over, and upwards is not', () => {
    const base = [inch('3 11/16'), inch('5 1/2')] as const;
    expect(scored(set({ base, fold: 'trifold' }))).toContain(
      'turned over like a page and measured from the right edge then.',
    );
    expect(scored(set({ base, fold: 'trifold', opens: 'upwards' }))).toContain('turned over like a page.');
    expect(scored(set({ base, fold: 'trifold', opens: 'upwards' }))).toContain('measured from the top edge');
  });

  test('is left out in thin paper, and done twice in board', () => {
    expect(scored(set({}, 80))).toContain(
      'Oat may also be folded with no score: no printed rule asks for one in so thin a paper.',
    );
    // About 0.0057 in: over 0.005 in, but under 0.006 in and 150 g/m².
    expect(scored(set({}, 116))).toContain(
      'Printed rules disagree whether Oat needs a score; scored, it folds cleanly.',
    );
    expect(scored(set({}, 400))).toContain(
      'Oat is thick: score twice for each fold, 0.02 in apart, half of that on either side of the measure (common practice).',
    );
  });

  test('of a flat card there is none', () => {
    expect(scored(set({ fold: 'none' }))).toBeUndefined();
    expect(folded(set({ fold: 'none' }))).toEqual([]);
  });
});

describe('the docket of a fold', () => {
  test('of a letter folded in three, and of sheets folded as they are', () => {
    // Thirds of 11 in close, of 8 1/2 in 1/32 in is left over (five commercial printers).
    expect(folded(set({ base: [inch('3 11/16'), inch('5 1/2')], fold: 'trifold' }))).toEqual([
      'Trifold: the base opens to 11 x 5 1/2 in, and closed it is three layers of paper.',
      'Its panels from the left, the inside up: front 3 11/16 in, middle 3 11/16 in and flap 3 5/8 in; scored at 3 11/16 in and 7 3/8 in, all of them valleys.',
      'What lies within is 1/16 in narrower, as is usual. Printed figures go from 1/32 in for thin paper to 1/8 in for cover.',
      'Between the front and what it closes over lie about 0.013 in at the thickest; the edge of the front stays back by about as much.',
      'The grain should run from top to bottom, along the folds.',
      'Oat, about 0.013 in thick: every printed rule asks for a score.',
      "A sheet of Oat 8 1/2 in long, folded as it is, makes a front of 2 27/32 in by the printers' rule: panels of 2 27/32, 2 27/32 and 2 25/32 in, which leaves 1/32 in: cut that off first.",
      "A sheet of Oat 11 in long, folded as it is, makes a front of 3 11/16 in by the printers' rule: panels of 3 11/16, 3 11/16 and 3 5/8 in, which is all of it.",
    ]);
  });

  test('in millimetres tells 2 mm as usual, and no rule of inches', () => {
    const layout = set({ units: 'mm', base: [mm(99), mm(210)], fold: 'trifold' });
    const says = foldingSentences(foldingOf(layout, arrange(layout)), layout, {
      units: 'mm',
      glyphs: 'typed',
    });
    expect(says.join(' ')).toContain('opens to 295 x 210 mm');
    expect(says.join(' ')).toContain('2 mm narrower, as is usual');
    expect(says.join(' ')).not.toContain("printers' rule");
  });
});

test('what is thicker than its allowance is cautioned', () => {
  const tight = (allowance: string, foam: boolean) => {
    const layout = set({
      fold: 'trifold',
      allowance: inch(allowance),
      basePapers: [],
      parts: foam
        ? [part('tag', { on: 'inside', size: [inch('1'), inch('1')], adhere: 'raised', foam: inch('1/16') })]
        : [],
    });
    const marks = inch('1/16');
    return checkFinished(layout, arrange(layout), { marks })
      .filter(({ code }) => code === 'allowanceTight')
      .map((problem) => finishedProblemSentence(problem, layout, showing));
  };
  expect(tight('1/16', false)).toEqual([]);
  // A flap and a tag of usual cardstock, 0.28 mm each, on 1/16 in of foam: 0.0845 in.
  expect(tight('1/16', true)).toEqual([
    'What lies within the base is about 0.085 in thick, but its panels there are only 1/16 in narrower: they stand against the fold, and the front does not close over them. Give it an allowance of more than that, or lay less on the inside.',
  ]);
  expect(tight('1/8', true)).toEqual([]);
});

test('words of folds and panels', () => {
  expect(foldWord({ fold: 'gate', opens: 'upwards' })).toBe('gate fold, opening upwards');
  expect(panelWord({ fold: 'gate', opens: 'upwards' }, 0)).toBe('top door');
  expect(panelWord({ fold: 'shutter', opens: 'sideways' }, 4)).toBe('outer half of the right door');
});
