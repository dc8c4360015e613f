import type { ReactNode } from 'react';
import type { Trimmer } from '../../../../src/trimming/index.ts';
import { Filled } from '../../form/filled.tsx';
import { useMessages } from '../../messages/messages.ts';
import { addressOf } from '../../route.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';

/** For which trimmer the settings are, and the way to where another is said. */
export function CutBy({ trimmer }: { readonly trimmer: Trimmer | null }): ReactNode {
  const { bench } = useMessages();
  const id = useOpenLayout((state) => state.id);
  return (
    <p>
      {trimmer === null ? bench.cutBy.none : <With name={trimmer.name} />}{' '}
      <a href={addressOf({ screen: 'trimming', id })}>
        {trimmer === null ? bench.cutBy.say : bench.cutBy.other}
      </a>
    </p>
  );
}

function With({ name }: { readonly name: string }): ReactNode {
  const { bench } = useMessages();
  return name === '' ? bench.cutBy.unnamed : <Filled says={bench.cutBy.trimmer} name={name} />;
}
