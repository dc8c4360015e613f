import type { ReactNode } from 'react';
import { settingOf } from '../../../../src/editing/index.ts';
import type { Path } from '../../../../src/files/index.ts';
import type { SetTime, Task } from '../../../../src/finished/index.ts';
import { Sentence } from '../../form/sentence.tsx';
import { WrittenBlank } from '../../form/writtenBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { useInHand } from '../../state/inHand.ts';
import { numberIn } from './boughtForm.tsx';

/** Who makes the set, at how many stations, and how many minutes a piece takes: sentences whose blanks may stay empty. */
export function TimeForm({ time }: { readonly time: SetTime }): ReactNode {
  const { time: says } = useMessages().card;
  const { layout } = useInHand();
  const { making } = layout;
  const taskOf = (id: string) => time.tasks.find((task) => task.id === id);
  const cut = time.tasks.find(({ kind }) => kind === 'cut');
  const general = [
    { name: 'cut', task: cut, says: says.cut },
    { name: 'score', task: taskOf('score'), says: says.score },
    { name: 'close', task: taskOf('close'), says: says.close },
  ] as const;
  return (
    <>
      <Sentence
        says={says.making}
        blanks={{
          helpers: <Counted name="helpers" value={making?.helpers ?? null} usual={says.oneHelper} />,
          stations: <Counted name="stations" value={making?.stations ?? null} usual={says.noStations} />,
          room: <Counted name="dryAtOnce" value={making?.dryAtOnce ?? null} usual={says.allRoom} />,
        }}
      />
      {general.map(({ name, task, says: sentence }) => {
        const value = making?.[name] ?? null;
        return task === undefined && value === null ? null : (
          <Sentence
            key={name}
            says={sentence}
            blanks={{
              minutes: (
                <Minutes
                  name={name}
                  path={['making', 'minutes', name]}
                  value={value}
                  usual={task?.minutes ?? 0}
                />
              ),
            }}
          />
        );
      })}
      {layout.parts.map((part, index) => {
        const ready = taskOf(`ready ${part.id}`);
        const lay = taskOf(`lay ${part.id}`);
        const blank = (name: 'ready' | 'lay', task: Task | undefined) => (
          <Minutes
            name={name}
            path={['parts', index, 'minutes', name]}
            value={part.minutes?.[name] ?? null}
            usual={task?.minutes ?? 0}
          />
        );
        return (
          <Sentence
            key={part.id}
            says={ready === undefined ? says.laid : says.part}
            blanks={{
              name: <span translate="no">{part.name}</span>,
              ready: blank('ready', ready),
              lay: blank('lay', lay),
            }}
          />
        );
      })}
    </>
  );
}

/** How many; left empty where it is as usual. */
function Counted({
  name,
  value,
  usual,
}: {
  readonly name: 'helpers' | 'stations' | 'dryAtOnce';
  readonly value: number | null;
  readonly usual: string;
}): ReactNode {
  const { time: says } = useMessages().card;
  const { file } = useInHand();
  const numbers = useNumbers();
  return (
    <WrittenBlank
      name={name}
      label={says.labels[name]}
      text={value === null ? '' : numbers.count(value)}
      shown={value === null ? usual : says.counted[name](numbers.count(value), value)}
      hint={says.hint}
      writtenAs={(text) => {
        const count = numbers.readCount(text);
        return Number.isNaN(count) ? text : count;
      }}
      editOf={(typed) => settingOf(file, ['making', name], typed)}
    />
  );
}

function Minutes({
  name,
  path,
  value,
  usual,
}: {
  readonly name: keyof ReturnType<typeof useMessages>['card']['time']['minutesLabels'];
  readonly path: Path;
  readonly value: number | null;
  readonly usual: number;
}): ReactNode {
  const { time: says } = useMessages().card;
  const { file } = useInHand();
  const numbers = useNumbers();
  const shown = numbers.shown(String(value ?? usual));
  return (
    <WrittenBlank
      name={name}
      label={says.minutesLabels[name]}
      text={value === null ? '' : shown}
      shown={value === null ? says.usualMinutes(shown) : says.minutes(shown)}
      hint={says.hint}
      writtenAs={(text) => numberIn(text, numbers)}
      editOf={(typed) => settingOf(file, path, typed)}
    />
  );
}
