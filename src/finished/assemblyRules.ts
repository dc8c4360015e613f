import { type Arrangement, type Face, type Layout, regionIn } from '../layout/index.ts';
import { type Length, minus } from '../measure/index.ts';
import { evenOddRegion, intersection, isEmpty, narrowed, type Region } from '../shape/index.ts';
import { halfUnseen } from './halfUnseen.ts';
import { tucksOf } from './tucks.ts';

/**
 * Something that has to be put on before something else. `first` goes on before the last of `before` does: where a part
 * is built up off the card, it is its whole that comes to lie on or under another, when the last of it is joined.
 */
export interface OrderRule {
  /**
   * `over`: `upper` lies over `lower` where both are. `wraps`: the band `lower` goes round `upper` and behind it, which
   * nobody reaches once `upper` lies on something. `ends`: `upper` covers the ends that the band `lower` has behind.
   * `named`: the designer says so.
   */
  readonly why: 'over' | 'wraps' | 'ends' | 'named';
  readonly lower: string;
  readonly upper: string;
  readonly first: string;
  readonly before: readonly string[];
}

/**
 * What the pile asks of the order in which its parts are put on, each part with all its pieces at once; pieces whose
 * place is not known ask nothing. Every part may be put on what it lies `on` before or after that lies on the card.
 *
 * An order keeps every rule exactly when each time two things are joined whatever lies higher in the pile comes from
 * above: what is joined to it, with all it carries, is laid over what it is joined to, with all that lies on that.
 */
export function assemblyRules(layout: Layout, arrangement: Arrangement): readonly OrderRule[] {
  const bodies = arrangement.parts.map(({ part, face, pieces }) => ({
    id: part.id,
    face,
    chain: chainOf(layout, part.id),
    regions: pieces.flatMap(({ box }) => (box === null ? [] : [regionIn(part.shape, box)])),
    ends: pieces.flatMap(({ box }) => (box === null ? [] : tucksOf(part, box))),
    on: part.on,
  }));
  const rules: OrderRule[] = [];
  bodies.forEach((upper, index) => {
    for (const lower of bodies.slice(0, index)) {
      if (lower.face !== upper.face || upper.chain.includes(lower.id)) continue;
      if (!overlap(lower.regions, upper.regions)) continue;
      rules.push(...joins('over', lower, upper));
    }
  });
  for (const band of bodies) {
    if (band.ends.length === 0) continue;
    if (bodies.some(({ id }) => id === band.on)) {
      rules.push({ why: 'wraps', lower: band.id, upper: band.on, first: band.id, before: [band.on] });
      continue;
    }
    // Round the card itself: its ends come out on the other side of that leaf.
    const behind = otherSide(band.face, layout);
    const ends = band.ends.map((region) => mirrored(region, arrangement.card.width));
    for (const cover of bodies) {
      if (cover.face === behind && overlap(ends, cover.regions)) rules.push(...joins('ends', band, cover));
    }
  }
  return rules;
}

/** The part and what carries it, up to the face. */
export function chainOf(layout: Layout, id: string): readonly string[] {
  const part = layout.parts.find((each) => each.id === id);
  return part === undefined ? [] : [id, ...chainOf(layout, part.on)];
}

interface Body {
  readonly id: string;
  readonly chain: readonly string[];
}

/** Everything that joins the lower one to what carries both goes on before the last of what joins the upper one. */
function joins(why: OrderRule['why'], lower: Body, upper: Body): readonly OrderRule[] {
  const before = upper.chain.filter((id) => !lower.chain.includes(id));
  return lower.chain
    .filter((id) => !upper.chain.includes(id))
    .map((first) => ({ why, lower: lower.id, upper: upper.id, first, before }));
}

/** Which face the ends of a band come out on that goes round the leaf of this one; `null`: nothing lies there. */
function otherSide(face: Face, { base }: Layout): Face | null {
  if (face === 'back') return base.fold === 'none' ? 'base' : 'inside';
  if (face === 'inside') return 'back';
  return base.fold === 'none' ? 'back' : null;
}

function mirrored(region: Region, width: Length): Region {
  return evenOddRegion(region.rings.map((ring) => ring.map(({ x, y }) => ({ x: minus(width, x), y }))));
}

/** Whether any of them lie on one another by more than what counts as one edge. */
function overlap(some: readonly Region[], others: readonly Region[]): boolean {
  return some.some((one) =>
    others.some((other) => {
      const common = intersection(one, other);
      return !isEmpty(common) && !isEmpty(narrowed(common, halfUnseen));
    }),
  );
}
