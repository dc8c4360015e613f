import { type ReactNode, useMemo } from 'react';
import { frontDrawing } from '../../../../src/guide/index.ts';
import { arrange, type Layout } from '../../../../src/layout/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { Drawing } from '../../pictures/drawing.tsx';

/** The front of a set's first card, in its papers. */
export function Front({ layout }: { readonly layout: Layout }): ReactNode {
  const { shelf } = useMessages();
  const page = useMemo(() => frontDrawing(layout, arrange(layout), 0, null, 'coloured'), [layout]);
  const title = layout.title === '' ? shelf.untitled : layout.title;
  return <Drawing page={page} says={shelf.picture.replace('{title}', title)} on="paper" className="front" />;
}
