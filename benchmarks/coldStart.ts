import { spawnSync } from 'node:child_process';
import { quantile } from './figures.ts';

/** Prints how long whole processes take to start, in turns. */
export function coldStart(): void {
  const helps: number[] = [];
  const empties: number[] = [];
  const start = (args: readonly string[]) => {
    const began = performance.now();
    spawnSync(process.execPath, args, { stdio: 'ignore' });
    return performance.now() - began;
  };
  for (let round = 0; round < 9; round += 1) {
    helps.push(start(['bin/cardwright.js', '--help']));
    empties.push(start(['-e', '']));
  }
  const help = quantile(helps, 0.5);
  const empty = quantile(empties, 0.5);
  console.log('Cold start, whole processes in turns, median of 9');
  console.log(
    `  cardwright --help / an empty program: ${(help / empty).toFixed(2)} (${help.toFixed(0)} ms / ${empty.toFixed(0)} ms)`,
  );
}
