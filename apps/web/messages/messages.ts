import { createContext, useContext } from 'react';
import { english } from './english/english.ts';

/** Every word of the app's own, by screen, in one language. */
export type Messages = typeof english;

/** The words of the page that is shown. */
export const MessagesContext = createContext<Messages>(english);

/** The words of the page, to be taken apart by screen: `const { shelf } = useMessages()`. */
export function useMessages(): Messages {
  return useContext(MessagesContext);
}
