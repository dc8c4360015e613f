import { type ReactNode, useEffect, useMemo, useState } from 'react';
import { changedFile, type SavedLayout } from '../../../../src/files/index.ts';
import { showSize } from '../../../../src/measure/index.ts';
import {
  type Recut,
  type RecutShort,
  type Rescue,
  recutRecord,
  type Spoiled as SpoiledThing,
} from '../../../../src/planning/index.ts';
import {
  capital,
  partName,
  recutSentences,
  rescueSentence,
  type Showing,
  wantingSentences,
} from '../../../../src/words/index.ts';
import { type Messages, useMessages } from '../../messages/messages.ts';
import type { BenchStore } from '../../state/bench.ts';
import type { Making } from '../../state/benchState.ts';
import { useCutting } from '../../state/useCutting.ts';
import { useWorld } from '../../world.ts';
import { FoundScrap } from './foundScrap.tsx';

/** What is spoiled or lost is said, and the rest planned again from what lies on the table. */
export function Spoiled({
  making,
  store,
  showing,
  onDone,
}: {
  readonly making: Making;
  readonly store: BenchStore;
  readonly showing: Showing;
  readonly onDone: () => void;
}): ReactNode {
  const isSaid = making.tallied.table.spoiled.size > 0;
  const [isMore, setMore] = useState(false);
  return (
    <section className="notice spoiled">
      {isSaid && !isMore ? (
        <PlannedAgain
          making={making}
          store={store}
          showing={showing}
          onDone={onDone}
          onMore={() => setMore(true)}
        />
      ) : (
        <WhatIsSpoiled
          making={making}
          store={store}
          showing={showing}
          onSaid={() => setMore(false)}
          onDone={isSaid ? () => setMore(false) : onDone}
        />
      )}
    </section>
  );
}

type SpoiledProps = Parameters<typeof Spoiled>[0];

function WhatIsSpoiled({
  making,
  store,
  showing,
  onSaid,
  onDone,
}: SpoiledProps & { readonly onSaid: () => void }): ReactNode {
  const { bench } = useMessages();
  const isSaid = making.tallied.table.spoiled.size > 0;
  const { pieces, workpieces } = useMemo(
    () => onTheTable(making, showing, bench.spoil),
    [making, showing, bench],
  );
  const say = (spoiled: SpoiledThing) => {
    store.tell({ kind: 'noted', mark: { kind: 'spoiled', spoiled } });
    onSaid();
  };
  const list = (things: readonly Thing[]) => (
    <ul>
      {things.map(({ key, says, count, spoiled }) => {
        const which = count === 1 ? bench.spoil.one : bench.spoil.oneOf;
        return (
          <li key={key}>
            <span>{says}</span>{' '}
            <button
              type="button"
              className="say"
              aria-label={`${says}: ${which}`}
              onClick={() => say(spoiled)}
            >
              {which}
            </button>
          </li>
        );
      })}
    </ul>
  );
  return (
    <>
      <h3>{bench.spoil.heading}</h3>
      <p>{bench.spoil.says}</p>
      {pieces.length + workpieces.length === 0 ? <p>{bench.spoil.nothing}</p> : null}
      {pieces.length === 0 ? null : (
        <>
          <h4>{bench.spoil.pieces}</h4>
          {list(pieces)}
        </>
      )}
      {workpieces.length === 0 ? null : (
        <>
          <h4>{bench.spoil.workpieces}</h4>
          {list(workpieces)}
        </>
      )}
      <p className="deeds">
        <button type="button" className="say" onClick={onDone}>
          {isSaid ? bench.spoil.nothingElse : bench.spoil.notAfterAll}
        </button>
      </p>
    </>
  );
}

interface Thing {
  readonly key: string;
  readonly says: string;
  /** How many are alike. */
  readonly count: number;
  readonly spoiled: SpoiledThing;
}

/** All that can be spoiled, things that are alike once. */
function onTheTable(
  { set, tallied }: Making,
  { units, glyphs }: Showing,
  says: Messages['bench']['spoil'],
): { readonly pieces: readonly Thing[]; readonly workpieces: readonly Thing[] } {
  const { layout } = set;
  const { inHand, table } = tallied;
  const nameOf = (paper: string) => layout.papers.get(paper)?.name ?? paper;
  const size = (of: Parameters<typeof showSize>[0]) => showSize(of, units, glyphs);
  const finished = [...table.finished.values()];
  const known = inHand.plan.pieces.flatMap(({ id, part, size: own }): Thing[] => {
    const there = finished.filter((piece) => piece === id).length;
    if (there === 0) return [];
    const name = part === 'base' ? says.base : capital(partName(layout, part));
    const named = says.piece(name, size(own), there);
    return [{ key: id, says: named, count: there, spoiled: { kind: 'pieces', piece: id, count: 1 } }];
  });
  const others = new Map<string, Thing>();
  const lie = (id: string, named: string) => {
    const { count = 0, key = id } = others.get(named) ?? {};
    others.set(named, { key, says: named, count: count + 1, spoiled: { kind: 'workpiece', id: key } });
  };
  for (const { id, paper, size: own } of table.onTable.lying)
    if (!table.finished.has(id)) lie(id, says.workpiece(nameOf(paper), size(own)));
  for (const { id, paper, size: own } of table.whole) lie(id, says.sheet(nameOf(paper), size(own)));
  return { pieces: known, workpieces: [...others.values()] };
}

