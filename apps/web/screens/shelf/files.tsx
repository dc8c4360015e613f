import { type ReactNode, useCallback, useEffect } from 'react';
import { useDropped } from '../../dropped.tsx';
import { saveFile } from '../../exchange/saveFile.ts';
import { FileChoice } from '../../form/fileChoice.tsx';
import { useMessages } from '../../messages/messages.ts';
import { goTo, type Route } from '../../route.ts';
import { problemOf } from '../../state/saving.ts';
import { useWorld } from '../../world.ts';
import { openFile } from './openFile.ts';
import { FileProblem, StorageProblem, useTell } from './told.tsx';

/** The ways in and out by files: opening one, dropping some on the page, saving everything in one. */
export function Files({ count }: { readonly count: number }): ReactNode {
  const { shelf: says } = useMessages();
  const { shelf, kits, now } = useWorld();
  const tell = useTell();

  const open = useCallback(
    async (files: readonly File[]) => {
      tell(null);
      const told: ReactNode[] = [];
      let isProblem = false;
      let last: Route | null = null;
      let kit: Route | null = null;
      for (const file of files) {
        const opened = await openFile(file, { shelf, kits }, now(), files);
        if (opened.kind === 'layout') last = { screen: 'card', id: opened.id };
        else if (opened.kind === 'kit') kit = { screen: 'kit', id: opened.id };
        else if (opened.kind === 'shelf') {
          told.push(<p key={told.length}>{says.done.putBack(opened.putBack)}</p>);
        } else {
          isProblem = true;
          told.push(<FileProblem key={told.length} name={file.name} refused={opened} />);
        }
      }
      if (kit !== null && !isProblem) goTo(kit);
      else if (last !== null && files.length === 1) goTo(last);
      else if (told.length > 0) tell({ isProblem, says: told });
    },
    [shelf, kits, now, tell, says],
  );
  const { files: dropped, taken } = useDropped();
  useEffect(() => {
    if (dropped.length === 0) return;
    taken();
    void open(dropped);
  }, [dropped, taken, open]);

  const saveAll = async () => {
    tell(null);
    try {
      const everything = await shelf.everything();
      const { shelfZip } = await import('../../exchange/shelfZip.ts');
      const day = new Date(now()).toISOString().slice(0, 10);
      saveFile(`cardwright-shelf-${day}.zip`, await shelfZip(everything), 'application/zip');
      for (const { id, revision } of everything.layouts)
        if (id !== null) await shelf.copied(id, { revision, when: now() });
      tell({ isProblem: false, says: <p>{says.done.savedAll(everything.layouts.length)}</p> });
    } catch (reason) {
      tell({
        isProblem: true,
        says: <StorageProblem problem={problemOf(reason)} says={says.problems.storage} />,
      });
    }
  };

  return (
    <section className="unprinted" aria-labelledby="shelf-files">
      <h2 id="shelf-files">{says.files.heading}</h2>
      <p>{says.files.says}</p>
      <FileChoice
        says={says.files.open}
        accept=".json,.zip,application/json,application/zip"
        multiple
        onChosen={(chosen) => void open(chosen)}
      />
      {count === 0 ? null : (
        <>
          <p>{says.files.saveAllSays}</p>
          <button type="button" className="say" onClick={() => void saveAll()}>
            {says.files.saveAll}
          </button>
        </>
      )}
    </section>
  );
}
