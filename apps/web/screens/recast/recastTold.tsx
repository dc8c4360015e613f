import { type ReactNode, useMemo, useState } from 'react';
import { recastFile } from '../../../../src/editing/index.ts';
import type { FileProblem } from '../../../../src/files/index.ts';
import { frontDrawing } from '../../../../src/guide/index.ts';
import { type Layout, sumsOf } from '../../../../src/layout/index.ts';
import { showSize, type Units } from '../../../../src/measure/index.ts';
import type { Recast, RecastRefused } from '../../../../src/planning/index.ts';
import {
  fileProblemSentence,
  recastRefusalSentence,
  recastWords,
  shortageSentences,
  sumSentence,
} from '../../../../src/words/index.ts';
import { Sentence } from '../../form/sentence.tsx';
import { TextBlank } from '../../form/textBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { Drawing } from '../../pictures/drawing.tsx';
import { goTo } from '../../route.ts';
import { useInHand } from '../../state/inHand.ts';
import { problemOf, type SavingProblem } from '../../state/saving.ts';
import { useWorld } from '../../world.ts';
import { StorageProblem } from '../shelf/told.tsx';

/** What came of planning the layout again, with what changed and why; or why it could not be done. */
export function RecastTold({
  told,
  drawn,
  units,
}: {
  readonly told: Recast | RecastRefused;
  /** The layout as it was. */
  readonly drawn: Layout;
  /** Those that were asked for. */
  readonly units: Units;
}): ReactNode {
  if (told.kind === 'refused')
    return (
      <div className="notice" role="alert" lang="en">
        {told.refusals.map((refusal) => {
          const sentence = recastRefusalSentence(refusal, drawn, { units, glyphs: 'printed' });
          return <p key={sentence}>{sentence}</p>;
        })}
      </div>
    );
  return <Recasted recast={told} drawn={drawn} />;
}

function Recasted({ recast, drawn }: { readonly recast: Recast; readonly drawn: Layout }): ReactNode {
  const { recast: says } = useMessages();
  const { layout, arrangement, answer } = recast;
  const words = useMemo(() => recastWords(recast, drawn, 'printed'), [recast, drawn]);
  const page = useMemo(() => frontDrawing(layout, arrangement, 0, null, 'coloured'), [layout, arrangement]);
  const showing = { units: layout.units, glyphs: 'printed' } as const;
  const sums = [...new Set(sumsOf(arrangement).map((sum) => sumSentence(sum, layout, showing)))];
  return (
    <div className="recast-told">
      <div role="status" lang="en">
        {words.head.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      {answer.kind === 'short' ? (
        <div className="notice" lang="en">
          {shortageSentences(answer, layout, showing).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      ) : null}
      <figure className="plate">
        <Drawing page={page} says={says.plate} />
        <figcaption>{says.plate}</figcaption>
      </figure>
      <Listed heading={says.changes} lines={words.changes} />
      <Listed heading={says.sums} lines={sums} />
      <Listed heading={says.papers} lines={words.papers} />
      <Listed heading={says.worse} lines={words.worse} />
      <Listed heading={says.conversion} lines={words.conversion} />
      <Keep recast={recast} drawn={drawn} />
    </div>
  );
}

function Listed({
  heading,
  lines,
}: {
  readonly heading: string;
  readonly lines: readonly string[];
}): ReactNode {
  if (lines.length === 0) return null;
  return (
    <>
      <h3>{heading}</h3>
      <ul lang="en">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}

/** Puts it on the shelf as a layout of its own, under a title of its own, and opens it. */
function Keep({ recast, drawn }: { readonly recast: Recast; readonly drawn: Layout }): ReactNode {
  const { recast: says, shelf: shelfSays } = useMessages();
  const { shelf } = useWorld();
  const { file } = useInHand();
  const { layout } = recast;
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState<readonly FileProblem[] | SavingProblem | null>(null);
  const title = typed ?? says.title(drawn.title, showSize(layout.base.size, layout.units));
  const keep = async () => {
    const written = recastFile(file, recast, title);
    if ('problems' in written) {
      setWrong(written.problems);
      return;
    }
    try {
      const { id } = await shelf.add(written.file);
      goTo({ screen: 'card', id });
    } catch (reason) {
      setWrong(problemOf(reason));
    }
  };
  return (
    <>
      <Sentence
        says={says.called}
        blanks={{
          title: <TextBlank name="title" label={says.labels.title} value={title} onSet={setTyped} />,
        }}
      />
      <p className="deeds">
        <button type="button" className="say" onClick={() => void keep()}>
          {says.keep}
        </button>
      </p>
      {wrong === null ? null : (
        <div className="notice" role="alert">
          {'kind' in wrong ? (
            <StorageProblem problem={wrong} says={shelfSays.problems.storage} />
          ) : (
            wrong.map((problem) => {
              const sentence = fileProblemSentence(problem);
              return (
                <p key={sentence} lang="en">
                  {sentence}
                </p>
              );
            })
          )}
        </div>
      )}
    </>
  );
}
