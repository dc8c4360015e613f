/** Finished cards as they stand on the table. */
interface Stacks {
  /** How many cards each stack has, the last with what is over. */
  readonly stacks: readonly number[];
  /** How many cards there are in a full stack. */
  readonly full: number;
}

/** No more stacks than that are drawn. */
const mostStacks = 12;

/** The cards laid in stacks of ten, or where those were too many, of fifty, a hundred, five hundred and so on. */
export function stacksOf(cards: number): Stacks {
  let full = 10;
  for (let by = 5; Math.ceil(cards / full) > mostStacks; by = by === 5 ? 2 : 5) full *= by;
  const stacks = Array.from({ length: Math.ceil(cards / full) }, (_, index) =>
    Math.min(full, cards - index * full),
  );
  return { stacks, full };
}
