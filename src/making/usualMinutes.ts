/**
 * How many minutes one piece takes, or one base, edge or card, for hands that do one thing in a row: common practice, no
 * source. Chosen so that a simple card takes about 5 minutes and a layered one of ready-cut pieces about 8, as people
 * tell who make them in rows; 14 people are told to have made 527 cards of prepared kits in 5 hours.
 */
export const usualMinutes = {
  /** One piece at the trimmer, with its share of setting and turning. */
  cut: 0.25,
  /** One base, scored and folded. */
  score: 0.5,
  /** One edge. */
  tear: 0.5,
  stamp: 0.5,
  /** One shape, with a die or by hand. */
  dieCut: 0.75,
  cutOut: 1.5,
  /** One strip, by what is folded of it. */
  ribbon: 1,
  loops: 1.5,
  knot: 1.5,
  /** One piece put on. */
  lay: 0.75,
  raise: 1,
  wrap: 1.25,
  /** One card put into its envelope. */
  close: 0.5,
} as const;
