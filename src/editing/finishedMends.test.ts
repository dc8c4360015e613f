import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Json, JsonObject } from '../files/index.ts';
import { checkFinished, type DocketAsks } from '../finished/index.ts';
import { checkLayout } from '../layout/index.ts';
import { usualMarks } from '../planning/index.ts';
import type { Problem } from '../problem/index.ts';
import { editSentence } from '../words/index.ts';
import { finishedMendsOf } from './finishedMends.ts';
import type { InHand } from './inHand.ts';
import { edited, inHandOf } from './testing/handmade.ts';

/**
 * The mends that are offered for each problem of the finished cards, by its code. Each is made (and undone), and the card
 * worked out again must be free of that problem and have no error that it had not before.
 */
function offered(
  before: InHand,
  asks: Partial<DocketAsks> = {},
): readonly (readonly [string, ...string[]])[] {
  const held = { marks: usualMarks(before.layout), ...asks };
  const problems = checkFinished(before.layout, before.arrangement, held);
  return problems.map((problem) => {
    const mends = finishedMendsOf(before, problem, held);
    expect(mends.length).toBeLessThanOrEqual(3);
    const says = mends.map((edit) => {
      const after = edited(before, edit);
      const now = checkFinished(after.layout, after.arrangement, held);
      expect(now.map(tellingOf)).not.toContain(tellingOf(problem));
      const errors = (layouts: InHand, found: readonly Problem[]) =>
        [...checkLayout(layouts.layout, layouts.arrangement), ...found]
          .filter(({ severity }) => severity === 'error')
          .map(({ code, part }) => `${code} ${part ?? ''}`);
      expect(errors(before, problems)).toEqual(expect.arrayContaining(errors(after, now)));
      return editSentence(edit.told);
    });
    return [problem.code, ...says] as const;
  });
}

function tellingOf({ code, part, names }: Problem): string {
  return JSON.stringify([code, part, names.edge, names.against, names.beside, names.as]);
}

function card(parts: readonly JsonObject[], more: Readonly<Record<string, Json>> = {}): InHand {
  return inHandOf({
    cardwright: 1,
    units: 'mm',
    cards: 10,
    base: { size: ['148', '105'], fold: 'left', paper: 'plain' },
    papers: { plain: { gsm: 250, sheets: [{ size: ['305', '305'], count: null }] } },
    parts: parts.map((part) => ({ paper: 'plain', ...part })),
    ...more,
  });
}

describe('what mends the finished cards', () => {
  it('covers a tear by cutting what meets there larger or smaller', () => {
    const gumLeaves = new URL('../../test/sets/gum-leaves.card.json', import.meta.url);
    const before = inHandOf(JSON.parse(readFileSync(gumLeaves, 'utf8')) as JsonObject);
    const mends = offered(before, { wanted: 1 / 1000 });
    expect(mends.filter(([code]) => code.startsWith('tear')).length).toBeGreaterThan(0);
    expect(mends).toMatchInlineSnapshot(`
      [
        [
          "tearMeets",
          "Leaf: height 71 mm.",
          "Stripe: height 37 mm.",
        ],
      ]
    `);
  });

  it('lets a part come out from under several, or takes it off', () => {
    const half = (id: string, left: string) => ({ id, size: ['74', '105'], place: { left, top: '0' } });
    expect(
      offered(
        card([{ id: 'heart', shape: 'circle', diameter: '20' }, half('one', '0'), half('other', '74')]),
      ),
    ).toMatchInlineSnapshot(`
      [
        [
          "vanishes",
          "Heart: moved up the pile, above other.",
          "Heart: taken off the pile.",
        ],
      ]
    `);
  });

  it('brings a part back onto the card, and gives a thin join more to hold by', () => {
    const tag = { id: 'tag', size: ['40', '20'] };
    expect(offered(card([{ ...tag, place: { left: '160', top: '10' } }]))).toMatchInlineSnapshot(`
      [
        [
          "noJoin",
          "Tag: laid in the middle, from left to right.",
          "Tag: laid in the middle.",
        ],
      ]
    `);
    expect(offered(card([{ ...tag, place: { left: '146', top: '10' } }]))).toMatchInlineSnapshot(`
      [
        [
          "thinJoin",
          "Tag: laid in the middle, from left to right.",
          "Tag: laid in the middle.",
        ],
      ]
    `);
  });

  it('closes a sliver at an edge or between two parts', () => {
    expect(
      offered(card([{ id: 'mat', size: ['147.6', '105'], place: { left: '0.4' } }])),
    ).toMatchInlineSnapshot(`
      [
        [
          "sliver",
          "Mat: moved until it lies edge to edge on the left.",
        ],
      ]
    `);
    const panel = { id: 'panel', size: ['60', '80'], place: { left: '5' } };
    const strip = { id: 'strip', size: ['20', '80'], place: { rightOf: 'panel', gap: '0.5' } };
    expect(offered(card([panel, strip]))).toMatchInlineSnapshot(`
      [
        [
          "sliver",
          "Strip: moved until it lies beside panel, to the right of it.",
        ],
      ]
    `);
  });

  it('finds an envelope for the card, and keeps what was said of its paper', () => {
    const envelope = { name: 'small', size: ['150', '106'], gsm: 120, grams: 4 };
    const before = card([], { envelope });
    expect(offered(before)).toMatchInlineSnapshot(`
      [
        [
          "envelopeTight",
          "The set: put in the envelope C6, 162 mm wide and 114 mm high.",
          "The set: put in the envelope 151 mm wide and 108 mm high.",
        ],
      ]
    `);
  });

  it('brings the set into a smaller class of the post', () => {
    const foam = (id: string, left: string) => ({
      id,
      size: ['30', '30'],
      place: { left, top: '10' },
      adhere: 'raised',
      foam: '5 mm',
    });
    const envelope = { name: 'C6', size: ['162', '114'] };
    expect(offered(card([foam('star', '10')], { envelope, post: 'de' }))).toMatchInlineSnapshot(`
      [
        [
          "postedHigher",
          "The set: foam 1 mm thick.",
          "The set: everything glued flat, without foam.",
        ],
      ]
    `);
    expect(
      offered(card([foam('star', '10'), foam('moon', '60')], { envelope, post: 'uk' })),
    ).toMatchInlineSnapshot(`
      [
        [
          "postedHigher",
          "The set: foam 1 mm thick.",
          "The set: everything glued flat, without foam.",
        ],
      ]
    `);
  });

  it('gives the panels within a base the room that what lies there takes', () => {
    const base = { size: ['148', '105'], fold: 'trifold', allowance: '0.5 mm', paper: 'plain' };
    const lining = { id: 'lining', on: 'inside', inset: '5', adhere: 'raised' };
    expect(offered(card([lining], { base }))).toMatchInlineSnapshot(`
      [
        [
          "allowanceTight",
          "The base: its panels within narrower by 3 mm.",
        ],
      ]
    `);
  });

  it('offers nothing where only another card would do', () => {
    const heavy = { id: 'tile', size: ['140', '100'], paper: null, grams: 2000 };
    expect(offered(card([heavy], { post: 'de' }))).toMatchInlineSnapshot(`
      [
        [
          "notPosted",
        ],
      ]
    `);
  });
});
