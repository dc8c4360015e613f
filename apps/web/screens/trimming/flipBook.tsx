import { memo, type ReactNode, useMemo } from 'react';
import type { CuttingPicture } from '../../../../src/guide/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { Marks } from '../../pictures/drawing.tsx';

/**
 * The cutting of one paper at a glance: the pictures of its steps in their order, small and with nothing written on
 * them, one beside the other like the leaves of a folded strip. Each leads to its step; nothing where there is but one.
 */
export const FlipBook = memo(function FlipBook({
  pictures,
  onStep,
}: {
  readonly pictures: readonly CuttingPicture[];
  readonly onStep: (step: number) => void;
}): ReactNode {
  const { trimming } = useMessages();
  if (pictures.length < 2) return null;
  return (
    <ol className="flip-book" aria-label={trimming.flipBook.label}>
      {pictures.map((picture) => (
        <li key={picture.words.step}>
          <Leaf picture={picture} onStep={onStep} />
        </li>
      ))}
    </ol>
  );
});

/** The id of a leaf of the row, which the step it leads to leads back to. */
export function leafId(step: number): string {
  return `leaf-${step}`;
}

/** All leaves are of one scale, so that a piece is seen to be of the sheet before it; a third of the large pictures'. */
const remPerPt = 1 / 28;

const Leaf = memo(function Leaf({
  picture: { words, draw },
  onStep,
}: {
  readonly picture: CuttingPicture;
  readonly onStep: (step: number) => void;
}): ReactNode {
  const { trimming } = useMessages();
  const { frame, marks } = useMemo(() => draw().work, [draw]);
  const { xPt, yPt, widthPt, heightPt } = frame;
  return (
    <button type="button" id={leafId(words.step)} onClick={() => onStep(words.step)}>
      <svg
        aria-hidden="true"
        viewBox={[xPt, yPt, widthPt, heightPt].join(' ')}
        width={`${widthPt * remPerPt}rem`}
        height={`${heightPt * remPerPt}rem`}
        fill="none"
        strokeMiterlimit={10}
      >
        <Marks marks={marks} />
      </svg>
      <span className="unseen">{trimming.flipBook.to(words.step)}</span>
      <span aria-hidden="true">{words.step}</span>
    </button>
  );
});
