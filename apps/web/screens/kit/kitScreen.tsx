import { type ReactNode, useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { kitOpened } from '../../../../src/editing/index.ts';
import { fileProblemSentence } from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { goTo } from '../../route.ts';
import { type OpenKitStore, openKit } from '../../state/openKit.ts';
import { useWorld } from '../../world.ts';
// A page that shows kits shows layouts too: what both need is then fetched once, in one piece.
import { NotThere } from '../layoutScreen.tsx';
import { Bags } from './bags.tsx';
import { KitContext, useKit } from './kitContext.ts';
import { KitGuide } from './kitGuide.tsx';
import { KitHead } from './kitHead.tsx';
import { KitSentences } from './kitSentences.tsx';
import { OtherLength } from './otherLength.tsx';
import { Short, Wrong } from './short.tsx';
import './kit.css';

/** A kit from the shelf: seats and papers in sentences with blanks, what is short with offers to tap, bags, cut list, guide. */
export function KitScreen({ id }: { readonly id: string }): ReactNode {
  const { kit } = useMessages();
  const opened = useOpened(id);
  if (opened === 'taking') return <p>{kit.loading}</p>;
  if (opened === 'not there') return <NotThere says={kit.notThere} />;
  if ('problems' in opened)
    return (
      <NotThere says={kit.unsound}>
        <ul lang="en">
          {opened.problems.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </NotThere>
    );
  return (
    <KitContext value={opened}>
      <FollowsSecondVersion />
      <KitHead />
      <div className="kit">
        <KitSentences />
        <Wrong />
        <Short />
        <Bags />
        <OtherLength />
        <KitGuide />
      </div>
    </KitContext>
  );
}

type Opened = OpenKitStore | 'taking' | 'not there' | { readonly problems: readonly string[] };

function useOpened(id: string): Opened {
  const { kits, planner, cutting } = useWorld();
  const [opened, setOpened] = useState<Opened>('taking');
  useEffect(() => {
    let store: OpenKitStore | null = null;
    let left = false;
    const open = async () => {
      const [record] = await Promise.all([kits.open(id), cutting.known]);
      if (left) return;
      if (record === null) {
        setOpened('not there');
        return;
      }
      const history = kitOpened(record);
      if ('problems' in history) {
        setOpened({ problems: history.problems.map(fileProblemSentence) });
        return;
      }
      store = openKit({ id, revision: record.revision, history }, { kits, planner, cutting });
      setOpened(store);
    };
    void open();
    return () => {
      left = true;
      store?.close();
    };
  }, [id, kits, planner, cutting]);
  return opened;
}

/** The address is that of the second version once the kit has become one. */
function FollowsSecondVersion(): null {
  const store = useKit();
  const beside = useStore(store, (state) => state.beside);
  const id = useStore(store, (state) => state.id);
  const saving = useStore(store, (state) => state.saving);
  useEffect(() => {
    if (beside && saving === 'saved') goTo({ screen: 'kit', id }, { instead: true });
  }, [beside, saving, id]);
  return null;
}
