import { type ReactNode, useState } from 'react';
import { newPaper } from '../../../../src/editing/index.ts';
import { fileProblemSentence } from '../../../../src/words/index.ts';
import { ChoiceBlank } from '../../form/choiceBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { TextBlank } from '../../form/textBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useInHand } from '../../state/inHand.ts';
import { useOpenLayoutStore } from '../../state/layoutContext.ts';
import { CountOnHandBlank } from './countOnHandBlank.tsx';
import { type Kind, kinds } from './kinds.ts';
import { type SheetSize, sheetSizes, sizesFrom } from './sheetSizes.ts';

/** Puts a paper into the stash by saying what it is, and how many sheets of what size. */
export function AddPaper(): ReactNode {
  const { papers } = useMessages();
  const { file, layout } = useInHand();
  const store = useOpenLayoutStore();
  const sizes = sizesFrom(layout.units);
  const [kind, setKind] = useState<Kind>('patterned');
  const [named, setNamed] = useState<string | null>(null);
  const [count, setCount] = useState<number | null>(2);
  const [size, setSize] = useState<SheetSize>(sizes[0]!);
  const [wrong, setWrong] = useState<string | null>(null);
  const name = named ?? papers.names[kind];
  const put = () => {
    const wanted = { name, kind, size: sheetSizes[size], count };
    const problems = store.make(newPaper(file, layout, wanted));
    setWrong(problems === null ? null : problems.map(fileProblemSentence).join(' '));
    if (problems === null) setNamed(null);
  };
  return (
    <section className="add-paper">
      <h3>{papers.another}</h3>
      <Sentence
        says={papers.anotherIs}
        blanks={{
          kind: (
            <ChoiceBlank
              name="kind"
              label={papers.labels.kind}
              value={kind}
              choices={kinds.map((value) => ({ value, says: papers.kinds[value] }))}
              onSet={setKind}
            />
          ),
          name: <TextBlank name="name" label={papers.labels.name} value={name} onSet={setNamed} />,
          count: (
            <CountOnHandBlank name="count" label={papers.sheetLabels.count} value={count} onSet={setCount} />
          ),
          size: (
            <ChoiceBlank
              name="size"
              label={papers.sizeLabel}
              value={size}
              choices={sizes.map((value) => ({ value, says: papers.sizes[value] }))}
              onSet={setSize}
            />
          ),
        }}
      />
      <p className="wrong" role="alert" lang="en">
        {wrong}
      </p>
      <button type="button" className="say" onClick={put}>
        {papers.put}
      </button>
    </section>
  );
}
