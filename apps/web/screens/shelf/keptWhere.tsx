import { type ReactNode, useEffect, useState } from 'react';
import { Filled } from '../../form/filled.tsx';
import { useMessages } from '../../messages/messages.ts';
import type { Promised } from '../../state/keeping.ts';
import { useIsKept, useWorld } from '../../world.ts';
import { useOffline } from './useOffline.ts';

/** Where everything is kept, and how safe it is there. */
export function KeptWhere(): ReactNode {
  const { where } = useMessages().shelf;
  const { keeping, news } = useWorld();
  const isKept = useIsKept();
  const [promised, setPromised] = useState<Promised | null>(null);
  useEffect(() => {
    const look = () => void keeping.promised().then(setPromised);
    look();
    return news.subscribe(look);
  }, [keeping, news]);
  const says = {
    promised: where.promised,
    'not promised': where.notPromised,
    'cannot be asked': where.cannotAsk,
  } as const satisfies Record<Promised, string>;
  return (
    <section className="unprinted" aria-labelledby="shelf-where">
      <h2 id="shelf-where">{where.heading}</h2>
      <p>{isKept ? where.device : where.nowhere}</p>
      {promised === null || !isKept ? null : <p>{says[promised]}</p>}
      <PageKeptLine />
    </section>
  );
}

/** Whether the page itself is kept, or what is missing for it. */
function PageKeptLine(): ReactNode {
  const { offline } = useMessages().shelf;
  const { kept, missing } = useOffline();
  switch (kept) {
    case 'asked':
      return null;
    case 'being kept':
      return <p>{offline.beingKept}</p>;
    case 'kept':
      return <p>{offline.kept}</p>;
    case 'not kept':
      if (missing === null) return <p>{offline.notKept}</p>;
      return (
        <p>
          <Filled says={offline.missing} file={missing === '' ? offline.thePage : missing} />
        </p>
      );
    case 'cannot':
      return <p>{offline.cannot}</p>;
  }
}
