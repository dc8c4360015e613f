import { type ReactNode, useEffect } from 'react';
import { writeKitFile } from '../../../../src/files/index.ts';
import { kitEditSentence, kitEnoughSentence, kitSentence } from '../../../../src/words/index.ts';
import { stemOf } from '../../exchange/fileName.ts';
import { saveFile } from '../../exchange/saveFile.ts';
import { useMessages } from '../../messages/messages.ts';
import { useIsKept } from '../../world.ts';
import { useKit, useOpenKit } from './kitContext.ts';

/** What stands on top: the title, how many kits and whether they can be filled, what can be undone. */
export function KitHead(): ReactNode {
  const { general, kit: says } = useMessages();
  const title = useOpenKit(({ history }) => history.kit.title);
  const report = useOpenKit((state) => state.report);
  const stage = useOpenKit((state) => state.stage);
  const saving = useOpenKit((state) => state.saving);
  const revision = useOpenKit((state) => state.revision);
  const beside = useOpenKit((state) => state.beside);
  const file = useOpenKit(({ history }) => history.file);
  const { saveAgain } = useKit();
  const isKept = useIsKept();
  useEffect(() => {
    document.title = says.documentTitle(title);
  }, [says, title]);
  return (
    <header className="head" data-saving={saving} data-revision={revision}>
      <h1>
        <span translate="no">{title}</span>
      </h1>
      {isKept ? null : (
        <p className="notice" role="status">
          {general.saving.notKept}
        </p>
      )}
      {beside ? (
        <p className="notice" role="status">
          {says.beside}
        </p>
      ) : null}
      {saving === 'failed' ? (
        <div className="notice" role="alert">
          <p>{says.saveFailed}</p>
          <button type="button" className="say" onClick={saveAgain}>
            {says.tryAgain}
          </button>
        </div>
      ) : null}
      <p className="stands" data-stage={typeof stage === 'string' ? stage : 'failed'}>
        <span lang="en">
          {kitSentence(report)}
          {report.planned === null ? '' : ` ${kitEnoughSentence(report.planned)}`}
        </span>
        {stage === 'working' ? ` ${says.working}` : ''}
        {typeof stage === 'string' ? '' : ` ${says.failed(stage.failed)}`}
      </p>
      <UndoLine />
      <p className="deeds">
        <button
          type="button"
          className="say"
          onClick={() => saveFile(`${stemOf(title)}.kit.json`, writeKitFile(file))}
        >
          {says.onShelf.saveCopy}
        </button>
      </p>
    </header>
  );
}

function UndoLine(): ReactNode {
  const { general } = useMessages();
  const store = useKit();
  const last = useOpenKit(({ history }) => history.done.at(-1) ?? null);
  const next = useOpenKit(({ history }) => history.undone.at(-1) ?? null);
  return (
    <div className="undo">
      {last === null ? null : (
        <button type="button" className="say" onClick={() => store.step('undo')} title={general.undo}>
          {general.undoes('')}
          <span lang="en">{kitEditSentence(last.edit.told)}</span>
        </button>
      )}
      {next === null ? null : (
        <button type="button" className="say" onClick={() => store.step('redo')} title={general.redo}>
          {general.redoes('')}
          <span lang="en">{kitEditSentence(next.edit.told)}</span>
        </button>
      )}
    </div>
  );
}
