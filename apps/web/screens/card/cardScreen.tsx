import { lazy, type ReactNode, Suspense, useMemo, useState } from 'react';
import type { Face } from '../../../../src/layout/index.ts';
import { useInHand } from '../../state/inHand.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';
import { Recast } from '../recast/recast.tsx';
import { AddPart } from './addPart.tsx';
import '../../look/card.css';
import { LookedAtProvider } from './lookedAt.ts';
import { AgainstProvider } from './mends.tsx';
import { PartInHand } from './partInHand.tsx';
import { Pile } from './pile.tsx';
import { PileList } from './pileList.tsx';
import { Problems } from './problems.tsx';
import { SetForm } from './setForm.tsx';
import { Table } from './table.tsx';

/** Its sentences are read when the card stands on the table already. */
const DocketOfSet = lazy(() => import('./docket.tsx'));

/** The layout and its pile, on the craft table: the card in the middle, its pile under it, then the words. */
export function CardScreen(): ReactNode {
  const { layout } = useInHand();
  const taken = useOpenLayout((state) => state.taken);
  const [look, setLook] = useState<{ readonly card: number; readonly face: Face }>({ card: 0, face: 'base' });
  const lookedAt = useMemo(
    () => ({
      card: Math.min(look.card, layout.cards - 1),
      face: look.face === 'inside' && layout.base.fold === 'none' ? ('base' as const) : look.face,
      lookAt: (change: { readonly card?: number; readonly face?: Face }) =>
        setLook((before) => ({ ...before, ...change })),
    }),
    [look, layout.cards, layout.base.fold],
  );
  return (
    <LookedAtProvider value={lookedAt}>
      <AgainstProvider>
        <Problems severity="error" />
        <Table />
        <Pile />
        {taken === null ? null : <PartInHand key={taken} id={taken} />}
        <AddPart />
        <PileList />
        <SetForm />
        <Recast />
        <Problems severity="caution" />
        <Suspense fallback={null}>
          <DocketOfSet />
        </Suspense>
      </AgainstProvider>
    </LookedAtProvider>
  );
}
