/** Blanks in sentences and what they open onto. */
export const form = {
  done: 'Done',
  markLess: 'One mark less',
  markMore: 'One mark more',
  oneLess: 'One fewer',
  oneMore: 'One more',
  lengthHint: 'Arrow keys move by one mark, Enter is done, Escape takes it back.',
  countHint: 'Arrow keys count by one, Enter is done, Escape takes it back.',
  textHint: 'Enter is done, Escape takes it back.',
  ruler: (length: string) => `A ruler with ${length} marked`,
  notACount: (least: string, most: string) => `A whole number from ${least} to ${most} may stand here.`,
  /** Where the comma stands before decimals. */
  twoWays: (text: string) =>
    `“${text}” can be meant in two ways: the point may stand before decimals or between thousands. Write decimals with a comma, and thousands without a mark.`,
  tooShort: (positive: boolean) =>
    positive ? 'It has to be more than nothing.' : 'It may not be less than nothing here.',
  nothing: 'nothing',
};
