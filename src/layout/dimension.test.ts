import { expect, it } from 'vitest';
import type { Length } from '../measure/index.ts';
import { arrange } from './arrange.ts';
import { dimensionsOf, withLengths } from './dimension.ts';
import { awayFrom, inch, layoutOf, part } from './testing/build.ts';

const layout = layoutOf({
  base: [inch('4 1/4'), inch('5 1/2')],
  parts: [
    part('mat', { inset: inch('1/8') }),
    part('upper', { on: 'mat', size: [inch('3 3/4'), inch('3')], place: { top: inch('1/8') } }),
    part('lower', {
      on: 'mat',
      size: [inch('3 3/4'), null],
      place: { top: awayFrom('upper', inch('1/4')), bottom: inch('1/8') },
      torn: { top: inch('1/4') },
    }),
    part('dots', {
      on: 'mat',
      diameter: inch('1/2'),
      place: [
        { left: inch('1'), top: inch('1') },
        { right: inch('1'), top: inch('1') },
      ],
    }),
    part('twice', { on: 'inside', size: [inch('1'), inch('1')], place: { left: inch('1/2') } }),
  ],
});

it('names every length by its place in the file, one that serves both axes once', () => {
  expect(dimensionsOf(layout).map(({ path, part: id, name, axis }) => [path, id, name, axis])).toEqual([
    ['base.size[0]', 'base', 'width', 'width'],
    ['base.size[1]', 'base', 'height', 'height'],
    ['parts[0].inset', 'mat', 'inset', 'both'],
    ['parts[1].size[0]', 'upper', 'width', 'width'],
    ['parts[1].size[1]', 'upper', 'height', 'height'],
    ['parts[1].place.top', 'upper', 'top', 'height'],
    ['parts[2].size[0]', 'lower', 'width', 'width'],
    ['parts[2].torn.top', 'lower', 'torn top', 'height'],
    ['parts[2].place.gap', 'lower', 'gap', 'height'],
    ['parts[2].place.bottom', 'lower', 'bottom', 'height'],
    ['parts[3].diameter', 'dots', 'diameter', 'both'],
    ['parts[3].place[0].left', 'dots', 'left', 'width'],
    ['parts[3].place[0].top', 'dots', 'top', 'height'],
    ['parts[3].place[1].right', 'dots', 'right', 'width'],
    ['parts[3].place[1].top', 'dots', 'top', 'height'],
    ['parts[4].size[0]', 'twice', 'width', 'width'],
    ['parts[4].size[1]', 'twice', 'height', 'height'],
    ['parts[4].place.left', 'twice', 'left', 'width'],
  ]);
});

it('gives the same layout when every length is set to what it is', () => {
  const same = new Map(dimensionsOf(layout).map(({ path, length }) => [path, length]));
  expect({ ...withLengths(layout, same), typed: layout.typed }).toEqual(layout);
  expect(withLengths(layout, new Map())).toBe(layout);
});

it('changes just the length that is named, and everything that follows from it', () => {
  for (const { path, length } of dimensionsOf(layout)) {
    const more = (length + 7) as Length;
    const changed = withLengths(layout, new Map([[path, more]]));
    const differs = dimensionsOf(changed).filter(
      (after, index) => after.length !== dimensionsOf(layout)[index]!.length,
    );
    expect(differs.map((after) => [after.path, after.length])).toEqual([[path, more]]);
  }
  const wider = withLengths(layout, new Map([['parts[2].place.gap', inch('5/16')]]));
  expect(arrange(wider).parts[2]!.seen!.height).toBe(inch('1 11/16'));
});

it('refuses a path at which no length stands', () => {
  expect(() => withLengths(layout, new Map([['parts[9].size[0]', inch('1')]]))).toThrow(
    'A length is changed',
  );
});
