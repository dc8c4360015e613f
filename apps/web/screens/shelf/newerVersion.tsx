import { type ReactNode, useState } from 'react';
import { useMessages } from '../../messages/messages.ts';
import { useWorld } from '../../world.ts';
import { useOffline } from './useOffline.ts';

/** Says that a newer version of the page is here, and loads it when it is told to and nothing is lost by it. */
export function NewerVersion(): ReactNode {
  const { offline: words } = useMessages().shelf;
  const { offline } = useWorld();
  const { isNewer } = useOffline();
  const [isUnsaved, setUnsaved] = useState(false);
  const load = () => void offline.loadNewer().then((what) => setUnsaved(what === 'unsaved'));
  return (
    <div role="status">
      {isNewer ? (
        <p>
          {words.newer}{' '}
          <button type="button" className="say" onClick={load}>
            {words.load}
          </button>
        </p>
      ) : null}
      {isNewer && isUnsaved ? <p>{words.unsaved}</p> : null}
    </div>
  );
}
