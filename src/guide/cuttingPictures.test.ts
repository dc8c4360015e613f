import { expect, test } from 'vitest';
import { type Mark, toneOn } from '../drawing/index.ts';
import { plainTypeface } from '../drawing/testing/plainTypeface.ts';
import { cuttingPictures } from './cuttingPictures.ts';
import { planned, restfulTrimmer, tideSet } from './testing/sets.ts';

const set = await planned(tideSet(), restfulTrimmer);
const layout = {
  ...set.layout,
  papers: new Map([...set.layout.papers].map(([id, paper]) => [id, { ...paper, colour: '#c9d2a5' }])),
};
const matter = {
  ...set,
  layout,
  stakes: [],
  showing: { units: 'in', glyphs: 'printed' },
  typeface: plainTypeface,
} as const;
const room = { widthPt: 240, heightPt: 160 };

test('every step of the plan has its picture, with the paper it is cut from', () => {
  const steps = [...layout.papers.values()].flatMap((paper) =>
    cuttingPictures(matter, paper, room).map(({ words, says }) => {
      expect(words.paper).toBe(paper.id);
      expect(says).toContain(`step ${words.step}`);
      return words.step;
    }),
  );
  expect(steps.sort((a, b) => a - b)).toEqual(set.plan.steps.map(({ step }) => step));
});

test('in colour the papers wear their own, and nothing else changes', () => {
  for (const paper of layout.papers.values()) {
    const printed = cuttingPictures(matter, paper, room);
    const coloured = cuttingPictures({ ...matter, manner: 'coloured' }, paper, room);
    expect(printed.length).toBeGreaterThan(0);
    const hatched = printed.map(({ draw }) => {
      const picture = draw();
      const work = { ...picture.work, marks: picture.work.marks.map(recoloured) };
      return { ...picture, marks: picture.marks.map(recoloured), work };
    });
    expect(coloured.map(({ draw }) => draw())).toEqual(hatched);
  }
});

function recoloured(mark: Mark): Mark {
  if (mark.kind !== 'path' || mark.fill === undefined || !('hatch' in mark.fill)) return mark;
  return { ...mark, fill: { hatch: { ...mark.fill.hatch, ground: '#c9d2a5', ink: toneOn('#c9d2a5') } } };
}
