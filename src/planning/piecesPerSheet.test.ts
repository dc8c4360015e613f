import { expect, test } from 'vitest';
import { chance } from '../cutting/testing/chance.ts';
import { everyProduction } from '../cutting/testing/everyCut.ts';
import { zero } from '../measure/index.ts';
import { trimmerWith } from '../trimming/testing/trimmers.ts';
import { piecesPerSheet } from './index.ts';
import { unit, units } from './testing/smallSet.ts';

const noMargin = { left: zero, right: zero, top: zero, bottom: zero };

test('no way of cutting gives more, and some way gives as many, when every cut is tried', () => {
  let several = 0;
  for (let seed = 1; seed <= 400; seed += 1) {
    const int = chance(seed);
    const some = (odds: number) => int(1, odds) === 1;
    const [width, height] = [int(1, 5), int(1, 5)];
    const sheet = { width: int(3, 13), height: int(3, 13) };
    const turns = some(2);
    const limits = {
      ...(some(3) ? { marks: 2 } : {}),
      ...(some(3) ? { longest: int(5, 11) } : {}),
      ...(some(3) ? { reach: int(2, 8) } : {}),
      ...(some(4) ? { narrowest: 2 } : {}),
    };
    const limited = some(2);
    const trimmer = limited
      ? trimmerWith(Object.fromEntries(Object.entries(limits).map(([name, count]) => [name, count * unit])))
      : null;
    // A margin that may not be cut off is another matter.
    const margin = limited ? 0 : int(0, 1);
    const { count, proved } = piecesPerSheet(
      { size: { width: units(width), height: units(height) }, turn: turns ? 'free' : 'locked' },
      {
        size: { width: units(sheet.width + margin), height: units(sheet.height) },
        margin: { ...noMargin, left: units(margin) },
      },
      trimmer,
    );
    const need = Math.floor((sheet.width * sheet.height) / (width * height));
    const { marks = null, longest = null, reach = null, narrowest = 0 } = limited ? limits : {};
    const most =
      need === 0 || Math.min(width, height) < narrowest
        ? 0
        : Math.max(
            ...everyProduction(
              [{ width, height, need, turns }],
              { step: marks, longest, reach },
              sheet,
            ).flat(),
          );
    expect({ count, proved }, `seed ${seed}`).toEqual({ count: most, proved: true });
    if (most > 1) several += 1;
  }
  expect(several).toBeGreaterThan(150);
});
