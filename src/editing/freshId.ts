import type { Layout } from '../layout/index.ts';

/** An id for a new part, made of its name, that no part or face of the layout has: `round-tag`, `round-tag-2`. */
export function freshId(layout: Layout, name: string): string {
  return freshOf(name, 'part', ['base', 'inside', 'back', ...layout.parts.map(({ id }) => id)]);
}

/** An id for a new paper, made of its name, that no paper of the layout has. */
export function freshPaperId(layout: Layout, name: string): string {
  return freshOf(name, 'paper', [...layout.papers.keys()]);
}

/** A name for another part of that name: `Panel 2`. */
export function freshName(layout: Layout, name: string): string {
  return numbered(name, ' ', new Set(layout.parts.map((part) => part.name)));
}

function freshOf(name: string, otherwise: string, taken: readonly string[]): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return numbered((plain === '' ? otherwise : plain).slice(0, mostLetters), '-', new Set(taken));
}

/** An id has 60 characters at most; a number goes on to it. */
const mostLetters = 50;

/** The name with the first number from 2 that makes it new; without one where it is new already. */
function numbered(name: string, join: string, taken: ReadonlySet<string>): string {
  if (!taken.has(name)) return name;
  const stem = name.replace(new RegExp(`${join}\\d{1,6}$`), '');
  let number = 2;
  while (taken.has(`${stem}${join}${number}`)) number += 1;
  return `${stem}${join}${number}`;
}
