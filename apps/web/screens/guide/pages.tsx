import { type ReactNode, startTransition, useEffect, useState } from 'react';
import type { Page } from '../../../../src/drawing/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { guidePages } from '../../pdf/guidePdf.ts';
import { Drawing } from '../../pictures/drawing.tsx';
import { stakesOfPlan } from '../../state/stakes.ts';
import { useWorld } from '../../world.ts';
import type { WantedGuide } from './guideMaking.ts';

/** The guide as it will be printed, to be leafed through. */
export function Pages({ wanted }: { readonly wanted: WantedGuide }): ReactNode {
  const { guide } = useMessages();
  const laid = useLaidPages(wanted);
  const [leaf, setLeaf] = useState(0);
  // With other type or paper there may be fewer pages than before.
  const at = Math.min(leaf, (laid.pages?.length ?? 1) - 1);
  const page = laid.pages?.[at];
  const turn = (by: number) => () => startTransition(() => setLeaf(at + by));
  return (
    <section className="guide-pages" aria-labelledby="guide-pages">
      <h3 id="guide-pages">{guide.pages.heading}</h3>
      {laid.failed === null ? null : (
        <p className="notice" role="status">
          {guide.failed(laid.failed)}
        </p>
      )}
      {laid.pages === null && laid.failed === null ? <p role="status">{guide.pages.laying}</p> : null}
      {page === undefined || laid.pages === null ? null : (
        <>
          <p className="deeds">
            <button type="button" className="say" onClick={turn(-1)} disabled={at === 0}>
              {guide.pages.back}
            </button>
            <span role="status">{guide.pages.at(at + 1, laid.pages.length)}</span>
            <button type="button" className="say" onClick={turn(1)} disabled={at === laid.pages.length - 1}>
              {guide.pages.on}
            </button>
          </p>
          <div className="guide-page" lang="en">
            <Drawing page={page} says={guide.pages.at(at + 1, laid.pages.length)} on="paper" />
          </div>
        </>
      )}
    </section>
  );
}

interface Laid {
  /** `null`: not laid out yet; those before stay until the new ones are. */
  readonly pages: readonly Page[] | null;
  readonly failed: string | null;
}

/** The pages, laid out anew when anything that is on them changes. */
function useLaidPages({
  of: { layout, plan, trimmer },
  hand,
  post,
  sheetFormat,
  units,
  bodyPt,
}: WantedGuide): Laid {
  const { planner } = useWorld();
  const [laid, setLaid] = useState<Laid>({ pages: null, failed: null });
  useEffect(() => {
    const control = new AbortController();
    const { signal } = control;
    const lay = async () => {
      const of = { layout, plan, trimmer };
      const stakes = await stakesOfPlan(planner, of, signal);
      return guidePages({ ...of, stakes, hand, post, sheetFormat, units, bodyPt, madeAt: 0 }, signal);
    };
    lay().then(
      (pages) => {
        if (!signal.aborted) startTransition(() => setLaid({ pages, failed: null }));
      },
      (problem: unknown) => {
        if (signal.aborted) return;
        setLaid({ pages: null, failed: problem instanceof Error ? problem.message : String(problem) });
      },
    );
    return () => control.abort();
  }, [planner, layout, plan, trimmer, hand, post, sheetFormat, units, bodyPt]);
  return laid;
}
