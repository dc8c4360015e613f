import { chanceInSet, pairHolds, sampledChance, type TearDepth, tearSum } from '../making/index.ts';
import { assert } from '../problem/index.ts';
import type { EdgeOf, LaidJoin } from './tearJoin.ts';

/** A chance that was worked out, or one that was found by drawing tears from a seed and may be off by its error. */
export type Chance =
  | { readonly by: 'exact'; readonly chance: number }
  | {
      readonly by: 'sampled';
      readonly chance: number;
      readonly standardError: number;
      readonly draws: number;
      readonly seed: number;
    };

/** The chance that the margin of a join is less than nothing. Exact: a join has one tear, or two. */
export function failureChance(join: LaidJoin): number {
  return tearSum(join.tears).below(-join.bare);
}

/**
 * The chance that on one card at least one of the joins fails.
 *
 * Joins that share a tear are not independent, so those that hang together by tears are taken together: exactly where
 * they have one or two tears between them, else by drawing tears. A chance that was drawn is kept between the greatest
 * of its joins' chances and their sum, between which it has to be (Boole and Bonferroni).
 */
export function chanceOnCard(joins: readonly LaidJoin[]): Chance {
  const known = new Map<string, Chance>();
  const clusters = clustersOf(joins.filter((join) => failureChance(join) > 0)).map((cluster): Chance => {
    // Pieces of one part are alike: what is asked of them is asked once.
    const numbers = new Map<string, number>();
    const key = JSON.stringify(
      cluster.map(({ bare, tears }) => [
        bare,
        tears.map(({ of, tear, sign }) => {
          const name = nameOf(of);
          if (!numbers.has(name)) numbers.set(name, numbers.size);
          return [numbers.get(name), sign, tear.least, tear.usual, tear.most];
        }),
      ]),
    );
    const chance = known.get(key) ?? chanceOfCluster(cluster);
    known.set(key, chance);
    return chance;
  });
  if (clusters.length === 0) return { by: 'exact', chance: 0 };
  const noneFails = clusters.reduce((all, { chance }) => all + Math.log1p(-chance), 0);
  const chance = -Math.expm1(noneFails);
  const sampled = clusters.filter((cluster) => cluster.by === 'sampled');
  const [first] = sampled;
  if (first === undefined) return { by: 'exact', chance };
  const relative = sampled.map(({ chance: each, standardError }) => standardError / (1 - each));
  return {
    by: 'sampled',
    chance,
    standardError: Math.exp(noneFails) * Math.hypot(...relative),
    draws: first.draws,
    seed: first.seed,
  };
}

/** The chance that it happens on at least one card of the set, the cards taken as independent. */
export function chanceInCards(onCard: Chance, cards: number): Chance {
  const chance = chanceInSet(onCard.chance, cards);
  if (onCard.by === 'exact') return { by: 'exact', chance };
  const standardError = cards * (1 - onCard.chance) ** (cards - 1) * onCard.standardError;
  return { ...onCard, chance, standardError };
}

const draws = 20_000;
const seed = 1;

function chanceOfCluster(joins: readonly LaidJoin[]): Chance {
  const tears = new Map<string, TearDepth>();
  for (const join of joins) for (const { of, tear } of join.tears) tears.set(nameOf(of), tear);
  const names = [...tears.keys()];
  const depths = [...tears.values()];
  if (joins.length === 1) return { by: 'exact', chance: failureChance(joins[0]!) };
  const signs = joins.map((join) => {
    const signOf = (name: string | undefined) => join.tears.find(({ of }) => nameOf(of) === name)?.sign ?? 0;
    return names.map(signOf);
  });
  if (names.length <= 2) {
    const sure = { ...depths[0]!, usual: depths[0]!.least, most: depths[0]!.least };
    const holds = pairHolds(
      [depths[0]!, depths[1] ?? sure],
      joins.map(({ bare }, index) => ({
        one: signs[index]![0]!,
        other: signs[index]![1] ?? 0,
        least: -bare,
      })),
    );
    return { by: 'exact', chance: 1 - holds };
  }
  const sampled = sampledChance({
    tears: depths,
    happens: (drawn) =>
      joins.some(
        ({ bare }, index) =>
          signs[index]!.reduce<number>((all, sign, tear) => all + sign * drawn[tear]!, bare) < 0,
      ),
    draws,
    seed,
  });
  const chances = joins.map(failureChance);
  const least = Math.max(...chances);
  const most = Math.min(
    1,
    chances.reduce((all, each) => all + each, 0),
  );
  return { by: 'sampled', ...sampled, chance: Math.min(most, Math.max(least, sampled.chance)) };
}

/** Joins that hang together by the tears they share. */
function clustersOf(joins: readonly LaidJoin[]): readonly (readonly LaidJoin[])[] {
  const clusters: { readonly joins: LaidJoin[]; readonly tears: Set<string> }[] = [];
  for (const join of joins) {
    const names = join.tears.map(({ of }) => nameOf(of));
    const touched = clusters.filter(({ tears }) => names.some((name) => tears.has(name)));
    const merged = {
      joins: [...touched.flatMap((cluster) => cluster.joins), join],
      tears: new Set([...touched.flatMap(({ tears }) => [...tears]), ...names]),
    };
    for (const cluster of touched) clusters.splice(clusters.indexOf(cluster), 1);
    clusters.push(merged);
  }
  assert(
    clusters.flatMap((cluster) => cluster.joins).length === joins.length,
    'Every join is in one cluster',
  );
  return clusters.map((cluster) => cluster.joins);
}

function nameOf({ part, piece, edge }: EdgeOf): string {
  return `${part} ${piece} ${edge}`;
}
