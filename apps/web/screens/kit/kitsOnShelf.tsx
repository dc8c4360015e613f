import { type ReactNode, useCallback, useEffect, useState } from 'react';
import { type SavedKit, writeKitFile } from '../../../../src/files/index.ts';
import { stemOf } from '../../exchange/fileName.ts';
import { saveFile } from '../../exchange/saveFile.ts';
import { Filled } from '../../form/filled.tsx';
import { useMessages } from '../../messages/messages.ts';
import { addressOf, goTo } from '../../route.ts';
import { problemOf } from '../../state/saving.ts';
import type { DocumentRecord, KitRecord } from '../../storage/database.ts';
import { useWorld } from '../../world.ts';
import { StorageProblem, useTell } from '../shelf/told.tsx';
import { timeInBin } from '../shelf/useShelf.ts';

/** The kits on the shelf, and the way to begin one of the layouts there. */
export function KitsOnShelf({ documents }: { readonly documents: readonly DocumentRecord[] }): ReactNode {
  const { onShelf } = useMessages().kit;
  const { kits } = useWorld();
  const all = useKits();
  const add = useAdding();
  const standing = all.filter(({ binned }) => binned === null);
  const binned = all.filter((one) => one.binned !== null);
  const takeExample = async () => {
    const { exampleKit } = await import('./begunKit.ts');
    await add(exampleKit());
  };
  return (
    <section className="unprinted" aria-labelledby="shelf-kits">
      <h2 id="shelf-kits">{onShelf.heading}</h2>
      <p>{onShelf.says}</p>
      {standing.length === 0 ? null : (
        <ul aria-label={onShelf.list}>
          {standing.map((kit) => (
            <Standing key={kit.id} kit={kit} />
          ))}
        </ul>
      )}
      {binned.length === 0 ? null : (
        <>
          <p>{onShelf.inBin}</p>
          <ul>
            {binned.map(({ id, title }) => (
              <li key={id}>
                <button type="button" className="say" onClick={() => void kits.bin(id, null)}>
                  <Filled says={onShelf.back} title={title} />
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      {documents.length === 0 ? <p>{onShelf.none}</p> : <BeginKit documents={documents} add={add} />}
      <p>
        <button type="button" className="say" onClick={() => void takeExample()}>
          {onShelf.example}
        </button>
      </p>
    </section>
  );
}

function Standing({ kit: { id, title, file } }: { readonly kit: KitRecord }): ReactNode {
  const { onShelf } = useMessages().kit;
  const { kits, now } = useWorld();
  return (
    <li className="deeds">
      <a href={addressOf({ screen: 'kit', id })}>
        <Filled says={onShelf.open} title={title} />
      </a>
      <button
        type="button"
        className="say"
        aria-label={`${onShelf.saveCopy}: ${title}`}
        onClick={() => saveFile(`${stemOf(title)}.kit.json`, writeKitFile(file))}
      >
        {onShelf.saveCopy}
      </button>
      <button
        type="button"
        className="say"
        aria-label={`${onShelf.toBin}: ${title}`}
        onClick={() => void kits.bin(id, now())}
      >
        {onShelf.toBin}
      </button>
    </li>
  );
}

/** Which layouts, with a tick each, and the kit that is begun of them. */
function BeginKit({
  documents,
  add,
}: {
  readonly documents: readonly DocumentRecord[];
  readonly add: (file: SavedKit) => Promise<void>;
}): ReactNode {
  const { onShelf } = useMessages().kit;
  const { shelf } = useWorld();
  const tell = useTell();
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const begin = async () => {
    const read = await Promise.all(chosen.map((id) => shelf.file(id)));
    const { begunKit } = await import('./begunKit.ts');
    const kit = begunKit(
      read.flatMap((one) => (one === null ? [] : [one.text])),
      onShelf.title,
    );
    if (kit === null) return;
    if ('file' in kit) {
      await add(kit.file);
      return;
    }
    tell({
      isProblem: true,
      says: (
        <>
          <p>{onShelf.notBegun}</p>
          <ul lang="en">
            {kit.problems.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      ),
    });
  };
  return (
    <>
      <fieldset className="choices">
        <legend>{onShelf.choose}</legend>
        {documents.map(({ id, title }) => (
          <label key={id}>
            <input
              type="checkbox"
              checked={chosen.includes(id)}
              onChange={({ currentTarget }) =>
                setChosen(currentTarget.checked ? [...chosen, id] : chosen.filter((one) => one !== id))
              }
            />
            <span translate="no">{title}</span>
          </label>
        ))}
      </fieldset>
      <button type="button" className="say" disabled={chosen.length === 0} onClick={() => void begin()}>
        {onShelf.go}
      </button>
    </>
  );
}

/** Puts a kit on the shelf and opens it. */
function useAdding(): (file: SavedKit) => Promise<void> {
  const { shelf: says } = useMessages();
  const { kits } = useWorld();
  const tell = useTell();
  return async (file) => {
    try {
      const { id } = await kits.add(file);
      goTo({ screen: 'kit', id });
    } catch (reason) {
      tell({
        isProblem: true,
        says: <StorageProblem problem={problemOf(reason)} says={says.problems.storage} />,
      });
    }
  };
}

/** The kits, kept up to date. */
function useKits(): readonly KitRecord[] {
  const { kits, news, now } = useWorld();
  const [all, setAll] = useState<readonly KitRecord[]>([]);
  const read = useCallback(() => {
    // Where the shelf cannot be read, it says so itself.
    kits.all().then(setAll, () => {});
  }, [kits]);
  useEffect(() => {
    read();
    kits.empty(now() - timeInBin).catch(() => {});
    return news.subscribe(read);
  }, [read, kits, news, now]);
  return all;
}
