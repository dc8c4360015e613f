import { lazy, type ReactNode, Suspense, useMemo, useState } from 'react';
import { type Showing, sittingBreaks } from '../../../../src/words/index.ts';
import { Announced } from '../../form/announced.tsx';
import { ChoiceBlank, choicesOf } from '../../form/choiceBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { useAssembled } from '../../state/assembled.ts';
import type { BenchStore } from '../../state/bench.ts';
import type { Making } from '../../state/benchState.ts';
import { useStakesAt } from '../../state/stakes.ts';
import type { BenchEvent } from '../../storage/benchLog.ts';
import { useWorld } from '../../world.ts';
import { type BenchManner, useBenchManner } from './benchManner.ts';
import { CutBy } from './cutBy.tsx';
import { hardAt, setAt } from './drying.ts';
import { type Line, linesOf } from './lines.ts';
import { PresentLine, saysOf } from './presentLine.tsx';
import { useAwake } from './useAwake.ts';
import { useReadAloud, useVoice } from './useVoice.ts';

/** The reckoning of time comes after the line that is to be done. */
const DoneBy = lazy(() => import('./doneBy.tsx'));
const Learnt = lazy(() => import('./learnt.tsx'));

/** As a rule nothing is spoiled: loaded when something is. */
const Spoiled = lazy(async () => ({ default: (await import('./spoiled.tsx')).Spoiled }));
const AfterBench = lazy(() => import('../leftovers/afterBench.tsx'));

/** The docket of a set that is being made: what is done struck out, the present line large, the next below. */
export function Docket({
  making,
  store,
  told,
  isKept,
}: {
  readonly making: Making;
  readonly store: BenchStore;
  /** For who watches whether all that was told is kept. */
  readonly told: number;
  readonly isKept: boolean;
}): ReactNode {
  const { bench } = useMessages();
  const [manner, choose] = useBenchManner();
  const [isSaying, setSaying] = useState(false);
  const showing = useMemo<Showing>(
    () => ({ units: making.set.layout.units, glyphs: 'printed' }),
    [making.set.layout],
  );
  const stakes = useStakesAt(making);
  const assembled = useAssembled(making);
  const lines = useMemo(() => linesOf(making, stakes ?? [], showing), [making, stakes, showing]);
  const done = lines.filter(({ isDone }) => isDone);
  const [present = null, next = null] = lines.filter(({ isDone }) => !isDone);
  const hard = present === null ? hardAt(lines) : null;
  const numbers = useNumbers();
  const isSpoiled = making.tallied.table.spoiled.size > 0;
  const voice = useVoice();
  // Said once all of it is known, and not twice.
  const says = present === null || isSpoiled || stakes === null ? '' : saysOf(present);
  useReadAloud(says, manner.voice === 'aloud' ? voice : null);
  return (
    <div className={`docket-strip ${manner.type}`} data-told={told} data-kept={isKept}>
      <p className="stands">{present === null ? bench.allDone : bench.stands(done.length, lines.length)}</p>
      {present === null ? (
        <Suspense>
          <Learnt making={making} lines={lines} />
        </Suspense>
      ) : (
        <Suspense>
          <DoneBy lines={lines} making={making} />
        </Suspense>
      )}
      {present === null && hard !== null ? <p>{bench.hardAt(numbers.clock(hard.at, hard.since))}</p> : null}
      {present === null ? (
        <Suspense fallback={null}>
          <AfterBench making={making} />
        </Suspense>
      ) : null}
      <DoneLines lines={done} />
      {isSpoiled || isSaying ? (
        <Suspense>
          <Spoiled making={making} store={store} showing={showing} onDone={() => setSaying(false)} />
        </Suspense>
      ) : (
        <>
          {present === null ? null : (
            <>
              <Rest before={present} lines={lines} making={making} />
              <PresentLine
                {...{ making, showing, type: manner.type, lines, assembled }}
                line={present}
                isJustBegun={told === 1}
              />
              <Announced>
                <span lang="en">{says}</span>
              </Announced>
              <Doing line={present} tell={store.tell} />
            </>
          )}
          {next === null ? null : (
            <section className="next-line" aria-label={bench.next}>
              <NameOf line={next} />
            </section>
          )}
          <p className="deeds">
            {making.last === null ? null : (
              <button type="button" className="say" onClick={() => store.tell({ kind: 'taken back' })}>
                {bench.takeBack}
              </button>
            )}
            <button type="button" className="say" onClick={() => setSaying(true)}>
              {bench.spoiled}
            </button>
          </p>
        </>
      )}
      <CutBy trimmer={making.set.trimmer} />
      <HowShown manner={manner} choose={choose} voice={voice} />
    </div>
  );
}

