import type { ProveReason } from './proveFirst.ts';
import type { StakesRescue, StepStakes } from './stakes.ts';

/** What `plan --json` writes of the stakes of one step, beside the plan. */
export interface StakesRecord {
  readonly step: number;
  /** By piece, how many are lost when one workpiece is spoiled. */
  readonly loses: Readonly<Record<string, number>>;
  readonly rescue: StakesRescue['kind'];
  /** How many cards fewer, and whether it is proved that no fewer are lost; only where the rescue is `none`. */
  readonly cardsFewer?: number;
  readonly proved?: boolean;
  /** Why one piece is proved before the others; only where it is. */
  readonly proveFirst?: readonly ProveReason[];
}

/** The stakes of a plan's steps as they are written out for others to read. */
export function stakesRecord(
  stakes: readonly StepStakes[],
  stops: ReadonlyMap<number, readonly ProveReason[]>,
): readonly StakesRecord[] {
  return stakes.map(({ step, loses, rescue }) => {
    const reasons = stops.get(step);
    const { kind, ...fewer } = rescue;
    return {
      step,
      loses: Object.fromEntries(loses),
      rescue: kind,
      ...fewer,
      ...(reasons === undefined ? {} : { proveFirst: reasons }),
    };
  });
}
