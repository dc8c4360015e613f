import type { Arrangement, Layout } from '../layout/index.ts';
import { type PostTable, postTables } from '../making/index.ts';
import type { Length } from '../measure/index.ts';
import { type Assembly, assemblyOf } from './assemblySteps.ts';
import { type Closed, closedCards } from './closed.ts';
import { type BordersShown, bordersShown, type GapShown, gapsShown } from './edgesShown.ts';
import { type Folding, foldingOf } from './folding.ts';
import { type Holding, holdingOf } from './holding.ts';
import { type PaperShown, paperShown } from './paperShown.ts';
import { type Posting, postingOf } from './posting.ts';
import { type RibbonMade, ribbonsMade } from './ribbons.ts';
import { type SetTime, setTimeOf } from './setTime.ts';
import { shownOn } from './shown.ts';
import { type Tears, tearsOf } from './tears.ts';

/** All that is known of the finished cards of a set. */
export interface Docket {
  /** Of the first card, in the order of the pile. */
  readonly borders: readonly BordersShown[];
  readonly gaps: readonly GapShown[];
  readonly papers: readonly PaperShown[];
  /** `null`: the card is flat. */
  readonly folding: Folding | null;
  readonly tears: Tears;
  /** In the order of the pile. */
  readonly ribbons: readonly RibbonMade[];
  /** In which order a card is put together, and what holds its parts. */
  readonly assembly: Assembly;
  readonly holding: Holding;
  readonly closed: Closed;
  /** How long the set takes to make. */
  readonly time: SetTime;
  /** By the post of the layout, else by each that is known. */
  readonly postings: readonly Posting[];
}

/** What a docket goes by. */
export interface DocketAsks {
  /** Those that sizes are cut to. */
  readonly marks: Length;
  /** The risk of a set that is put up with; the usual one unless said. */
  readonly wanted?: number;
  /** The person's own tables, instead of those that are known here. */
  readonly tables?: readonly PostTable[];
}

/**
 * The docket of a set: what shows and what its borders are, what its tears may do, and the card closed, weighed, in its
 * envelope and at the post. Where the papers of the cards differ in thickness or weight, the thickest and the heaviest
 * card count.
 */
export function docketOf(layout: Layout, arrangement: Arrangement, asks: DocketAsks): Docket {
  const shown = shownOn(layout, arrangement, 0);
  const closed = closedCards(layout, arrangement);
  const tables: readonly PostTable[] =
    asks.tables ?? postTables.filter(({ id }) => layout.post === null || id === layout.post);
  return {
    borders: bordersShown(arrangement, shown),
    gaps: gapsShown(arrangement, shown),
    papers: paperShown(layout, arrangement),
    folding: foldingOf(layout, arrangement),
    tears: tearsOf(layout, arrangement, asks),
    ribbons: ribbonsMade(layout, arrangement, closed.section.thickest.thickness),
    assembly: assemblyOf(layout, arrangement),
    holding: holdingOf(layout, arrangement),
    closed,
    time: setTimeOf(layout, arrangement),
    postings: tables.map((table) => postingOf(layout, arrangement, table, closed)),
  };
}
