import type { Arrangement, Layout } from '../layout/index.ts';
import { type PostTable, postTableOf } from '../making/index.ts';
import type { Problem } from '../problem/index.ts';
import type { FinishedProblem } from './check.ts';
import { type Closed, closedCards } from './closed.ts';
import { type FinishedCode, finishedCodes } from './codes.ts';
import { type EnvelopeFit, envelopeFit, envelopeNeeded, smallestEnvelope } from './envelope.ts';
import { type PostChange, type Posting, postingOf } from './posting.ts';

/**
 * What is wrong with the closed cards for the envelope and the post that the layout names; nothing where it names none.
 * `tables` are the person's own, which hold instead of that of the layout.
 */
export function closedProblems(
  layout: Layout,
  arrangement: Arrangement,
  tables: readonly PostTable[] | undefined = undefined,
): readonly FinishedProblem[] {
  if (layout.envelope === null && layout.post === null) return [];
  const closed = closedCards(layout, arrangement);
  const known = layout.post === null ? null : postTableOf(layout.post);
  return [
    ...envelopeProblems(layout, closed),
    ...(tables ?? (known === null ? [] : [known])).flatMap((table) =>
      postProblems(layout, postingOf(layout, arrangement, table, closed)),
    ),
  ];
}

/** Whether the envelope of the layout is too small for its cards, or a tight fit; nothing where it names none. */
export function envelopeProblems(layout: Layout, { section }: Closed): readonly FinishedProblem[] {
  const { envelope, units } = layout;
  if (envelope === null) return [];
  const fit = envelopeFit(section, envelope.size, units);
  if (fit.is === 'fits') return [];
  const [side, { card, envelope: own, spare, thickness, left }] = narrowerOf(fit);
  const needed = envelopeNeeded(section, units);
  const code = fit.is === 'tight' ? 'envelopeTight' : 'envelopeTooSmall';
  return [
    problem(code, 'envelope.size', {
      numbers: { card, envelope: own, spare, thickness, left, ...needed },
      names: {
        side,
        ...(envelope.name === '' ? {} : { name: envelope.name }),
        ...other(smallestEnvelope(section, units)?.name, envelope.name),
      },
    }),
  ];
}

/** Whether the post of the layout takes its cards not at all, or not as its smallest class; nothing where it names none. */
export function postProblems(layout: Layout, posting: Posting): readonly FinishedProblem[] {
  const { posted, table, piece, changes } = posting;
  const [first] = posted.not;
  if (layout.post === null || first === undefined) return [];
  // Where no class takes it, what keeps it from the largest says why.
  const { faults } = posted.as === null ? posted.not.at(-1)! : first;
  const told = faults.map((fault, index) => [index + 1, fault] as const);
  return [
    problem(posted.as === null ? 'notPosted' : 'postedHigher', 'post', {
      numbers: {
        ...Object.fromEntries(
          told.flatMap(([at, { is, limit }]) => [
            [`is${at}`, is],
            [`limit${at}`, limit],
          ]),
        ),
        grams: piece.grams,
        thickness: piece.thickness,
      },
      names: {
        post: table.country,
        asOf: table.asOf,
        ...Object.fromEntries(told.map(([at, { code }]) => [`why${at}`, code])),
        smallest: first.class.name,
        ...(posted.as === null ? {} : { as: posted.as.name }),
        ...(changes[0] === undefined ? {} : changeNames(layout, changes[0])),
      },
    }),
  ];
}

function problem(
  code: FinishedCode,
  where: string,
  about: Pick<Problem, 'numbers' | 'names'>,
): FinishedProblem {
  return { code, severity: finishedCodes[code], where, ...about };
}

/** The direction in which less is left. */
function narrowerOf({ length, height }: EnvelopeFit) {
  return length.left < height.left ? (['longer', length] as const) : (['shorter', height] as const);
}

/** Another envelope than the one there is. */
function other(smallest: string | undefined, name: string): { readonly smallest?: string } {
  return smallest === undefined || smallest === name ? {} : { smallest };
}

function changeNames(layout: Layout, change: PostChange): Readonly<Record<string, string>> {
  const named = { change: change.kind, becomes: change.as.name };
  if ('part' in change) {
    return { ...named, changed: layout.parts.find(({ id }) => id === change.part)?.name ?? change.part };
  }
  return 'envelope' in change ? { ...named, changed: change.envelope.name } : named;
}
