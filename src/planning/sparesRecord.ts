import type { SizeRecord } from '../replay/index.ts';
import type { PieceSpares } from './spares.ts';

/** What `plan --json` writes of spares beside the plan. */
export interface SparesRecord {
  /** Whether the plan makes all that is offered. */
  readonly made: boolean;
  readonly offers: readonly OfferRecord[];
}

/** As `PieceSpares`, with sizes as everywhere in the record: width, then height. */
export interface OfferRecord extends Omit<PieceSpares, 'leftover'> {
  readonly leftover: SizeRecord | null;
}

/** Spares as they are written out for others to read. */
export function sparesRecord(spares: readonly PieceSpares[], made: boolean): SparesRecord {
  const offers = spares.map(({ leftover, ...offer }) => ({
    ...offer,
    leftover: leftover === null ? null : ([leftover.width, leftover.height] as const),
  }));
  return { made, offers };
}
