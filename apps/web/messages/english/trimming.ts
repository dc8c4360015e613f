/** How the set is cut. */
export const trimming = {
  /** Said while the plan that was found first stands there. */
  proving: 'This plan can be cut as it stands. Whether a better one exists is still being worked out:',
  nothing: 'Nothing has to be cut for this set.',
  short: 'The papers are short',
  toPapers: 'To the papers',
  left: 'Left over',
  step: (step: number) => `Step ${step}`,
  reading:
    'Each setting has its picture. The sheet lies as you turn it under the blade, which runs up and down. The heavy rule is the measuring edge: push the work against it, and the pieces come off on that side.',
  /** Beside the pictures of prints that have a top. */
  arrow: 'The arrow points to the top of the print.',
};
