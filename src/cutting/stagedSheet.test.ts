import { expect, test } from 'vitest';
import { stagedSheet } from './stagedSheet.ts';
import { unlimited } from './task.ts';

test.each([2, 2 ** 24, 2 ** 30])(
  'workpieces that differ by one unit are told apart beside a side of %d',
  (side) => {
    const item = (height: number) => ({ width: side, height, need: 1, turns: false });
    const staged = stagedSheet({
      sheet: { width: 2 * side, height: 2 * side + 1 },
      items: [item(side), item(side + 1)],
      limits: unlimited,
      stages: [[side, side + 1]],
      mostNodes: 1000,
    })!;
    for (const { width, height, cuts } of staged.nodes) {
      for (const { axis, set, first, second } of cuts) {
        const along = axis === 'width' ? [set, height] : [width, set];
        const left = axis === 'width' ? [width - set, height] : [width, height - set];
        const sizeOf = (node: number) => [staged.nodes[node]!.width, staged.nodes[node]!.height];
        expect(sizeOf(first)).toEqual(along);
        if (second >= 0) expect(sizeOf(second)).toEqual(left);
      }
    }
  },
);
