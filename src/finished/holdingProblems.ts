import type { Arrangement, Layout } from '../layout/index.ts';
import type { FinishedProblem } from './check.ts';
import { type FinishedCode, finishedCodes } from './codes.ts';
import { type HeldPart, type HeldPiece, holdingOf } from './holding.ts';
import { narrowestStrip } from './holdingLaid.ts';

/**
 * Where nothing can hold a part unseen: foam or spots with no room behind it, anything under vellum that would show,
 * parts that reach out too far over what holds them. Of a part with several pieces one of each is told.
 */
export function holdingProblems(layout: Layout, arrangement: Arrangement): readonly FinishedProblem[] {
  return holdingOf(layout, arrangement).parts.flatMap((held) => {
    const { part, by, pieces } = held;
    const about = (
      code: FinishedCode,
      numbers: FinishedProblem['numbers'],
      piece: HeldPiece | undefined,
    ): readonly FinishedProblem[] =>
      piece === undefined
        ? []
        : [
            {
              code,
              severity: finishedCodes[code],
              where: `parts[${layout.parts.findIndex(({ id }) => id === part)}]`,
              part,
              numbers,
              names: { kind: held.adhesive.kind },
            },
          ];
    const covered = pieces.find(({ lacks }) => lacks === 'cover');
    const bare = pieces.find(({ lacks }) => lacks === 'room');
    const far = pieces.find(({ hangs }) => hangs !== null);
    return [
      ...about('glueShows', { breadth: covered?.breadth ?? 0, needed: neededBy(held) }, covered),
      // What lies flat needs no foam; joins that are too small for glue are told elsewhere.
      ...(by === 'flat'
        ? []
        : [
            ...about(
              'noRoomToHold',
              { breadth: bare?.breadth ?? 0, needed: neededBy(held), inset: held.adhesive.inset },
              bare,
            ),
            ...about('hangsFar', { hangs: far?.hangs ?? 0, span: held.adhesive.span }, far),
          ]),
    ];
  });
}

/** How broad the room has to be for the least of it. */
function neededBy({ adhesive }: HeldPart): number {
  return adhesive.form === 'strip' || adhesive.form === 'line'
    ? Math.min(adhesive.width, narrowestStrip)
    : adhesive.width;
}
