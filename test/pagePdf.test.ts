import { readFileSync } from 'node:fs';
import { afterAll, expect, it } from 'vitest';
import { openFonts } from '../apps/cli/fonts.ts';
import { realWorld } from '../apps/cli/world.ts';
import { madeGuide } from '../apps/web/pdf/madeGuide.ts';
import { readLayoutFile } from '../src/files/index.ts';
import { arrange } from '../src/layout/index.ts';
import { planSet, stakesOf, untouchedTable } from '../src/planning/index.ts';
import { testSolver } from '../src/planning/testing/solver.ts';
import { cardwright, scratchFolder } from './commandLine.ts';

const folder = scratchFolder();
afterAll(() => folder.remove());

it('the page makes the very guide that the command line writes', async () => {
  const file = 'examples/kite-day.card.json';
  const read = readLayoutFile(readFileSync(file, 'utf8'));
  if (!('layout' in read)) throw new Error('the example is sound');
  const set = {
    layout: read.layout,
    arrangement: arrange(read.layout),
    trimmer: null,
    hand: null,
    post: null,
    solver: await testSolver(),
  };
  const plan = planSet(set);
  if (plan.kind !== 'plan') throw new Error('the example can be cut');
  // A structured clone is what comes to the worker.
  const asked = structuredClone({
    layout: set.layout,
    plan,
    stakes: stakesOf(set, { plan, onTable: untouchedTable }),
    trimmer: null,
    hand: null,
    post: null,
    sheetFormat: 'letter' as const,
    units: 'in' as const,
    bodyPt: 16,
    madeAt: Date.parse('2026-11-25T12:00:00Z'),
  });
  const answer = await madeGuide(asked, () => openFonts(realWorld()));
  if (answer.kind !== 'made') throw new Error(answer.message);
  const output = folder.path('kite-day.pdf');
  const wanted = ['--sheet', 'letter', '--units', 'in', '--type', '16'];
  expect((await cardwright(['guide', file, '-o', output, ...wanted])).status).toBe(0);
  expect(Buffer.from(answer.pdf).equals(readFileSync(output))).toBe(true);
});
