import type { Arrangement, Face, Layout } from '../layout/index.ts';
import { assert } from '../problem/index.ts';
import { assemblyRules, type OrderRule } from './assemblyRules.ts';
import { facesFromFront } from './plies.ts';

/** The order in which the parts of a card are put on. */
export interface AssemblyOrder {
  /** Ids of all parts. */
  readonly parts: readonly string[];
  readonly rules: readonly OrderRule[];
  /** Why it is not the order that was asked for, or why there is none and the pile stands in for it; empty: it is. */
  readonly refused: readonly Refusal[];
}

/** What cannot be. */
export type Refusal =
  /** The designer puts `first` after all of `before`. */
  | { readonly of: 'order'; readonly rule: OrderRule }
  /** Each of these rules waits for the next, and the last for the first. */
  | { readonly of: 'order' | 'pile'; readonly round: readonly OrderRule[] };

/**
 * The order of putting a card together: as the designer says, what is not named finding its turn; else face after face
 * from the front, and in the order of the pile, but that what has to be built up off the card is laid down only when all
 * that lies on it is on it. An order that cannot be kept is refused, and the one that would be taken without it stands.
 */
export function assemblyOrder(layout: Layout, arrangement: Arrangement): AssemblyOrder {
  const rules = assemblyRules(layout, arrangement);
  const ids = inUsualTurn(arrangement, rules);
  const own = orderBy(ids, rules);
  if ('stuck' in own) {
    const pile = facesFromFront.flatMap((face) => partsOn(arrangement, face));
    return { parts: pile, rules, refused: [{ of: 'pile', round: roundIn(own.stuck, rules) }] };
  }
  const named = layout.order ?? [];
  if (named.length === 0) return { parts: own.order, rules, refused: [] };
  const told = namedRules(named);
  const asked = orderBy(ids, [...rules, ...told]);
  if ('order' in asked) return { parts: asked.order, rules, refused: [] };
  const against = rules
    .filter(({ first, before }) => isAgainst(named, first, before))
    .map((rule) => ({ of: 'order', rule }) as const);
  return {
    parts: own.order,
    rules,
    refused:
      against.length > 0 ? against : [{ of: 'order', round: roundIn(asked.stuck, [...rules, ...told]) }],
  };
}

/**
 * An order that keeps all rules, as near to the turn of `ids` as they let it; or, where there is none, parts of which
 * each has to be put on before the last of others among them. Found from the end: what may come last is what nothing
 * waits for, and whatever stands behind it only lets more of the others be last in turn, so no choice is ever wrong.
 */
export function orderBy(
  ids: readonly string[],
  rules: readonly OrderRule[],
): { readonly order: readonly string[] } | { readonly stuck: readonly string[] } {
  const left = [...ids];
  const behind = new Set<string>();
  const order: string[] = [];
  while (left.length > 0) {
    const at = left.findLastIndex((id) =>
      rules.every(({ first, before }) => first !== id || before.some((each) => behind.has(each))),
    );
    if (at === -1) return { stuck: left };
    const [id] = left.splice(at, 1);
    behind.add(id!);
    order.unshift(id!);
  }
  return { order };
}

function partsOn({ parts }: Arrangement, face: Face): readonly string[] {
  return parts.filter((part) => part.face === face).map(({ part }) => part.id);
}

/** The parts in the turn they would take if nothing stood against it. */
function inUsualTurn(arrangement: Arrangement, rules: readonly OrderRule[]): readonly string[] {
  const offTheCard = new Set(rules.filter(({ why }) => why === 'wraps').map(({ upper }) => upper));
  return facesFromFront.flatMap((face) => {
    const own = partsOn(arrangement, face);
    const on = new Map(arrangement.parts.map(({ part }) => [part.id, part.on]));
    const carries = (id: string, below: string): boolean => {
      const next = on.get(id);
      return next !== undefined && (next === below || carries(next, below));
    };
    // From the top, so that a part within a part is laid down before that is.
    return own.toReversed().reduce<readonly string[]>((turn, id) => {
      if (!offTheCard.has(id)) return turn;
      const last = turn.findLastIndex((other) => other === id || carries(other, id));
      const without = turn.filter((other) => other !== id);
      return [...without.slice(0, last), id, ...without.slice(last)];
    }, own);
  });
}

function namedRules(named: readonly string[]): readonly OrderRule[] {
  return named.slice(1).map((id, index) => {
    const before = named[index]!;
    return { why: 'named', lower: before, upper: id, first: before, before: [id] };
  });
}

function isAgainst(named: readonly string[], first: string, before: readonly string[]): boolean {
  const at = named.indexOf(first);
  return at !== -1 && before.every((id) => named.includes(id) && named.indexOf(id) < at);
}

/** Rules that go round among parts of which none can be last. */
function roundIn(stuck: readonly string[], rules: readonly OrderRule[]): readonly OrderRule[] {
  const waiting = new Map<string, OrderRule>();
  for (const id of stuck) {
    const rule = rules.find(
      ({ first, before }) => first === id && before.every((each) => stuck.includes(each)),
    );
    assert(rule !== undefined, 'What cannot be last has a rule that says why', { id });
    waiting.set(id, rule);
  }
  const path: string[] = [];
  let at = stuck[0]!;
  while (!path.includes(at)) {
    path.push(at);
    at = waiting.get(at)!.before[0]!;
  }
  return path.slice(path.indexOf(at)).map((id) => waiting.get(id)!);
}
