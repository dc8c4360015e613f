import { type ReactNode, useState } from 'react';
import { type InHand, roomSet, settingOf } from '../../../../src/editing/index.ts';
import { valueAt } from '../../../../src/files/index.ts';
import {
  type Dimension,
  dimensionsOf,
  type Layout,
  type Room,
  type RoomName,
  type Rooms as RoomsOf,
  roomNames,
  roomNamesOf,
} from '../../../../src/layout/index.ts';
import {
  type Length,
  lengthOfTicks,
  type Marking,
  showLengthWithUnit,
} from '../../../../src/measure/index.ts';
import { partName } from '../../../../src/words/index.ts';
import { ChoiceBlank } from '../../form/choiceBlank.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useInHand, useMarking } from '../../state/inHand.ts';
import { useOpenLayoutStore } from '../../state/layoutContext.ts';

/** Room that a length of the layout has. */
interface Roomed {
  /** Id of its part, or `base`. */
  readonly part: string;
  readonly name: RoomName;
  readonly room: Room;
}

/** Every length that may move, the base first, then in the order of the pile. */
export function roomsOf({ base, parts }: Layout): readonly Roomed[] {
  const own = (part: string, rooms: RoomsOf | undefined) =>
    rooms === undefined || rooms === 'none'
      ? []
      : roomNames.flatMap((name) => {
          const room = rooms[name];
          return room === undefined ? [] : [{ part, name, room }];
        });
  return [...own('base', base.rooms), ...parts.flatMap(({ id, rooms }) => own(id, rooms))];
}

/** The lengths that may move and how far, each a sentence; more can be let move, and each be kept as it is. */
export function Rooms(): ReactNode {
  const inHand = useInHand();
  const all = roomsOf(inHand.layout);
  return (
    <>
      {all.length === 0 ? null : (
        <ul className="rooms">
          {all.map((roomed) => (
            <li key={`${roomed.part} ${roomed.name}`}>
              <RoomForm roomed={roomed} inHand={inHand} />
            </li>
          ))}
        </ul>
      )}
      <LetMove inHand={inHand} taken={all} />
    </>
  );
}

function RoomForm({
  roomed: { part, name, room },
  inHand,
}: {
  readonly roomed: Roomed;
  readonly inHand: InHand;
}): ReactNode {
  const { suit } = useMessages().trimming;
  const { file, layout } = inHand;
  const marking = useMarking();
  const store = useOpenLayoutStore();
  const of = placeOf(layout, part);
  const typed = (end: 0 | 1, length: Length) => {
    const text = valueAt(file, [...(of === 'base' ? ['base'] : ['parts', of]), 'room', name, end]);
    return typeof text === 'string' ? text : showLengthWithUnit(length, layout.units);
  };
  const ends = [typed(0, room.least), typed(1, room.most)] as const;
  const end = (which: 'least' | 'most') => (
    <LengthBlank
      name={which}
      label={suit.labels[which]}
      value={room[which]}
      typed={ends[which === 'least' ? 0 : 1]}
      marking={marking}
      least={isSize(name) ? 1 : Number.NEGATIVE_INFINITY}
      editOf={(text) => roomSet(file, of, name, which === 'least' ? [text, ends[1]] : [ends[0], text])}
    />
  );
  return (
    <>
      <Sentence
        says={suit.room}
        blanks={{
          length: <span>{suit.lengths[name]}</span>,
          part: <PartName layout={layout} part={part} />,
          least: end('least'),
          most: end('most'),
        }}
      />
      <button type="button" className="say" onClick={() => store.make(roomSet(file, of, name, null))}>
        {suit.keep}
      </button>
    </>
  );
}

