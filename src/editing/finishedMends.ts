import { valueAt } from '../files/index.ts';
import {
  checkFinished,
  closedCards,
  type DocketAsks,
  envelopeNeeded,
  type FinishedCode,
  type FinishedProblem,
  joinBreadth,
  type PostChange,
  postingOf,
  type Sides,
  smallestEnvelope,
  tearsOf,
} from '../finished/index.ts';
import { type ArrangedPart, checkLayout } from '../layout/index.ts';
import { postTableOf } from '../making/index.ts';
import { type Axis, bottomOf, type Edge, lengthOfTicks, rightOf, roundTo, sum } from '../measure/index.ts';
import type { Problem } from '../problem/index.ts';
import type { MendTold } from '../words/index.ts';
import { type Ailing, axisOf, mending, mendingOf, resized, setting, shifted, spanned } from './ailing.ts';
import { type Change, changesTo } from './change.ts';
import { type Edit, partMoved, partTaken } from './edit.ts';
import type { InHand } from './inHand.ts';
import { inHandAfter } from './mends.ts';
import { typingOf } from './typing.ts';

/** So many ways out are offered; more would be a puzzle of their own. */
const mostOffered = 3;

/**
 * The edits that mend what is wrong with the finished cards, best first and at most three; empty: nothing can be offered,
 * and the sentence of the problem says what would do.
 *
 * Each has been tried: the file stays sound, this problem is gone (the post takes the cards in a smaller class) and no
 * new error of the layout or of the finished cards has come. `held` is what the problem was found by; lengths that are for
 * us to choose are set at its marks.
 */
export function finishedMendsOf(inHand: InHand, problem: FinishedProblem, held: DocketAsks): readonly Edit[] {
  const before = new Set(errorsOf(inHand, held));
  const index = inHand.layout.parts.findIndex(({ id }) => id === problem.part);
  const arranged = inHand.arrangement.parts[index];
  const ailing = arranged === undefined ? null : { inHand, index, arranged, piece: 0 };
  const offered: Edit[] = [];
  for (const edit of mendsByCode[problem.code]({ inHand, problem, held, ailing })) {
    if (edit === null || offered.length === mostOffered) continue;
    const after = inHandAfter(inHand, edit);
    if (after === null) continue;
    const now = checkFinished(after.layout, after.arrangement, held);
    if (now.some((one) => isStill(problem, one))) continue;
    if (errorsOf(after, held, now).some((error) => !before.has(error))) continue;
    offered.push(edit);
  }
  return offered;
}

/** What tells the errors there are apart: what is wrong and with what. */
function errorsOf(
  { layout, arrangement }: InHand,
  held: DocketAsks,
  finished: readonly Problem[] = checkFinished(layout, arrangement, held),
): readonly string[] {
  return [...checkLayout(layout, arrangement), ...finished]
    .filter(({ severity }) => severity === 'error')
    .map(({ code, part, where, names }) =>
      JSON.stringify([code, part ?? where, names.axis, names.edge, names.piece, names.against]),
    );
}

/** Whether the problem is there as before, if milder: the same tear, the same envelope, the same class of the post. */
function isStill(problem: FinishedProblem, now: FinishedProblem): boolean {
  const family = families[problem.code];
  if (families[now.code] !== family || now.part !== problem.part) return false;
  if (family === 'post') return now.code === problem.code && now.names.as === problem.names.as;
  return ['kind', 'edge', 'against', 'beside'].every((name) => now.names[name] === problem.names[name]);
}

/** Problems of one family turn into one another as they get milder. */
const families = {
  vanishes: 'vanishes',
  noJoin: 'join',
  thinJoin: 'join',
  sliver: 'sliver',
  noRoomToHold: 'room to hold',
  glueShows: 'glue',
  hangsFar: 'hangs',
  orderRefused: 'order',
  orderNone: 'order',
  allowanceTight: 'allowance',
  tearShows: 'tear',
  tearMayShow: 'tear',
  tearMeets: 'tear',
  envelopeTooSmall: 'envelope',
  envelopeTight: 'envelope',
  notPosted: 'post',
  postedHigher: 'post',
  stationsEmpty: 'stations',
  roomToDryShort: 'room to dry',
  longWait: 'long wait',
  stationWaits: 'stations',
} as const satisfies Record<FinishedCode, string>;

