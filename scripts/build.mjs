// Builds dist/ from the source; npm runs it after installing in a clone and before packing.
import { build } from './setUp.mjs';

try {
  build((line) => console.error(line));
} catch (problem) {
  console.error(problem.message);
  process.exit(1);
}
