import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inch, mm } from '../layout/testing/build.ts';
import { type Length, lengthOfTicks, sum } from '../measure/index.ts';
import { filledRow, onMark, type RowTerm } from './filledRow.ts';

const border = (length: Length): RowTerm => ({ kind: 'border', length, part: null, fixed: null });
const gap = (length: Length): RowTerm => ({ kind: 'gap', length, part: null, fixed: null });
const size = (part: string, length: Length, fixed: Length | null = null): RowTerm => ({
  kind: 'size',
  length,
  part,
  fixed,
});

describe('a row that fills another length', () => {
  it('shares what round borders and gaps leave: 1/8 + 3 + 1/4 + 1 3/4 + 1/8 in on 133 mm', () => {
    const terms = [
      border(inch('1/8')),
      size('upper', inch('3')),
      gap(inch('1/4')),
      size('lower', inch('1 3/4')),
      border(inch('1/8')),
    ];
    expect(filledRow({ terms, total: mm(133), marks: mm(1) })).toEqual([mm(3), mm(76), mm(6), mm(45), mm(3)]);
  });

  it('keeps sizes alike that were alike, and lets the gap take the odd mark', () => {
    const terms = [border(mm(3)), size('a', mm(40)), gap(mm(6)), size('b', mm(40)), border(mm(3))];
    expect(filledRow({ terms, total: mm(93), marks: mm(1) })).toEqual([mm(3), mm(40), mm(7), mm(40), mm(3)]);
  });

  it('gives pieces of one part one size, and the gaps what does not divide', () => {
    const squares = [0, 1, 2].flatMap((k) => [...(k === 0 ? [] : [gap(mm(4))]), size('square', mm(20))]);
    const row = filledRow({
      terms: [border(mm(4)), ...squares, border(mm(4))],
      total: mm(77),
      marks: mm(1),
    })!;
    expect(row[1]).toBe(row[3]);
    expect(row[1]).toBe(row[5]);
    expect([row[0], row[2]]).toEqual([row[6], row[4]]);
    expect(sum(...row)).toBe(mm(77));
  });

  it('leaves a size that is settled alone, and borders take the rest evenly', () => {
    const terms = [border(mm(5)), size('die', mm(50), mm(50)), border(mm(5))];
    expect(filledRow({ terms, total: mm(63), marks: mm(1) })).toEqual([mm(6.5), mm(50), mm(6.5)]);
  });

  it('is none where borders and gaps leave nothing', () => {
    const terms = [border(mm(5)), size('a', mm(50)), border(mm(5))];
    expect(filledRow({ terms, total: mm(6), marks: mm(1) })).toBeNull();
  });
});

it('rounds a border to a mark but never to nothing, and what is nothing to nothing', () => {
  expect([mm(2.4), mm(0.3), mm(0), mm(-0.3)].map((length) => onMark(length, mm(1)))).toEqual([
    mm(2),
    mm(1),
    mm(0),
    mm(-1),
  ]);
});

describe('any row', () => {
  const marks = mm(1);
  const whole = (least: number, most: number) => fc.integer({ min: least, max: most });
  const cases = fc.record({
    border: fc.integer({ min: 1_000, max: 9_000 }).map(lengthOfTicks),
    gap: fc.integer({ min: 1_000, max: 12_000 }).map(lengthOfTicks),
    sizes: fc.array(fc.record({ part: fc.nat(3), length: fc.integer({ min: 160, max: 900 }) }), {
      minLength: 1,
      maxLength: 4,
    }),
    more: whole(-8, 12),
  });

  it('adds up to the tick, on marks, with even borders and gaps, and no other whole marks are nearer', () => {
    fc.assert(
      fc.property(cases, ({ border: outer, gap: inner, sizes, more }) => {
        const first = new Map(
          sizes.toReversed().map(({ part, length }) => [part, lengthOfTicks(length * 100)]),
        );
        const terms = [
          border(outer),
          ...sizes.flatMap(({ part }, index) => [
            ...(index === 0 ? [] : [gap(inner)]),
            size(`p${part}`, first.get(part)!),
          ]),
          border(outer),
        ];
        const were = sum(...terms.map(({ length }) => length));
        const total = lengthOfTicks((Math.round(were / marks) + more) * marks);
        const row = filledRow({ terms, total, marks })!;
        expect(sum(...row)).toBe(total);
        expect(row.every((length) => length > 0 && length % marks === 0)).toBe(true);
        expect(row[0]).toBe(row.at(-1));
        expect(new Set(row.filter((_, index) => terms[index]!.kind === 'gap')).size).toBeLessThanOrEqual(1);
        for (const part of first.keys())
          expect(
            new Set(row.filter((_, index) => terms[index]!.part === `p${part}`)).size,
          ).toBeLessThanOrEqual(1);

        // Every choice of whole marks near it, borders and gaps as they were rounded: none shows less.
        const [b, g] = [onMark(outer, marks) / marks, onMark(inner, marks) / marks];
        if (row[0] !== b * marks || (sizes.length > 1 && row[2] !== g * marks)) return;
        const parts = [...first.keys()];
        if (new Set(first.values()).size < parts.length) return;
        const counts = parts.map((part) => sizes.filter((one) => one.part === part).length);
        const room = total / marks - 2 * b - (sizes.length - 1) * g;
        const weight = parts.reduce((all, part, index) => all + counts[index]! * first.get(part)!, 0);
        const shownOf = (choice: readonly number[]) =>
          choice.reduce((all, mark, index) => {
            const ideal = (room * first.get(parts[index]!)!) / weight;
            return all + (counts[index]! * (mark - ideal) ** 2) / ideal;
          }, 0);
        const taken = parts.map((part) => row[terms.findIndex((term) => term.part === `p${part}`)]! / marks);
        for (const choice of choicesAround(taken)) {
          if (choice.reduce((all, mark, index) => all + mark * counts[index]!, 0) !== room) continue;
          expect(shownOf(taken)).toBeLessThanOrEqual(shownOf(choice) + 1e-9);
        }
      }),
      { numRuns: 400 },
    );
  });

  function choicesAround(taken: readonly number[]): readonly (readonly number[])[] {
    return taken.reduce<readonly (readonly number[])[]>(
      (ways, mark) => ways.flatMap((way) => [-3, -2, -1, 0, 1, 2, 3].map((by) => [...way, mark + by])),
      [[]],
    );
  }
});
