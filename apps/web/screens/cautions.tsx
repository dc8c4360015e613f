import type { ReactNode } from 'react';
import type { Layout } from '../../../src/layout/index.ts';
import { cautionsFor } from '../../../src/words/index.ts';
import { useMessages } from '../messages/messages.ts';

/** What to take care of in making the set. */
export function Cautions({ layout }: { readonly layout: Layout }): ReactNode {
  const { general } = useMessages();
  const cautions = cautionsFor({
    scored: layout.base.fold !== 'none',
    glued: layout.parts.length > 0,
    bought: layout.parts.some(({ papers }) => papers.length === 0),
  });
  return (
    <section className="take-care">
      <h3>{general.takeCare}</h3>
      <div lang="en">
        {cautions.map(({ topic, says }) => (
          <p key={topic}>
            <b>{topic}.</b> {says}
          </p>
        ))}
      </div>
    </section>
  );
}
