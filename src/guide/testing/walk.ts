import type { GroupMark, Mark, Point, TextMark, Typeface } from '../../drawing/index.ts';

/** A mark that is drawn, with where its group has moved it to. */
export interface Drawn {
  readonly mark: Exclude<Mark, GroupMark>;
  readonly move: Point;
}

/** Every mark that is drawn, in order, each with the sum of its groups' moves. */
export function drawnMarks(marks: readonly Mark[], move: Point = { xPt: 0, yPt: 0 }): readonly Drawn[] {
  return marks.flatMap((mark): readonly Drawn[] => {
    if (mark.kind !== 'group') return [{ mark, move }];
    const { xPt, yPt } = mark.move ?? { xPt: 0, yPt: 0 };
    return drawnMarks(mark.marks, { xPt: move.xPt + xPt, yPt: move.yPt + yPt });
  });
}

/** Every group, outer before inner. */
export function groupsIn(marks: readonly Mark[]): readonly GroupMark[] {
  return marks.flatMap((mark) => (mark.kind === 'group' ? [mark, ...groupsIn(mark.marks)] : []));
}

/** The words of the marks, in reading order. */
export function wordsIn(marks: readonly Mark[]): string {
  return drawnMarks(marks)
    .flatMap(({ mark }) => (mark.kind === 'text' ? [mark.text] : []))
    .join(' ')
    .replace(/\s+/g, ' ');
}

/** Corners of what a mark covers, pen widths left out. */
export function cornersOf({ mark, move }: Drawn, typeface: Typeface): readonly Point[] {
  const corners =
    mark.kind === 'text'
      ? textCorners(mark, typeface)
      : mark.kind === 'line'
        ? [mark.from, mark.to]
        : mark.path.flatMap((step) => (step.to === 'close' ? [] : [step]));
  return corners.map(({ xPt, yPt }) => ({ xPt: xPt + move.xPt, yPt: yPt + move.yPt }));
}

/** The box of a text from its baseline to its capitals, turned as it is turned. */
function textCorners(mark: TextMark, typeface: Typeface): readonly Point[] {
  // Spaces at the end of a line are not seen.
  const wide = typeface.widthPt(mark.text.replace(/[\s\u200b]+$/u, ''), mark.sizePt, mark.weight);
  const start = { start: 0, middle: -wide / 2, end: -wide }[mark.anchor];
  const angle = ((mark.turnDegrees ?? 0) * Math.PI) / 180;
  return [
    [start, 0],
    [start + wide, 0],
    [start, -mark.sizePt * 0.7],
    [start + wide, -mark.sizePt * 0.7],
  ].map(([x = 0, y = 0]) => ({
    xPt: mark.at.xPt + x * Math.cos(angle) - y * Math.sin(angle),
    yPt: mark.at.yPt + x * Math.sin(angle) + y * Math.cos(angle),
  }));
}
