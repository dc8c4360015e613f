import type { FoldKind, Opens } from '../making/index.ts';

/** What the trade calls a fold, with the way it opens where that is upwards: `gate fold, opening upwards`. */
export function foldWord({ fold, opens }: { readonly fold: FoldKind; readonly opens: Opens }): string {
  return `${kinds[fold]}${opens === 'upwards' ? ', opening upwards' : ''}`;
}

/** What a panel of a base is called, from 0 as `panelsOf` counts them: `left door`, `flap`. */
export function panelWord(
  { fold, opens }: { readonly fold: FoldKind; readonly opens: Opens },
  panel: number,
): string {
  const [first, last] = opens === 'upwards' ? ['top', 'bottom'] : ['left', 'right'];
  const word = panels[fold][panel] ?? '';
  return word.replace('{first}', first).replace('{last}', last);
}

/** How a scored base is folded up, in a sentence without its full stop. */
export function foldingWord({ fold, opens }: { readonly fold: FoldKind; readonly opens: Opens }): string {
  return ways[fold].replace('{last}', opens === 'upwards' ? 'bottom' : 'right');
}

const kinds = {
  left: 'side fold',
  top: 'top fold',
  gate: 'gate fold',
  shutter: 'shutter fold',
  trifold: 'trifold',
  roll: 'roll fold',
  parallel: 'double parallel fold',
  z: 'Z fold',
  none: 'flat card',
} as const satisfies Record<FoldKind, string>;

const panels: Readonly<Record<FoldKind, readonly string[]>> = {
  left: ['front', 'back'],
  top: ['front', 'back'],
  gate: ['{first} door', 'middle', '{last} door'],
  shutter: [
    'outer half of the {first} door',
    'inner half of the {first} door',
    'middle',
    'inner half of the {last} door',
    'outer half of the {last} door',
  ],
  trifold: ['front', 'middle', 'flap'],
  roll: ['front', 'second panel', 'third panel', 'last panel'],
  parallel: ['front', 'second panel', 'third panel', 'last panel'],
  z: ['front', 'middle', 'last panel'],
  none: ['base'],
};

const ways = {
  left: 'Fold along the score',
  top: 'Fold along the score',
  gate: 'Fold both doors in until they meet in the middle of the front',
  shutter: 'Fold both doors in over the middle, and their outer halves back, so that these lie on the front',
  trifold: 'Fold the flap in first, then the front over it',
  roll: 'Roll it up from the {last}: the last panel first, then the third, then the front over both',
  parallel:
    'Fold it in half at the middle score, then both layers in half again with the narrower panels within',
  z: 'Fold it to and fro: the front over the middle, the last panel behind it',
  none: '',
} as const satisfies Record<FoldKind, string>;
