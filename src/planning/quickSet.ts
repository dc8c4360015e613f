import { firstPlan } from '../cutting/index.ts';
import { assembledPlan } from './assembledPlan.ts';
import { type CardSet, wantedOf } from './cardSet.ts';
import { paperTask } from './cuttingTask.ts';
import { neverReasons } from './never.ts';
import type { Plan } from './plan.ts';
import type { CutPaper } from './plannedPaper.ts';
import { quicklySettledSet } from './settling.ts';

/**
 * A plan of the whole set at once, for a hand that is still on the control: true and replayed as every plan, but
 * made without looking for a better one. Its bounds are true too, if low, and it says of a paper that it is proved
 * where the two meet. `planSet` never costs more.
 *
 * `null` where no plan was found so quickly; that is no proof that the papers are short.
 */
export function quickSet(asked: CardSet): Plan | null {
  const set = quicklySettledSet(asked);
  const { layout, trimmer } = set;
  const pieces = wantedOf(set);
  const papers: CutPaper[] = [];
  for (const paper of layout.papers.values()) {
    const own = pieces.filter((piece) => piece.paper === paper.id);
    if (own.length === 0) continue;
    if (neverReasons(paper, own, trimmer).size > 0) return null;
    const cut = paperTask(paper, own, trimmer);
    const plan = firstPlan(cut.task);
    if (plan === null) return null;
    papers.push({ kind: 'plan', paper: paper.id, paperTask: cut, plan });
  }
  return assembledPlan(set, pieces, papers, { quick: true });
}
