import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { cardwright, layoutDraft } from './commandLine.ts';

/** What `docket --json` answers, as far as these tests read it. */
interface Answer {
  readonly cardwright_docket: number;
  readonly cards: number;
  readonly borders: readonly {
    readonly part: string;
    readonly edges: Readonly<Record<string, { readonly breadth: number; readonly open: number }>>;
  }[];
  readonly papers: readonly { readonly paper: string | null; readonly side: string; readonly open: number }[];
  readonly section: { readonly thickest: { readonly thickness: number } };
  readonly weight: { readonly grams: number };
  readonly postings: readonly { readonly post: string; readonly as: string | null }[];
  readonly says: readonly { readonly heading: string; readonly says: readonly string[] }[];
}

const inch = 40_640;

async function docketOf(layout: string | object): Promise<Answer> {
  const text = typeof layout === 'string' ? readFileSync(layout, 'utf8') : JSON.stringify(layout);
  const run = await cardwright(['docket', '-', '--json'], text);
  expect(run).toMatchObject({ status: 0, err: '' });
  return JSON.parse(run.out) as Answer;
}

const saidOf = ({ says }: Answer, heading: string) =>
  says.find((matter) => matter.heading === heading)?.says ?? [];

describe('ten birthday cards with bees and dots', () => {
  it('are as thick as was worked by hand, go into A2 and by no machine in the United States', async () => {
    const answer = await docketOf('test/sets/bees-and-dots.card.json');
    expect(answer).toMatchObject({ cardwright_docket: 1, cards: 10 });
    // 0.013 cream twice, 0.011 coral and white twice each, 0.007 print, 0.0625 foam.
    expect((answer.section.thickest.thickness / inch).toFixed(4)).toBe('0.1395');
    expect(answer.postings.map(({ post }) => post)).toEqual(['us']);
    expect(saidOf(answer, 'Envelope')[0]).toContain('A2, 5 3/4 x 4 3/8 in');
    expect(saidOf(answer, 'By post: United States')).toContain('Without the foam it is “letter”.');
    expect(saidOf(answer, 'Torn edges')).toEqual([]);
  });

  it('are told of every post that is known where none is named', async () => {
    const { postings } = await docketOf('examples/lantern-walk.card.json');
    expect(postings.map(({ post }) => post)).toEqual(['us', 'uk', 'ca', 'de', 'au']);
  });

  it('show borders of 1/8 in, and of each paper what the arithmetic of rectangles says', async () => {
    const { borders, papers } = await docketOf('test/sets/bees-and-dots.card.json');
    const mat = borders.find(({ part }) => part === 'mat')!;
    expect(Object.values(mat.edges).map(({ breadth, open }) => [breadth / inch, open])).toEqual([
      [1 / 8, 1],
      [1 / 8, 1],
      [1 / 8, 1],
      [1 / 8, 1],
    ]);
    const square = (id: string) =>
      papers.find(({ paper, side }) => paper === id && side === 'front')!.open / inch ** 2;
    // Ten cards; 3/8 in of each panel's edge lies under the raised sentiment's mat of 3 1/4 x 1 in.
    expect(square('bees')).toBeCloseTo(10 * (3.75 * 3 - 3.25 * 0.375), 9);
    expect(square('dots')).toBeCloseTo(10 * (3.75 * 1.75 - 3.25 * 0.375), 9);
  });
});

describe('thank-you cards with torn edges', () => {
  it('tell the 5 mm that may be 0 to 11, and that the band still covers', async () => {
    const torn = saidOf(await docketOf('test/sets/gum-leaves.card.json'), 'Torn edges');
    expect(torn[0]).toContain('5 mm of band is reckoned to show. It comes out at 0 to 11 mm');
    expect(torn[1]).toContain('At the deepest tear 7 mm of that is left.');
  });
});

describe('the examples', () => {
  it.each(['lantern-walk', 'kite-day', 'button-tin', 'garden-gate'])('%s is told in full', async (name) => {
    const answer = await docketOf(`examples/${name}.card.json`);
    for (const heading of ['What shows', 'Paper that is seen', 'Closed', 'Weight', 'Envelope'])
      expect(saidOf(answer, heading).length, heading).toBeGreaterThan(0);
    const { out } = await cardwright(['docket', `examples/${name}.card.json`]);
    const lines = out.split('\n');
    expect(lines.every((line) => line.length <= 96)).toBe(true);
    const flowed = out.replace(/\s+/g, ' ');
    for (const { says } of answer.says)
      for (const sentence of says) expect(flowed).toContain(sentence.replace(/\s+/g, ' '));
  });
});

describe('what is asked of a docket', () => {
  it('goes by the post of the layout alone, and its envelope', async () => {
    const layout = { ...layoutDraft('test/sets/gum-leaves.card.json'), post: 'au' };
    const answer = await docketOf(layout);
    expect(answer.postings).toMatchObject([{ post: 'au', as: 'small letter' }]);
  });

  it('goes by a post table of the person’s own', async () => {
    const file = 'test/sets/gum-leaves.card.json';
    const own = await cardwright(['docket', file, '--post', 'examples/counter.post.json']);
    expect(own.out.match(/^By post: /gm)).toHaveLength(1);
    expect(own.out).not.toContain('By post: Australia');
    const wrong = await cardwright(['docket', file, '--post', 'examples/lantern-walk.card.json']);
    expect(wrong).toMatchObject({ status: 1, out: '' });
    expect(wrong.err).toContain('cardwright_post');
  });

  it('is what a check goes by, where the same is asked of it', async () => {
    const draft = layoutDraft('test/sets/gum-leaves.card.json');
    const heavy = {
      ...draft,
      cards: 10,
      post: 'au',
      papers: { ...draft.papers, cream: { ...draft.papers.cream, gsm: 900 } },
    };
    const codes = async (...asked: string[]) => {
      const { out } = await cardwright(['check', '-', '--json', ...asked], JSON.stringify(heavy));
      return (JSON.parse(out) as { problems: { code: string }[] }).problems
        .map(({ code }) => code)
        .filter((code) => code !== 'nothingToSpare');
    };
    expect(await codes()).toEqual([]);
    expect(await codes('--post', 'examples/counter.post.json')).toEqual(['postedHigher']);
    expect(await codes('--risk', '1/100000')).toEqual(['tearMeets']);
    const wrong = await cardwright(
      ['check', '-', '--post', 'examples/kite-day.card.json'],
      JSON.stringify(heavy),
    );
    expect(wrong.status).toBe(1);
    expect(wrong.err).toContain('cardwright_post');
  });

  it('takes a risk as a share or in a hundred, and a set whose sizes are unknown is refused with the reason', async () => {
    const file = 'test/sets/gum-leaves.card.json';
    const [share, percent] = await Promise.all(
      ['1/1000', '0.1%'].map((risk) => cardwright(['docket', file, '--risk', risk])),
    );
    expect(share!.out).toBe(percent!.out);
    expect(share!.out).toContain('Wanted: no more than 1 set in 1000');
    const draft = layoutDraft(file);
    const parts = draft.parts.map((part, index) => (index === 0 ? { ...part, torn: { top: '2 in' } } : part));
    const unknown = await cardwright(['docket', '-'], JSON.stringify({ ...draft, parts }));
    expect(unknown).toMatchObject({ status: 1, out: '' });
    expect(unknown.err).toContain('nothing is left to see');
  });
});
