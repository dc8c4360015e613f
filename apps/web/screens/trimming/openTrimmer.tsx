import { type ReactNode, useState } from 'react';
import type { JsonObject } from '../../../../src/files/index.ts';
import { fileProblemSentence } from '../../../../src/words/index.ts';
import { FileChoice } from '../../form/fileChoice.tsx';
import { FileRefused } from '../../form/fileRefused.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useCutting } from '../../state/useCutting.ts';
import { useWorld } from '../../world.ts';
import { openTrimmer, type TrimmerOpened } from './trimmerText.ts';

/** Takes a trimmer from a file; the one that was said before can be taken back, and what is wrong is told. */
export function OpenTrimmer(): ReactNode {
  const { open: words } = useMessages().trimming.trimmer;
  const { cutting } = useWorld();
  const { file } = useCutting();
  const [told, setTold] = useState<{
    readonly name: string;
    readonly opened: TrimmerOpened;
    readonly before: JsonObject | null;
  } | null>(null);

  const open = async (chosen: File) => {
    // A file that can no longer be read is no text either.
    const opened = await chosen.arrayBuffer().then(
      (bytes) => openTrimmer(new Uint8Array(bytes)),
      (): TrimmerOpened => ({ problems: null }),
    );
    if ('file' in opened) cutting.say(opened.file);
    setTold({ name: chosen.name, opened, before: file });
  };

  const before = told !== null && 'file' in told.opened && file === told.opened.file ? told.before : null;
  return (
    <>
      <p className="deeds">
        <FileChoice
          says={words.open}
          accept=".json,application/json"
          onChosen={([chosen]) => void open(chosen)}
        />
        {before === null ? null : (
          <button
            type="button"
            className="say"
            onClick={() => {
              cutting.say(before);
              setTold(null);
            }}
          >
            {words.takeBack}
          </button>
        )}
      </p>
      <FileRefused
        refused={
          told !== null && 'problems' in told.opened
            ? { name: told.name, sentences: told.opened.problems?.map(fileProblemSentence) ?? null }
            : null
        }
        says={words.refused}
        noText={words.noText}
      />
    </>
  );
}
