import { type Arrangement, type Layout, unseen } from '../layout/index.ts';
import { type Edge, type Length, lengthOfTicks, millimetres } from '../measure/index.ts';
import { areaOf, boundsOf, intersection, isEmpty, islandsOf, narrowed, type Region } from '../shape/index.ts';
import type { FinishedProblem } from './check.ts';
import { type FinishedCode, finishedCodes } from './codes.ts';
import { bordersShown, gapsShown } from './edgesShown.ts';
import { isOver, liftsOf, restOf } from './rest.ts';
import { type Shown, shownOn } from './shown.ts';

/** What is narrower shows as a slip of the hand: no trimmer cuts truer than half of it (common practice, no source). */
export const sliver: Length = millimetres(0.6);
/** What glue needs to hold: 1/8 in or 3 mm (common practice, no source). */
export const joinBreadth: Length = millimetres(3);

/**
 * What would be wrong with what is seen of the first card and how its pieces hold: slivers that peek out, parts of which
 * nothing shows under several others, joins too narrow for glue, pieces that hang in the air.
 */
export function shownProblems(layout: Layout, arrangement: Arrangement): readonly FinishedProblem[] {
  const shown = shownOn(layout, arrangement, 0);
  const problem = (code: FinishedCode, part: string, about: Pick<FinishedProblem, 'numbers' | 'names'>) => {
    const index = layout.parts.findIndex(({ id }) => id === part);
    return {
      code,
      severity: finishedCodes[code],
      where: index === -1 ? 'base' : `parts[${index}]`,
      part,
      ...about,
    };
  };
  const lifts = liftsOf(layout, arrangement);
  // One of each for a part: its pieces are laid alike.
  const once = new Map<string, FinishedProblem>();
  const tell = (found: FinishedProblem) => {
    const key = `${found.code} ${found.part} ${found.names.beside ?? ''} ${found.names.edge ?? ''}`;
    if (!once.has(key)) once.set(key, found);
  };

  for (const { part, edges, on } of bordersShown(arrangement, shown)) {
    for (const edge of Object.keys(edges) as Edge[]) {
      const { breadth, open } = edges[edge];
      if (breadth > unseen && breadth < sliver && open > 0)
        tell(problem('sliver', part, { numbers: { breadth }, names: { shows: on, edge } }));
    }
  }
  for (const { between, breadth, shows } of gapsShown(arrangement, shown)) {
    const [first] = shows;
    if (breadth > unseen && breadth < sliver && first !== undefined) {
      const [one, other] = between;
      const names = { shows: first.part, beside: one.part };
      tell(problem('sliver', other.part, { numbers: { breadth }, names }));
    }
  }
  for (const one of shown) {
    const { part, open } = one;
    if (isNothing(open) && isNothing(one.veiled)) {
      const over = shown.filter((other) => isOver(other, one, shown));
      const hiders = over.filter(({ region }) => areaOf(intersection(region, one.region)) > 0);
      // One part alone that hides it is named by the layout's own check.
      const alone = hiders.some(
        ({ region }) => areaOf(intersection(region, one.region)) >= areaOf(one.region),
      );
      if (part !== 'base' && !alone)
        tell(problem('vanishes', part, { numbers: {}, names: { by: namesOf(hiders) } }));
      continue;
    }
    const thin = islandsOf(open).find(
      (island) => !isNothing(island) && isEmpty(narrowed(island, half(sliver))),
    );
    if (thin !== undefined && part !== 'base') {
      const { width, height } = boundsOf(thin)!;
      const breadth = Math.min(width, height);
      const names = { shows: part, edge: 'all' };
      tell(problem('sliver', part, { numbers: { breadth }, names }));
    }
    if (part === 'base') continue;
    const held = restOf(one, shown, lifts);
    if (isEmpty(held)) tell(problem('noJoin', part, { numbers: {}, names: {} }));
    else if (isThin(held) && !isThin(one.region))
      tell(
        problem('thinJoin', part, { numbers: { needed: joinBreadth }, names: { on: onOf(layout, part) } }),
      );
  }
  return [...once.values()];
}

function half(length: Length): Length {
  return lengthOfTicks(Math.floor(length / 2));
}

/** What is left of a region when edges that only count as one have been drawn together. */
function isNothing(region: Region): boolean {
  return isEmpty(region) || isEmpty(narrowed(region, half(unseen)));
}

function isThin(region: Region): boolean {
  return isEmpty(narrowed(region, half(joinBreadth)));
}

function namesOf(shown: readonly Shown[]): string {
  return [...new Set(shown.map(({ part }) => part))].join(' ');
}

function onOf(layout: Layout, id: string): string {
  return layout.parts.find((part) => part.id === id)!.on;
}
