import { type ReactNode, useMemo } from 'react';
import { leftOnTable } from '../../../../src/planning/index.ts';
import { useMessages } from '../../messages/messages.ts';
import type { Making } from '../../state/benchState.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';
import { Restock } from './restock.tsx';

/** At the bench, when all is done: what lies there goes back into the stash. Not where the layout was changed since. */
export default function AfterBench({ making }: { readonly making: Making }): ReactNode {
  const { leftovers } = useMessages().papers;
  const file = useOpenLayout(({ history }) => history.file);
  const isSame = useMemo(() => JSON.stringify(file) === JSON.stringify(making.file), [file, making.file]);
  if (!isSame) return null;
  const { layout, trimmer } = making.set;
  const { used, kept } = leftOnTable({ layout, trimmer }, making.tallied.table);
  return (
    <>
      <p>{leftovers.about}</p>
      <Restock of={layout} used={used} kept={kept} />
    </>
  );
}
