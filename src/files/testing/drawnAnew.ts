import { dimensionsOf, type Layout, withLengths } from '../../layout/index.ts';
import type { Length } from '../../measure/index.ts';

/**
 * The layout with other lengths, changed in memory: what is drawn by `layout` itself, the rest (sheets, margins,
 * rooms, thickness, tears, foam, shapes, allowances, adhesives, the envelope, the
 * smallest scrap) put where the path says. `typed` is not kept up.
 */
export function drawnAnew(layout: Layout, lengths: ReadonlyMap<string, Length>): Layout {
  const dimensions = new Set(dimensionsOf(layout).map(({ path }) => path));
  const drawn = new Map([...lengths].filter(([path]) => dimensions.has(path)));
  const changed = structuredClone(withLengths(layout, drawn));
  for (const [path, length] of lengths) {
    if (!dimensions.has(path)) for (const keys of keysOf(path)) put(changed, keys, length);
  }
  return changed;
}

type Keys = readonly (string | number)[];

/** Where in a layout the length at a path of its file stands: a margin at four places, an unused gap at none. */
function keysOf(path: string): readonly Keys[] {
  const names = path.split(/[.[\]]+/).filter((name) => name !== '');
  const end = Number(names.at(-1));
  switch (true) {
    case path === 'smallestScrap':
    case names[0] === 'adhesives':
    case path === 'base.allowance':
      return [names];
    case names[0] === 'papers' && names[2] === 'thickness':
    case ['thickness', 'foam'].includes(names.at(-1) ?? ''):
    case names[2] === 'tear':
      return [names];
    case names[0] === 'envelope':
      return [['envelope', 'size', end === 0 ? 'width' : 'height']];
    case names.at(-1) === 'corner':
      return [[...names.slice(0, -1), 'shape', 'corner']];
    case names.at(-1) === 'template' || names.at(-1) === 'overlap':
      return [[...names.slice(0, -1), 'shape', names.at(-1) ?? '']];
    case names.at(-1) === 'endDepth':
      return [[...names.slice(0, -1), 'shape', 'depth']];
    case names[0] === 'papers' && names[4] === 'size':
      return [[...names.slice(0, 5), end === 0 ? 'width' : 'height']];
    case names[0] === 'papers' && names[4] === 'margin' && names.length === 5:
      return ['left', 'right', 'top', 'bottom'].map((edge) => [...names, edge]);
    case names[0] === 'papers' && names[4] === 'margin':
      return [names];
    case names.at(-3) === 'room':
      return [[...names.slice(0, -3), 'rooms', names.at(-2) ?? '', end === 0 ? 'least' : 'most']];
    case names.at(-2) === 'gap':
      return [];
    default:
      throw new Error(`no length of a layout: ${path}`);
  }
}

function put(layout: Layout, keys: Keys, length: Length): void {
  let holder: object = layout;
  for (const key of keys.slice(0, -1)) {
    const next: unknown = holder instanceof Map ? holder.get(key) : Reflect.get(holder, key);
    if (typeof next !== 'object' || next === null) throw new Error(`nothing at ${keys.join(' ')}`);
    holder = next;
  }
  Reflect.set(holder, keys.at(-1) ?? '', length);
}
