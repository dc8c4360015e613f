import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lengthOfTicks, millimetres } from '../measure/index.ts';
import { bandLength, bandOverlap } from './bellyBand.ts';
import { simulatedFolds } from './testing/foldSimulator.ts';
import { creasesOfLoops, facetsOfLoops, lengthOfLoops, overlapOfLoops, sizeOfLoops } from './woundLoops.ts';

const randomLoops = fc
  .record({
    width: fc.integer({ min: 100, max: 50_000 }),
    template: fc.integer({ min: 100, max: 100_000 }),
    loops: fc.integer({ min: 1, max: 7 }),
    overlap: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .map(({ width, template, loops, overlap }) => ({
    width: lengthOfTicks(width),
    template: lengthOfTicks(template),
    loops,
    overlap: lengthOfTicks(Math.floor(template * overlap)),
  }));

describe('loops', () => {
  it('take twice the template each, and the overlap: two of 30 mm with 10 over take 130', () => {
    const bow = { width: millimetres(20), template: millimetres(30), loops: 2, overlap: millimetres(10) };
    expect(lengthOfLoops(bow)).toBe(millimetres(130));
    expect(overlapOfLoops(bow, millimetres(130))).toBe(millimetres(10));
    expect(sizeOfLoops(bow)).toEqual({ width: millimetres(60), height: millimetres(20) });
    expect(creasesOfLoops(bow)).toEqual([millimetres(30), millimetres(90)]);
  });

  it('are creased in the middle of nothing: one loop closes in the middle of its back', () => {
    const one = { width: millimetres(20), template: millimetres(30), loops: 1, overlap: millimetres(10) };
    expect(creasesOfLoops(one)).toEqual([millimetres(20), millimetres(50)]);
    expect(sizeOfLoops(one)).toEqual({ width: millimetres(30), height: millimetres(20) });
  });

  it('fill their box as often as there are loops, twice, when a strip is folded at their creases', () => {
    fc.assert(
      fc.property(randomLoops, (loops) => {
        const creases = creasesOfLoops(loops);
        const length = lengthOfLoops(loops);
        const simulated = simulatedFolds(
          { width: loops.width, length },
          creases.map((at, index) => ({ at, degrees: 90, goes: index % 2 === 0 ? 'over' : 'under' })),
        );
        const xs = simulated.flatMap(({ polygon }) => polygon.map(([x]) => x));
        const { width } = sizeOfLoops(loops);
        expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(
          loops.loops === 1 ? width : Math.max(width, length - creases.at(-1)!),
          3,
        );
        const facets = facetsOfLoops(loops)!;
        expect(facets.map(({ turned }) => turned)).toEqual(simulated.map(({ turned }) => !turned));
        const shift = Math.min(...xs);
        for (const [index, { corners }] of facets.entries()) {
          const own = corners.map(({ x }) => x).toSorted((a, b) => a - b);
          const other = simulated[index]!.polygon.map(([x]) => x - shift).toSorted((a, b) => a - b);
          for (const [place, x] of own.entries()) expect(x).toBeCloseTo(other[place]!, 3);
        }
      }),
    );
  });

  it('cannot overlap by more than a template', () => {
    const loops = { width: millimetres(20), template: millimetres(30), loops: 2, overlap: millimetres(31) };
    expect(facetsOfLoops(loops)).toBeNull();
  });
});

describe('a belly band', () => {
  it('goes twice across, twice through the thickness, and over itself', () => {
    const round = { across: millimetres(135), thickness: millimetres(1.5) };
    expect(bandLength(round, millimetres(10))).toBe(millimetres(283));
    expect(bandOverlap(round, millimetres(283))).toBe(millimetres(10));
    expect(bandOverlap(round, millimetres(270))).toBe(millimetres(-3));
  });
});