interface Case {
  readonly inHand: InHand;
  readonly problem: FinishedProblem;
  readonly held: DocketAsks;
  /** The part it is about; `null`: none, or the base. */
  readonly ailing: Ailing | null;
}

type Tried = readonly (Edit | null)[];

const mendsByCode: Record<FinishedCode, (one: Case) => Tried> = {
  vanishes,
  noJoin,
  thinJoin,
  sliver: sliverGone,
  noRoomToHold: laidFlat,
  // What may lie over it is for the eye to choose.
  glueShows: () => [],
  hangsFar: (one) => [...(one.ailing === null ? [] : centred(one.ailing)), ...laidFlat(one)],
  orderRefused: orderFreed,
  // The sentence says what may be laid on what; that is another design.
  orderNone: () => [],
  tearShows: tearCovered,
  tearMayShow: tearCovered,
  tearMeets: tearCovered,
  allowanceTight: allowanceMet,
  envelopeTooSmall: otherEnvelopes,
  envelopeTight: otherEnvelopes,
  notPosted: posted,
  postedHigher: posted,
  stationsEmpty: ({ inHand, problem }) => [stationsSet(inHand, problem.numbers.tasks ?? 1)],
  // Where the table is, is the person's.
  roomToDryShort: () => [],
  longWait: glueTaped,
  stationWaits: oneStationMore,
};

// --- What shows and how it holds ---

function vanishes({ inHand, problem, ailing }: Case): Tried {
  if (ailing === null) return [];
  const { file, layout } = inHand;
  const hiders = (problem.names.by ?? '').split(' ');
  const top = layout.parts.findLastIndex(({ id }) => hiders.includes(id));
  if (top <= ailing.index) return [];
  const told = { by: 'above', other: layout.parts[top]!.name } as const;
  return [
    mending(ailing, told, partMoved(file, ailing.index, top).changes),
    mending(ailing, { by: 'taken off' }, partTaken(file, ailing.index).changes),
  ];
}

function noJoin({ ailing }: Case): Tried {
  return ailing === null ? [] : centred(ailing);
}

/** Laid in the middle of what it lies on, along one axis or both. */
function centred(ailing: Ailing): Tried {
  const free = (axis: Axis) => spanned(ailing, axis, null, () => ({ start: null, end: null }));
  return [
    mending(ailing, { by: 'centre', axis: 'width' }, free('width')),
    mending(ailing, { by: 'centre', axis: 'height' }, free('height')),
    mending(ailing, { by: 'centre', axis: 'both' }, setting(ailing, ['place'], undefined)),
  ];
}

/** Laid in the middle, or larger by what the join needs along the one axis or the other. */
function thinJoin({ ailing, held: { marks } }: Case): Tried {
  if (ailing === null) return [];
  const larger = (['height', 'width'] as const).map((axis) => {
    const seen = ailing.arranged.seen?.[axis];
    const cut = ailing.arranged.cut?.[axis];
    if (seen === undefined || cut === undefined) return null;
    const to = roundTo(sum(seen, joinBreadth), marks, 'up');
    return mending(
      ailing,
      { by: 'length', of: axis, to: sum(cut, lengthOfTicks(to - seen)) },
      resized(ailing, axis, to),
    );
  });
  return [...centred(ailing), ...larger];
}

