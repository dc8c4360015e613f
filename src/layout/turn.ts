import type { Paper, Up } from '../stash/index.ts';
import type { Dealt, Turn } from './layout.ts';

/** How the side of a paper that a part shows may stand. */
export function upOf(part: Dealt, paper: Paper): Up {
  return part.side === 'back' && paper.back !== null ? paper.back.up : paper.up;
}

/** Whether a part's pieces may be turned when they are cut from a paper: as the layout says, else by the print. */
export function turnOf(part: Dealt, paper: Paper): Turn {
  return part.turn ?? (upOf(part, paper) === 'any' ? 'free' : 'locked');
}
