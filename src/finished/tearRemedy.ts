import type { Arrangement } from '../layout/index.ts';
import { isSure, type TearDepth, tearSum } from '../making/index.ts';
import { type Axis, type Edge, type Length, lengthOfTicks, roundTo } from '../measure/index.ts';
import { failureChance } from './tearChance.ts';
import type { JoinKind, LaidJoin } from './tearJoin.ts';

/** What brings a join under the wanted chance: each of these by itself. */
export interface TearRemedy {
  /** The margin that is needed, and how much more that is, in whole marks. */
  readonly margin: Length;
  readonly more: Length;
  /** Parts that may be cut so much larger or smaller for it, in whole marks. */
  readonly resized: readonly Resized[];
  /** How evenly each tear of the join would have to be torn instead; `null`: no tear is even enough. */
  readonly torn: readonly { readonly part: string; readonly edge: Edge; readonly tear: TearDepth }[] | null;
}

/** The cut size of a part along an axis, as it is and as it would be. */
export interface Resized {
  readonly part: string;
  readonly axis: Axis;
  readonly from: Length;
  readonly to: Length;
}

/** What brings the join down to the `wanted` chance of failing; `null`: it is there already. */
export function tearRemedy(
  join: LaidJoin,
  wanted: number,
  { arrangement, marks }: { readonly arrangement: Arrangement; readonly marks: Length },
): TearRemedy | null {
  if (failureChance(join) <= wanted) return null;
  // Below -bare the signed tears make it fail, and they are below their quantile no oftener than wanted.
  const needed = -tearSum(join.tears).quantile(wanted) - join.bare;
  const more = roundTo(lengthOfTicks(Math.max(1, needed)), marks, 'up');
  const resized = sizesBehind(join).flatMap(({ part, edge, grows }): readonly Resized[] => {
    const axis: Axis = edge === 'left' || edge === 'right' ? 'width' : 'height';
    const from = arrangement.parts.find((arranged) => arranged.part.id === part)?.cut?.[axis];
    if (from === undefined) return [];
    const to = lengthOfTicks(grows ? from + more : from - more);
    return to > 0 ? [{ part, axis, from, to }] : [];
  });
  return { margin: lengthOfTicks(join.nominal + more), more, resized, torn: evenTears(join, wanted, marks) };
}

/** Whose size makes the margin larger, and which way: a deeper tear and a smaller cut do the same to an edge. */
function sizesBehind({ kind, torn, against, tears }: LaidJoin): readonly {
  readonly part: string;
  readonly edge: Edge;
  readonly grows: boolean;
}[] {
  const tornGrows = tears[0]!.sign === -1;
  const againstGrows: Readonly<Record<JoinKind, boolean>> = {
    // What lies hidden between the two has the same edge, and is the better the smaller it is.
    over: against.edge !== torn.edge,
    under: true,
    beyond: true,
    facing: false,
    border: !tornGrows,
  };
  return [
    { ...torn, grows: tornGrows },
    ...(against.part === torn.part ? [] : [{ ...against, grows: againstGrows[kind] }]),
  ];
}

/** The tears of the join drawn in about their usual depths, all by the same share and by whole half marks. */
function evenTears(join: LaidJoin, wanted: number, marks: Length): TearRemedy['torn'] {
  const step = lengthOfTicks(Math.max(1, Math.floor(marks / 2)));
  const drawnIn = (share: number) =>
    join.tears.map((each) => ({ ...each, tear: nearer(each.tear, share, step) }));
  const isEnough = (share: number) => failureChance({ ...join, tears: drawnIn(share) }) <= wanted;
  if (join.tears.every(({ tear }) => isSure(tear)) || !isEnough(0)) return null;
  let [enough, tooMuch] = [0, 1];
  for (let step = 0; step < 20; step++) {
    const middle = (enough + tooMuch) / 2;
    if (isEnough(middle)) enough = middle;
    else tooMuch = middle;
  }
  return drawnIn(enough).map(({ of, tear }) => ({ part: of.part, edge: of.edge, tear }));
}

function nearer({ least, usual, most }: TearDepth, share: number, step: Length): TearDepth {
  const shortened = (length: number) => roundTo(lengthOfTicks(Math.floor(length * share)), step, 'down');
  return {
    least: lengthOfTicks(usual - shortened(usual - least)),
    usual,
    most: lengthOfTicks(usual + shortened(most - usual)),
  };
}
