import { type LinearSolver, planCuts } from '../../cutting/index.ts';
import { type Arrangement, arrange, checkLayout, type Layout } from '../../layout/index.ts';
import { paperTask, piecesOf } from '../index.ts';
import { layoutIn, type SketchFile, unevenByBoxes } from './smallLayout.ts';

/** A layout and where everything lies, worked out from its file. */
export interface Case {
  readonly layout: Layout;
  readonly arrangement: Arrangement;
}

export function caseOf(file: SketchFile): Case {
  const layout = layoutIn(file);
  return { layout, arrangement: arrange(layout) };
}

/** Asks the planner of cuts one question after another what the sheets give; nothing is asked twice. */
export class Asked {
  readonly #solver: LinearSolver;
  readonly #answers = new Map<string, { readonly cost: number; readonly sheets: number } | null>();

  constructor(solver: LinearSolver) {
    this.#solver = solver;
  }

  /** The least cost of what one paper gives for so many cards, and its sheets; `null`: its sheets are not enough. */
  cost(
    { layout, arrangement }: Case,
    id: string,
    cards: number,
  ): { readonly cost: number; readonly sheets: number } | null {
    const pieces = piecesOf({ ...layout, cards }, arrangement).filter(({ paper }) => paper === id);
    if (pieces.length === 0) return { cost: 0, sheets: 0 };
    return this.#asked(paperTask(layout.papers.get(id)!, pieces, null).task);
  }

  comeOut(drawn: Case, cards: number): boolean {
    return [...drawn.layout.papers.keys()].every((id) => this.cost(drawn, id, cards) !== null);
  }

  /** The most cards, one by one; `null`: more than are looked at. */
  most(drawn: Case): number | null {
    for (let cards = 0; cards < 120; cards += 1) if (!this.comeOut(drawn, cards + 1)) return cards;
    return null;
  }

  /** Whether one sheet of a stock gives so many of a piece, cut into nothing else. */
  sheetGives({ layout, arrangement }: Case, piece: string, stock: number, need: number): boolean {
    if (need === 0) return true;
    const own = piecesOf(layout, arrangement).find(({ id }) => id === piece)!;
    const paper = layout.papers.get(own.paper)!;
    const sheets = [{ ...paper.sheets[stock]!, count: 1 }];
    return this.#asked(paperTask({ ...paper, sheets }, [{ ...own, need }], null).task) !== null;
  }

  #asked(task: Parameters<typeof planCuts>[0]): { readonly cost: number; readonly sheets: number } | null {
    const key = JSON.stringify(task);
    const known = this.#answers.get(key);
    if (known !== undefined) return known;
    const answer = planCuts(task, this.#solver);
    const sheets = answer.kind === 'plan' ? answer.patterns.reduce((sum, { times }) => sum + times, 0) : 0;
    const found = answer.kind === 'plan' ? { cost: answer.cost, sheets } : null;
    this.#answers.set(key, found);
    return found;
  }
}

/** What is wrong with a drawing that was not wrong with another: not worked out, no longer even, or a new problem. */
export function faultsOf(before: Case, after: Case): readonly string[] {
  if (after.arrangement.parts.some(({ cut }) => cut === null)) return ['unknown sizes'];
  const coded = ({ layout, arrangement }: Case) =>
    checkLayout(layout, arrangement).map(
      ({ code, where, numbers }) => `${code} at ${where}${'across' in numbers ? ': all round' : ''}`,
    );
  const known = new Set(coded(before));
  return [
    ...unevenByBoxes(before.arrangement, after.arrangement),
    ...coded(after).filter((problem) => !known.has(problem)),
  ];
}
