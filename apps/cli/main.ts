import { runCommandLine } from './commandLine.ts';
import { realWorld } from './world.ts';

/** Runs the command line on the real world; the answer is the exit status. */
export async function main(args: readonly string[]): Promise<number> {
  // A reader that has seen enough (`cardwright plan … | head`) closes the pipe; that is no failure of ours.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
  const world = realWorld();
  try {
    return await runCommandLine(args, world);
  } finally {
    world.status('');
  }
}
