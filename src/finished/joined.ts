import type { Face, Layout } from '../layout/index.ts';
import { isWrapped } from './isWrapped.ts';

/** What it takes to put a part on a card on which others are already. */
export interface Joined {
  /** What it is put on does not lie on the card yet: the part that all of it is being built on; `null`: it does. */
  readonly offCard: string | null;
  /** Parts that are on it already and go down with it, in the order of the pile. */
  readonly carries: readonly string[];
  /** What is turned over on its face for it, with all that lies on it; `null`: nothing but the bare part. */
  readonly turned: string | null;
  /** Of the parts that are on, those whose glue has to have set until then: what is turned over carries them, or it does. */
  readonly turnedWith: readonly string[];
  /** Whether the card lies on its face after it. */
  readonly isBackUp: boolean;
}

/** What it takes to put `id` on where the parts in `laid` are on, and the card lies on its face or not. */
export function joinedOnto(
  { parts }: Pick<Layout, 'parts'>,
  faces: ReadonlyMap<string, Face>,
  id: string,
  { laid, isBackUp }: { readonly laid: ReadonlySet<string>; readonly isBackUp: boolean },
): Joined {
  const byId = new Map(parts.map((part) => [part.id, part]));
  // The part that the body of another lies on: its lowest that is not yet joined to anything.
  const rootOf = (of: string): string | null => {
    const below = byId.get(of);
    if (below === undefined) return null;
    return laid.has(of) ? rootOf(below.on) : of;
  };
  const part = byId.get(id)!;
  const isBack = faces.get(id) === 'back';
  const offCard = rootOf(part.on);
  const carries = parts
    .filter((other) => other.id !== id && rootOf(other.id) === id)
    .map((other) => other.id);
  const isWrap = isWrapped(part);
  const turnsCard = offCard === null && (isWrap ? !byId.has(part.on) : isBackUp !== isBack);
  const turned = turnsCard ? 'base' : isWrap ? (offCard ?? part.on) : carries.length > 0 ? id : null;
  const below = turned === 'base' ? null : turned;
  return {
    offCard,
    carries,
    turned,
    turnedWith:
      turned === null
        ? []
        : parts
            .filter(({ id: other }) => laid.has(other) && [below, id].includes(rootOf(other)))
            .map((other) => other.id),
    isBackUp: offCard === null && !isWrap ? isBack : isBackUp,
  };
}
