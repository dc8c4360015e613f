import type { Layout } from '../layout/index.ts';
import { type Size, ticksPerInch } from '../measure/index.ts';
import type { PlanRecord, ReplayConditions, ReplayStock, SizeRecord } from '../replay/index.ts';
import { costUnitOf, exactCostOf, shownCost } from '../stash/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import type { Plan } from './plan.ts';

/** The plan as it is written out for others to read; this very value is what has been replayed. */
export function planRecord(plan: Plan): PlanRecord {
  return {
    cardwright_plan: 1,
    ticks_per_inch: ticksPerInch,
    cards: plan.cards,
    pieces: plan.pieces.map(({ id, part, paper, size, need, turn }) => ({
      piece: id,
      part,
      paper,
      size: sizeRecord(size),
      need,
      turn,
    })),
    sheets: plan.sheets.map((sheet) => ({ ...sheet, size: sizeRecord(sheet.size) })),
    steps: plan.steps,
    finished: Object.fromEntries(plan.finished),
    leftovers: plan.leftovers.map((leftover) => ({ ...leftover, size: sizeRecord(leftover.size) })),
    papers: Object.fromEntries(plan.papers),
    ...(plan.dealt === undefined ? {} : { dealt: Object.fromEntries(plan.dealt) }),
  };
}

/** What the replay is to hold the plan to: the sheets on hand and the trimmer. */
export function replayConditions(layout: Layout, trimmer: Trimmer | null): ReplayConditions {
  const stock = new Map(
    [...layout.papers].map(([id, paper]): [string, readonly ReplayStock[]] => {
      const unit = costUnitOf(paper);
      return [
        id,
        paper.sheets.map((sheet) => ({
          size: sizeRecord(sheet.size),
          count: sheet.count,
          cost: shownCost(exactCostOf(sheet, unit), unit),
          margin: sheet.margin,
        })),
      ];
    }),
  );
  return { stock, trimmer };
}

function sizeRecord({ width, height }: Size): SizeRecord {
  return [width, height];
}
