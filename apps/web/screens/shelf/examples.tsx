import { type ReactNode, useMemo } from 'react';
import buttonTin from '../../../../examples/button-tin.card.json?raw';
import kiteDay from '../../../../examples/kite-day.card.json?raw';
import lanternWalk from '../../../../examples/lantern-walk.card.json?raw';
import { readLayoutFile, type SavedLayout } from '../../../../src/files/index.ts';
import { Filled } from '../../form/filled.tsx';
import { useMessages } from '../../messages/messages.ts';
import { goTo } from '../../route.ts';
import { problemOf } from '../../state/saving.ts';
import { useWorld } from '../../world.ts';
import { Facts } from './catalogue.tsx';
import { Front } from './front.tsx';
import { StorageProblem, useTell } from './told.tsx';

/** The sets that come with the app; a copy of one is put on the shelf and opened. */
export function Examples(): ReactNode {
  const { shelf: says } = useMessages();
  const { shelf } = useWorld();
  const tell = useTell();
  const take = async (file: SavedLayout) => {
    try {
      const { id } = await shelf.add(file);
      goTo({ screen: 'card', id });
    } catch (reason) {
      tell({
        isProblem: true,
        says: <StorageProblem problem={problemOf(reason)} says={says.problems.storage} />,
      });
    }
  };
  return (
    <section className="unprinted" aria-labelledby="shelf-examples">
      <h2 id="shelf-examples">{says.examples.heading}</h2>
      <p>{says.examples.says}</p>
      <ul className="catalogue">
        {[kiteDay, lanternWalk, buttonTin].map((text) => (
          <Example key={text} text={text} onTake={(file) => void take(file)} />
        ))}
      </ul>
    </section>
  );
}

/** One of them. Each reads its own file, so that not all are read at one go. */
function Example({
  text,
  onTake,
}: {
  readonly text: string;
  readonly onTake: (file: SavedLayout) => void;
}): ReactNode {
  const { shelf: says } = useMessages();
  const read = useMemo(() => readLayoutFile(text), [text]);
  if ('problems' in read) return null;
  const { file, layout } = read;
  return (
    <li className="entry" lang="en">
      <div className="plate">
        <Front layout={layout} />
      </div>
      <div>
        <h3 translate="no">{layout.title}</h3>
        <Facts layout={layout} />
        <button type="button" className="say" onClick={() => onTake(file)}>
          <Filled says={says.examples.take} title={layout.title} />
        </button>
      </div>
    </li>
  );
}
