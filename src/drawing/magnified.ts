import type { Fill, Frame, Mark, PathStep, Point, Stroke } from './mark.ts';

/** The same marks with every length of them multiplied: places, lines, type and hatches alike. */
export function magnified(marks: readonly Mark[], times: number): readonly Mark[] {
  const point = ({ xPt, yPt }: Point): Point => ({ xPt: xPt * times, yPt: yPt * times });
  const frame = ({ xPt, yPt, widthPt, heightPt }: Frame): Frame => ({
    ...point({ xPt, yPt }),
    widthPt: widthPt * times,
    heightPt: heightPt * times,
  });
  const stroke = (line: Stroke): Stroke => ({
    ...line,
    widthPt: line.widthPt * times,
    ...(line.dashPt === undefined ? {} : { dashPt: line.dashPt.map((dash) => dash * times) }),
  });
  const fill = (inside: Fill): Fill =>
    'hatch' in inside ? { hatch: { ...inside.hatch, spacingPt: inside.hatch.spacingPt * times } } : inside;
  const step = (one: PathStep): PathStep => {
    if (one.to === 'close') return one;
    if (one.to !== 'curve') return { ...one, ...point(one) };
    const [from, to] = [point({ xPt: one.x1Pt, yPt: one.y1Pt }), point({ xPt: one.x2Pt, yPt: one.y2Pt })];
    return { ...one, ...point(one), x1Pt: from.xPt, y1Pt: from.yPt, x2Pt: to.xPt, y2Pt: to.yPt };
  };
  const larger = (mark: Mark): Mark => {
    switch (mark.kind) {
      case 'line':
        return { ...mark, from: point(mark.from), to: point(mark.to), stroke: stroke(mark.stroke) };
      case 'path':
        return {
          ...mark,
          path: mark.path.map(step),
          ...(mark.fill === undefined ? {} : { fill: fill(mark.fill) }),
          ...(mark.stroke === undefined ? {} : { stroke: stroke(mark.stroke) }),
        };
      case 'text':
        return { ...mark, at: point(mark.at), sizePt: mark.sizePt * times };
      case 'group':
        return {
          ...mark,
          marks: magnified(mark.marks, times),
          ...(mark.move === undefined ? {} : { move: point(mark.move) }),
          ...(mark.clip === undefined ? {} : { clip: frame(mark.clip) }),
        };
    }
  };
  return marks.map(larger);
}
