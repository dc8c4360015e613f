import type { Adhesive, AdhesiveNeed, FinishedProblem, HeldPart, Holding } from '../finished/index.ts';
import type { Layout } from '../layout/index.ts';
import type { AdhesiveKind } from '../making/index.ts';
import { lengthOfTicks, showLengthWithUnit, ticksPerInch, ticksPerMillimetre } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { adhesiveNames } from './adhesiveWords.ts';
import { capital, counted } from './count.ts';
import { minutesWords } from './minutesWords.ts';
import type { Showing } from './showing.ts';
import { placeName } from './tearSentence.ts';

/** Why nothing can hold a part where nobody sees it, and what may help. */
export function holdingProblemSentence(
  { code, part = '', names, numbers }: FinishedProblem,
  layout: Layout,
  showing: Showing,
): string {
  const it = placeName(layout, part);
  const kind = adhesiveNames[names.kind as AdhesiveKind];
  const shown = (ticks: number | undefined) => shownLength(ticks ?? 0, showing);
  const [least, most] = [Math.floor, Math.ceil].map((round) => (ticks: number | undefined) => {
    const step: number = showing.units === 'in' ? ticksPerInch / 32 : ticksPerMillimetre / 2;
    return `about ${shown(round((ticks ?? 0) / step) * step)}`;
  }) as [typeof shown, typeof shown];
  switch (code) {
    case 'noRoomToHold':
      return `There is no room for ${kind} behind ${it}: it stays ${shown(numbers.inset)} away from the edges, which leaves ${numbers.breadth === 0 ? 'nothing' : `${least(numbers.breadth)} at the broadest`} on what ${it} rests on, and it needs ${most(numbers.needed)}. Make the part larger, let the adhesive come nearer to the edges, or lay it flat.`;
    case 'glueShows':
      return `${capital(kind)} shows through ${it}: ${numbers.breadth === 0 ? 'nothing lies over it that hides any' : `what lies over it hides only ${least(numbers.breadth)}, and it needs ${most(numbers.needed)}`}. Lay something over it that is not seen through, hold it there, or use an adhesive that does not show.`;
    default:
      assert(code === 'hangsFar', 'Every problem of what holds a part has its sentence', { code });
      return `${capital(it)} hangs out ${most(numbers.hangs)} from the nearest ${nearestOf[names.kind as AdhesiveKind]} that can lie unseen; ${shown(numbers.span)} is the most (common practice). Let it lie further on what is below it.`;
  }
}

/** What holds the parts of a card, and how much of it the set needs, rolls and packs with it. */
export function holdingSentences(
  { parts, needs }: Holding,
  layout: Layout,
  showing: Showing,
): readonly string[] {
  const wet = needs.filter(({ adhesive }) => adhesive.dry > 0).map(({ adhesive }) => adhesive);
  return [
    ...needs.map((need) => needSentence(need, layout, showing)),
    ...parts.flatMap((held) => heldSentence(held, layout, showing) ?? []),
    ...wet.map(dryingSentence),
  ];
}

/** How much of one adhesive a card and the set need: for a list of supplies. */
export function needSentence(
  { adhesive, card, set, toHave }: AdhesiveNeed,
  layout: Layout,
  showing: Showing,
): string {
  const name = capital(adhesiveNames[adhesive.kind]);
  const { form, width } = adhesive;
  const ofSet =
    layout.cards === 1
      ? ''
      : `, ${form === 'strip' || form === 'line' ? roughLength(set.length, showing) : set.count} for all ${layout.cards}`;
  switch (form) {
    case 'strip': {
      const rolls =
        toHave === null || adhesive.roll === null
          ? ''
          : `: at least ${counted(toHave, 'roll')} of ${roughLength(adhesive.roll, showing)}`;
      return `${name}, ${shownLength(width, showing)} wide: ${roughLength(card.length, showing)} on a card${ofSet}${rolls}.`;
    }
    case 'line':
      return `${name}: a thin line of ${roughLength(card.length, showing)} on a card${ofSet}.`;
    default: {
      const packs =
        toHave === null || adhesive.pack === null
          ? ''
          : `: at least ${counted(toHave, 'pack')} of ${adhesive.pack}`;
      return `${name} of ${shownLength(width, showing)}: ${card.count} on a card${ofSet}${packs}.`;
    }
  }
}

/** What is under one raised part or one that is held by spots; `null` for what lies flat. */
export function heldSentence(
  { part, by, adhesive, pieces }: HeldPart,
  layout: Layout,
  showing: Showing,
): string | null {
  const [first] = pieces;
  if (by === 'flat' || first === undefined || first.laid.length === 0) return null;
  const all = pieces.length === 1 ? '' : ' each';
  return `${capital(placeName(layout, part))}: ${laidWords(adhesive, first.laid.length)}${all}, ${shownLength(adhesive.inset, showing)} or more from its edges so that nobody sees ${first.laid.length === 1 ? 'it' : 'them'} from the side.`;
}

/** `2 strips of foam tape`, `1 foam square`. */
export function laidWords({ kind, form }: Adhesive, count: number): string {
  if (form === 'strip') return `${counted(count, 'strip')} of ${adhesiveNames[kind]}`;
  if (form === 'line') return `${counted(count, 'line')} of ${adhesiveNames[kind]}`;
  return counted(count, form === 'square' ? 'foam square' : 'glue spot');
}

/** How long an adhesive takes, and how sure that is. */
export function dryingSentence({ kind, handle, dry, minutesSaid }: Adhesive): string {
  const name = capital(adhesiveNames[kind]);
  const sure = minutesSaid ? '' : ' Advice in print disagrees about both: go by what its maker says.';
  return `${name} can be turned over after ${minutesWords(handle)} under a weight and is hard after ${minutesWords(dry)}.${sure}`;
}

const nearestOf = {
  'foam-tape': 'foam tape',
  'foam-squares': 'foam square',
  'liquid-glue': 'glue',
  'double-sided-tape': 'tape',
  'glue-spots': 'glue spot',
  'removable-tape': 'tape',
} as const satisfies Record<AdhesiveKind, string>;

function shownLength(ticks: number, { units, glyphs }: Showing): string {
  return showLengthWithUnit(lengthOfTicks(ticks), units, glyphs);
}

/** A length to cut from a roll, up to the next sixteenth of an inch or millimetre; from a foot or so on, to an inch or centimetre. */
function roughLength(ticks: number, showing: Showing): string {
  const fine: number = showing.units === 'in' ? ticksPerInch / 16 : ticksPerMillimetre;
  const coarse: number = showing.units === 'in' ? ticksPerInch : 10 * ticksPerMillimetre;
  const step = ticks > 12 * ticksPerInch ? coarse : fine;
  const metres = Math.ceil(ticks / (100 * ticksPerMillimetre)) / 10;
  if (showing.units === 'mm' && metres >= 2) return `${metres} m`;
  return shownLength(Math.ceil(ticks / step) * step, showing);
}