/** Lets one length more move, a little either way at first. */
function LetMove({
  inHand,
  taken,
}: {
  readonly inHand: InHand;
  readonly taken: readonly Roomed[];
}): ReactNode {
  const { suit } = useMessages().trimming;
  const store = useOpenLayoutStore();
  const { file, layout, arrangement } = inHand;
  const marking = useMarking();
  const [wished, setWished] = useState<{ readonly part?: string; readonly name?: RoomName }>({});
  const free = ['base', ...layout.parts.map(({ id }) => id)].flatMap((part) => {
    const names = roomNamesOf(layout, part).filter(
      (name) =>
        lengthNow(inHand, part, name) !== null &&
        !taken.some((other) => other.part === part && other.name === name),
    );
    // A length that follows from others moves with those; room for it only says how far.
    const [own, following] = [true, false].map((is) =>
      names.filter((name) => isDrawn(layout, part, name) === is),
    );
    return names.length === 0 ? [] : [{ part, names: [...own!, ...following!] }];
  });
  // What is cut from paper moves first; a base seldom does.
  const chosen =
    free.find(({ part }) => part === wished.part) ?? free.find(({ part }) => part !== 'base') ?? free[0];
  if (chosen === undefined) return null;
  const name = chosen.names.find((one) => one === wished.name) ?? chosen.names[0]!;
  const add = () => {
    const now = lengthNow({ layout, arrangement }, chosen.part, name);
    if (now === null) return;
    store.make(roomSet(file, placeOf(layout, chosen.part), name, aroundIt(now, name, marking)));
  };
  return (
    <>
      <Sentence
        says={suit.letMove}
        blanks={{
          length: (
            <ChoiceBlank
              name="length"
              label={suit.labels.length}
              value={name}
              choices={chosen.names.map((value) => ({ value, says: suit.lengths[value] }))}
              onSet={(to) => setWished({ part: chosen.part, name: to })}
            />
          ),
          part: (
            <ChoiceBlank
              name="part"
              label={suit.labels.part}
              value={chosen.part}
              choices={free.map(({ part }) => ({
                value: part,
                says: part === 'base' ? suit.base : partName(layout, part),
                own: part !== 'base',
              }))}
              onSet={(part) => setWished({ part })}
            />
          ),
        }}
      />
      <p className="deeds">
        <button type="button" className="say" onClick={add}>
          {suit.let}
        </button>
      </p>
      {layout.parts.map(({ id, rooms }, index) =>
        rooms === 'none' ? (
          <p key={id}>
            <PartName layout={layout} part={id} />: {suit.mayNot}{' '}
            <button
              type="button"
              className="say"
              onClick={() => store.make(settingOf(file, ['parts', index, 'room'], undefined))}
            >
              {suit.mayAgain}
            </button>
          </p>
        ) : null,
      )}
    </>
  );
}

function PartName({ layout, part }: { readonly layout: Layout; readonly part: string }): ReactNode {
  const { suit } = useMessages().trimming;
  return part === 'base' ? <span>{suit.base}</span> : <span translate="no">{partName(layout, part)}</span>;
}

function placeOf(layout: Layout, part: string): 'base' | number {
  return part === 'base' ? 'base' : layout.parts.findIndex(({ id }) => id === part);
}

function isSize(name: RoomName): boolean {
  return name === 'width' || name === 'height' || name === 'diameter' || name === 'inset';
}

/** Whether it is a length that the layout was drawn with; else it follows from others. */
export function isDrawn(layout: Layout, part: string, name: RoomName): boolean {
  return drawnLength(layout, part, name) !== undefined;
}

function drawnLength(layout: Layout, part: string, name: RoomName): Dimension | undefined {
  return dimensionsOf(layout).find((one) => one.part === part && one.name === name);
}

/** How long it is now: as it was drawn, else as it follows from the others; `null`: that is not known. */
function lengthNow(
  { layout, arrangement }: Pick<InHand, 'layout' | 'arrangement'>,
  part: string,
  name: RoomName,
): Length | null {
  const drawn = drawnLength(layout, part, name);
  if (drawn !== undefined) return drawn.length;
  if (name !== 'width' && name !== 'height') return null;
  return arrangement.parts.find((arranged) => arranged.part.id === part)?.cut?.[name] ?? null;
}

/** Four marks less to four marks more; a size stays more than nothing. */
function aroundIt(now: Length, name: RoomName, { step, units }: Marking): readonly [string, string] {
  const least = now - 4 * step;
  const from = isSize(name) ? Math.max(Math.min(now, step), least) : least;
  return [
    showLengthWithUnit(lengthOfTicks(from), units),
    showLengthWithUnit(lengthOfTicks(now + 4 * step), units),
  ];
}
