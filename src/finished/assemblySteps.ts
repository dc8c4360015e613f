import type { Arrangement, Face, Layout, Part } from '../layout/index.ts';
import type { AdhesiveUse } from '../making/index.ts';
import type { Edge } from '../measure/index.ts';
import { adhesiveFor } from './adhesive.ts';
import { assemblyOrder, type Refusal } from './assemblyOrder.ts';
import { chainOf, type OrderRule } from './assemblyRules.ts';
import { isWrapped } from './isWrapped.ts';
import { joinedOnto } from './joined.ts';
import { liftedTogether } from './liftedTogether.ts';

/** How a card of the set is put together, step by step. */
export interface Assembly {
  readonly steps: readonly AssemblyStep[];
  /** Why the order is not the one that the layout asks for, or why none there is does; empty: all is well. */
  readonly refused: readonly Refusal[];
  /** Parts that removable tape may lift as one, group by group; none where no parts are laid to one another. */
  readonly lifts: readonly (readonly string[])[];
  /** Minutes after the last step until all of it holds for good; 0: at once. */
  readonly dry: number;
}

/** One part is put on, with all its pieces. */
export interface AssemblyStep {
  /** From 1. */
  readonly number: number;
  readonly part: string;
  /** The face of the card it belongs to. */
  readonly face: Face;
  /** `wrap`: its ends go round what it lies on, and behind. */
  readonly does: 'lay' | 'wrap';
  /** What it is put on: the id of a part, or the face. */
  readonly onto: string;
  /**
   * What it is put on does not lie on the card yet: the part that all of it is being built on. `null`: it comes onto the
   * card itself, or onto what lies there.
   */
  readonly offCard: string | null;
  /** Parts that are on it already and go down with it, in the order of the pile. */
  readonly carries: readonly string[];
  /** Parts to be torn, cut out or stamped now, while nothing lies on them. */
  readonly readies: readonly string[];
  /** What it is held with: its own way, or `holding` at the ends of a band that lies flat; a raised band has both. */
  readonly holds: readonly AdhesiveUse[];
  /** Bands round it whose ends were only held: the tape comes off now, or this step's glue covers it. */
  readonly releases: readonly string[];
  /**
   * What is turned over on its face for it, with all that lies on it: the part itself where it carries something, what a
   * band goes round, or the card (`base`). `null`: nothing but the bare part, to get at its back.
   */
  readonly turned: string | null;
  /** The steps whose glue has to have set until the work is turned over; empty: no waiting. */
  readonly waitsFor: readonly number[];
  /** Minutes from this step on until the work can be turned over, and until it holds for good; 0: at once. */
  readonly handle: number;
  readonly dry: number;
  /** What had to come before it, each with the rule that says so. */
  readonly reasons: readonly OrderRule[];
}

/**
 * The one list that words, guide, bench and drawings go by: how each card is put together. An order that cannot be is
 * refused, and the list is that of the order that stands instead; see `assemblyOrder`.
 */
export function assemblyOf(layout: Layout, arrangement: Arrangement): Assembly {
  const { parts, rules, refused } = assemblyOrder(layout, arrangement);
  const byId = new Map(layout.parts.map((part) => [part.id, part]));
  const faces = new Map(arrangement.parts.map(({ part, face }) => [part.id, face]));
  const turnOf = new Map(parts.map((id, index) => [id, index]));
  const minutes = {
    flat: adhesiveFor(layout, 'flat'),
    raised: adhesiveFor(layout, 'raised'),
    spots: adhesiveFor(layout, 'spots'),
    holding: adhesiveFor(layout, 'holding'),
  } as const satisfies Record<AdhesiveUse, { readonly handle: number; readonly dry: number }>;

  const laid = new Set<string>();
  const ready = new Set<string>();
  /** Steps whose glue nobody has waited for yet. */
  let wet: readonly AssemblyStep[] = [];
  let isBackUp = false;
  const steps: AssemblyStep[] = [];
  parts.forEach((id, index) => {
    const part = byId.get(id)!;
    const face = faces.get(id)!;
    const joined = joinedOnto(layout, faces, id, { laid, isBackUp });
    const { offCard, carries, turned } = joined;
    isBackUp = joined.isBackUp;
    const isWrap = isWrapped(part);
    const waited = wet.filter((step) => joined.turnedWith.includes(step.part));
    const holds = holdsOf(part);
    const readies = [id, part.on].filter((each) => {
      const other = byId.get(each);
      return other !== undefined && !ready.has(each) && isMadeReady(other);
    });
    const released = layout.parts.filter((band) => band.on === id && isWrapped(band) && laid.has(band.id));
    const step: AssemblyStep = {
      number: index + 1,
      part: id,
      face,
      does: isWrap ? 'wrap' : 'lay',
      onto: part.on,
      offCard,
      carries,
      readies: layout.parts.filter((each) => readies.includes(each.id)).map((each) => each.id),
      holds,
      releases: isWrap ? [] : released.map((band) => band.id),
      turned,
      waitsFor: waited.map(({ number }) => number),
      handle: Math.max(...holds.map((use) => minutes[use].handle)),
      dry: Math.max(...holds.map((use) => minutes[use].dry)),
      reasons: reasonsOf(id, chainOf(layout, part.on), rules, turnOf),
    };
    wet = [...wet.filter((each) => !waited.includes(each)), ...(step.handle > 0 ? [step] : [])];
    for (const each of readies) ready.add(each);
    laid.add(id);
    steps.push(step);
  });
  return {
    steps,
    refused,
    lifts: liftedTogether(layout, parts, isWrapped),
    dry: Math.max(0, ...steps.map(({ dry }) => dry)),
  };
}

/** A flat band holds by its ends; one on foam or spots has these under it as well. */
export function holdsOf(part: Part): readonly AdhesiveUse[] {
  if (!isWrapped(part)) return [part.adhere];
  return part.adhere === 'flat' ? ['holding'] : [part.adhere, 'holding'];
}

/** Whether something is done to it that is best done while it is still by itself. */
export function isMadeReady(part: Part): boolean {
  return (
    part.stamped ||
    part.dieCut ||
    part.margin > 0 ||
    part.shape.kind !== 'rectangle' ||
    (Object.keys(part.torn) as Edge[]).some((edge) => part.torn[edge] > 0)
  );
}

/** What it waited for, but for what waits through another of these; each part once. */
function reasonsOf(
  id: string,
  below: readonly string[],
  rules: readonly OrderRule[],
  turnOf: ReadonlyMap<string, number>,
): readonly OrderRule[] {
  const turn = (of: string) => turnOf.get(of)!;
  const lastOf = (before: readonly string[]) =>
    before.reduce((last, each) => (turn(each) > turn(last) ? each : last));
  const holding = rules.filter(({ first, before }) => turn(first) < turn(lastOf(before)));
  const own = holding.filter(({ before }) => lastOf(before) === id);
  const direct = own.filter(
    ({ first }) =>
      ![...below, ...own.map((other) => other.first)].some(
        (between) =>
          between !== first &&
          holding.some((rule) => rule.first === first && lastOf(rule.before) === between),
      ),
  );
  return direct.filter((rule, index) => direct.findIndex(({ first }) => first === rule.first) === index);
}
