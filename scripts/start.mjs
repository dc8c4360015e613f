// `npm start`: sets the clone up, then does the main job once on an example set and says where its guide is.
import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root, setUp } from './setUp.mjs';

const layout = join('examples', 'lantern-walk.card.json');
const guide = join('out', 'lantern-walk.pdf');

try {
  setUp();
  mkdirSync(join(root, 'out'), { recursive: true });
  console.log(`\nPlanning the example set ${layout} and writing its guide …\n`);
  cardwright('plan', layout);
  cardwright('guide', layout, '-o', guide);
  console.log(`
The guide is ${relative(process.cwd(), join(root, guide))}: print it at actual size.
Your own set:   npx cardwright new mine.card.json
                npx cardwright check mine.card.json
                npx cardwright guide mine.card.json -o mine.pdf`);
} catch (problem) {
  if (problem.message) console.error(problem.message);
  process.exit(1);
}

function cardwright(...args) {
  execFileSync(process.execPath, [join('bin', 'cardwright.js'), ...args], { cwd: root, stdio: 'inherit' });
}
