/** Of what is kept of a layout, all up to a number. */
export function upTo(id: string, number: number): IDBKeyRange {
  return rangeOf([id, 0], [id, number]);
}

/** From one number to another, the first left out if it says so; with the fields of the browser's own where it has no database. */
export function rangeOf(
  lower: readonly [id: string, number: number],
  upper: readonly [id: string, number: number],
  lowerOpen = false,
): IDBKeyRange {
  if (typeof IDBKeyRange !== 'undefined') return IDBKeyRange.bound(lower, upper, lowerOpen);
  return { lower, upper, lowerOpen, upperOpen: false, includes: () => false };
}