/** What was done, the last of it in sight and the rest a tap away. */
function DoneLines({ lines }: { readonly lines: readonly Line[] }): ReactNode {
  const { bench } = useMessages();
  if (lines.length === 0) return null;
  const struck = (those: readonly Line[]) => (
    <ul className="done-lines">
      {those.map((line) => (
        <li key={line.key}>
          <s>
            <NameOf line={line} />
          </s>
          <SetAt line={line} />
        </li>
      ))}
    </ul>
  );
  const earlier = lines.slice(0, -2);
  return (
    <section aria-label={bench.list}>
      {earlier.length === 0 ? null : (
        <details>
          <summary>{bench.earlier(earlier.length)}</summary>
          {struck(earlier)}
        </details>
      )}
      {struck(lines.slice(-2))}
    </section>
  );
}

/** When the glue of a line that is done has set, as a time of the clock. */
function SetAt({ line }: { readonly line: Line }): ReactNode {
  const { bench } = useMessages();
  const numbers = useNumbers();
  const set = line.kind === 'made' ? setAt(line) : null;
  return set === null ? null : (
    <span className="set-at"> {bench.setAt(numbers.clock(set.at, set.since))}</span>
  );
}

/** Says that here is a good place to stop, where she makes only so many cuts at a sitting. */
function Rest({
  before,
  lines,
  making: { set, tallied },
}: {
  readonly before: Line;
  readonly lines: readonly Line[];
  readonly making: Making;
}): ReactNode {
  const { plan } = tallied.inHand;
  const breaks = useMemo(() => sittingBreaks(plan, set.trimmer), [plan, set.trimmer]);
  const last = lines.findLast(({ kind, isDone }) => kind === 'cut' && isDone);
  const rest = breaks.find(({ step, cut, isWithin }) =>
    isWithin
      ? before.kind === 'cut' && before.step.step === step && before.cut === cut
      : before.kind === 'cut' && before.cut === 0 && last?.kind === 'cut' && last.step.step === step,
  );
  return rest === undefined ? null : (
    <p className="rest careful" lang="en">
      {rest.says}
    </p>
  );
}

/** A line in a few words. */
function NameOf({ line }: { readonly line: Line }): ReactNode {
  const { bench } = useMessages();
  if (line.kind === 'cut')
    return (
      <>
        {bench.step(line.words.step)}.{' '}
        <span lang="en">
          {line.words.set} {line.words.take}
        </span>
      </>
    );
  return line.name === null ? (
    bench.scoring
  ) : (
    <>
      <span translate="no">{line.name}</span>. <span lang="en">{line.sentences.join(' ')}</span>
    </>
  );
}

/** Notes that the present line is done, or one workpiece of it. */
function Doing({
  line,
  tell,
}: {
  readonly line: Line;
  readonly tell: (event: BenchEvent) => void;
}): ReactNode {
  const { bench } = useMessages();
  const { now } = useWorld();
  const workpieces = line.kind === 'cut' ? line.step.take.length : 1;
  const cut = (step: number, count: number) =>
    tell({ kind: 'noted', mark: { kind: 'cut', step, workpieces: count }, at: now() });
  const left = line.kind === 'cut' ? workpieces - line.cut : 1;
  return (
    <p className="doing">
      <button
        type="button"
        className="done"
        // A hand that taps twice where once would do, or lies on a key, has done one line.
        onKeyDown={(event) => {
          if (event.repeat) event.preventDefault();
        }}
        onClick={({ detail: tapsInARow }) => {
          if (tapsInARow > 1) return;
          if (line.kind === 'cut') cut(line.step.step, workpieces);
          else tell({ kind: 'made', line: line.key, at: now() });
        }}
      >
        {bench.done}
      </button>
      {line.kind === 'cut' && left > 1 ? (
        <button type="button" className="say" onClick={() => cut(line.step.step, line.cut + 1)}>
          {bench.oneDone(left)}
        </button>
      ) : null}
    </p>
  );
}

/** How large the type is, whether it is read aloud, and whether the screen stays on. */
function HowShown({
  manner,
  choose,
  voice,
}: {
  readonly manner: BenchManner;
  readonly choose: (change: Partial<BenchManner>) => void;
  readonly voice: SpeechSynthesisVoice | null;
}): ReactNode {
  const { bench } = useMessages();
  const isAwake = useAwake();
  return (
    <div className="how-shown">
      <Sentence
        says={bench.shown}
        blanks={{
          type: (
            <ChoiceBlank
              name="type"
              label={bench.type}
              value={manner.type}
              choices={choicesOf(bench.types)}
              onSet={(type) => choose({ type })}
            />
          ),
          voice: (
            <ChoiceBlank
              name="voice"
              label={bench.voice}
              value={manner.voice}
              choices={choicesOf(bench.voices)}
              onSet={(read) => choose({ voice: read })}
            />
          ),
        }}
      />
      {manner.voice === 'aloud' && voice === null ? <p role="status">{bench.noVoice}</p> : null}
      <p>{isAwake ? bench.awake.awake : bench.awake.asleep}</p>
    </div>
  );
}
