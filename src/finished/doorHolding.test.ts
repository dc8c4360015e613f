import { expect, test } from 'vitest';
import { arrange } from '../layout/index.ts';
import { inch, layoutOf, part, type Sketch } from '../layout/testing/build.ts';
import { bottomOf, rightOf } from '../measure/index.ts';
import { boundsOf } from '../shape/index.ts';
import { holdingRooms } from './holdingRoom.ts';

/** From where to where what holds a piece may lie, along the axis the card opens on, in inches. */
function heldFrom(id: string, parts: Sketch['parts'], more: Partial<Sketch> = {}): readonly number[] {
  const layout = layoutOf({ base: [inch('4'), inch('6')], fold: 'gate', parts: parts!, ...more });
  const room = holdingRooms(layout, arrange(layout)).find((one) => one.part === id)!;
  const box = boundsOf(room.room)!;
  const ends = layout.base.opens === 'upwards' ? [box.top, bottomOf(box)] : [box.left, rightOf(box)];
  return ends.map((at) => at / inch('1'));
}

const left = part('left', { size: [inch('1 3/4'), inch('5')], place: { left: inch('1/8') } });
const right = part('right', { size: [inch('1 3/4'), inch('5')], place: { right: inch('1/8') } });

test('a plate over both doors is held by the panel that it lies on', () => {
  const size = [inch('2'), inch('1')] as const;
  const plate = (on: string, place: object) => part('plate', { on, size, place, adhere: 'raised' });
  // From 1 to 3 in; both panels end 1/8 in from the slit at 2 in, and 1/8 in of it is kept free at its edges.
  expect(heldFrom('plate', [left, right, plate('left', { right: inch('-1 1/8') })])).toEqual([1.125, 1.875]);
  expect(heldFrom('plate', [left, right, plate('right', { left: inch('-1 1/8') })])).toEqual([2.125, 2.875]);
  // On a card whose front is one panel it is held wherever it rests.
  const trifold = [left, right, plate('left', { right: inch('-1 1/8') })];
  expect(heldFrom('plate', trifold, { fold: 'trifold' })).toEqual([1.125, 2.875]);
});

test('what lies across the slit itself is held by the door that it covers more of, and keeps off the slit', () => {
  const label = part('label', {
    size: [inch('2'), inch('1')],
    place: { left: inch('3/4') },
    adhere: 'raised',
  });
  expect(heldFrom('label', [label])).toEqual([0.875, 1.875]);
  const band = part('band', {
    size: [inch('1'), inch('2')],
    place: { top: inch('2 1/2') },
    adhere: 'raised',
  });
  expect(heldFrom('band', [band], { opens: 'upwards' })).toEqual([3.125, 4.375]);
});
