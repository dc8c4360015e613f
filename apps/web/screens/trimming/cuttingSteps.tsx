import { memo, type ReactNode, useCallback, useMemo } from 'react';
import { flushSync } from 'react-dom';
import { type CuttingPicture, cuttingPictures } from '../../../../src/guide/index.ts';
import type { Layout } from '../../../../src/layout/index.ts';
import type { Plan, StepStakes } from '../../../../src/planning/index.ts';
import type { Paper } from '../../../../src/stash/index.ts';
import type { Trimmer } from '../../../../src/trimming/index.ts';
import type { Showing } from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { Drawing } from '../../pictures/drawing.tsx';
import { useTypeface } from '../../pictures/typeface.ts';
import { useWidthRem } from '../../pictures/width.ts';
import { FlipBook, leafId } from './flipBook.tsx';

/**
 * Every setting at which a paper is cut: first the small pictures of all in a row, then each large, with what is said of
 * it under it.
 */
export function CuttingSteps({
  paper,
  layout,
  plan,
  stakes,
  trimmer,
  showing,
  led,
  lead,
}: {
  readonly paper: Paper;
  readonly layout: Layout;
  readonly plan: Plan;
  readonly stakes: readonly StepStakes[];
  /** Whose marks the settings are said by; `null`: none was said. */
  readonly trimmer: Trimmer | null;
  readonly showing: Showing;
  /** The step that a picture of the row has led to; `null`: none. */
  readonly led: number | null;
  readonly lead: (step: number | null) => void;
}): ReactNode {
  const typeface = useTypeface();
  const [list, listRem] = useWidthRem<HTMLOListElement>();
  const widthPt = listRem === null ? null : widthFor(listRem);
  const steps = useMemo(
    () =>
      widthPt === null
        ? null
        : {
            widthPt,
            pictures: cuttingPictures(
              { layout, plan, stakes, trimmer, showing, typeface, manner: 'coloured' },
              paper,
              { widthPt, heightPt: 150 },
            ),
          },
    [layout, plan, stakes, trimmer, showing, typeface, paper, widthPt],
  );
  const toStep = useCallback(
    (step: number) => {
      // The way back stands there before the step is scrolled to, so that it is seen as well.
      flushSync(() => lead(step));
      const words = document.getElementById(settingId(step));
      words?.closest('li')?.scrollIntoView({ block: 'nearest' });
      words?.focus({ preventScroll: true });
    },
    [lead],
  );
  const back = useCallback(
    (step: number) => {
      document.getElementById(leafId(step))?.focus();
      lead(null);
    },
    [lead],
  );
  return (
    <>
      {steps === null ? null : <FlipBook pictures={steps.pictures} onStep={toStep} />}
      <ol className="cutting-steps" ref={list}>
        {steps?.pictures.map((step) => (
          <li key={step.words.step} className={step.words.step === led ? 'led-to' : undefined}>
            <CuttingStep step={step} widthPt={steps.widthPt} onBack={step.words.step === led ? back : null} />
          </li>
        ))}
      </ol>
    </>
  );
}

function settingId(step: number): string {
  return `setting-${step}`;
}

const CuttingStep = memo(function CuttingStep({
  step: { words, says, draw },
  widthPt,
  onBack,
}: {
  readonly step: CuttingPicture;
  readonly widthPt: number;
  /** Goes back to the row of pictures; `null`: no picture of it has led here. */
  readonly onBack: ((step: number) => void) | null;
}): ReactNode {
  const { trimming } = useMessages();
  const page = useMemo(() => ({ widthPt, ...draw() }), [widthPt, draw]);
  return (
    <figure>
      <div lang="en">
        <Drawing page={page} says={says} />
      </div>
      <figcaption>
        <p className="setting" id={settingId(words.step)} tabIndex={-1}>
          <span className="numeral">
            <span className="unseen">{trimming.step(words.step)}</span>
            <span aria-hidden="true">{words.step}</span>
          </span>{' '}
          <span lang="en">{words.set}</span>
        </p>
        <div lang="en">
          {[
            words.mark,
            `${words.take} ${words.lay}`.trim(),
            `${words.cut} ${words.prove}`.trim(),
            `${words.gives} ${words.rest}`.trim(),
          ]
            .filter((sentence) => sentence !== '')
            .map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          {[words.care, words.stake]
            .filter((sentence) => sentence !== '')
            .map((sentence) => (
              <p className="careful" key={sentence}>
                {sentence}
              </p>
            ))}
        </div>
        {onBack === null ? null : (
          <button type="button" className="say" onClick={() => onBack(words.step)}>
            {trimming.flipBook.back}
          </button>
        )}
      </figcaption>
    </figure>
  );
});

/**
 * How wide a picture is laid out where the list is so wide: a point of it is then a ninth of a rem, so that its
 * smallest type is no smaller than the page's. Pictures narrower than 170 points have no room for their paper.
 */
function widthFor(rem: number): number {
  const columns = Math.max(1, Math.floor((rem + gapRem) / (leastRem + gapRem)));
  const columnRem = Math.min(widestRem, (rem - (columns - 1) * gapRem) / columns);
  return Math.max(170, columnRem * pointsPerRem);
}

// As in trimming.css.
const leastRem = 19.5;
const gapRem = 3;
const widestRem = 30;
const pointsPerRem = 9;
