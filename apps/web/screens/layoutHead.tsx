import { type ReactNode, useEffect, useState } from 'react';
import type { Done, History } from '../../../src/editing/index.ts';
import { writeLayoutFile } from '../../../src/files/index.ts';
import { editSentence, standsSentence } from '../../../src/words/index.ts';
import { fileNameOf } from '../exchange/fileName.ts';
import { saveFile } from '../exchange/saveFile.ts';
import { Announced } from '../form/announced.tsx';
import { useMessages } from '../messages/messages.ts';
import type { Screen } from '../route.ts';
import { useOpenLayout, useOpenLayoutStore } from '../state/layoutContext.ts';
import { useIsKept, useWorld } from '../world.ts';

/** What stands on top of every screen of a layout: its title, where the set stands, what can be undone. */
export function LayoutHead({ screen }: { readonly screen: Screen }): ReactNode {
  const { general } = useMessages();
  const title = useOpenLayout(({ history }) => history.layout.title);
  const saving = useOpenLayout((state) => state.saving);
  useEffect(() => {
    document.title = general.title(general.screens[screen], title);
  }, [general, screen, title]);
  return (
    <header
      className="head"
      data-screen={screen}
      data-saving={saving.stage}
      data-revision={saving.at.revision}
    >
      <h1>
        <span translate="no">{title}</span>
      </h1>
      <NotSaved />
      <WhereItStands />
      {/* At the bench nothing is done to the layout; what is noted there is taken back there. */}
      {screen === 'bench' ? null : <UndoLine />}
    </header>
  );
}

/** The line of prose that says where the set stands. */
function WhereItStands(): ReactNode {
  const { general } = useMessages();
  const planned = useOpenLayout((state) => state.planned);
  const problems = useOpenLayout((state) => state.problems);
  const says = () => {
    switch (planned.stage) {
      case 'none':
        return general.planning;
      case 'unknown':
        return general.sizeUnknown(problems.filter(({ severity }) => severity === 'error').length);
      case 'failed':
        return general.plannerFailed;
      case 'first':
        return planned.plan === null
          ? general.planning
          : standsSentence(planned.of, planned.plan, { isLast: false });
      case 'answered':
        return standsSentence(planned.of, planned.answer, { isLast: true });
    }
  };
  // Until the first plan of the layout as it is now and is cut now, the one before stands there.
  const isBehind = useOpenLayout(
    ({ history, cutting }) => !('of' in planned) || planned.of !== history.layout || planned.by !== cutting,
  );
  const isLibrary = planned.stage === 'answered' || (planned.stage === 'first' && planned.plan !== null);
  return (
    <p
      className="stands"
      lang={isLibrary ? 'en' : undefined}
      data-stage={isBehind ? 'behind' : planned.stage}
    >
      {says()}
    </p>
  );
}

/** A plain line under a heavy rule while something is not saved, or nothing is ever kept, with the ways out in it. */
function NotSaved(): ReactNode {
  const { general } = useMessages();
  const { now } = useWorld();
  const { saveAgain, copied } = useOpenLayoutStore();
  const isKept = useIsKept();
  const saving = useOpenLayout((state) => state.saving);
  const file = useOpenLayout(({ history }) => history.file);
  const copyWord = (
    <button
      type="button"
      className="say"
      onClick={() => {
        saveFile(fileNameOf(file), writeLayoutFile(file));
        copied(now());
      }}
    >
      {general.saving.saveCopy}
    </button>
  );
  return (
    <>
      {isKept ? null : (
        <div className="notice" role="status">
          <p>{general.saving.notKept}</p>
          <p className="deeds">{copyWord}</p>
        </div>
      )}
      {saving.beside === null ? null : (
        <p className="notice" role="status">
          {general.saving.beside}
        </p>
      )}
      {saving.problem === null ? null : (
        <div className="notice" role="alert">
          <p>{general.saving.failed}</p>
          <p>
            {saving.problem.kind === 'other'
              ? general.saving.why.other(saving.problem.says)
              : general.saving.why[saving.problem.kind]}
          </p>
          <p className="deeds">
            {copyWord}
            <button type="button" className="say" onClick={saveAgain}>
              {general.saving.tryAgain}
            </button>
          </p>
        </div>
      )}
    </>
  );
}

/** Undo and redo, each with what it undoes or does again in words; also by the usual keys. */
function UndoLine(): ReactNode {
  const { general } = useMessages();
  const store = useOpenLayoutStore();
  const last = useOpenLayout(({ history }) => history.done.at(-1) ?? null);
  const next = useOpenLayout(({ history }) => history.undone.at(-1) ?? null);
  useUndoKeys(store);
  return (
    <div className="undo">
      {last === null ? null : (
        <button type="button" className="say" onClick={store.undo} title={general.undo}>
          {general.undoes('')}
          <span lang="en">{editSentence(last.edit.told, 'printed')}</span>
        </button>
      )}
      {next === null ? null : (
        <button type="button" className="say" onClick={store.redo} title={general.redo}>
          {general.redoes('')}
          <span lang="en">{editSentence(next.edit.told, 'printed')}</span>
        </button>
      )}
      <Announced>
        <LastDone />
      </Announced>
    </div>
  );
}

/** What was done last, be it an edit, or the undoing or doing again of one; nothing until something is done here. */
function LastDone(): ReactNode {
  const { general } = useMessages();
  const history = useOpenLayout((state) => state.history);
  const [before, setBefore] = useState(history);
  const [told, setTold] = useState<{ readonly says: string; readonly done: Done } | null>(null);
  if (before !== history) {
    setBefore(history);
    setTold(lastDone(before, history, general));
  }
  if (told === null) return null;
  return (
    <>
      {told.says}
      <span lang="en">{editSentence(told.done.edit.told, 'printed')}</span>
    </>
  );
}

function lastDone(
  before: History,
  { done, undone }: History,
  says: { undone(sentence: string): string; redone(sentence: string): string },
): { readonly says: string; readonly done: Done } | null {
  const [last, next] = [done.at(-1), undone.at(-1)];
  if (next !== undefined && next === before.done.at(-1)) return { says: says.undone(''), done: next };
  if (last === undefined) return null;
  return { says: last === before.undone.at(-1) ? says.redone('') : '', done: last };
}

/** Ctrl or Cmd with Z undoes, with Shift and Z or with Y does again; not while a text is typed, which undoes its own. */
function useUndoKeys({ undo, redo }: { readonly undo: () => void; readonly redo: () => void }): void {
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.defaultPrevented) return;
      if (event.target instanceof HTMLElement && event.target.matches('input, textarea, select')) return;
      const key = event.key.toLowerCase();
      if (key === 'z' && !event.shiftKey) undo();
      else if (key === 'y' || (key === 'z' && event.shiftKey)) redo();
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', pressed);
    return () => window.removeEventListener('keydown', pressed);
  }, [undo, redo]);
}
