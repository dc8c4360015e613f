/**
 * The sheet that the weight of a ream of 500 is told for, by the kind of paper as it is sold in North America: width and
 * height in inches. The trade's own basis sheets (TAPPI and printers' manuals agree on them).
 */
const basisSheets = {
  bond: [17, 22],
  bristol: [22.5, 28.5],
  cover: [20, 26],
  index: [25.5, 30.5],
  tag: [24, 36],
  text: [25, 38],
} as const;

/** A kind of paper that is sold by the pound: pounds of one kind are not those of another. */
export type PoundKind = keyof typeof basisSheets;

/** All of them. */
export const poundKinds = Object.keys(basisSheets) as readonly PoundKind[];

/** Both exact: the international yard and pound agreement, 1959. */
const gramsPerPound = 453.59237;
const squareMetresPerSquareInch = 0.0254 ** 2;

/** Grams per square metre of a paper that is sold as so many pounds: the weight of 500 basis sheets of its kind. */
export function grammageOf(pounds: number, kind: PoundKind): number {
  return (pounds * gramsPerPound) / (500 * basisArea(kind));
}

/** The pounds by which a paper of so many grams per square metre is sold where it is of that kind. */
export function poundsOf(grammage: number, kind: PoundKind): number {
  return (grammage * 500 * basisArea(kind)) / gramsPerPound;
}

/** In square metres. */
function basisArea(kind: PoundKind): number {
  const [width, height] = basisSheets[kind];
  return width * height * squareMetresPerSquareInch;
}
