import type { Json, JsonObject } from '../files/index.ts';
import {
  inches,
  type Length,
  lengthOfTicks,
  millimetres,
  minus,
  roundTo,
  type Size,
  times,
  type Units,
} from '../measure/index.ts';
import { type Edit, partAdded } from './edit.ts';
import { freshId } from './freshId.ts';
import type { InHand } from './inHand.ts';
import { typingOf } from './typing.ts';
import { usualBorder } from './usualBorder.ts';

/** What a part may be called to be, as the trade does. */
export type PartKind = 'mat' | 'panel' | 'strip' | 'circle' | 'sentiment';

/** What is said of a part that is to be laid on the card. */
export interface PartWanted {
  readonly name: string;
  /** A face or the id of a part. */
  readonly on: string;
  /** As the file has it: an id, a list of ids, `null` for what is bought. */
  readonly paper: Json;
  readonly kind: PartKind;
}

/**
 * A part laid on top of the pile, in the middle of what it lies on: of a size in round lengths that goes on it, to be
 * changed afterwards. A mat is inset, and a strip goes across, by the border that the layout uses most.
 */
export function newPart(inHand: InHand, { name, on, paper, kind }: PartWanted): Edit {
  const { layout, arrangement } = inHand;
  const bed = arrangement.parts.find(({ part }) => part.id === on);
  const typing = typingOf(layout);
  const part = kinds[kind]({
    room: roomOn(bed?.seen ?? layout.base.size, bed?.part.shape.kind === 'circle'),
    round: bed?.part.shape.kind === 'circle',
    border: usualBorder(layout),
    units: layout.units,
    text: (length) => typing(length),
  });
  return partAdded(layout.parts.length, { id: freshId(layout, name), name, on, ...part, paper });
}

/** What a kind of part is made from. */
interface Making {
  /** What a rectangle may cover of what it lies on. */
  readonly room: Size;
  /** Whether it lies on a circle. */
  readonly round: boolean;
  readonly border: Length;
  readonly units: Units;
  readonly text: (length: Length) => string;
}

const kinds = {
  mat: ({ room, round, border, units, text }) => {
    const most = roundShare(lengthOfTicks(Math.min(room.width, room.height)), 1, 4, units);
    const inset = text(lengthOfTicks(Math.min(border, most)));
    return round ? { shape: 'circle', inset } : { inset };
  },
  panel: (making) => sized(making, [2, 3], [2, 3]),
  strip: (making) => {
    const { room, round, border, units, text } = making;
    const goesAcross = !round && minus(room.width, times(border, 2)) > border;
    if (!goesAcross) return sized(making, [4, 5], [1, 5]);
    const place = { left: text(border), right: text(border) };
    return { size: ['fill', text(roundShare(room.height, 1, 5, units))], place };
  },
  circle: ({ room, units, text }) => {
    const across = lengthOfTicks(Math.min(room.width, room.height));
    return { shape: 'circle', diameter: text(roundShare(across, 1, 2, units)) };
  },
  sentiment: (making) => ({ ...sized(making, [3, 5], [1, 6]), stamped: true }),
} as const satisfies Record<PartKind, (making: Making) => JsonObject>;

function sized(
  { room, units, text }: Making,
  across: readonly [number, number],
  down: readonly [number, number],
): JsonObject {
  return {
    size: [text(roundShare(room.width, ...across, units)), text(roundShare(room.height, ...down, units))],
  };
}

/** All of a rectangle; of a circle the square within it, of which 7/10 of its diameter is a little less. */
function roomOn(seen: Size, round: boolean): Size {
  if (!round) return seen;
  const side = lengthOfTicks(Math.floor((seen.width * 7) / 10));
  return { width: side, height: side };
}

/** So many parts of a length, rounded down to as round a length as it is long enough for. */
function roundShare(length: Length, count: number, parts: number, units: Units): Length {
  const share = lengthOfTicks(Math.max(1, Math.floor((length * count) / parts)));
  const step = roundSteps[units].find((one) => share >= one);
  return step === undefined ? share : roundTo(share, step, 'down');
}

const roundSteps: Readonly<Record<Units, readonly Length[]>> = {
  in: [inches(1, 4), inches(1, 8), inches(1, 16), inches(1, 64)],
  mm: [millimetres(5), millimetres(1), millimetres(0.5), millimetres(0.1)],
};
