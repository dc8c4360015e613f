import type { AdhesiveKind, AdhesiveUse } from '../making/index.ts';

/** What people call an adhesive. */
export const adhesiveNames = {
  'foam-tape': 'foam tape',
  'foam-squares': 'foam squares',
  'liquid-glue': 'liquid glue',
  'double-sided-tape': 'double-sided tape',
  'glue-spots': 'glue spots',
  'removable-tape': 'removable tape',
} as const satisfies Record<AdhesiveKind, string>;

/** What it is used for. */
export const adhesiveUseWords = {
  flat: 'what lies flat',
  raised: 'what is raised',
  spots: 'what is held by spots',
  holding: 'the ends of bands',
} as const satisfies Record<AdhesiveUse, string>;

/** What people call a field of an adhesive in a layout, by its path below `adhesives`; `null`: there is none. */
export function adhesiveFieldWords(field: string): string | null {
  const [use = '', name, ...more] = field.split('.');
  if (!(use in adhesiveUseWords) || more.length > 0) return null;
  const used = adhesiveUseWords[use as AdhesiveUse];
  if (name === undefined) return `adhesive for ${used}`;
  const named = fields[name];
  return named === undefined ? null : `${named} of the adhesive for ${used}`;
}

const fields: Readonly<Record<string, string>> = {
  kind: 'kind',
  width: 'width',
  thickness: 'thickness',
  inset: 'distance from the edges',
  span: 'farthest reach',
  roll: 'length on a roll',
  pack: 'number in a pack',
  handle: 'minutes to handle',
  dry: 'minutes to dry',
  shows: 'whether it is seen through',
};
