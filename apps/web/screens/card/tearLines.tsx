import { Fragment, type ReactNode } from 'react';
import type { Frame } from '../../../../src/drawing/index.ts';
import type { DrawnFace } from '../../../../src/guide/index.ts';
import type { Part } from '../../../../src/layout/index.ts';
import { tearOf } from '../../../../src/making/index.ts';
import { type Edge, pointsOf, zero } from '../../../../src/measure/index.ts';

/** On each piece of the part in hand, where the shallowest tear would leave its torn edges and where the deepest would. */
export function TearLines({
  part,
  pieces,
}: {
  readonly part: Part;
  readonly pieces: DrawnFace['pieces'];
}): ReactNode {
  const torn = (Object.entries(part.torn) as [Edge, Part['torn'][Edge]][]).filter(
    ([, depth]) => depth > zero,
  );
  return (
    <g className="tear-lines" aria-hidden="true">
      {pieces
        .filter((drawn) => drawn.part === part.id)
        .flatMap(({ piece, frame }) =>
          torn.map(([edge, depth]) => {
            const { least, most } = tearOf(depth, part.tear);
            const lines = [
              { how: 'least', d: across(frame, edge, pointsOf(depth) - pointsOf(least)) },
              { how: 'most', d: across(frame, edge, pointsOf(depth) - pointsOf(most)) },
            ];
            return lines.map(({ how, d }) => (
              <Fragment key={`${piece} ${edge} ${how}`}>
                <path className="tear-ground" d={d} />
                <path className={`tear-${how}`} d={d} />
              </Fragment>
            ));
          }),
        )}
    </g>
  );
}

/** A line along an edge of a frame, so far outside it; negative: inside. */
function across({ xPt, yPt, widthPt, heightPt }: Frame, edge: Edge, outPt: number): string {
  switch (edge) {
    case 'left':
      return `M${xPt - outPt} ${yPt}v${heightPt}`;
    case 'right':
      return `M${xPt + widthPt + outPt} ${yPt}v${heightPt}`;
    case 'top':
      return `M${xPt} ${yPt - outPt}h${widthPt}`;
    case 'bottom':
      return `M${xPt} ${yPt + heightPt + outPt}h${widthPt}`;
  }
}
