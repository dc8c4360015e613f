import type { ReactNode } from 'react';
import { useMessages } from '../../messages/messages.ts';

/** How the set is cut. */
export function TrimmingScreen(): ReactNode {
  const { general } = useMessages();
  return <h2>{general.screens.trimming}</h2>;
}
