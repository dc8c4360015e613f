import { type ReactNode, useEffect, useState } from 'react';
import type { History } from '../../../../src/editing/index.ts';
import type { Layout } from '../../../../src/layout/index.ts';
import { showLength } from '../../../../src/measure/index.ts';
import { stemOf } from '../../exchange/fileName.ts';
import { saveFile } from '../../exchange/saveFile.ts';
import { Filled } from '../../form/filled.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { addressOf, goTo } from '../../route.ts';
import { problemOf } from '../../state/saving.ts';
import type { DocumentRecord } from '../../storage/database.ts';
import { useIsKept, useWorld } from '../../world.ts';
import { Front } from './front.tsx';
import { StorageProblem, useTell } from './told.tsx';

/** What stands on the shelf as in a printed catalogue, each second version below its first. */
export function Catalogue({ documents }: { readonly documents: readonly DocumentRecord[] }): ReactNode {
  const { shelf } = useMessages();
  if (documents.length === 0) return null;
  return (
    <section aria-labelledby="shelf-list">
      <h2 id="shelf-list">{shelf.list}</h2>
      <ol className="catalogue">
        {inOrder(documents).map(({ document, below }) => (
          <Entry key={document.id} document={document} below={below} />
        ))}
      </ol>
    </section>
  );
}

interface Placed {
  readonly document: DocumentRecord;
  /** Whether what it is a second version of stands above it. */
  readonly below: boolean;
}

/** By title, but what is a second version right below what it is one of, through any number of them. */
export function inOrder(documents: readonly DocumentRecord[]): readonly Placed[] {
  const ids = new Set(documents.map(({ id }) => id));
  const isBelow = ({ id, besides }: DocumentRecord) => besides !== null && besides !== id && ids.has(besides);
  const placed: Placed[] = [];
  const seen = new Set<string>();
  const place = (document: DocumentRecord, below: boolean) => {
    if (seen.has(document.id)) return;
    seen.add(document.id);
    placed.push({ document, below });
    for (const other of documents) if (other.besides === document.id) place(other, true);
  };
  for (const document of documents) if (!isBelow(document)) place(document, false);
  // Files may say of two that each is a second version of the other.
  for (const document of documents) place(document, false);
  return placed;
}

function Entry({ document, below }: Placed): ReactNode {
  const { shelf: says } = useMessages();
  const history = useHistory(document);
  const title = document.title === '' ? says.untitled : document.title;
  return (
    <li className={below ? 'entry below' : 'entry'}>
      <div className="plate">{typeof history === 'object' ? <Front layout={history.layout} /> : null}</div>
      <div>
        <h3>
          <a href={addressOf({ screen: 'card', id: document.id })} translate="no">
            {title}
          </a>
        </h3>
        {typeof history === 'object' ? <Facts layout={history.layout} /> : null}
        {history === 'not readable' ? <p>{says.notReadable}</p> : null}
        {document.besides === null ? null : <p>{below ? says.second : says.secondAlone}</p>}
        <KeptWhere document={document} />
        <Actions document={document} title={title} />
      </div>
    </li>
  );
}

/** A layout as it was saved last. */
function useHistory({ id, revision }: DocumentRecord): History | 'taking' | 'not readable' {
  const { shelf } = useWorld();
  const [history, setHistory] = useState<History | 'taking' | 'not readable'>('taking');
  useEffect(() => {
    let isLeft = false;
    shelf.open(id).then(
      (found) => isLeft || setHistory(found === null ? 'not readable' : found.history),
      () => isLeft || setHistory('not readable'),
    );
    return () => {
      isLeft = true;
    };
  }, [shelf, id, revision]);
  return history;
}

/** How many cards, their size and fold. */
export function Facts({ layout }: { readonly layout: Layout }): ReactNode {
  const { shelf } = useMessages();
  const numbers = useNumbers();
  const { cards, units, base } = layout;
  const [width, height] = [base.size.width, base.size.height].map((length) =>
    numbers.shown(showLength(length, units, 'printed')),
  );
  return <p>{shelf.facts(cards, `${width} × ${height} ${units}`, base.fold)}</p>;
}

function KeptWhere({ document: { copied, revision } }: { readonly document: DocumentRecord }): ReactNode {
  const { kept: inBrowser, here } = useMessages().shelf;
  const kept = useIsKept() ? inBrowser : here;
  const says =
    copied === null
      ? kept.never
      : copied.revision === revision
        ? kept.asIs(copied.when)
        : kept.older(copied.when);
  return <p className="kept">{says}</p>;
}

function Actions({
  document,
  title,
}: {
  readonly document: DocumentRecord;
  readonly title: string;
}): ReactNode {
  const { shelf: says } = useMessages();
  const { shelf, now } = useWorld();
  const tell = useTell();
  const { id } = document;
  const go = (act: () => Promise<void>) => () => {
    tell(null);
    act().catch((reason) =>
      tell({
        isProblem: true,
        says: <StorageProblem problem={problemOf(reason)} says={says.problems.storage} />,
      }),
    );
  };
  const told = (says: string, more: ReactNode = null) =>
    tell({
      isProblem: false,
      says: (
        <p>
          <Filled says={says} title={title} /> {more}
        </p>
      ),
    });

  const saveCopy = async () => {
    const found = await shelf.file(id);
    if (found === null) return;
    saveFile(`${stemOf(document.title)}.card.json`, found.text);
    await shelf.copied(id, { revision: found.revision, when: now() });
    told(says.done.saved);
  };
  const another = async () => {
    const made = await shelf.duplicate(id, says.anotherTitle(title));
    if (made !== null) goTo({ screen: 'card', id: made.id });
  };
  const takeBack = async () => {
    await shelf.bin(id, null);
    told(says.done.back);
  };
  const toBin = async () => {
    await shelf.bin(id, now());
    told(
      says.done.binned,
      <button type="button" className="say" onClick={go(takeBack)}>
        {says.done.takeBack}
      </button>,
    );
  };
  return (
    <p className="actions">
      <button type="button" className="say" onClick={go(saveCopy)}>
        {says.saveCopy}
      </button>
      <button type="button" className="say" onClick={go(another)}>
        {says.another}
      </button>
      <button type="button" className="say" onClick={go(toBin)}>
        {says.toBin}
      </button>
    </p>
  );
}
