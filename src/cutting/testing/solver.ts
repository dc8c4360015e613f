import loadHighs from 'highs';
import { highsSolver } from '../index.ts';

/** The solver that the tests use. */
export const solver = highsSolver(await loadHighs());