type Answer = Recut | RecutShort | 'failed' | null;

function PlannedAgain({
  making,
  store,
  showing,
  onDone,
  onMore,
}: SpoiledProps & { readonly onMore: () => void }): ReactNode {
  const { bench } = useMessages();
  const answer = useRecut(making);
  const { layout } = making.set;
  const { table } = making.tallied;
  const isScrap = making.last?.kind === 'noted' && making.last.mark.kind === 'found';
  const goOn = (recut: Recut, file: SavedLayout | null) => {
    store.tell({ kind: 'planned again', plan: recutRecord(recut, making.tallied.moreSpares), file });
    onDone();
  };
  return (
    <>
      {answer === null ? <p role="status">{bench.spoil.planning}</p> : null}
      {answer === 'failed' ? <p role="alert">{bench.spoil.failed}</p> : null}
      {answer !== null && answer !== 'failed' && answer.kind === 'recut' ? (
        <div role="status">
          {recutSentences({ layout, table, recut: answer }, showing).map((sentence) => (
            <p key={sentence} lang="en">
              {sentence}
            </p>
          ))}
          <p className="doing">
            <button type="button" className="done" onClick={() => goOn(answer, null)}>
              {bench.spoil.goOn}
            </button>
          </p>
        </div>
      ) : null}
      {answer !== null && answer !== 'failed' && answer.kind === 'short' ? (
        <div role="status">
          <h3>{bench.spoil.short}</h3>
          {wantingSentences(answer, { layout, table }, showing).map((sentence) => (
            <p key={sentence} lang="en">
              {sentence}
            </p>
          ))}
          <p>{bench.spoil.ways}</p>
          <ul>
            {answer.rescues.map((rescue) => (
              <Way key={rescueSentence(rescue, layout, showing)} {...{ rescue, making, showing, goOn }} />
            ))}
          </ul>
        </div>
      ) : null}
      <FoundScrap making={making} store={store} />
      <p className="deeds">
        <button type="button" className="say" onClick={onMore}>
          {bench.spoil.more}
        </button>
        <button
          type="button"
          className="say"
          onClick={() => {
            store.tell({ kind: 'taken back' });
            if (!isScrap) onDone();
          }}
        >
          {isScrap ? bench.spoil.found.notAfterAll : bench.spoil.notAfterAll}
        </button>
      </p>
    </>
  );
}

/** One way out, to be taken where there is a plan for it. */
function Way({
  rescue,
  making,
  showing,
  goOn,
}: {
  readonly rescue: Rescue;
  readonly making: Making;
  readonly showing: Showing;
  readonly goOn: (recut: Recut, file: SavedLayout | null) => void;
}): ReactNode {
  const { bench } = useMessages();
  const says = rescueSentence(rescue, making.set.layout, showing);
  const { recut } = rescue;
  return (
    <li>
      <span lang="en">{says}</span>{' '}
      {recut === null ? null : (
        <button
          type="button"
          className="say"
          aria-label={`${says} ${bench.spoil.take}`}
          onClick={() => goOn(recut, fileFor(rescue, making))}
        >
          {bench.spoil.take}
        </button>
      )}
    </li>
  );
}

/** The layout as it has to be for a way out; `null`: as it is. */
function fileFor(rescue: Rescue, { file, set }: Making): SavedLayout | null {
  const changes = () => {
    switch (rescue.kind) {
      case 'other sizes':
        return { lengths: new Map(rescue.changes.map(({ path, to }) => [path, to])) };
      case 'more sheets': {
        const papers = [...new Set(rescue.sheets.map(({ paper }) => paper))];
        const sheetsOf = (id: string) =>
          set.layout.papers.get(id)!.sheets.map((sheet, index) => {
            const more =
              rescue.sheets.find(({ paper, stock }) => paper === id && stock === index)?.count ?? 0;
            return sheet.count === null ? sheet : { ...sheet, count: sheet.count + more };
          });
        return { sheets: new Map(papers.map((id) => [id, sheetsOf(id)])) };
      }
      default:
        return null;
    }
  };
  const wanted = changes();
  if (wanted === null) return null;
  const changed = changedFile(file, wanted);
  return 'problems' in changed ? null : changed.file;
}

/** The rest planned again by the planner; `null` until it answers. */
function useRecut(making: Making): Answer {
  const { planner } = useWorld();
  // What is kind to her now, whatever it was when the set was begun.
  const { prefer } = useCutting();
  const [found, setFound] = useState<{ readonly of: Making; readonly answer: Answer } | null>(null);
  useEffect(() => {
    const control = new AbortController();
    const { tallied } = making;
    const set = { ...making.set, prefer };
    planner.ask({ name: 'recut', set, table: tallied.table }, { signal: control.signal }).then(
      (answer) => setFound({ of: making, answer }),
      () => {
        if (!control.signal.aborted) setFound({ of: making, answer: 'failed' });
      },
    );
    return () => control.abort();
  }, [planner, making, prefer]);
  return found !== null && found.of === making ? found.answer : null;
}
