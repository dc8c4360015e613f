import { unseen } from '../layout/index.ts';
import { type Length, lengthOfTicks } from '../measure/index.ts';

/** What a region is narrowed by so that nothing is left of edges that only count as one. */
export const halfUnseen: Length = lengthOfTicks(Math.floor(unseen / 2));
