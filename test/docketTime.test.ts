import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { cardwright } from './commandLine.ts';

const bazaar = 'test/sets/choir-bazaar.card.json';

interface Answer {
  readonly time: {
    readonly line: {
      readonly finish: number;
      readonly isProved: boolean;
      readonly stations: readonly { readonly helpers: number }[];
      readonly lying: readonly { readonly station: number; readonly most: number }[];
    } | null;
  };
}

describe('three hundred cards by nine helpers at five stations', () => {
  it('are told with their stations, the pace, and where they dry', async () => {
    const { status, out } = await cardwright(['docket', bazaar]);
    expect(status).toBe(0);
    const told = out.slice(out.indexOf('\nTime\n'));
    expect(told).toMatch(/Nine helpers at five stations: 300 cards in \d+ hours?/);
    expect(told).toMatch(/Station \d sets the pace/);
    expect(told).toContain('cards lie to dry: ');
    expect(told.match(/^ {2}Station \d, \d helpers? +\S/gm)).toHaveLength(5);
    for (const line of told.split('\n').slice(told.split('\n').findIndex((each) => /\d h/.test(each))))
      expect(line.length).toBeLessThanOrEqual(96);
  });

  it('are the same as data, and nobody is left over', async () => {
    const { out } = await cardwright(['docket', bazaar, '--json']);
    const { line } = (JSON.parse(out) as Answer).time;
    expect(line?.isProved).toBe(true);
    expect(line?.stations.reduce((sum, { helpers }) => sum + helpers, 0)).toBe(9);
    expect(line?.lying.length).toBeGreaterThan(0);
    for (const { most } of line?.lying ?? []) expect(most).toBeLessThanOrEqual(40);
  });

  it('are drawn as SVG', async () => {
    const { out, status } = await cardwright(['docket', bazaar, '--time-chart', '-']);
    expect(status).toBe(0);
    expect(out).toMatch(/^<\?xml/);
    for (let station = 1; station <= 5; station += 1) expect(out).toContain(`Station ${station}, `);
  });

  it('are cautioned about where it costs time', async () => {
    const file = JSON.parse(readFileSync(bazaar, 'utf8')) as { making: object };
    const codes = async (making: object) => {
      const text = JSON.stringify({ ...file, making: { ...file.making, ...making } });
      const { out } = await cardwright(['check', '-', '--json'], text);
      const { problems } = JSON.parse(out) as { problems: readonly { code: string; says: string }[] };
      return problems.map(({ code }) => code);
    };
    expect(await codes({ dryAtOnce: 2 })).toContain('roomToDryShort');
    expect(await codes({ dryAtOnce: null })).not.toContain('roomToDryShort');
    expect(await codes({ stations: 9 })).toContain('stationsEmpty');
    expect(await codes({ stations: 1 })).toContain('stationWaits');
  });
});
