import type { Choice } from '../../form/choiceBlank.tsx';
import type { Messages } from '../../messages/messages.ts';

/** What papers usually are; any other word stays the person's own. */
export const kinds = ['cardstock', 'patterned', 'vellum', 'paper'] as const;

export type Kind = (typeof kinds)[number];

/** What a paper may be, with what it is now; empty: nobody said. */
export function kindChoices(words: Messages['papers'], now: string | null): readonly Choice<string>[] {
  const usual = kinds.map((value) => ({ value, says: words.kinds[value] }));
  if (now === null) return [...usual, { value: '', says: words.noKind }];
  return usual.some(({ value }) => value === now) ? usual : [...usual, { value: now, says: now, own: true }];
}
