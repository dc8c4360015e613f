import {
  changedFile,
  isList,
  isObject,
  type Json,
  type JsonObject,
  type SavedKit,
  type SavedLayout,
} from '../files/index.ts';
import type { Units } from '../measure/index.ts';

/**
 * A kit of layouts as they stand on their own, one card of each from a bag, for so many seats. Papers of the same id and
 * the same name are shared, with the sheets of the first; where another paper has that id, it gets an id of its own.
 */
export function newKit(
  layouts: readonly SavedLayout[],
  { title, seats, units }: { readonly title: string; readonly seats: number; readonly units: Units },
): SavedKit {
  const papers: Record<string, Json> = {};
  const ids = new Set<string>();
  const members = layouts.map((layout): JsonObject => {
    const id = freshId(idOf(layout.title), ids);
    ids.add(id);
    return { id, each: 1, layout: sharing(inUnits(layout, units), id, papers) };
  });
  return { cardwright_kit: 1, title, units, seats, teacher: 0, spare: 0, papers, layouts: members };
}

/** An id that a title comes to. */
function idOf(title: Json | undefined): string {
  const words = typeof title === 'string' ? title.toLowerCase().match(/[a-z0-9]+/g) : null;
  return words?.join('-').slice(0, 40) ?? 'layout';
}

function freshId(id: string, taken: ReadonlySet<string>): string {
  for (let number = 1; ; number += 1) {
    const one = number === 1 ? id : `${id}-${number}`;
    if (!taken.has(one)) return one;
  }
}

/** The layout with its bare lengths in the units of the kit, which its papers come into. */
function inUnits(layout: SavedLayout, units: Units): SavedLayout {
  if (layout.units === units) return layout;
  const changed = changedFile(layout, { units });
  return 'file' in changed ? changed.file : layout;
}

/** The layout without its papers, which are in `papers` then. */
function sharing(layout: SavedLayout, id: string, papers: Record<string, Json>): JsonObject {
  const own = isObject(layout.papers) ? Object.entries(layout.papers) : [];
  const renamed = new Map<string, string>();
  for (const [name, paper] of own) {
    const there = papers[name];
    if (there === undefined) papers[name] = paper;
    else if (shownName(name, there) !== shownName(name, paper)) {
      const fresh = freshId(`${name}-${id}`.slice(0, 50), new Set(Object.keys(papers)));
      renamed.set(name, fresh);
      papers[fresh] = paper;
    }
  }
  const rename = (name: Json): Json => (typeof name === 'string' ? (renamed.get(name) ?? name) : name);
  const dealt = (holder: Json, field: string): Json => {
    if (!isObject(holder) || !(field in holder)) return holder;
    const named = holder[field] ?? null;
    return { ...holder, [field]: isList(named) ? named.map(rename) : rename(named) };
  };
  return {
    ...layout,
    papers: {},
    ...(layout.base === undefined ? {} : { base: dealt(layout.base, 'paper') }),
    ...(isList(layout.extras) ? { extras: layout.extras.map((extra) => dealt(extra, 'papers')) } : {}),
    ...(isList(layout.parts) ? { parts: layout.parts.map((part) => dealt(part, 'paper')) } : {}),
  };
}

function shownName(id: string, paper: Json): string {
  return isObject(paper) && typeof paper.name === 'string' ? paper.name : id;
}
