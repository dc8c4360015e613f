import type { ReactNode } from 'react';
import { useMessages } from '../../messages/messages.ts';

/** The stash of the set. */
export function PapersScreen(): ReactNode {
  const { general } = useMessages();
  return <h2>{general.screens.papers}</h2>;
}
