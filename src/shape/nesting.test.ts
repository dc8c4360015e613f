import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inches, type Length, lengthOfTicks, zero } from '../measure/index.ts';
import {
  areaOf,
  boundsOf,
  boxRegion,
  evenOddRegion,
  isEmpty,
  movedTo,
  type Nested,
  type NestRequest,
  nested,
  ovalOutline,
  type QuarterTurns,
  type Region,
  regionOf,
  turnedRegion,
  withMargin,
} from './index.ts';
import { anyOutline } from './testing/randomShape.ts';
import { secondEngine } from './testing/secondEngine.ts';

const anyTurn: readonly QuarterTurns[] = [0, 1, 2, 3];
const inch = inches(1);

function request(region: Region, others: Partial<NestRequest> = {}): NestRequest {
  const bed = { width: inches(12), height: inches(12) };
  return { region, margin: zero, bed, turns: anyTurn, most: 1_000, marks: null, ...others };
}

function box(width: Length, height: Length): Region {
  return boxRegion({ left: zero, top: zero, width, height });
}

function disc(diameter: Length): Region {
  return regionOf(ovalOutline({ left: zero, top: zero, width: diameter, height: diameter }));
}

/** What each place covers with its margin, made anew from the shape. */
function laidBy({ region, margin }: NestRequest, { places }: Nested): readonly Region[] {
  return places.map(({ left, top, turns }) =>
    movedTo(
      turnedRegion(withMargin(region, margin), turns),
      lengthOfTicks(left - margin),
      lengthOfTicks(top - margin),
    ),
  );
}

/** That nothing overlaps and nothing reaches over the edge, by the engine that shares no code with ours. */
function expectApart(asked: NestRequest, found: Nested): void {
  const laid = laidBy(asked, found);
  for (const [index, one] of laid.entries()) {
    const bounds = boundsOf(one)!;
    expect(bounds.left).toBeGreaterThanOrEqual(0);
    expect(bounds.top).toBeGreaterThanOrEqual(0);
    expect(bounds.left + bounds.width).toBeLessThanOrEqual(Math.min(asked.bed.width, found.reach.width));
    expect(bounds.top + bounds.height).toBeLessThanOrEqual(Math.min(asked.bed.height, found.reach.height));
    for (const other of laid.slice(index + 1)) {
      const box = boundsOf(other)!;
      const apart =
        bounds.left + bounds.width <= box.left ||
        box.left + box.width <= bounds.left ||
        bounds.top + bounds.height <= box.top ||
        box.top + box.height <= bounds.top;
      if (apart) continue;
      // What the floating sweep finds where edges meet is no more than what it rounds away.
      expect(secondEngine.intersection(one, other) ?? 0).toBeLessThan(areaOf(one) * 1e-6 + 4);
    }
  }
}

describe('counts in print', () => {
  it('266 trapezoids come out of a plate of 30 x 96 in, each second one turned half round', () => {
    // Trapezoids of 4 1/2 and 3 1/2 by 2 1/2 in: 38 rows of 7 (public-domain drafting textbook, Sheet Metal Drafting,
    // en.wikisource.org/wiki/Page:Sheet_Metal_Drafting.djvu/39).
    const half = inches(1, 2);
    const trapezoid = evenOddRegion([
      [
        { x: half, y: zero },
        { x: inches(4), y: zero },
        { x: inches(9, 2), y: inches(5, 2) },
        { x: zero, y: inches(5, 2) },
      ],
    ]);
    const asked = request(trapezoid, {
      bed: { width: inches(30), height: inches(96) },
      turns: [0, 2],
    });
    const found = nested(asked);
    expect(found.places.length).toBeGreaterThanOrEqual(266);
    expectApart(asked, found);
    // Without turning them, rows take less than seven.
    expect(nested({ ...asked, turns: [0] }).places.length).toBeLessThan(266);
  });

  it.each([
    // Hobby tutorials and a print-estimating book; the cases whose best is in rows.
    [8.5, 11, 5.5, 8.5, 2],
    [8.5, 11, 4.25, 5.5, 4],
    [12, 12, 4, 6, 6],
  ])('%d x %d in gives %d x %d in', (width, height, ...[across, down, count]) => {
    const asked = request(box(inches(across * 8, 8), inches(down * 8, 8)), {
      bed: { width: inches(width * 8, 8), height: inches(height * 8, 8) },
    });
    expect(nested(asked).places).toHaveLength(count);
  });
});

