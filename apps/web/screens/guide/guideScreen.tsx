import type { ReactNode } from 'react';
import { useMessages } from '../../messages/messages.ts';

/** The printed guide. */
export function GuideScreen(): ReactNode {
  const { general } = useMessages();
  return <h2>{general.screens.guide}</h2>;
}
