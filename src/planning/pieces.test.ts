import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrange } from '../layout/index.ts';
import { layoutOf, paper, part } from '../layout/testing/build.ts';
import { inches, type Size } from '../measure/index.ts';
import { dealt, piecesOf } from './index.ts';

const letter: Size = { width: inches(17, 2), height: inches(11) };
const twelve: Size = { width: inches(12), height: inches(12) };

function pieces(...args: Parameters<typeof layoutOf>) {
  const layout = layoutOf(...args);
  return piecesOf(layout, arrange(layout));
}

describe('dealing papers over cards', () => {
  it('agrees with handing them out one by one', () => {
    fc.assert(
      fc.property(fc.nat(500), fc.integer({ min: 1, max: 9 }), (count, papers) => {
        const hands = Array.from({ length: papers }, () => 0);
        for (let card = 0; card < count; card += 1) hands[card % papers]! += 1;
        expect(dealt(count, papers)).toEqual(hands);
      }),
    );
  });

  it('starts the spares at the first paper of the list again', () => {
    const [meadow, bark] = pieces({
      cards: 7,
      base: [inches(4), inches(5)],
      papers: [paper('meadow', [{ size: twelve }]), paper('bark', [{ size: twelve }])],
      parts: [part('panel', { size: [inches(2), inches(3)], papers: ['meadow', 'bark'], spare: 1 })],
    });
    // Cards 1, 3, 5, 7 and the spare; cards 2, 4, 6.
    expect(meadow).toMatchObject({ id: 'panel/meadow', need: 5, spare: 1 });
    expect(bark).toMatchObject({ id: 'panel/bark', need: 3, spare: 0 });
  });

  it('deals a paper that is listed twice twice as often', () => {
    const found = pieces({
      cards: 9,
      base: [inches(4), inches(5)],
      papers: [paper('meadow', [{ size: twelve }]), paper('bark', [{ size: twelve }])],
      parts: [part('panel', { size: [inches(2), inches(3)], papers: ['meadow', 'bark', 'meadow'] })],
    });
    expect(found.map(({ id, need }) => [id, need])).toEqual([
      ['panel/meadow', 6],
      ['panel/bark', 3],
    ]);
  });

  it('leaves out a paper that no card comes to, and what is bought', () => {
    const found = pieces({
      cards: 1,
      base: [inches(4), inches(5)],
      papers: [paper('meadow', [{ size: twelve }]), paper('bark', [{ size: twelve }])],
      parts: [
        part('panel', { size: [inches(2), inches(3)], papers: ['meadow', 'bark'] }),
        part('button', { diameter: inches(1) }),
      ],
    });
    expect(found.map(({ id }) => id)).toEqual(['panel/meadow']);
  });
});

describe('what is cut', () => {
  it('opens the base: doubled across for a side fold, down for a top fold', () => {
    const base = [inches(17, 4), inches(11, 2)] as const;
    const of = (fold: 'left' | 'top' | 'none') =>
      pieces({
        cards: 10,
        base,
        fold,
        basePapers: ['ivory'],
        papers: [paper('ivory', [{ size: letter }])],
      })[0];
    expect(of('left')).toMatchObject({ id: 'base/ivory', part: 'base', need: 10, turn: 'free' });
    expect(of('left')?.size).toEqual({ width: inches(17, 2), height: inches(11, 2) });
    expect(of('top')?.size).toEqual({ width: inches(17, 4), height: inches(11) });
    expect(of('none')?.size).toEqual({ width: inches(17, 4), height: inches(11, 2) });
  });

  it('adds what is torn, counts the pieces of a card, exchanges the sizes of what lies sideways', () => {
    const [strip] = pieces({
      cards: 10,
      base: [inches(4), inches(5)],
      papers: [paper('bark', [{ size: twelve }], 'two-way')],
      parts: [
        part('strip', {
          size: [inches(3), null],
          place: [
            { top: inches(1), bottom: inches(3) },
            { top: inches(3), bottom: inches(1) },
          ],
          torn: { top: inches(1, 4) },
          papers: ['bark'],
          lies: 'sideways',
        }),
      ],
    });
    expect(strip).toMatchObject({ need: 20, turn: 'locked' });
    expect(strip?.size).toEqual({ width: inches(5, 4), height: inches(3) });
  });

  it('locks what has a direction on the side that is seen, unless told otherwise', () => {
    const doubleSided = {
      ...paper('bark', [{ size: twelve }], 'one-way'),
      back: { name: 'Checks', up: 'any' as const, colour: null },
    };
    const turnOf = (sketch: Parameters<typeof part>[1]) =>
      pieces({
        base: [inches(4), inches(5)],
        papers: [doubleSided],
        parts: [part('panel', { size: [inches(2), inches(3)], papers: ['bark'], ...sketch })],
      })[0]?.turn;
    expect(turnOf({})).toBe('locked');
    expect(turnOf({ side: 'back' })).toBe('free');
    expect(turnOf({ turn: 'free' })).toBe('free');
    expect(turnOf({ side: 'back', turn: 'locked' })).toBe('locked');
  });
});