/** Moved, or of another size, until nothing of it shows any more; the check tells which way that is. */
function sliverGone({ inHand, problem, ailing }: Case): Tried {
  const { breadth } = problem.numbers;
  if (ailing === null || breadth === undefined) return [];
  const { edge, beside } = problem.names;
  if (isEdge(edge)) {
    const axis = axisOf(edge);
    const outwards = edge === 'left' || edge === 'top' ? -breadth : breadth;
    return [
      mending(ailing, { by: 'border', edge, to: lengthOfTicks(0) }, shifted(ailing, axis, outwards)),
      grown(ailing, axis, 2 * breadth),
      grown(ailing, axis, breadth),
    ];
  }
  const other = inHand.arrangement.parts.find(({ part }) => part.id === beside);
  if (other === undefined) return [];
  return (['left', 'right', 'top', 'bottom'] as const).map((edge) => {
    if (!liesBeyond(ailing.arranged, other, edge, breadth)) return null;
    const closer = edge === 'left' || edge === 'top' ? breadth : -breadth;
    const told = { by: 'beside', other: other.part.name, edge } as const;
    return mending(ailing, told, shifted(ailing, axisOf(edge), closer));
  });
}

/** Whether a piece of the one lies just so far beyond that edge of a piece of the other. */
function liesBeyond(one: ArrangedPart, other: ArrangedPart, edge: Edge, by: number): boolean {
  return one.pieces.some(({ box }) =>
    other.pieces.some(({ box: of }) => {
      if (box === null || of === null) return false;
      const beyond = {
        left: of.left - rightOf(box),
        right: box.left - rightOf(of),
        top: of.top - bottomOf(box),
        bottom: box.top - bottomOf(of),
      };
      return beyond[edge] === by;
    }),
  );
}

function grown(ailing: Ailing, axis: Axis, by: number): Edit | null {
  const { seen, cut } = ailing.arranged;
  if (seen === null || cut === null) return null;
  const to = lengthOfTicks(cut[axis] + by);
  return mending(
    ailing,
    { by: 'length', of: axis, to },
    resized(ailing, axis, lengthOfTicks(seen[axis] + by)),
  );
}

function isEdge(name: string | undefined): name is Edge {
  return name === 'left' || name === 'right' || name === 'top' || name === 'bottom';
}

// --- What holds it, and in which order ---

/** Without the foam or the spots. */
function laidFlat({ ailing }: Case): Tried {
  if (ailing === null) return [];
  const flat = [...setting(ailing, ['adhere'], undefined), ...setting(ailing, ['foam'], undefined)];
  return [mending(ailing, { by: 'flat' }, flat)];
}

/** What lies flat is held by tape, which needs no time. */
function glueTaped({ inHand }: Case): Tried {
  const changes = changesTo(inHand.file, ['adhesives', 'flat'], { kind: 'double-sided-tape' });
  return [mendingOf({ kind: 'set' }, inHand, { by: 'tape' }, changes)];
}

function oneStationMore({ inHand }: Case): Tried {
  const { stations, helpers } = inHand.layout.making ?? { stations: null, helpers: null };
  return stations === null || stations >= (helpers ?? 1) ? [] : [stationsSet(inHand, stations + 1)];
}

function stationsSet(inHand: InHand, count: number): Edit | null {
  const changes = changesTo(inHand.file, ['making', 'stations'], count);
  return mendingOf({ kind: 'set' }, inHand, { by: 'stations', count }, changes);
}

/** The order is worked out again. */
function orderFreed({ inHand }: Case): Tried {
  return [mendingOf({ kind: 'set' }, inHand, { by: 'order' }, changesTo(inHand.file, ['order'], undefined))];
}

// --- Tears ---

/** Each part behind the join cut so much larger or smaller that the tear is within the risk. */
function tearCovered({ inHand, problem, held }: Case): Tried {
  const { layout, arrangement } = inHand;
  const join = tearsOf(layout, arrangement, held).joins.find(
    ({ part, kind, edge, against }) =>
      part === problem.part &&
      kind === problem.names.kind &&
      edge === problem.names.edge &&
      against.part === problem.names.against,
  );
  return (join?.remedy?.resized ?? []).map(({ part, axis, from, to }) => {
    const index = layout.parts.findIndex(({ id }) => id === part);
    const arranged = arrangement.parts[index];
    return arranged === undefined ? null : grown({ inHand, index, arranged, piece: 0 }, axis, to - from);
  });
}

