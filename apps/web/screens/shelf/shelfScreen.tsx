import { type ReactNode, useEffect, useState } from 'react';
import { readLayoutFile, starterLayout } from '../../../../src/files/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { addressOf, goTo } from '../../route.ts';
import type { DocumentRecord } from '../../storage/database.ts';
import { useWorld } from '../../world.ts';

/** All layouts and sets of the person. */
export function ShelfScreen(): ReactNode {
  const { general } = useMessages();
  const { shelf } = useWorld();
  const [documents, setDocuments] = useState<readonly DocumentRecord[]>([]);
  useEffect(() => {
    void shelf.documents().then(setDocuments);
  }, [shelf]);
  const begin = async () => {
    const read = readLayoutFile(starterLayout({ units: 'in' }));
    if (!('file' in read)) return;
    const { id } = await shelf.add(read.file);
    goTo({ screen: 'card', id });
  };
  return (
    <>
      <h1>{general.screens.shelf}</h1>
      <ul>
        {documents.map(({ id, title }) => (
          <li key={id}>
            <a href={addressOf({ screen: 'card', id })} translate="no">
              {title}
            </a>
          </li>
        ))}
      </ul>
      <button type="button" className="say" onClick={() => void begin()}>
        {general.screens.card}
      </button>
    </>
  );
}
