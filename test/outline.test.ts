import { writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { cardwright, scratchFolder } from './commandLine.ts';

const folder = scratchFolder();
afterAll(folder.remove);

const leaf = `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="70mm" viewBox="0 0 100 140">
  <title>A leaf</title>
  <g transform="translate(5 5)" style="fill: #080">
    <path d="M45 0C80 30 90 80 45 130C0 80 10 30 45 0Z"/>
    <circle cx="45" cy="60" r="8"/>
  </g>
</svg>
`;

describe('cardwright outline', () => {
  it('prints the fields of a part, and where they belong', async () => {
    writeFileSync(folder.path('leaf.svg'), leaf);
    const run = await cardwright(['outline', folder.path('leaf.svg')]);
    expect(run).toEqual({
      status: 0,
      out: [
        '"shape": "outline",',
        '"size": ["30.1163 mm", "65 mm"],',
        '"outline": "M50 5C85 35 95 85 50 135 5 85 15 35 50 5ZM42 65A8 8 0 0 1 58 65 8 8 0 0 1 42 65Z"',
        '',
      ].join('\n'),
      err: 'These are the fields of a part, to be put in a layout file between the braces of one of its\n"parts".\n',
    });
  });

  it('says the proportions where the drawing names no size, as JSON too', async () => {
    const plain = leaf.replace(' width="50mm" height="70mm"', '');
    const run = await cardwright(['outline', '-'], plain);
    expect(run.status).toBe(0);
    expect(run.out).not.toContain('"size"');
    expect(run.err.replace(/\s+/g, ' ')).toContain(
      'The drawing names no true size: give the part a "size" as well. It keeps its form where width is to height as 60.23 to 130.',
    );
    const { part, problems, ratio } = JSON.parse(
      (await cardwright(['outline', '-', '--json'], plain)).out,
    ) as {
      part: object;
      problems: unknown[];
      ratio: number[];
    };
    expect(problems).toEqual([]);
    expect(Object.keys(part)).toEqual(['shape', 'outline']);
    expect(ratio[1]).toBeCloseTo(130, 9);
  });

  it('refuses what is no outline, a sentence a line, and prints nothing else', async () => {
    const bad = leaf.replace('<title>A leaf</title>', '<script>go()</script>').replace('r="8"', 'r="8%"');
    const run = await cardwright(['outline', '-'], bad);
    expect(run).toEqual({
      status: 1,
      out: '',
      err: [
        'At line 3, column 3 stands <script>, which would run a program; only an outline may stand there.',
        'At line 6, column 29 <circle> has r "8%"; it may hold a plain number, without per cent or a unit.',
        '',
      ].join('\n'),
    });
    const json = JSON.parse((await cardwright(['outline', '-', '--json'], bad)).out) as {
      part: null;
      problems: { code: string; where: string; says: string }[];
    };
    expect(json.part).toBeNull();
    expect(json.problems.map(({ code, where }) => `${code} ${where}`)).toEqual([
      'svgElement 3:3',
      'svgNumber 6:29',
    ]);
  });

  it('says how it is used', async () => {
    const { out } = await cardwright(['outline', '--help']);
    expect(out).toContain('the drawing (*.svg); - is standard input');
    expect(out).toContain('cardwright outline leaf.svg');
  });
});
