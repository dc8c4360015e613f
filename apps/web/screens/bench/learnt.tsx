import { type ReactNode, useMemo, useState } from 'react';
import { minutesSet } from '../../../../src/editing/index.ts';
import { minutesLearnt } from '../../../../src/finished/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import type { Making } from '../../state/benchState.ts';
import { useOpenLayout, useOpenLayoutStore } from '../../state/layoutContext.ts';
import type { Line } from './lines.ts';
import { tookOf } from './pace.ts';

/** What the set that is made teaches of minutes a piece, to be counted with from now on; nothing where it teaches nothing. */
export default function Learnt({
  making,
  lines,
}: {
  readonly making: Making;
  readonly lines: readonly Line[];
}): ReactNode {
  const { learnt: says } = useMessages().bench;
  const numbers = useNumbers();
  const store = useOpenLayoutStore();
  const file = useOpenLayout(({ history }) => history.file);
  const [isTaken, setTaken] = useState(false);
  const { layout, arrangement } = making.set;
  const learnt = useMemo(
    () => minutesLearnt(layout, arrangement, tookOf(lines, making.moments)),
    [layout, arrangement, lines, making.moments],
  );
  const edit = useMemo(() => minutesSet(file, learnt), [file, learnt]);
  if (edit === null) return null;
  if (isTaken) return <p role="status">{says.taken}</p>;
  return (
    <section className="learnt" aria-label={says.heading}>
      <p>{says.heading}</p>
      <ul>
        {learnt.map(({ field, part, was, now }) => (
          <li key={`${field} ${part ?? ''}`}>
            {part === null ? null : (
              <span translate="no">{layout.parts.find(({ id }) => id === part)?.name ?? part}: </span>
            )}
            {says.minutes(says.of[field], numbers.shown(String(now)), numbers.shown(String(was)))}
          </li>
        ))}
      </ul>
      <p>{says.how}</p>
      <p className="deeds">
        <button
          type="button"
          className="say"
          onClick={() => {
            store.make(edit);
            setTaken(true);
          }}
        >
          {says.take}
        </button>
      </p>
    </section>
  );
}
