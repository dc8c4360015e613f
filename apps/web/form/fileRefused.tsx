import type { ReactNode } from 'react';

/** A file that was not taken, and why. */
export interface RefusedFile {
  readonly name: string;
  /** What is wrong with it, sentence by sentence in the library's words; `null`: it is no text at all. */
  readonly sentences: readonly string[] | null;
}

/** What is wrong with a file that was chosen, told as soon as it is known; nothing where none was refused. */
export function FileRefused({
  refused,
  says,
  noText,
}: {
  readonly refused: RefusedFile | null;
  /** Stands before the name of the file. */
  readonly says: string;
  /** What is said of a file that is no text. */
  readonly noText: string;
}): ReactNode {
  return (
    <div role="alert">
      {refused === null ? null : (
        <div className="notice">
          <p>
            {says} <span translate="no">{refused.name}</span>
          </p>
          {refused.sentences === null ? (
            <p>{noText}</p>
          ) : (
            <ul lang="en">
              {refused.sentences.map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
          )}
        </div>
      )}
    </div>
  );
}
