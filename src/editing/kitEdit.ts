import {
  changedFile,
  isList,
  isObject,
  type Json,
  type JsonObject,
  type KitFileProblem,
  readSavedKit,
  type SavedKit,
  valueAt,
} from '../files/index.ts';
import { type KitOffer, type KitProblem, layoutProblems, withBags } from '../kits/index.ts';
import { type Kit, lengthNamed } from '../layout/index.ts';
import type { Length } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { KitEditTold } from '../words/index.ts';
import { type Change, changed, changesTo } from './change.ts';

/** Something that was done to a kit file: plain data, with what a sentence says of it. */
export interface KitEdit {
  readonly told: KitEditTold;
  readonly changes: readonly Change[];
}

/** The kit called otherwise. */
export function kitTitled(file: SavedKit, to: string): KitEdit {
  return { told: { what: 'title', to }, changes: changesTo(file, ['title'], to) };
}

/** Another number of seats, of bags for the teacher or of spare ones. */
export function kitCounted(file: SavedKit, what: 'seats' | 'teacher' | 'spare', to: number): KitEdit {
  return { told: { what, to }, changes: changesTo(file, [what], to) };
}

/** Another number of cards of a layout from each bag. */
export function kitEachSet(file: SavedKit, at: number, to: number): KitEdit {
  const id = valueAt(file, ['layouts', at, 'id']);
  assert(typeof id === 'string', 'A layout of a kit has an id', { at });
  return { told: { what: 'each', layout: id, to }, changes: changesTo(file, ['layouts', at, 'each'], to) };
}

/** Whether bags have envelopes. */
export function kitEnvelopesSet(file: SavedKit, to: boolean): KitEdit {
  return { told: { what: 'envelopes', to }, changes: changesTo(file, ['envelopes'], to) };
}

/** Another number of sheets of a shared paper. */
export function kitSheetsSet(
  file: SavedKit,
  { paper, stock }: { readonly paper: string; readonly stock: number },
  to: number | null,
): KitEdit {
  return {
    told: { what: 'sheets', paper, to },
    changes: changesTo(file, ['papers', paper, 'sheets', stock, 'count'], to),
  };
}

/** What takes an offer, in a file that has its layouts in it. */
export function kitOfferTaken(file: SavedKit, kit: Kit, offer: KitOffer): KitEdit {
  return { told: { what: 'offer', kind: offer.kind }, changes: changesOfOffer(file, kit, offer) };
}

function changesOfOffer(file: SavedKit, kit: Kit, offer: KitOffer): readonly Change[] {
  switch (offer.kind) {
    case 'standIn': {
      const before = isList(file.instead) ? file.instead : [];
      const added = offer.instead.map((one): JsonObject => ({ ...one }));
      return changesTo(file, ['instead'], [...before, ...added]);
    }
    case 'sizes':
      return lengthChanges(file, kit, offer.layout, new Map(offer.changes.map(({ path, to }) => [path, to])));
    case 'sheets': {
      const at = ['papers', offer.paper, 'sheets', offer.stock, 'count'];
      const inKit = valueAt(file, at);
      if (typeof inKit === 'number') return changesTo(file, at, inKit + offer.count);
      // A paper that only one layout has is in that.
      const index = kit.layouts.findIndex(({ layout }) => layout.papers.has(offer.paper));
      const own = ['layouts', index, 'layout', ...at];
      const count = valueAt(file, own);
      return typeof count === 'number' ? changesTo(file, own, count + offer.count) : [];
    }
    case 'together': {
      let now: SavedKit = file;
      const all: Change[] = [];
      for (const one of offer.offers) {
        const changes = changesOfOffer(now, kit, one);
        all.push(...changes);
        now = changed(now, changes).file;
      }
      return all;
    }
    case 'fewer': {
      const { seats, teacher, spare } = withBags(kit, offer.bags);
      let now: SavedKit = file;
      const all: Change[] = [];
      for (const [field, count] of Object.entries({ seats, teacher, spare })) {
        if (valueAt(now, [field]) === undefined && count === 0) continue;
        const changes = changesTo(now, [field], count);
        all.push(...changes);
        now = changed(now, changes).file;
      }
      return all;
    }
  }
}

/** A length of one of the layouts of a kit. */
export interface KitLength {
  /** Id of the layout. */
  readonly layout: string;
  /** Id of the part in it; `base` for the base. */
  readonly part: string;
  readonly name: string;
  readonly length: Length;
}

/** Why a length is not set. */
export type KitLengthRefusal =
  /** The part has no length of that name. */
  | { readonly why: 'none' }
  /** The file would be none. */
  | { readonly why: 'file'; readonly problems: readonly KitFileProblem[] }
  /** The layout would have errors that it has not now. */
  | { readonly why: 'worse'; readonly problems: readonly KitProblem[]; readonly kit: Kit };

/**
 * Another length in one of the layouts, where that leaves the layout without new errors; the file has its layouts in it.
 * The size of a part that follows from an inset is had by the size of what it lies on.
 */
export function kitLengthSet(
  file: SavedKit,
  kit: Kit,
  { layout: id, part, name, length }: KitLength,
): KitEdit | { readonly refused: KitLengthRefusal } {
  const one = kit.layouts.find((layout) => layout.id === id);
  const wanted = one === undefined ? null : lengthNamed(one.layout, { part, name, length });
  if (wanted === null) return { refused: { why: 'none' } };
  const changes = lengthChanges(file, kit, id, new Map([[wanted.dimension.path, wanted.length]]));
  const after = readSavedKit(changed(file, changes).file);
  if ('problems' in after) return { refused: { why: 'file', problems: after.problems } };
  const errors = (of: Kit) =>
    layoutProblems({ ...of, layouts: of.layouts.filter((layout) => layout.id === id) }).filter(
      ({ problem }) => problem.severity === 'error',
    );
  const keyOf = ({ problem }: KitProblem) =>
    `${problem.code} ${problem.part ?? ''} ${problem.names.axis ?? ''}`;
  const before = new Set(errors(kit).map(keyOf));
  const worse = errors(after.kit).filter((problem) => !before.has(keyOf(problem)));
  return worse.length > 0
    ? { refused: { why: 'worse', problems: worse, kit: after.kit } }
    : { told: { what: 'length', layout: id }, changes };
}

/** Other lengths in a layout of the kit; its papers stay as they stand there, be they shared or its own. */
function lengthChanges(
  file: SavedKit,
  kit: Kit,
  id: string,
  lengths: ReadonlyMap<string, Length>,
): readonly Change[] {
  const index = kit.layouts.findIndex((one) => one.id === id);
  const at = ['layouts', index, 'layout'];
  const saved = valueAt(file, at);
  assert(isObject(saved), 'A layout that is changed stands in the kit', { id });
  const shared = Object.fromEntries(
    [...kit.papers.keys()].map((paper): [string, Json] => [paper, { sheets: [] }]),
  );
  const own = isObject(saved.papers) ? saved.papers : {};
  const whole = changedFile({ ...saved, cards: 1, papers: { ...own, ...shared } }, { lengths });
  assert('file' in whole, 'A layout with other lengths is a layout', whole);
  const fields = Object.entries(saved).map(([field, value]): [string, Json] => [
    field,
    field === 'papers' || field === 'cards' ? value : (whole.file[field] ?? value),
  ]);
  return changesTo(file, at, Object.fromEntries(fields));
}
