import { type Length, millimetres } from '../measure/index.ts';

/**
 * What nobody can see or cut, 0.01 mm: edges that are no further apart count as one.
 *
 * Thirds of an inch and the like are rounded down to a tick when they are read, so parts that are flush on
 * paper may be some ticks apart here.
 */
export const unseen: Length = millimetres(0.01);
