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
 * Ruin and recreate on cut trees, with late acceptance, after T. Gardeyn & T. Wauters, "A goal-driven ruin and
 * recreate heuristic for the 2D variable-sized bin packing problem with guillotine constraints" (2022): branches are
 * taken out of the sheets, what is out is put in again where it leaves the largest rooms, and the change is kept when
 * it is no worse than the state some steps ago. Ends when everything has its place or the work is used up.
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
    const places = 1 + chance.below(tuned.places);
    for (let n = 0; n < places && open.pieces > 0; n++) {
      let node = open.piece(chance.below(open.pieces));
      if (open.rooms > 0 && chance.fraction() < tuned.beside) {
        // What stands beside a room.
        const row = open.parent(open.room(chance.below(open.rooms)));
        if (row >= 0) {
          const parts = open.filledParts(row);
          node = parts[chance.below(parts.length)]!;
        }
      }
      const most = 1 + chance.below(tuned.most);
      while (open.parent(node) >= 0 && open.piecesIn(open.parent(node), most + 1) <= most)
        node = open.parent(node);
      work += 20;
      const above = open.parent(node);
      open.remove(node);
      if (above >= 0 && chance.fraction() < tuned.drawIn) open.drawIn(open.parent(above));
    }
  };
  const valueNow = () => open.weightOut / perSheet - tuned.roomy * open.roominess;

  recreate(0);
  open.keep();
  let current = valueNow();
  let least = open.weightOut;
  request.onBetter?.(open);
  const history = new Float64Array(tuned.history).fill(current);
  for (let round = 0; open.weightOut > 0 && work < request.work; round++) {
    ruin();
    recreate(tuned.overlooked);
    const value = valueNow();
    const slot = round % history.length;
    if (value <= current || value <= history[slot]!) {
      current = value;
      open.keep();
      if (open.weightOut < least) {
        least = open.weightOut;
        request.onBetter?.(open);
      }
    } else {
      open.undo();
    }
    history[slot] = current;
    tuned.rounds++;
  }
  return { open, work };
}

export const tuned = {
  places: 3,
  beside: 0.5,
  most: 6,
  drawIn: 0.5,
  roomy: 0.02,
  history: 200,
  overlooked: 0.01,
  rounds: 0,
};
