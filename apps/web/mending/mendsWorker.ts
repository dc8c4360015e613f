import {
  type Edit,
  finishedMendsOf,
  type InHand,
  mendsOf,
  planningMendsOf,
} from '../../../src/editing/index.ts';
import { readSavedLayout } from '../../../src/files/index.ts';
import { arrange } from '../../../src/layout/index.ts';
import type { Against, Mend, MendsAnswer, MendsAsked } from './messages.ts';

/** The little of a browser's worker that is used here. */
declare const self: {
  postMessage(answer: MendsAnswer): void;
  addEventListener(type: 'message', heard: (event: { readonly data: MendsAsked }) => void): void;
};

// Runs in a module worker of a browser: every mend is tried before it is offered, which takes some time.
self.addEventListener('message', ({ data: { id, file, against, held, shortage } }) => {
  const read = readSavedLayout(file);
  if ('problems' in read) {
    self.postMessage({ id, mends: against.map(() => []) });
    return;
  }
  const inHand = { ...read, arrangement: arrange(read.layout) };
  const mends = against.map((each) => mendsFor(each, inHand, { held, shortage }));
  self.postMessage({ id, mends });
});

function mendsFor(
  each: Against,
  inHand: InHand,
  { held, shortage }: Pick<MendsAsked, 'held' | 'shortage'>,
): readonly Mend[] {
  switch (each.of) {
    case 'layout':
      return mendsOf(inHand, each.problem, held.marks).map(sureOf);
    case 'planning':
      return planningMendsOf(inHand, each.problem, { marks: held.marks, shortage });
    case 'finished':
      return finishedMendsOf(inHand, each.problem, held).map(sureOf);
  }
}

function sureOf(edit: Edit): Mend {
  return { edit, sure: true };
}
