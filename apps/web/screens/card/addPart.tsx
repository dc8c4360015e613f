import { type ReactNode, useState } from 'react';
import { newPart, type PartKind } from '../../../../src/editing/index.ts';
import type { Layout } from '../../../../src/layout/index.ts';
import { ChoiceBlank } from '../../form/choiceBlank.tsx';
import { PapersBlank } from '../../form/papersBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { TextBlank } from '../../form/textBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useInHand } from '../../state/inHand.ts';
import { useOpenLayoutStore } from '../../state/layoutContext.ts';
import { useLookedAt } from './lookedAt.ts';

const kinds: readonly PartKind[] = ['mat', 'panel', 'strip', 'circle', 'sentiment'];

/** The name, with a number where the pile has a part of that name. */
function freshName(name: string, layout: Layout): string {
  const names = new Set(layout.parts.map((part) => part.name));
  let number = 1;
  while (names.has(number === 1 ? name : `${name} ${number}`)) number += 1;
  return number === 1 ? name : `${name} ${number}`;
}

/** Lays a part on the card by saying what and on what. */
export function AddPart(): ReactNode {
  const { card: words } = useMessages();
  const inHand = useInHand();
  const store = useOpenLayoutStore();
  const { face, lookAt } = useLookedAt();
  const { layout, arrangement } = inHand;
  const [kind, setKind] = useState<PartKind>('panel');
  const [named, setNamed] = useState<string | null>(null);
  const [chosenOn, setOn] = useState<string | null>(null);
  const [chosenPaper, setPaper] = useState<string | readonly string[] | null | undefined>(undefined);

  // Until she says otherwise: on what lies lowest on the face that is looked at, of the first paper.
  const onFace = arrangement.parts.filter((part) => part.face === face);
  const usualOn = onFace.find(({ part }) => part.on === face)?.part.id ?? face;
  const isThere = (id: string) => id in words.faces || layout.parts.some((part) => part.id === id);
  const on = chosenOn !== null && isThere(chosenOn) ? chosenOn : usualOn;
  const paper = chosenPaper === undefined ? (layout.papers.keys().next().value ?? null) : chosenPaper;
  const name = named ?? freshName(words.add.names[kind], layout);
  const faces =
    layout.base.fold === 'none' ? (['base', 'back'] as const) : (['base', 'inside', 'back'] as const);
  const lay = () => {
    const problems = store.make(newPart(inHand, { name, on, paper, kind }));
    if (problems !== null) return;
    const added = store.getState().arrangement.parts.at(-1)!;
    lookAt({ face: added.face });
    store.take(added.part.id);
    setNamed(null);
    setOn(null);
  };
  return (
    <section className="add-part unprinted" aria-label={words.add.heading}>
      <Sentence
        says={words.add.says}
        blanks={{
          kind: (
            <ChoiceBlank
              name="kind"
              label={words.add.kind}
              value={kind}
              choices={kinds.map((value) => ({ value, says: words.add.kinds[value] }))}
              onSet={setKind}
            />
          ),
          paper: (
            <PapersBlank
              name="paper"
              label={words.blanks.paper}
              layout={layout}
              papers={paper === null ? [] : typeof paper === 'string' ? [paper] : paper}
              onSet={setPaper}
            />
          ),
          on: (
            <ChoiceBlank
              name="on"
              label={words.blanks.on}
              value={on}
              choices={[
                ...faces.map((value) => ({ value: value, says: words.faces[value] })),
                ...layout.parts.map((part) => ({ value: part.id, says: part.name, own: true })),
              ]}
              onSet={setOn}
            />
          ),
          name: <TextBlank name="name" label={words.add.name} value={name} onSet={setNamed} />,
        }}
      />
      <button type="button" className="say" onClick={lay}>
        {words.add.do}
      </button>
    </section>
  );
}
