import { type ReactNode, useMemo } from 'react';
import { useStore } from 'zustand';
import { frontDrawing, trimmerFor } from '../../../../src/guide/index.ts';
import { arrange, type Layout } from '../../../../src/layout/index.ts';
import type { Trimmer } from '../../../../src/trimming/index.ts';
import { ChoiceBlank, choicesOf } from '../../form/choiceBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';
import { Drawing } from '../../pictures/drawing.tsx';
import { addressOf } from '../../route.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';
import { planOf } from '../../state/planned.ts';
import { useWorld } from '../../world.ts';
import { Cautions } from '../cautions.tsx';
import { useGuideMaking, type WantedGuide } from './guideMaking.ts';
import { type GuideOptions, handOf, typeSizes, useGuideOptions } from './guideOptions.ts';
import './guide.css';
import { Pages } from './pages.tsx';

/** The printed guide: on what and how it is printed, to be saved or printed, and what to take care of. */
export function GuideScreen(): ReactNode {
  const { general, guide } = useMessages();
  const id = useOpenLayout((state) => state.id);
  const layout = useOpenLayout(({ history }) => history.layout);
  const planned = useOpenLayout((state) => state.planned);
  const [options, choose] = useGuideOptions(layout);
  const plan = planOf(planned);
  const cutting = useOpenLayout((state) => state.cutting);
  const post = useStore(useWorld().standards, (held) => held.post?.table ?? null);
  // What stands here goes by the trimmer it was planned for, until the next plan.
  const trimmer = 'by' in planned ? planned.by.trimmer : cutting.trimmer;
  const isShort = planned.stage === 'answered' && planned.answer.kind === 'short';
  return (
    <>
      <h2>{general.screens.guide}</h2>
      <div className="guide">
        <div>
          <p>{guide.about}</p>
          <HowPrinted options={options} choose={choose} trimmer={trimmer} />
          {isShort ? (
            <p className="notice">
              {guide.short} <a href={addressOf({ screen: 'trimming', id })}>{general.screens.trimming}</a>.
            </p>
          ) : null}
          {plan === null && !isShort ? <p>{guide.noPlan}</p> : null}
          {plan !== null && 'of' in planned ? (
            <>
              <SaveAndPrint
                options={options}
                of={{ layout: planned.of, plan, trimmer }}
                post={post}
                isLast={planned.stage === 'answered'}
              />
              <p>{guide.actualSize}</p>
            </>
          ) : null}
        </div>
        <Front layout={layout} />
      </div>
      <Cautions layout={layout} />
      {planned.stage === 'answered' && plan !== null ? (
        <Pages
          wanted={{
            of: { layout: planned.of, plan, trimmer },
            hand: handOf(options),
            post,
            sheetFormat: options.sheetFormat,
            units: options.units,
            bodyPt: typeSizes[options.type],
          }}
        />
      ) : null}
    </>
  );
}

function HowPrinted({
  options,
  choose,
  trimmer,
}: {
  readonly options: GuideOptions;
  readonly choose: (change: Partial<GuideOptions>) => void;
  readonly trimmer: Trimmer | null;
}): ReactNode {
  const { guide } = useMessages();
  const hand = handOf(options);
  const hands: Readonly<Record<GuideOptions['hand'], string>> = {
    usual: guide.usualHand[trimmer?.hand ?? 'none'],
    ...guide.hands,
  };
  return (
    <>
      <Sentence
        says={guide.printed}
        blanks={{
          sheet: (
            <ChoiceBlank
              name="sheet"
              label={guide.sheet}
              value={options.sheetFormat}
              choices={choicesOf(guide.sheets)}
              onSet={(sheetFormat) => choose({ sheetFormat })}
            />
          ),
          units: (
            <ChoiceBlank
              name="units"
              label={guide.units}
              value={options.units}
              choices={choicesOf(guide.unitWords)}
              onSet={(units) => choose({ units })}
            />
          ),
          type: (
            <ChoiceBlank
              name="type"
              label={guide.type}
              value={options.type}
              choices={choicesOf(guide.types)}
              onSet={(type) => choose({ type })}
            />
          ),
          hand: (
            <ChoiceBlank
              name="hand"
              label={guide.hand}
              value={options.hand}
              choices={choicesOf(hands)}
              onSet={(chosen) => choose({ hand: chosen })}
            />
          ),
        }}
      />
      {hand === null ? null : <p>{guide.edge[trimmerFor(hand, trimmer).measuringEdge]}</p>}
    </>
  );
}

function SaveAndPrint({
  options,
  of,
  post,
  isLast,
}: {
  readonly options: GuideOptions;
  readonly of: WantedGuide['of'];
  readonly post: WantedGuide['post'];
  readonly isLast: boolean;
}): ReactNode {
  const { guide } = useMessages();
  const { sheetFormat, units, type } = options;
  const asked = { of, hand: handOf(options), post, sheetFormat, units, bodyPt: typeSizes[type] };
  const { making, save, print } = useGuideMaking(asked);
  const says = () => {
    switch (making.stage) {
      case 'none':
        return '';
      case 'making':
        return guide.making;
      case 'saved':
        return guide.saved(making.file, making.pages);
      case 'printing':
        return guide.printing(making.pages);
      case 'failed':
        return guide.failed(making.message);
    }
  };
  return (
    <>
      {isLast ? null : <p>{guide.unproved}</p>}
      <p className="deeds">
        <button type="button" className="say" onClick={save} disabled={making.stage === 'making'}>
          {guide.save}
        </button>
        <button type="button" className="say" onClick={print} disabled={making.stage === 'making'}>
          {guide.print}
        </button>
      </p>
      <p role="status" className={making.stage === 'failed' ? 'notice' : undefined}>
        {says()}
      </p>
    </>
  );
}

/** The front of the first card, in the colours of its papers. */
function Front({ layout }: { readonly layout: Layout }): ReactNode {
  const { guide } = useMessages();
  const page = useMemo(() => frontDrawing(layout, arrange(layout), 0, null, 'coloured'), [layout]);
  return (
    <figure className="plate">
      <Drawing page={page} says={guide.plate} />
      <figcaption>{guide.plate}</figcaption>
    </figure>
  );
}
