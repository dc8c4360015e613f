import { type ReactNode, useEffect, useMemo, useRef } from 'react';
import { cuttingPictures } from '../../../../src/guide/index.ts';
import type { Trimmer } from '../../../../src/trimming/index.ts';
import type { Showing } from '../../../../src/words/index.ts';
import { RulerStrip } from '../../form/rulerStrip.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { Drawing } from '../../pictures/drawing.tsx';
import { useTypeface } from '../../pictures/typeface.ts';
import { useWidthRem } from '../../pictures/width.ts';
import type { useAssembled } from '../../state/assembled.ts';
import type { Making } from '../../state/benchState.ts';
import { markingOf } from '../../state/inHand.ts';
import { AssemblyPlate } from '../assemblyPlate.tsx';
import type { BenchManner } from './benchManner.ts';
import { turnAt } from './drying.ts';
import type { Line } from './lines.ts';

/** The line to do now, large: the setting in words and on the ruler, the sheet as it lies, what to cut. */
export function PresentLine({
  line,
  making,
  showing,
  type,
  isJustBegun,
  lines,
  assembled,
}: {
  readonly line: Line;
  /** All of them, for what this one has to wait for. */
  readonly lines: readonly Line[];
  /** How the cards are put together; `null`: it is not known yet. */
  readonly assembled: ReturnType<typeof useAssembled>;
  readonly making: Making;
  readonly showing: Showing;
  readonly isJustBegun: boolean;
  readonly type: BenchManner['type'];
}): ReactNode {
  const { bench } = useMessages();
  const numbers = useNumbers();
  const turn = line.kind === 'made' ? turnAt(line, lines) : null;
  const section = useRef<HTMLElement>(null);
  const shown = useRef(isJustBegun ? null : line.key);
  useEffect(() => {
    // The next line comes to where it is seen whole, so that nobody has to push the page with glue on her fingers.
    if (shown.current !== line.key) section.current?.scrollIntoView({ block: 'start' });
    shown.current = line.key;
  }, [line.key]);
  return (
    <section className="present-line" aria-label={bench.present} ref={section}>
      {line.kind === 'cut' ? (
        <>
          <h3>
            <span className="numeral">{bench.step(line.words.step)}</span>{' '}
            <span lang="en">{line.words.set}</span>
          </h3>
          <Ruler line={line} making={making} />
          {line.words.mark === '' ? null : <p lang="en">{line.words.mark}</p>}
          {line.cut > 0 ? <p>{bench.partly(line.cut, line.step.take.length)}</p> : null}
          <Picture line={line} making={making} showing={showing} larger={larger[type]} />
          <div lang="en">
            {sentencesOf(line).map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
            {[line.words.care, line.words.stake]
              .filter((sentence) => sentence !== '')
              .map((sentence) => (
                <p className="careful" key={sentence}>
                  {sentence}
                </p>
              ))}
          </div>
        </>
      ) : (
        <>
          <h3>{line.name === null ? bench.scoring : <span translate="no">{line.name}</span>}</h3>
          {line.name === null ? null : <p>{bench.onEach(making.set.layout.cards)}</p>}
          {turn === null ? null : (
            <p className="careful">{bench.turnAt(numbers.clock(turn.at, turn.since))}</p>
          )}
          {assembled === null || line.step === null ? null : (
            <AssemblyPlate
              part={line.step.part}
              layout={making.set.layout}
              arrangement={making.set.arrangement}
              {...assembled}
              larger={larger[type]}
            />
          )}
          <div lang="en">
            {line.sentences.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </div>
        </>
      )}
    </section>
  );
}

/** A line as it is read aloud. */
export function saysOf(line: Line): string {
  if (line.kind === 'made')
    return [line.name ?? '', ...line.sentences].filter((each) => each !== '').join('. ');
  const { set, mark, care, stake } = line.words;
  return [set, mark, ...sentencesOf(line), care, stake].filter((sentence) => sentence !== '').join(' ');
}

function sentencesOf({ words }: Extract<Line, { kind: 'cut' }>): readonly string[] {
  return [
    `${words.take} ${words.lay}`.trim(),
    `${words.cut} ${words.prove}`.trim(),
    `${words.gives} ${words.rest}`.trim(),
  ].filter((sentence) => sentence !== '');
}

function Ruler({
  line: { step },
  making: { set },
}: {
  readonly line: Extract<Line, { kind: 'cut' }>;
  readonly making: Making;
}): ReactNode {
  const { layout, trimmer } = set;
  const marking = markingOf(layout, trimmer);
  return <RulerStrip length={step.dial ?? step.set} marking={marking} grows={sideOf(step, trimmer)} />;
}

/** The side of the blade that a step is measured on; of no trimmer that is not known, and the ruler is read as any. */
function sideOf({ otherSide }: { readonly otherSide?: true }, trimmer: Trimmer | null): 'left' | 'right' {
  if (trimmer === null) return 'right';
  const isLeft = (trimmer.measuringEdge === 'left') !== (otherSide === true);
  return isLeft ? 'left' : 'right';
}

/** How many times larger than the page's smallest type that of the picture is: 17, 22 and 28 px, the last over 20 pt. */
const larger = { usual: 1, large: 1.3, larger: 1.65 } as const satisfies Record<BenchManner['type'], number>;

/** The sheet as it lies under the blade at this setting. */
function Picture({
  line: { words },
  making: { set, tallied },
  showing,
  larger: times,
}: {
  readonly line: Extract<Line, { kind: 'cut' }>;
  readonly making: Making;
  readonly showing: Showing;
  readonly larger: number;
}): ReactNode {
  const typeface = useTypeface();
  const [figure, figureRem] = useWidthRem<HTMLElement>();
  // A point is a ninth of a rem, so that the picture's smallest type is no smaller than the page's.
  const widthPt = Math.max(170, (Math.min(38, figureRem ?? 20) * 9) / times);
  const { layout, trimmer } = set;
  const { plan, onTable } = tallied.inHand;
  const picture = useMemo(() => {
    const paper = layout.papers.get(words.paper)!;
    const matter = { layout, plan, stakes: [], trimmer, showing, typeface, lying: onTable.lying };
    return cuttingPictures({ ...matter, manner: 'coloured' }, paper, { widthPt, heightPt: 190 / times }).find(
      (each) => each.words.step === words.step,
    );
  }, [layout, plan, trimmer, showing, typeface, onTable, widthPt, times, words]);
  const page = useMemo(
    () => (picture === undefined ? null : { widthPt, ...picture.draw() }),
    [widthPt, picture],
  );
  return (
    <figure ref={figure} lang="en">
      {page === null || picture === undefined ? null : <Drawing page={page} says={picture.says} />}
    </figure>
  );
}
