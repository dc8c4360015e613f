#!/usr/bin/env node
// The command line. In a clone that was never set up it sets itself up first, and says so on standard error.
import { existsSync } from 'node:fs';

const built = new URL('../dist/cli/main.js', import.meta.url);
if (!existsSync(built)) {
  try {
    const { setUp } = await import('../scripts/setUp.mjs');
    setUp((line) => console.error(line));
  } catch (problem) {
    console.error(problem.message);
    process.exit(1);
  }
}
const { main } = await import(built.href);
process.exitCode = await main(process.argv.slice(2));
