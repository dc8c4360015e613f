import { describe, expect, it } from 'vitest';
import { inches, millimetres } from './length.ts';
import { readSize } from './sizeReading.ts';

describe('a size as it is typed', () => {
  const mm = (width: number, height: number) => ({ width: millimetres(width), height: millimetres(height) });
  it.each([
    ['105 x 148 mm', 'in', mm(105, 148)],
    ['10.5x14.8cm', 'in', mm(105, 148)],
    ['105 mm by 148 mm', 'in', mm(105, 148)],
    ['105×148', 'mm', mm(105, 148)],
    ['4 1/4 x 5 1/2 in', 'mm', { width: inches(17, 4), height: inches(11, 2) }],
    ['4¼ X 5½"', 'mm', { width: inches(17, 4), height: inches(11, 2) }],
    ['8.5" x 11"', 'mm', { width: inches(17, 2), height: inches(11) }],
    ['8 1/2 x 11', 'in', { width: inches(17, 2), height: inches(11) }],
    ['4 1/4 in x 148 mm', 'in', { width: inches(17, 4), height: millimetres(148) }],
  ] as const)('%s', (text, units, size) => {
    expect(readSize(text, units)).toMatchObject({ ok: true, size });
  });

  it('is two measures, each of them a length', () => {
    expect(readSize('105 mm', 'mm')).toEqual({ ok: false, why: 'not-two' });
    expect(readSize('', 'mm')).toEqual({ ok: false, why: 'not-two' });
    expect(readSize('1 x 2 x 3', 'mm')).toEqual({ ok: false, why: 'not-two' });
    expect(readSize('105 x wide', 'mm')).toMatchObject({ ok: false, why: 'length', text: 'wide' });
    expect(readSize('1/0 x 5 in', 'mm')).toMatchObject({ ok: false, why: 'length', text: '1/0' });
  });
});
