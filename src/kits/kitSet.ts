import {
  type ArrangedPart,
  type Arrangement,
  arrange,
  bagsOf,
  type Dealt,
  foldedBase,
  type Kit,
  type KitLayout,
  type Layout,
  type Part,
} from '../layout/index.ts';
import { openedSize } from '../making/index.ts';
import { type Size, zero } from '../measure/index.ts';
import type { CardSet } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import type { Paper } from '../stash/index.ts';
import type { Trimmer } from '../trimming/index.ts';

/** A kit as one set to be cut, of which each card is a bag, and which part of which layout its parts are. */
export interface KitSet extends CardSet {
  /** By the id of a part of `layout`, `layoutId.partId`. */
  readonly sources: ReadonlyMap<string, PartSource>;
}

export interface PartSource {
  readonly layout: KitLayout;
  /** Its id there; `base` for the base. */
  readonly part: string;
}

/**
 * All the layouts of a kit as one set, cut from the shared sheets in one plan: a card of it stands for a bag, and each
 * base and part of each layout is a part of it. How they lie on their cards is not in it: pieces have sizes alone.
 *
 * `null` where the size of some part is unknown, which `checkLayout` tells of its layout.
 */
export function kitSet(kit: Kit, trimmer: Trimmer | null): KitSet | null {
  const sources = new Map<string, PartSource>();
  const parts: ArrangedPart[] = [];
  for (const one of kit.layouts) {
    const { layout } = one;
    const arrangement = arrange(layout);
    const name = layoutName(one);
    const add = (id: string, part: Omit<Part, keyof Dealt | 'id' | 'on'>, dealt: Dealt, size: Size) => {
      // Where every bag is packed alike, no part waits for what the others happen to leave.
      const { from: _, settled: __, ...plain } = part;
      const merged: Part = {
        ...plain,
        ...inKit(kit, one, id, dealt),
        id: `${one.id}.${id}`,
        name: `${part.name} (${name})`,
        on: 'base',
        extent: { by: 'size', ...size },
      };
      sources.set(merged.id, { layout: one, part: id });
      parts.push({ part: merged, face: 'base', cut: size, seen: size, pieces: [] });
    };
    const base = openedSize(foldedBase(layout));
    if (layout.base.papers.length > 0) add('base', basePart(base), layout.base, base);
    for (const { part, cut } of arrangement.parts) {
      if (cut === null || cut.width <= 0 || cut.height <= 0) return null;
      if (part.papers.length > 0) add(part.id, part, part, cut);
    }
  }
  const layout = mergedLayout(
    kit,
    parts.map(({ part }) => part),
  );
  const arrangement: Arrangement = { card: layout.base.size, parts, problems: [] };
  return { layout, arrangement, trimmer, sources };
}

/** What people call a layout of a kit. */
export function layoutName({ id, layout }: Pick<KitLayout, 'id' | 'layout'>): string {
  return layout.title === '' ? id : layout.title;
}

/** How the pieces of a part are dealt over all the cards of its layout. */
function inKit(kit: Kit, { id, each }: KitLayout, part: string, dealt: Dealt): Dealt {
  const instead = kit.instead.filter((one) => one.layout === id && one.part === part);
  const { papers, side, turn, spare } = dealt;
  return { papers, side, turn, spare, cardsEach: each, ...(instead.length === 0 ? {} : { instead }) };
}

const nothing = { left: zero, right: zero, top: zero, bottom: zero } as const;

/** A base as a part of the kit. */
function basePart(size: Size): Omit<Part, keyof Dealt | 'id' | 'on'> {
  return {
    name: 'Base',
    shape: { kind: 'rectangle' },
    extent: { by: 'size', ...size },
    torn: nothing,
    tear: null,
    tuck: nothing,
    margin: zero,
    dieCut: false,
    stamped: false,
    places: [{ across: { start: null, end: null }, down: { start: null, end: null } }],
    lies: 'upright',
    adhere: 'flat',
    foam: null,
    thickness: null,
    grams: null,
  };
}

function mergedLayout(kit: Kit, parts: readonly Part[]): Layout {
  const first = kit.layouts[0];
  assert(first !== undefined, 'A kit has a layout');
  const papers = new Map<string, Paper>(kit.papers);
  for (const { layout } of kit.layouts)
    for (const [id, paper] of layout.papers) if (!papers.has(id)) papers.set(id, paper);
  const smallest = kit.layouts.find(({ layout }) => layout.smallestScrap !== undefined)?.layout.smallestScrap;
  return {
    title: kit.title,
    units: kit.units,
    cards: bagsOf(kit),
    // The bases are parts of the kit like all that is cut.
    base: { ...first.layout.base, fold: 'none', papers: [], spare: 0 },
    papers,
    parts,
    envelope: null,
    post: null,
    ...(smallest === undefined ? {} : { smallestScrap: smallest }),
    typed: new Map(),
  };
}
