import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readLayoutFile } from '../files/index.ts';
import { arrange } from '../layout/index.ts';
import { millimetres } from '../measure/index.ts';
import { cliffsOf, enoughFor, piecesOf } from '../planning/index.ts';
import { testSolver } from '../planning/testing/solver.ts';
import { editSentence } from '../words/index.ts';
import { opened, stepped } from './history.ts';
import { lengthsChanged } from './lengthsChanged.ts';

function example(name: string) {
  const read = readLayoutFile(readFileSync(`examples/${name}.card.json`, 'utf8'));
  if (!('file' in read)) throw new Error('the example is sound');
  return read;
}

describe('lengthsChanged', () => {
  it('makes of a layout just what a cliff says of it, and is undone as one', async () => {
    const { file, layout } = example('lantern-walk');
    const set = { layout, arrangement: arrange(layout), trimmer: null, solver: await testSolver() };
    const enough = enoughFor(set);
    const cliffs = cliffsOf(set, enough);
    expect(cliffs.length).toBeGreaterThan(0);
    const gainsCard = cliffs.find(({ gains }) => gains.some(({ kind }) => kind === 'card'));
    expect(gainsCard).toBeDefined();
    for (const cliff of cliffs) {
      const { changes, gains, pieces } = cliff;
      const history = opened(file);
      if ('problems' in history) throw new Error('the example is sound');
      const edit = lengthsChanged({ file, layout }, changes);
      const made = stepped(history, { kind: 'edit', edit: edit!, joins: null });
      if ('problems' in made) throw new Error('a cliff leaves the layout sound');

      const sizes = new Map(piecesOf(made.layout, arrange(made.layout)).map(({ id, size }) => [id, size]));
      for (const { piece, to } of pieces) expect(sizes.get(piece)).toEqual(to);
      const card = gains.find(({ kind }) => kind === 'card');
      if (card !== undefined && cliff === gainsCard) {
        const again = enoughFor({ ...set, layout: made.layout, arrangement: arrange(made.layout) });
        expect(again.cards).toBe(card.to);
      }
      const back = stepped(made, { kind: 'undo' });
      if ('problems' in back) throw new Error('it was sound before');
      expect(JSON.stringify(back.file)).toBe(JSON.stringify(file));
    }
  });

  it('says what leads', () => {
    const read = example('kite-day');
    const [part] = read.layout.parts;
    const path = [...read.layout.typed.keys()].find((each) => each.startsWith('parts[0].'))!;
    const name = path.includes('inset') ? 'inset' : 'width';
    const edit = lengthsChanged(read, [
      { path, part: part!.id, name, from: millimetres(1), to: millimetres(7) },
    ]);
    expect(editSentence(edit!.told)).toBe(`${part!.name}: ${name} 7 mm.`);
  });

  it('is nothing for a tear, and for what a file may not hold', () => {
    const read = example('kite-day');
    const path = [...read.layout.typed.keys()].find((each) => each.startsWith('base.size'))!;
    const about = { part: 'base', from: millimetres(1), to: millimetres(7) };
    expect(lengthsChanged(read, [])).toBeNull();
    expect(lengthsChanged(read, [{ ...about, path, name: 'torn left' }])).toBeNull();
    expect(lengthsChanged(read, [{ ...about, path, name: 'width', to: millimetres(0) }])).toBeNull();
  });
});
