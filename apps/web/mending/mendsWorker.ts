import { type InHand, mendsOf, planningMendsOf } from '../../../src/editing/index.ts';
import { readSavedLayout } from '../../../src/files/index.ts';
import { arrange } from '../../../src/layout/index.ts';
import type { Against, Mend, MendsAnswer, MendsAsked } from './messages.ts';

/** The little of a browser's worker that is used here. */
declare const self: {
  postMessage(answer: MendsAnswer): void;
  addEventListener(type: 'message', heard: (event: { readonly data: MendsAsked }) => void): void;
};

// Runs in a module worker of a browser: every mend is tried before it is offered, which takes some time.
self.addEventListener('message', ({ data: { id, file, against, marks, shortage } }) => {
  const read = readSavedLayout(file);
  if ('problems' in read) {
    self.postMessage({ id, mends: against.map(() => []) });
    return;
  }
  const inHand = { ...read, arrangement: arrange(read.layout) };
  const mends = against.map((each) => mendsFor(each, inHand, { marks, shortage }));
  self.postMessage({ id, mends });
});

function mendsFor(
  each: Against,
  inHand: InHand,
  given: Pick<MendsAsked, 'marks' | 'shortage'>,
): readonly Mend[] {
  switch (each.of) {
    case 'layout':
      return mendsOf(inHand, each.problem, given.marks).map((edit) => ({ edit, sure: true }));
    case 'planning':
      return planningMendsOf(inHand, each.problem, given);
    // Their sentences say what mends them.
    case 'finished':
      return [];
  }
}
