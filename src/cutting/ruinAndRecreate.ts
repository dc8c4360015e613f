import { Chance } from './chance.ts';
import { insertionOrders } from './insertionOrders.ts';
import { OpenSheets, type Place } from './openSheets.ts';
import type { CuttingTask } from './task.ts';

export interface RuinRequest {
  readonly task: CuttingTask;
  /** By item, how many are wanted. */
  readonly wanted: readonly number[];
  /** By open sheet, its kind. */
  readonly kinds: readonly number[];
  /** By item, what it weighs to leave one out: whole numbers, at least 1. */
  readonly weights: readonly number[];
  /** Rooms looked at, about: what the search may cost. */
  readonly work: number;
  readonly seed: number;
  /** Told of the sheets whenever they hold more than ever before. */
  readonly onBetter?: (open: OpenSheets) => void;
}

/**
 * Places as much as it can of what is wanted on just these sheets.
 *
 * Ruin and recreate on cut trees, after T. Gardeyn & T. Wauters, "A goal-driven ruin and
 * recreate heuristic for the 2D variable-sized bin packing problem with guillotine constraints" (2022): branches are
 * taken out of the sheets, what is out is put in again where it leaves the largest rooms. A change that makes things
 * worse is kept with a chance that falls as the work is used up (simulated annealing, S. Kirkpatrick et al. 1983; the
 * late acceptance of the paper came to less in the same work). Ends when everything has its place or the work is used up.
 */
export function ruinAndRecreate(request: RuinRequest): { readonly open: OpenSheets; readonly work: number } {
  const { task, wanted, kinds, weights } = request;
  const chance = new Chance(request.seed);
  const open = new OpenSheets(task, kinds, weights, wanted);
  const total = weights.reduce((sum, weight, item) => sum + weight * wanted[item]!, 0);
  const perSheet = total / kinds.length;
  const orders = insertionOrders(task);
  const place: Place = { room: 0, turned: false, first: 0 };
  let work = 0;

  const recreate = (overlooked: number) => {
    const order = orders[chance.below(orders.length)]!;
    for (const item of order) {
      for (let left = open.out(item); left > 0; left--) {
        work += open.rooms + 10;
        if (!open.findPlace(item, place, overlooked, chance)) break;
        open.insert(item, place);
      }
    }
  };
  const ruin = () => {
    const places = 1 + chance.below(mostPlaces);
    for (let n = 0; n < places && open.pieces > 0; n++) {
      let node = open.piece(chance.below(open.pieces));
      if (open.rooms > 0 && chance.fraction() < besideRoom) {
        // What stands beside a room.
        const row = open.parent(open.room(chance.below(open.rooms)));
        if (row >= 0) {
          const parts = open.filledParts(row);
          node = parts[chance.below(parts.length)]!;
        }
      }
      const most = 1 + chance.below(mostTogether);
      while (open.parent(node) >= 0 && open.piecesIn(open.parent(node), most + 1) <= most)
        node = open.parent(node);
      work += 20;
      const above = open.parent(node);
      open.remove(node);
      if (above >= 0 && chance.fraction() < drawnIn) open.drawIn(open.parent(above));
    }
  };
  const valueNow = () => open.weightOut / perSheet - roomWeight * open.roominess;

  recreate(0);
  open.keep();
  let current = valueNow();
  let least = open.weightOut;
  request.onBetter?.(open);
  while (open.weightOut > 0 && work < request.work) {
    ruin();
    recreate(overlooking);
    const value = valueNow();
    const heat = hottest * (coldest / hottest) ** (work / request.work);
    if (value < current - heat * Math.log(chance.fraction())) {
      current = value;
      open.keep();
      if (open.weightOut < least) {
        least = open.weightOut;
        request.onBetter?.(open);
      }
    } else {
      open.undo();
    }
  }
  return { open, work };
}

/** A ruin is at up to so many places, each a branch of up to so many pieces. */
const mostPlaces = 3;
const mostTogether = 6;
/** Share of the places that are beside a room, and of those where what is left is drawn in. */
const besideRoom = 0.25;
const drawnIn = 0.5;
/** Chance that a room is overlooked when something is put in. */
const overlooking = 0.01;
/** What large rooms are worth beside what is out, which is counted in sheets; and what a worsening may be, about. */
const roomWeight = 0.1;
const hottest = 0.03;
const coldest = 0.001;
