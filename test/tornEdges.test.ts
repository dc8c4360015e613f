import { describe, expect, it } from 'vitest';
import type { Problem } from '../src/problem/index.ts';
import { cardwright, layoutDraft } from './commandLine.ts';

interface Checked {
  readonly problems: readonly (Problem & { readonly says: string })[];
}

async function checked(change: (draft: ReturnType<typeof layoutDraft>) => void) {
  const layout = layoutDraft('test/sets/gum-leaves.card.json');
  layout.cards = 10;
  change(layout);
  const { out } = await cardwright(['check', '-', '--json'], JSON.stringify(layout));
  const { problems } = JSON.parse(out) as Checked;
  return problems.filter(({ code }) => code.startsWith('tear'));
}

describe('check, of cards with torn edges', () => {
  it('finds nothing where the strip under the tears reaches further than they wander', async () => {
    expect(await checked(() => undefined)).toEqual([]);
  });

  it('cautions where it does not, with how often it shows and what mends it', async () => {
    const told = await checked(({ parts }) => {
      // 1 mm under each tear, which may go 3 mm deeper.
      parts[0]!.size = ['142 mm', '7 mm'];
      parts[0]!.place = { top: '66 mm' };
    });
    expect(told.map(({ code, severity, where }) => [code, severity, where])).toEqual([
      ['tearMayShow', 'caution', 'parts[1].torn'],
      ['tearMayShow', 'caution', 'parts[2].torn'],
    ]);
    expect(told[0]!.says).toBe(
      'A deep tear at the bottom of leaf may let the card front show beside band, 2 mm of it at the worst: on 1 card in 5; with 10 cards, that is 9 sets in 10. With 2 mm more room it is no more than 1 set in 20.',
    );
  });

  it('calls it an error where even the usual tear shows', async () => {
    const told = await checked(({ parts }) => {
      parts[0]!.size = ['142 mm', '5 mm'];
      parts[0]!.place = { top: '67 mm' };
    });
    expect(told.map(({ code, severity }) => [code, severity])).toEqual([
      ['tearShows', 'error'],
      ['tearShows', 'error'],
    ]);
  });
});