describe('discs', () => {
  it.each([
    [12, 12, 1],
    [12, 5, 0.75],
    [8.5, 3, 1.25],
  ])('lie at least as close as rows that sink into one another: %d x %d in, discs of %d in', (...of) => {
    const [width, height, diameter] = of;
    const asked = request(disc(inches(diameter * 4, 4)), {
      bed: { width: inches(width * 2, 2), height: inches(height) },
    });
    const found = nested(asked);
    expectApart(asked, found);
    // By hand: rows are half a diameter apart along, and a diameter times the root of 3/4 down, where there is more than
    // the slack that chords are given.
    const slack = 0.001;
    const first = Math.floor(width / diameter);
    const second = Math.floor(width / diameter - 0.5 - slack);
    const rows = 1 + Math.floor((height - diameter) / (diameter * (Math.sqrt(0.75) + slack)));
    const sunk = Math.ceil(rows / 2) * first + Math.floor(rows / 2) * second;
    expect(found.places.length).toBeGreaterThanOrEqual(Math.max(sunk, first * Math.floor(height / diameter)));
  });
});

describe('margins, turns and marks', () => {
  it('leaves twice the margin between two and once at the edges', () => {
    const asked = request(box(inch, inch), {
      margin: inches(1, 4),
      bed: { width: inches(3), height: inches(3, 2) },
    });
    expect(nested(asked).places.map(({ left, top }) => [left, top])).toEqual([
      [inches(1, 4), inches(1, 4)],
      [inches(7, 4), inches(1, 4)],
    ]);
  });

  it('turns nothing that may not be turned', () => {
    const asked = request(box(inches(2), inch), { bed: { width: inch, height: inches(4) }, turns: [0, 2] });
    expect(nested(asked).places).toEqual([]);
    expect(nested({ ...asked, turns: anyTurn }).places).toHaveLength(2);
  });

  it('lays boxes at marks where that costs none, and anywhere where it does', () => {
    const roomy = request(box(inches(7, 8), inches(7, 8)), {
      bed: { width: inches(4), height: inch },
      marks: inches(1, 4),
    });
    expect(nested(roomy).places.map(({ left }) => left % inches(1, 4))).toEqual([0, 0, 0, 0]);
    const tight = { ...roomy, bed: { width: inches(7, 2), height: inch } };
    expect(nested(tight).places).toHaveLength(4);
  });

  it('takes no more than asked for', () => {
    expect(nested(request(box(inch, inch), { most: 5 })).places).toHaveLength(5);
  });
});

it('no two places overlap, margins among it, and no count is below that of a plain grid', () => {
  fc.assert(
    fc.property(
      anyOutline(60_000),
      fc.integer({ min: 30_000, max: 240_000 }),
      fc.integer({ min: 30_000, max: 240_000 }),
      fc.constantFrom<readonly QuarterTurns[]>([0], [0, 2], anyTurn),
      fc.constantFrom(0, 0, 1_000, 2_540),
      fc.constantFrom(null, lengthOfTicks(2_540)),
      (outline, width, height, turns, margin, marks) => {
        const region = regionOf(outline);
        if (isEmpty(region) || areaOf(region) < 1e6) return;
        const bed = { width: lengthOfTicks(width), height: lengthOfTicks(height) };
        const asked = { region, margin: lengthOfTicks(margin), bed, turns, marks, most: 60 };
        const found = nested(asked);
        expectApart(asked, found);
        const { width: across, height: down } = boundsOf(region)!;
        const grid = Math.floor(width / (across + 2 * margin)) * Math.floor(height / (down + 2 * margin));
        expect(found.places.length).toBeGreaterThanOrEqual(Math.min(60, grid));
      },
    ),
    { numRuns: Number(process.env.CARDWRIGHT_PILES ?? 25) },
  );
});
