import { starterLayout } from '../../../src/files/index.ts';
import { done, type Outcome } from '../outcome.ts';
import type { World } from '../world.ts';

export interface NewOptions {
  readonly units: 'in' | 'mm';
  readonly title?: string;
}

/** `cardwright new`: a small complete layout to start from; never over a file that is there. */
export async function newLayout(file: string, { units, title }: NewOptions, world: World): Promise<Outcome> {
  await world.write(file, starterLayout(title === undefined ? { units } : { units, title }), { fresh: true });
  if (file !== '-') world.err(`Wrote ${file}. Change it as you like, then: cardwright check ${file}\n`);
  return done;
}
