import load from 'highs';
import { highsSolver, type LinearSolver } from '../../cutting/index.ts';

/** The solver that the shells hand in, loaded once for the tests. */
export async function testSolver(): Promise<LinearSolver> {
  loaded ??= load().then(highsSolver);
  return loaded;
}

let loaded: Promise<LinearSolver> | undefined;
