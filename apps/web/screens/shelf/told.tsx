import { createContext, type ReactNode, useContext, useEffect, useRef } from 'react';
import { fileProblemSentence } from '../../../../src/words/index.ts';
import type { ShelfZipProblem } from '../../exchange/shelfZip.ts';
import { Filled } from '../../form/filled.tsx';
import { useMessages } from '../../messages/messages.ts';
import type { SavingProblem } from '../../state/saving.ts';
import type { FileRefused } from './openFile.ts';

/** What is told on the shelf of what was done last. */
export interface Told {
  readonly says: ReactNode;
  readonly isProblem: boolean;
}

/** Tells what was done, in place of what was told before; `null` tells nothing. */
export const TellContext = createContext<(told: Told | null) => void>(() => {});

export function useTell(): (told: Told | null) => void {
  return useContext(TellContext);
}

/** What was told last, where it is seen and heard: it comes into sight, wherever on the page the tap was. */
export function ToldLine({ told }: { readonly told: Told | null }): ReactNode {
  const line = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (told !== null) line.current?.scrollIntoView({ block: 'nearest' });
  }, [told]);
  return (
    <div ref={line}>
      <div role="status">
        {told !== null && !told.isProblem ? <div className="told">{told.says}</div> : null}
      </div>
      <div role="alert">{told?.isProblem ? <div className="notice">{told.says}</div> : null}</div>
    </div>
  );
}

/** Why the browser did not do it. */
export function StorageProblem({
  problem,
  says,
}: {
  readonly problem: SavingProblem;
  readonly says: string;
}): ReactNode {
  const { problems } = useMessages().shelf;
  return (
    <>
      <p>{says}</p>
      {problem.kind === 'full' ? <p>{problems.full}</p> : null}
      {problem.kind === 'newer' ? <p>{problems.newerPage}</p> : null}
      {problem.kind === 'other' ? <p>{problems.says(problem.says)}</p> : null}
    </>
  );
}

/** Why a file was not opened. */
export function FileProblem({
  name,
  refused,
}: {
  readonly name: string;
  readonly refused: FileRefused;
}): ReactNode {
  const { problems } = useMessages().shelf;
  return (
    <>
      <p>
        <Filled says={problems.notOpened} name={name} />
      </p>
      <Why refused={refused} />
    </>
  );
}

function Why({ refused }: { readonly refused: FileRefused }): ReactNode {
  const { problems } = useMessages().shelf;
  switch (refused.kind) {
    case 'too long':
      return <p>{problems.tooLarge}</p>;
    case 'no text':
      return <p>{problems.noText}</p>;
    case 'no layout':
      return <p>{problems.noLayout}</p>;
    case 'layout file':
      return <Sentences of={refused.problems} />;
    case 'zip':
      return <ZipWhy problem={refused.problem} />;
    case 'storage':
      return <StorageProblem problem={refused.problem} says={problems.storage} />;
  }
}

function ZipWhy({ problem }: { readonly problem: ShelfZipProblem }): ReactNode {
  const { problems } = useMessages().shelf;
  return (
    <>
      <p>
        <Filled says={problems[problem.kind]} inner={'name' in problem ? problem.name : ''} />
      </p>
      {problem.kind === 'layout' ? <Sentences of={problem.problems} /> : null}
    </>
  );
}

function Sentences({ of }: { readonly of: readonly Parameters<typeof fileProblemSentence>[0][] }): ReactNode {
  return (
    <ul lang="en">
      {of.map((problem) => {
        const sentence = fileProblemSentence(problem);
        return <li key={sentence}>{sentence}</li>;
      })}
    </ul>
  );
}
