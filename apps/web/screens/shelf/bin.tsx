import { type ReactNode, useState } from 'react';
import { Filled } from '../../form/filled.tsx';
import { useMessages } from '../../messages/messages.ts';
import { problemOf } from '../../state/saving.ts';
import type { DocumentRecord } from '../../storage/database.ts';
import { useWorld } from '../../world.ts';
import { StorageProblem, useTell } from './told.tsx';
import { timeInBin } from './useShelf.ts';

/** What lies in the bin, and the ways out of it. */
export function Bin({ documents }: { readonly documents: readonly DocumentRecord[] }): ReactNode {
  const { shelf: says } = useMessages();
  const { shelf, now } = useWorld();
  const tell = useTell();
  const [isAsked, setAsked] = useState(false);
  if (documents.length === 0) return null;
  const go = (act: () => Promise<void>, done: ReactNode) => {
    tell(null);
    act().then(
      () => tell({ isProblem: false, says: <p>{done}</p> }),
      (reason) =>
        tell({
          isProblem: true,
          says: <StorageProblem problem={problemOf(reason)} says={says.problems.storage} />,
        }),
    );
  };
  return (
    <details className="bin unprinted">
      <summary>{says.bin.heading(documents.length)}</summary>
      <p>{says.bin.says}</p>
      <ul>
        {documents.map(({ id, title, binned }) => (
          <li key={id}>
            <p>
              <Filled says={says.bin.goes((binned ?? 0) + timeInBin)} title={title || says.untitled} />
            </p>
            <button
              type="button"
              className="say"
              onClick={() =>
                go(() => shelf.bin(id, null), <Filled says={says.done.back} title={title || says.untitled} />)
              }
            >
              <Filled says={says.bin.back} title={title || says.untitled} />
            </button>
          </li>
        ))}
      </ul>
      {isAsked ? (
        <div className="notice" role="alert">
          <p>{says.bin.sure(documents.length)}</p>
          <p className="actions">
            <button type="button" className="say" onClick={() => setAsked(false)}>
              {says.bin.no}
            </button>
            <button
              type="button"
              className="say"
              onClick={() => {
                setAsked(false);
                // All that was put there up to this moment.
                go(() => shelf.empty(now() + 1), says.done.emptied);
              }}
            >
              {says.bin.yes}
            </button>
          </p>
        </div>
      ) : (
        <button type="button" className="say" onClick={() => setAsked(true)}>
          {says.bin.empty}
        </button>
      )}
    </details>
  );
}
