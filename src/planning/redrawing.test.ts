import { expect, it } from 'vitest';
import { arrange } from '../layout/index.ts';
import { inch, layoutOf, paper, part } from '../layout/testing/build.ts';
import type { Length } from '../measure/index.ts';
import { moved, movesOf } from './moves.ts';
import { Redrawing } from './redrawing.ts';

const rooms = { width: { least: inch('1'), most: inch('1 1/2') } };
const layout = layoutOf({
  base: [inch('6'), inch('8')],
  fold: 'none',
  papers: [paper('meadow', [{ size: { width: inch('12'), height: inch('12') } }])],
  parts: [
    part('panel', { size: [inch('4'), inch('3')], papers: ['meadow'] }),
    { ...part('dot', { size: [inch('2'), inch('2')], papers: ['meadow'], adhere: 'raised' }), rooms },
    part('bought', { size: [inch('1'), inch('1')], adhere: 'raised' }),
    {
      ...part('kept', { size: [inch('1'), inch('1')], papers: ['meadow'], adhere: 'raised' }),
      rooms: 'none',
    },
    part('die', { size: [inch('1'), inch('1')], papers: ['meadow'], adhere: 'raised', dieCut: true }),
  ],
});
const redrawing = new Redrawing({ layout, arrangement: arrange(layout), trimmer: null });

it('lets move what may: within its room, else a little; nothing bought, die-cut, held or of the base', () => {
  expect(redrawing.movable.map(({ part: id, name, within, asked }) => [id, name, within, asked])).toEqual([
    ['panel', 'width', { least: inch('3 1/2'), most: inch('4 1/2') }, false],
    ['panel', 'height', { least: inch('2 1/2'), most: inch('3 1/2') }, false],
    ['dot', 'width', rooms.width, true],
  ]);
});

it('lets other lengths move while a part is drawn outside its room, which is no room for it', () => {
  const drawn = (path: string, length: Length) => redrawing.drawn(new Map([[path, length]]));
  expect(redrawing.drawn(new Map())).toMatchObject({ inRoom: false, strays: false });
  expect(drawn('parts[0].size[0]', inch('3 15/16'))).toMatchObject({ inRoom: false, strays: false });
  expect(drawn('parts[1].size[0]', inch('1 7/8'))).toMatchObject({ inRoom: false, strays: true });
  expect(drawn('parts[1].size[0]', inch('1 1/2'))).toMatchObject({ inRoom: true, strays: false });
  const panel = movesOf(redrawing, layout)
    .flat()
    .filter(({ main }) => main.part === 'panel');
  expect(panel.map((move) => moved(redrawing, move, 1) !== null)).toEqual([true, true]);
});
