import type { Layout } from '../layout/index.ts';
import type { FinishedProblem } from './check.ts';
import { type FinishedCode, finishedCodes } from './codes.ts';
import { isMeeting, type TearJoin, type Tears } from './tears.ts';

/** The joins of torn edges that fail as a rule, or more often than is wanted, in the order of the pile. */
export function tearProblems(layout: Layout, tears: Tears): readonly FinishedProblem[] {
  return tears.joins.flatMap((join) => {
    const code = codeOf(join);
    if (code === null) return [];
    const { kind, part, edge, against, shows, nominal, usual, least, most, onCard, inSet, remedy } = join;
    const index = layout.parts.findIndex(({ id }) => id === part);
    return [
      {
        code,
        severity: finishedCodes[code],
        where: `parts[${index}].torn`,
        part,
        numbers: {
          nominal,
          usual,
          least,
          most,
          onCard: onCard.chance,
          inSet: inSet.chance,
          cards: tears.cards,
          wanted: tears.wanted,
          ...(remedy === null ? {} : { more: remedy.more, margin: remedy.margin }),
        },
        names: { kind, edge, against: against.part, shows },
      },
    ];
  });
}

function codeOf({ kind, usual, remedy }: TearJoin): FinishedCode | null {
  if (!isMeeting(kind) && usual <= 0) return 'tearShows';
  if (remedy === null) return null;
  return isMeeting(kind) ? 'tearMeets' : 'tearMayShow';
}
