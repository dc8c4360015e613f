import { type ReactNode, useEffect, useState } from 'react';
import { useMessages } from '../../messages/messages.ts';
import { useIsKept } from '../../world.ts';
import { KitsOnShelf } from '../kit/kitsOnShelf.tsx';
import { Begin } from './begin.tsx';
import { Bin } from './bin.tsx';
import { Catalogue } from './catalogue.tsx';
import { Examples } from './examples.tsx';
import { Files } from './files.tsx';
import { KeptWhere } from './keptWhere.tsx';
import { NewerVersion } from './newerVersion.tsx';
import './shelf.css';
import { StorageProblem, TellContext, type Told, ToldLine } from './told.tsx';
import { useShelf } from './useShelf.ts';

/** All layouts and sets of the person, and the ways to begin one. */
export function ShelfScreen(): ReactNode {
  const { general, shelf } = useMessages();
  const { documents, problem, readAgain } = useShelf();
  const [told, setTold] = useState<Told | null>(null);
  useEffect(() => {
    document.title = shelf.documentTitle;
  }, [shelf]);
  const standing = documents?.filter(({ binned }) => binned === null) ?? [];
  const binned = documents?.filter(({ binned }) => binned !== null) ?? [];
  const isKept = useIsKept();
  const uncopied = standing.filter(({ copied, revision }) => copied?.revision !== revision).length;
  return (
    <TellContext value={setTold}>
      <header className="head">
        <h1>{general.screens.shelf}</h1>
        {isKept ? null : (
          <p className="notice" role="status">
            {general.saving.notKept}
          </p>
        )}
        {problem === null ? (
          <p className="stands">
            {documents === null
              ? shelf.reading
              : standing.length === 0
                ? shelf.empty
                : isKept
                  ? shelf.stands(standing.length, uncopied)
                  : shelf.standsHere(standing.length)}
          </p>
        ) : (
          <div className="notice" role="alert">
            <StorageProblem problem={problem} says={shelf.problems.shelf} />
            <button type="button" className="say" onClick={readAgain}>
              {shelf.problems.tryAgain}
            </button>
          </div>
        )}
      </header>
      <NewerVersion />
      <ToldLine told={told} />
      <Catalogue documents={standing} />
      {standing.length === 0 ? <Examples /> : null}
      <Begin />
      {standing.length === 0 ? null : <Examples />}
      <KitsOnShelf documents={standing} />
      <Files count={standing.length} />
      <Bin documents={binned} />
      <KeptWhere />
    </TellContext>
  );
}
