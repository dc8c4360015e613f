import { planCuts } from '../cutting/index.ts';
import type { Layout } from '../layout/index.ts';
import { type Axis, inches, type Length, millimetres, minus } from '../measure/index.ts';
import { canSquare } from '../trimming/index.ts';
import { type PlanningCode, type PlanningProblem, planningCodes } from './codes.ts';
import { paperTask } from './cuttingTask.ts';
import type { Piece } from './piece.ts';
import type { Plan } from './plan.ts';
import type { SetToPlan } from './planSet.ts';
import type { Shortage, ShortageLimit } from './shortage.ts';
import { type TightFit, tightFitsOf } from './tightFit.ts';

/**
 * What would spoil the set between its layout and the papers and trimmer on hand: papers that are short, pieces
 * that no sheet or trimmer can give, lengths between the marks, fits with nothing to spare.
 *
 * `answer` is what `planSet` made of the same set. Problems stand in the layout's order.
 */
export function checkSet(set: SetToPlan, answer: Plan | Shortage): readonly PlanningProblem[] {
  return [
    ...squaringProblems(set),
    ...(answer.kind === 'short' ? shortProblems(set, answer) : []),
    ...markProblems(set, answer.pieces),
    ...(answer.kind === 'plan' ? tightFitsOf(answer).map((fit) => tightProblem(set, answer, fit)) : []),
  ];
}

/** The marks a trimmer is taken to have when none is given: 1/16 in or 1 mm (common practice, no source). */
export function usualMarks({ units }: Pick<Layout, 'units'>): Length {
  return units === 'in' ? inches(1, 16) : millimetres(1);
}

function problem(
  code: PlanningCode,
  where: string,
  about: {
    readonly part?: string;
    readonly numbers: Readonly<Record<string, number>>;
    readonly names: Readonly<Record<string, string>>;
  },
): PlanningProblem {
  return { code, severity: planningCodes[code], where, ...about };
}

function squaringProblems({ layout, trimmer }: SetToPlan): readonly PlanningProblem[] {
  return [...layout.papers.values()].flatMap((paper) =>
    paper.sheets.flatMap(({ size, margin }, index) => {
      if (canSquare(size, margin, trimmer)) return [];
      const where = `papers.${paper.id}.sheets[${index}].margin`;
      return [problem('cannotSquare', where, { numbers: { ...size }, names: { paper: paper.name } })];
    }),
  );
}

function shortProblems({ layout, trimmer }: SetToPlan, shortage: Shortage): readonly PlanningProblem[] {
  return shortage.papers.flatMap((short) =>
    [...short.missing].map(([pieceId, missing]) => {
      const paper = layout.papers.get(short.paper)!;
      const piece = shortage.pieces.find((candidate) => candidate.id === pieceId)!;
      const where = pathOf(layout, piece);
      const about = { part: piece.part, names: { paper: paper.name, piece: pieceId } };
      const reason = short.never.get(pieceId);
      const isLimit = (limit: ShortageLimit) => Number(reason === limit || short.limits.includes(limit));
      const limits = { direction: isLimit('direction'), margins: isLimit('margins') };
      const { width, height } = piece.size;
      if (reason === 'too-narrow') {
        const numbers = { width, height, narrowest: trimmer?.narrowest ?? 0 };
        return problem('pieceTooNarrow', where, { ...about, numbers });
      }
      if (reason !== undefined && reason !== 'trimmer') {
        return problem('pieceTooLarge', where, { ...about, numbers: { width, height, ...limits } });
      }
      const numbers = {
        missing,
        need: piece.need,
        proved: Number(short.proved),
        cards: shortage.nearest.cards,
        cardsProved: Number(shortage.nearest.proved),
        sheets: Number(paper.sheets.some(({ count }) => count !== 0)),
        trimmer: isLimit('trimmer'),
        ...limits,
      };
      return problem('short', where, { ...about, numbers });
    }),
  );
}

function markProblems({ layout, trimmer }: SetToPlan, pieces: readonly Piece[]): readonly PlanningProblem[] {
  const marks = trimmer === null ? usualMarks(layout) : trimmer.marks;
  if (marks === null) return [];
  // A part from several papers is measured the same way from each.
  const firstOfPart = new Map(pieces.toReversed().map((piece) => [piece.part, piece]));
  return pieces
    .filter((piece) => firstOfPart.get(piece.part) === piece)
    .flatMap((piece) =>
      (['width', 'height'] as const).flatMap((axis) => {
        const length = piece.size[axis];
        const off = length % marks;
        if (off === 0) return [];
        const paper = layout.papers.get(piece.paper)!.name;
        return [
          problem('betweenMarks', pathOf(layout, piece), {
            part: piece.part,
            numbers: { length, marks, off },
            names: { piece: piece.id, paper, axis },
          }),
        ];
      }),
    );
}

/** The caution names what a sheet one mark shorter would cost, found by planning the paper again with it. */
function tightProblem(set: SetToPlan, plan: Plan, fit: TightFit): PlanningProblem {
  const { layout, trimmer, solver } = set;
  const paper = layout.papers.get(fit.paper)!;
  const mark = trimmer?.marks ?? usualMarks(layout);
  const shorter = paper.sheets.map((stock, index) =>
    index === fit.stock && stock.size[fit.axis] > mark
      ? { ...stock, size: { ...stock.size, [fit.axis]: minus(stock.size[fit.axis], mark) } }
      : stock,
  );
  const pieces = plan.pieces.filter((piece) => piece.paper === fit.paper);
  const answer = planCuts(paperTask({ ...paper, sheets: shorter }, pieces, trimmer).task, solver);
  const sheets = plan.papers.get(fit.paper)!.sheets;
  const cost =
    answer.kind === 'short'
      ? { missing: answer.missing.reduce((total, count) => total + count, 0) }
      : { moreSheets: answer.patterns.reduce((total, pattern) => total + pattern.times, 0) - sheets };
  const numbers = { side: fit.side, count: fit.count, set: fit.set, mark, ...cost };
  const axis: Axis = fit.axis;
  return problem('nothingToSpare', `papers.${fit.paper}.sheets[${fit.stock}]`, {
    numbers,
    names: { paper: paper.name, axis },
  });
}

/** The field of the layout file that the piece comes from. */
function pathOf(layout: Layout, piece: Piece): string {
  return piece.part === 'base' ? 'base' : `parts[${layout.parts.findIndex(({ id }) => id === piece.part)}]`;
}
