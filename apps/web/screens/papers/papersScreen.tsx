import { lazy, type ReactNode, Suspense } from 'react';
import '../../look/papers.css';
import { useMessages } from '../../messages/messages.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';
import { Recast } from '../recast/recast.tsx';
import { AddPaper } from './addPaper.tsx';
import { PaperForm } from './paperForm.tsx';
import { RunsOut } from './runsOut.tsx';

const FromLeftovers = lazy(() => import('../leftovers/fromLeftovers.tsx'));

/** The stash of the set as an order docket: its papers and sheets in sentences, and what the set takes of them. */
export function PapersScreen(): ReactNode {
  const { general, papers } = useMessages();
  const layout = useOpenLayout(({ history }) => history.layout);
  const all = [...layout.papers.values()];
  const sides = all.flatMap(({ sheets }) => sheets.flatMap(({ size }) => [size.width, size.height]));
  return (
    <>
      <h2>{general.screens.papers}</h2>
      <p className="measure">{papers.measure}</p>
      {all.length === 0 ? <p>{papers.none}</p> : null}
      {all.map((paper) => (
        <PaperForm key={paper.id} paper={paper} longest={Math.max(1, ...sides)} />
      ))}
      <RunsOut />
      <Suspense fallback={null}>
        <FromLeftovers />
      </Suspense>
      <AddPaper />
      <Recast />
    </>
  );
}
