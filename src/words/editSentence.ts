import { type Length, lengthOfTicks, showLengthWithUnit, type Units } from '../measure/index.ts';
import { capital, listed } from './count.ts';

/** What an edit did to a layout file, as data. */
export type EditTold =
  | {
      readonly what: 'set';
      readonly of: EditOwner;
      /** The field, as a path below what it belongs to: `size[0]`, `place.left`, `cards`. */
      readonly field: string;
      /** As they were typed; `null`: nothing. */
      readonly from: string | null;
      readonly to: string | null;
    }
  | { readonly what: 'part added' | 'part taken' | 'paper added' | 'paper taken'; readonly name: string }
  | { readonly what: 'part moved'; readonly name: string; readonly up: boolean }
  | {
      readonly what: 'piece moved';
      readonly name: string;
      /** To the right and downwards; negative: to the left, upwards. */
      readonly across: Length;
      readonly down: Length;
      readonly units: Units;
    };

/** What an edited field belongs to. */
export type EditOwner =
  | { readonly kind: 'set' | 'base' }
  | { readonly kind: 'part' | 'paper'; readonly name: string };

/** What was done, in a few words, for a list of what can be undone: `Panel: width 2 1/4 in instead of 2 in.` */
export function editSentence(told: EditTold): string {
  switch (told.what) {
    case 'set': {
      const owner = 'name' in told.of ? told.of.name : ownerWords[told.of.kind];
      return `${capital(owner)}: ${fieldWords(told.field)} ${changeOf(told.from, told.to)}.`;
    }
    case 'part added':
      return `${capital(told.name)} laid on the pile.`;
    case 'part taken':
      return `${capital(told.name)} taken off the pile.`;
    case 'part moved':
      return `${capital(told.name)} moved ${told.up ? 'up' : 'down'} the pile.`;
    case 'piece moved':
      return `${capital(told.name)} ${movedWords(told)}.`;
    case 'paper added':
      return `${capital(told.name)} put into the stash.`;
    case 'paper taken':
      return `${capital(told.name)} taken out of the stash.`;
  }
}

function movedWords({
  across,
  down,
  units,
}: {
  readonly across: Length;
  readonly down: Length;
  readonly units: Units;
}): string {
  const way = (by: Length, forth: string, back: string) =>
    by === 0 ? [] : [`${showLengthWithUnit(lengthOfTicks(Math.abs(by)), units)} ${by > 0 ? forth : back}`];
  const ways = [...way(across, 'to the right', 'to the left'), ...way(down, 'down', 'up')];
  return ways.length === 0 ? 'laid back where it was' : `moved ${listed(ways)}`;
}

const ownerWords = { set: 'the set', base: 'the base' } as const;

function changeOf(from: string | null, to: string | null): string {
  if (to === null) return from === null ? 'left out' : `left out (it was ${from})`;
  return from === null ? to : `${to} instead of ${from}`;
}

/** What people call a field; one without a word of its own by its path. */
function fieldWords(field: string): string {
  return words[field.replace(/^place\[\d+\]/, 'place')] ?? field;
}

const words: Readonly<Record<string, string>> = {
  'size[0]': 'width',
  'size[1]': 'height',
  size: 'size',
  'place.left': 'from the left',
  'place.right': 'from the right',
  'place.top': 'from the top',
  'place.bottom': 'from the bottom',
  'place.gap': 'gap',
  'torn.left': 'torn on the left',
  'torn.right': 'torn on the right',
  'torn.top': 'torn on top',
  'torn.bottom': 'torn at the bottom',
  dieCut: 'die-cut',
  smallestScrap: 'smallest scrap',
};
