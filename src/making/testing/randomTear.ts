import fc from 'fast-check';
import { lengthOfTicks } from '../../measure/index.ts';
import type { TearDepth } from '../tear.ts';

/** Tears up to 25 mm deep; a good many with depths that are the same or a tick apart. */
export const randomTear: fc.Arbitrary<TearDepth> = fc
  .tuple(fc.nat(20_000), spread(), spread())
  .map(([least, rise, fall]) => ({
    least: lengthOfTicks(least),
    usual: lengthOfTicks(least + rise),
    most: lengthOfTicks(least + rise + fall),
  }));

function spread(): fc.Arbitrary<number> {
  return fc.oneof(fc.constant(0), fc.constant(1), fc.integer({ min: 2, max: 10_000 }));
}
