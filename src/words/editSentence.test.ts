import { expect, it } from 'vitest';
import { inches, zero } from '../measure/index.ts';
import { type EditTold, editSentence } from './index.ts';

const moved: EditTold = {
  what: 'piece moved',
  name: 'panel',
  across: inches(-7, 4),
  down: zero,
  units: 'in',
};
const mended: EditTold = {
  what: 'mended',
  of: { kind: 'part', name: 'mat' },
  mend: { by: 'even size', axis: 'width', to: inches(15, 4), border: inches(1, 8) },
  units: 'in',
};

it('tells what was moved and mended in the characters of a keyboard or of a printed page', () => {
  expect(editSentence(moved)).toBe('Panel moved 1 3/4 in to the left.');
  expect(editSentence(moved, 'printed')).toBe('Panel moved 1\u00a03⁄4\u00a0in to the left.');
  expect(editSentence(mended)).toBe('Mat: width 3 3/4 in, with 1/8 in on either side.');
  expect(editSentence(mended, 'printed')).toBe(
    'Mat: width 3\u00a03⁄4\u00a0in, with 1⁄8\u00a0in on either side.',
  );
});
