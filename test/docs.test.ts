import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { finishedCodes } from '../src/finished/index.ts';
import { layoutCodes } from '../src/layout/index.ts';
import { planningCodes, tableCodes } from '../src/planning/index.ts';
import { fileProblemCodes, svgProblemCodes } from '../src/words/index.ts';
import { cardwright } from './commandLine.ts';

describe('docs/problems.md', () => {
  it('lists every code with its severity, and no other', () => {
    const rows = [...readFileSync('docs/problems.md', 'utf8').matchAll(/^\| `(\w+)` \| (\w+) \|/gm)];
    const listed: Record<string, string> = Object.fromEntries(
      rows.map(([, code, severity]) => [code!, severity!]),
    );
    const fileCodes = Object.fromEntries(
      [...fileProblemCodes(), ...svgProblemCodes()].map((code) => [code, 'error']),
    );
    expect(listed).toEqual({
      ...layoutCodes,
      ...planningCodes,
      ...finishedCodes,
      ...tableCodes,
      ...fileCodes,
    });
  });
});

describe('README.md', () => {
  const readme = readFileSync('README.md', 'utf8');

  const samples = [...readme.matchAll(/```text\n\$ npx cardwright (.*)\n([\s\S]*?)```/g)].map(
    ([, command, answer]) => [command!, answer!.trimEnd().split('\n')] as const,
  );

  it('shows what several commands answer', () => {
    expect(samples.length).toBeGreaterThanOrEqual(3);
  });

  it.each(samples)('shows what %s answers, line for line', async (command, shown) => {
    const args = [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!);
    const said = (await cardwright(args)).out.split('\n');
    expect(shown.length).toBeGreaterThan(5);
    expect(shown.filter((line) => line !== '…' && !said.includes(line))).toEqual([]);
  });
});

describe('every page of the documentation', () => {
  const pages = ['README.md', 'ARCHITECTURE.md', ...readdirSync('docs').map((name) => `docs/${name}`)];
  it.each(pages)('%s links only to what is there', (page) => {
    const links = [...readFileSync(page, 'utf8').matchAll(/\]\((?!https?:)([^)#]+)\)/g)].map(
      ([, link]) => link!,
    );
    expect(links.filter((link) => !existsSync(join(dirname(page), link)))).toEqual([]);
  });
});