/** The panels within narrower by what lies there is thick. */
function allowanceMet({ inHand, problem, held: { marks } }: Case): Tried {
  const { thickness } = problem.numbers;
  if (thickness === undefined) return [];
  const to = roundTo(lengthOfTicks(thickness), marks, 'up');
  const typed = typingOf(inHand.layout)(to, valueAt(inHand.file, ['base', 'allowance']));
  const changes = changesTo(inHand.file, ['base', 'allowance'], typed);
  return [mendingOf({ kind: 'base' }, inHand, { by: 'allowance', to }, changes)];
}

// --- Envelope and post ---

function otherEnvelopes({ inHand }: Case): Tried {
  const { layout, arrangement } = inHand;
  const { section } = closedCards(layout, arrangement);
  const sold = smallestEnvelope(section, layout.units);
  return [
    sold === null ? null : enveloped(inHand, sold, sold.name),
    enveloped(inHand, envelopeNeeded(section, layout.units), ''),
  ];
}

/** The cards in an envelope of that size; what was said of the paper of the one before stays, its weight does not. */
function enveloped(inHand: InHand, { length, height }: Sides, name: string): Edit | null {
  const { file, layout } = inHand;
  const now = layout.envelope?.size;
  const stands = now !== undefined && now.width < now.height;
  const [width, high] = stands ? [height, length] : [length, height];
  const typed = typingOf(layout);
  const size = [typed(width), typed(high)];
  const changes =
    layout.envelope === null
      ? changesTo(file, ['envelope'], name === '' ? { size } : { name, size })
      : [
          ...changesTo(file, ['envelope', 'size'], size),
          ...changesTo(file, ['envelope', 'name'], name === '' ? undefined : name),
          ...changesTo(file, ['envelope', 'grams'], undefined),
        ];
  return mendingOf({ kind: 'set' }, inHand, { by: 'envelope', name, width, height: high }, changes);
}

/** What the post's own sum found that would bring the set down a class, as an edit. */
function posted({ inHand, held }: Case): Tried {
  const { layout, arrangement } = inHand;
  const tables = held.tables ?? (layout.post === null ? [] : [postTableOf(layout.post)]);
  return tables.flatMap((table) =>
    table === null
      ? []
      : postingOf(layout, arrangement, table).changes.map((change) => postChanged(inHand, change)),
  );
}

function postChanged(inHand: InHand, change: PostChange): Edit | null {
  const { file, layout } = inHand;
  const each = (changes: (at: number) => readonly Change[]) =>
    layout.parts.flatMap(({ adhere }, at) => (adhere === 'raised' ? changes(at) : []));
  const flat = (at: number) => [
    ...changesTo(file, ['parts', at, 'adhere'], undefined),
    ...changesTo(file, ['parts', at, 'foam'], undefined),
  ];
  const ofSet = (mend: MendTold, changes: readonly Change[]) =>
    mendingOf({ kind: 'set' }, inHand, mend, changes);
  switch (change.kind) {
    case 'thinnerFoam': {
      const typed = typingOf(layout)(change.foam);
      return ofSet(
        { by: 'foam', to: change.foam },
        each((at) => changesTo(file, ['parts', at, 'foam'], typed)),
      );
    }
    case 'withoutFoam':
      return ofSet({ by: 'all flat' }, each(flat));
    case 'flatPart':
    case 'withoutPart': {
      const at = layout.parts.findIndex(({ id }) => id === change.part);
      const owner = { kind: 'part', name: layout.parts[at]!.name } as const;
      return change.kind === 'flatPart'
        ? mendingOf(owner, inHand, { by: 'flat' }, flat(at))
        : mendingOf(owner, inHand, { by: 'taken off' }, partTaken(file, at).changes);
    }
    case 'lighterEnvelope':
      return layout.envelope === null
        ? null
        : ofSet({ by: 'envelope paper', gsm: change.gsm }, changesTo(file, ['envelope', 'gsm'], change.gsm));
    case 'otherEnvelope':
      return enveloped(inHand, change.envelope, change.envelope.name);
    // Another card is another layout: to plan it again for another card is the way to it.
    case 'smallerCard':
      return null;
  }
}
