import { expect, test } from 'vitest';
import { meadowSet, size } from './testing/meadowSet.ts';
import { tableOf } from './workpiece.ts';

test('the table holds every sheet and everything made of it, with its size, origin and fate', () => {
  const { plan } = meadowSet();
  const table = tableOf(plan);
  expect([...table.keys()]).toEqual(['meadow-1', 'a', 'b', 'c', 'a1', 'a2', 'a3', 'b1', 'b2', 'b3']);
  expect(table.get('a')).toMatchObject({
    size: size(12, 5),
    unmeasured: { width: true, height: false },
    from: { kind: 'piece', step: 1 },
    goes: { kind: 'step', step: 2 },
  });
  expect(table.get('c')).toMatchObject({
    size: size(12, 2),
    from: { kind: 'rest', step: 1 },
    goes: { kind: 'leftover', keep: true },
  });
  // The third piece of a strip cut into three is what remains of the sheet's own width.
  expect(table.get('a2')!.unmeasured.width).toBe(false);
  expect(table.get('a3')!.unmeasured.width).toBe(true);
});

test('a plan that leaves something lying about is no plan', () => {
  const { plan } = meadowSet();
  expect(() => tableOf({ ...plan, leftovers: [] })).toThrow('Whatever lies on the table');
});
