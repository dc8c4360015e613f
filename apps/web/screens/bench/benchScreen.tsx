import { type ReactNode, useEffect, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { planRecord } from '../../../../src/planning/index.ts';
import type { Trimmer } from '../../../../src/trimming/index.ts';
import { type Messages, useMessages } from '../../messages/messages.ts';
import type { Bench, BenchStore } from '../../state/bench.ts';
import type { Making } from '../../state/benchState.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';
import { planOf } from '../../state/planned.ts';
import type { BenchEvent } from '../../storage/benchLog.ts';
import { useWorld } from '../../world.ts';
import { Cautions } from '../cautions.tsx';
import './bench.css';
import { CutBy } from './cutBy.tsx';
import { Docket } from './docket.tsx';

/** Making the set: one line of the docket at a time. */
export function BenchScreen(): ReactNode {
  const { general } = useMessages();
  const id = useOpenLayout((state) => state.id);
  const { benches } = useWorld();
  const store = useMemo(() => benches.at(id), [benches, id]);
  const bench = useStore(store);
  return (
    <>
      <h2>{general.screens.bench}</h2>
      <InSight bench={bench} />
      {bench.stage === 'looking' ? null : bench.making === null ? (
        <Begin store={store} />
      ) : (
        <>
          <ChangedSince making={bench.making} store={store} />
          <Docket making={bench.making} store={store} told={bench.told} isKept={bench.isKept} />
        </>
      )}
    </>
  );
}

/** What is to be said of the bench, in sight whenever it is another: whoever cuts has pushed the page on to her line. */
function InSight({ bench }: { readonly bench: Bench }): ReactNode {
  const place = useRef<HTMLDivElement>(null);
  const { problem, notNoted, isFromElsewhere } = bench;
  const kind = problem?.kind ?? null;
  useEffect(() => {
    if (kind === null && notNoted.length === 0 && !isFromElsewhere) return;
    // After the line that is next has come into sight.
    const frame = requestAnimationFrame(() => place.current?.scrollIntoView({ block: 'nearest' }));
    return () => cancelAnimationFrame(frame);
  }, [kind, notNoted, isFromElsewhere]);
  return (
    <div ref={place}>
      <NotKept bench={bench} />
    </div>
  );
}

/** Says so while something that was noted is not on the disk, where it cannot be noted, or another window was first. */
function NotKept({ bench }: { readonly bench: Bench }): ReactNode {
  const { general, bench: says } = useMessages();
  const { problem, isKept, isFromElsewhere, notNoted } = bench;
  if (problem !== null)
    return (
      <div className="notice" role="alert">
        <p>{isKept ? says.notReadable : general.saving.failed}</p>
        <p>
          {problem.kind === 'other'
            ? general.saving.why.other(problem.says)
            : general.saving.why[problem.kind]}
        </p>
      </div>
    );
  if (notNoted.length > 0)
    return (
      <div className="notice" role="alert">
        <p>{isFromElsewhere ? says.notNoted.elsewhere : says.notNoted.here}</p>
        <ul>
          {[...new Set(notNoted.map((event) => whatOf(event, says)))].map((what) => (
            <li key={what}>{what}</li>
          ))}
        </ul>
        <p>{says.notNoted.look}</p>
      </div>
    );
  return isFromElsewhere ? (
    <p className="notice" role="status">
      {says.elsewhere}
    </p>
  ) : null;
}

/** What was told, in a few words. */
function whatOf(event: BenchEvent, { notNoted: { what } }: Messages['bench']): string {
  if (event.kind !== 'noted') return what[event.kind];
  return event.mark.kind === 'cut' ? what.cut(event.mark.step) : what[event.mark.kind];
}

/** Begins the set by the plan that is known. */
function Begin({ store }: { readonly store: BenchStore }): ReactNode {
  const { bench } = useMessages();
  const beginning = useBeginning();
  const layout = useOpenLayout(({ history }) => history.layout);
  return (
    <>
      <p>{bench.about}</p>
      {beginning === null ? (
        <p>{bench.noPlan}</p>
      ) : (
        <>
          <CutBy trimmer={beginning.trimmer} />
          {beginning.isProved ? null : <p>{bench.unproved}</p>}
          <p className="doing">
            <button type="button" className="done" onClick={() => store.tell(beginning.begun())}>
              {bench.begin}
            </button>
          </p>
        </>
      )}
      <Cautions layout={layout} />
    </>
  );
}

interface Beginning {
  readonly trimmer: Trimmer | null;
  readonly isProved: boolean;
  readonly begun: () => BenchEvent;
}

/** What a set would be begun with now; `null`: there is no plan to begin with. */
function useBeginning(): Beginning | null {
  const { now } = useWorld();
  const planned = useOpenLayout((state) => state.planned);
  const file = useOpenLayout(({ history }) => history.file);
  const layout = useOpenLayout(({ history }) => history.layout);
  const trimmer = useOpenLayout((state) => state.cutting.trimmer);
  const plan = planOf(planned);
  // A plan of the layout before this change, or for the trimmer before, is none to begin with.
  const isNow = 'of' in planned && planned.of === layout && planned.by.trimmer === trimmer;
  if (plan === null || !isNow) return null;
  return {
    trimmer,
    isProved: planned.stage === 'answered',
    begun: () => ({ kind: 'begun', file, trimmer, plan: planRecord(plan), at: now() }),
  };
}

/** The set goes on as it was begun, whatever is done to the layout or said of the trimmer; it may be begun anew. */
function ChangedSince({ making, store }: { readonly making: Making; readonly store: BenchStore }): ReactNode {
  const { bench } = useMessages();
  const file = useOpenLayout(({ history }) => history.file);
  const trimmer = useOpenLayout((state) => state.cutting.trimmer);
  const beginning = useBeginning();
  const [asks, setAsks] = useState(false);
  const isSameLayout = useMemo(
    () => JSON.stringify(file) === JSON.stringify(making.file),
    [file, making.file],
  );
  if (isSameLayout && cutsAlike(trimmer, making.set.trimmer)) return null;
  const changed = isSameLayout ? bench.trimmerSince : bench.changedSince;
  return (
    <div className="notice">
      <p>{asks ? bench.sureAnew : changed}</p>
      <p className="deeds">
        {asks ? (
          <>
            <button type="button" className="say" onClick={() => setAsks(false)}>
              {bench.keep}
            </button>
            {beginning === null ? (
              bench.noPlan
            ) : (
              <button type="button" className="say" onClick={() => store.tell(beginning.begun())}>
                {bench.anew}
              </button>
            )}
          </>
        ) : (
          <button type="button" className="say" onClick={() => setAsks(true)}>
            {bench.beginAnew}
          </button>
        )}
      </p>
    </div>
  );
}

/** Whether two trimmers are one, whatever they are called. */
function cutsAlike(one: Trimmer | null, other: Trimmer | null): boolean {
  const unnamed = (trimmer: Trimmer | null) => JSON.stringify(trimmer && { ...trimmer, name: '' });
  return unnamed(one) === unnamed(other);
}
