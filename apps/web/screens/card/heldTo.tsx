import { type ReactNode, useState } from 'react';
import { useStore } from 'zustand';
import { fileProblemSentence } from '../../../../src/words/index.ts';
import { CountBlank } from '../../form/countBlank.tsx';
import { FileChoice } from '../../form/fileChoice.tsx';
import { FileRefused, type RefusedFile } from '../../form/fileRefused.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';
import { mostSets } from '../../state/standards.ts';
import { useWorld } from '../../world.ts';
import { postFileIn } from './postFileIn.ts';

/** What the person holds her finished cards to, whatever the layout: how rare a slip of the tears is to be, and her post. */
export function HeldTo(): ReactNode {
  const { heldTo } = useMessages().card;
  const { standards } = useWorld();
  const { oneSetIn, post } = useStore(standards);
  const [refused, setRefused] = useState<RefusedFile | null>(null);

  const take = async (chosen: File) => {
    const bytes = await chosen.arrayBuffer().catch(() => null);
    const read = bytes === null ? null : postFileIn(new Uint8Array(bytes));
    if (read === null) setRefused({ name: chosen.name, sentences: null });
    else {
      const problems = 'problems' in read ? read.problems : standards.goBy(read.file);
      const sentences = problems?.map(fileProblemSentence) ?? null;
      setRefused(sentences === null ? null : { name: chosen.name, sentences });
    }
  };

  return (
    <div className="held-to">
      <Sentence
        says={heldTo.risk}
        blanks={{
          sets: (
            <CountBlank
              name="sets"
              label={heldTo.sets}
              value={oneSetIn}
              least={2}
              most={mostSets}
              onSet={(sets) => standards.putUpWith(sets)}
            />
          ),
        }}
      />
      <p>
        {post === null ? heldTo.knownPosts : heldTo.ownPost}
        {post === null ? null : (
          <>
            {' '}
            <span translate="no">{post.table.country}</span>, <span translate="no">{post.table.asOf}</span>.
          </>
        )}
      </p>
      <p className="deeds">
        <FileChoice
          says={heldTo.fromFile}
          accept=".json,application/json"
          onChosen={([chosen]) => void take(chosen)}
        />
        {post === null ? null : (
          <button type="button" className="say" onClick={() => standards.goByKnownPosts()}>
            {heldTo.layAside}
          </button>
        )}
      </p>
      <FileRefused refused={refused} says={heldTo.refused} noText={heldTo.noText} />
    </div>
  );
}
