import { lazy, type ReactNode, Suspense, useState } from 'react';
import { useMessages } from '../../messages/messages.ts';
import './recast.css';

const Wishing = lazy(() => import('./wishing.tsx'));

/** The same layout for another card, other units, other sheets or another number of cards, kept as one of its own. */
export function Recast(): ReactNode {
  const { recast } = useMessages();
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="recast" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{recast.heading}</summary>
      {isOpen ? (
        <Suspense fallback={null}>
          <Wishing />
        </Suspense>
      ) : null}
    </details>
  );
}
