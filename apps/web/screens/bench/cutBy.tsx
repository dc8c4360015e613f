import type { ReactNode } from 'react';
import type { Trimmer } from '../../../../src/trimming/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { addressOf } from '../../route.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';
import { Filled } from '../filled.tsx';

/** For which trimmer the settings are, and the way to where another is said. */
export function CutBy({ trimmer }: { readonly trimmer: Trimmer | null }): ReactNode {
  const { bench } = useMessages();
  const id = useOpenLayout((state) => state.id);
  return (
    <p>
      {trimmer === null ? (
        bench.cutBy.none
      ) : (
        <Filled says={bench.cutBy.trimmer} name={trimmer.name} />
      )}{' '}
      <a href={addressOf({ screen: 'trimming', id })}>
        {trimmer === null ? bench.cutBy.say : bench.cutBy.other}
      </a>
    </p>
  );
}
