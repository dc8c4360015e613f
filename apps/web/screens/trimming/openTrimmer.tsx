import { type ReactNode, useRef, useState } from 'react';
import type { JsonObject } from '../../../../src/files/index.ts';
import { fileProblemSentence } from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useCutting } from '../../state/useCutting.ts';
import { useWorld } from '../../world.ts';
import { openTrimmer, type TrimmerOpened } from './trimmerText.ts';

/** Takes a trimmer from a file; the one that was said before can be taken back, and what is wrong is told. */
export function OpenTrimmer(): ReactNode {
  const { open: words } = useMessages().trimming.trimmer;
  const { cutting } = useWorld();
  const { file } = useCutting();
  const input = useRef<HTMLInputElement>(null);
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
      <input
        ref={input}
        type="file"
        className="unseen"
        tabIndex={-1}
        aria-hidden="true"
        accept=".json,application/json"
        onChange={(event) => {
          const [chosen] = event.currentTarget.files ?? [];
          if (chosen !== undefined) void open(chosen);
          // The same file can then be chosen again.
          event.currentTarget.value = '';
        }}
      />
      <p className="deeds">
        <button type="button" className="say" onClick={() => input.current?.click()}>
          {words.open}
        </button>
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
      <div role="alert">
        {told !== null && 'problems' in told.opened ? (
          <div className="notice">
            <p>
              {words.refused} <span translate="no">{told.name}</span>
            </p>
            {told.opened.problems === null ? (
              <p>{words.noText}</p>
            ) : (
              <ul lang="en">
                {told.opened.problems.map((problem) => {
                  const sentence = fileProblemSentence(problem);
                  return <li key={sentence}>{sentence}</li>;
                })}
              </ul>
            )}
          </div>
        ) : null}
      </div>
    </>
  );
}
