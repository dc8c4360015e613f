import { expect, it } from 'vitest';
import {
  type Json,
  type JsonObject,
  readLayoutFile,
  type SavedLayout,
  starterLayout,
  valueAt,
} from '../files/index.ts';
import type { RoomName } from '../layout/index.ts';
import { editSentence } from '../words/index.ts';
import { changed } from './change.ts';
import { roomSet } from './index.ts';

function starter(room?: unknown): SavedLayout {
  const file = JSON.parse(starterLayout({ units: 'in', title: 'Two marks' })) as { parts: JsonObject[] };
  const read = readLayoutFile(
    JSON.stringify({
      ...file,
      parts: file.parts.map((part, index) => (index === 1 && room !== undefined ? { ...part, room } : part)),
    }),
  );
  if (!('file' in read)) throw new Error('The starter is sound');
  return read.file;
}

function roomAfter(
  file: SavedLayout,
  name: RoomName,
  room: readonly [string, string] | null,
): Json | undefined {
  const after = changed(file, roomSet(file, 1, name, room).changes).file;
  expect(readLayoutFile(JSON.stringify(after))).toHaveProperty('layout');
  return valueAt(after, ['parts', 1, 'room']);
}

it('gives a length room beside what room its part has, takes it away again, and frees what may not move', () => {
  const room = ['2 in', '2 1/2 in'] as const;
  const one = starter({ width: ['3 in', '4 in'] });
  expect(roomAfter(starter(), 'height', room)).toEqual({ height: room });
  expect(roomAfter(one, 'height', room)).toEqual({ width: ['3 in', '4 in'], height: room });
  expect(roomAfter(one, 'width', room)).toEqual({ width: room });
  expect(roomAfter(one, 'width', null)).toBeUndefined();
  expect(roomAfter(one, 'height', null)).toEqual({ width: ['3 in', '4 in'] });
  expect(roomAfter(starter('none'), 'height', room)).toEqual({ height: room });
  expect(roomAfter(starter('none'), 'height', null)).toBe('none');
});

it('says in words what may move', () => {
  const file = starter({ width: ['3 in', '4 in'] });
  expect(editSentence(roomSet(file, 1, 'width', ['3 in', '3 1/2 in']).told)).toMatch(
    /room for the width 3 in to 3 1\/2 in instead of 3 in to 4 in\.$/,
  );
});
