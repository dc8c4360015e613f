import { grainFor, openedSize } from '../making/index.ts';
import { quarterTurned, type Size } from '../measure/index.ts';
import type { SheetStock } from '../stash/index.ts';
import { foldedBase } from './foldedBase.ts';
import type { Dealt, Layout } from './layout.ts';
import { baseProblem, type LayoutProblem, partProblem } from './layoutProblem.ts';
import { turnOf, upOf } from './turn.ts';

/** Parts, and the base, that are free to turn although their paper has a direction: the print may come to lie. */
export function freedDirections(layout: Layout): readonly LayoutProblem[] {
  const directed = (part: Dealt) =>
    part.turn !== 'free'
      ? []
      : [...new Set(part.papers)]
          .map((id) => layout.papers.get(id)!)
          .filter((paper) => upOf(part, paper) !== 'any');
  return [
    ...directed(layout.base).map((paper) =>
      baseProblem('directionFreed', 'base.turn', {}, { name: 'base', paper: paper.name }),
    ),
    ...layout.parts.flatMap((part, index) =>
      directed(part).map((paper) =>
        partProblem(layout, index, 'directionFreed', 'turn', {}, { paper: paper.name }),
      ),
    ),
  ];
}

/**
 * Base sheets whose known grain the fold would cross.
 *
 * How the bases stand in a sheet is the plan's to decide, so this asks which ways it has: if every way crosses
 * the grain, that is told; if only some do, only where they give at least as many bases from the sheet (in
 * plain rows) as the better way, since a plan that saves sheets would take them.
 */
export function foldsAcrossGrain(layout: Layout): readonly LayoutProblem[] {
  const { base } = layout;
  const wanted = grainFor(base);
  if (wanted === null) return [];
  const opened = openedSize(foldedBase(layout));

  return [...new Set(base.papers)].flatMap((id) => {
    const paper = layout.papers.get(id)!;
    return paper.sheets.flatMap((sheet, index) => {
      if (sheet.grain === null || sheet.count === 0) return [];
      const asItStands = { count: basesFrom(sheet, opened), crosses: sheet.grain !== wanted };
      const turned = { count: basesFrom(sheet, quarterTurned(opened)), crosses: sheet.grain === wanted };
      const ways = turnOf(base, paper) === 'free' ? [asItStands, turned] : [asItStands];
      const most = (crosses: boolean) =>
        Math.max(0, ...ways.filter((way) => way.crosses === crosses).map(({ count }) => count));
      const [along, across] = [most(false), most(true)];
      if (across === 0 || along > across) return [];

      const numbers = { width: sheet.size.width, height: sheet.size.height, along, across };
      const code = along === 0 ? 'foldAcrossGrain' : 'foldMayCrossGrain';
      const names = { paper: paper.name, fold: base.fold, grain: sheet.grain };
      return [baseProblem(code, `papers.${id}.sheets[${index}].grain`, numbers, names)];
    });
  });
}

/** How many bases plain rows give from what of a sheet can be used. */
function basesFrom({ size, margin }: SheetStock, base: Size): number {
  const across = Math.floor((size.width - margin.left - margin.right) / base.width);
  const down = Math.floor((size.height - margin.top - margin.bottom) / base.height);
  return Math.max(0, across) * Math.max(0, down);
}
