import type { Typeface } from '../drawing/index.ts';
import type { Layout } from '../layout/index.ts';

/** The most characters of a name that a guide prints. */
export const longestName = 48;

/**
 * The layout with every name such that it can be printed: characters that the typeface lacks left out, the id
 * where nothing is left, and very long names cut short.
 */
export function printable(layout: Layout, typeface: Typeface): Layout {
  const name = (given: string, otherwise: string) => printableName(given, otherwise, typeface);
  return {
    ...layout,
    title: name(layout.title, 'A set of cards'),
    papers: new Map(
      [...layout.papers].map(([id, paper]) => [
        id,
        {
          ...paper,
          name: name(paper.name, id),
          kind: paper.kind === null ? null : name(paper.kind, 'paper'),
          back: paper.back && { ...paper.back, name: name(paper.back.name, 'the other side') },
        },
      ]),
    ),
    parts: layout.parts.map((part) => ({ ...part, name: name(part.name, part.id) })),
  };
}

/** The text as the typeface can show it; `otherwise` where no letter or figure of it can be shown. */
export function printableName(given: string, otherwise: string, typeface: Typeface): string {
  const shown = [...given.replace(/\p{Default_Ignorable_Code_Point}/gu, '')]
    .map((character) => (/\s/u.test(character) ? ' ' : character))
    .filter((character) => typeface.has(character))
    .join('')
    .replace(/ +/g, ' ')
    .trim();
  const characters = [...(/[\p{L}\p{N}]/u.test(shown) ? shown : otherwise)];
  const kept =
    characters.length <= longestName
      ? characters.join('')
      : `${characters
          .slice(0, longestName - 1)
          .join('')
          .trimEnd()}…`;
  return kept.replace(endlessWord, '$&\u200b');
}

/** A stretch without a space that would squeeze the columns beside it: it may be broken after so many characters. */
const endlessWord = /[^\s\u200b]{20}(?=\S)/gu;
