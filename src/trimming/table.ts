import type { Length } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { worthKeeping } from './leftover.ts';
import { partName } from './partName.ts';
import { nextRound, type Round } from './round.ts';
import type { Leftover, Step } from './step.ts';
import { settingOf, type Trimmer, wideEnough } from './trimmer.ts';
import type { ToCut, Workpiece, Workpieces } from './workpiece.ts';

/** The table of one paper: every workpiece on it by its id, and what is finished or left over. */
export class Table {
  readonly #trimmer: Trimmer | null;
  readonly #smallest: Length;
  readonly #toCut = new Map<ToCut, Label[]>();
  readonly #finished: (Label & { item: number })[] = [];
  readonly #leftovers: (Label & Leftover)[] = [];
  readonly #ids = new Set<string>();

  constructor(trimmer: Trimmer | null, smallest: Length) {
    this.#trimmer = trimmer;
    this.#smallest = smallest;
  }

  /** Puts a workpiece on the table; `sheet` is the place of its sheet in the list. */
  lay(workpiece: Workpiece, id: string, sheet: number): void {
    assert(!this.#ids.has(id), 'An id on the table is used once', { id });
    const label = { id, sheet, laid: this.#ids.size };
    this.#ids.add(id);
    if (workpiece.kind === 'to cut') {
      const alike = this.#toCut.get(workpiece);
      if (alike === undefined) this.#toCut.set(workpiece, [label]);
      else alike.push(label);
    } else if (typeof workpiece.becomes === 'number') {
      this.#finished.push({ ...label, item: workpiece.becomes });
    } else {
      const { size, becomes } = workpiece;
      const keep = becomes === 'leftover' && worthKeeping(size, this.#trimmer, this.#smallest);
      this.#leftovers.push({ ...label, size, keep });
    }
  }

  /** Every kind of workpiece that is still to be cut. */
  kindsToCut(): Iterable<ToCut> {
    return this.#toCut.keys();
  }

  /** The next thing to do at a setting, `null` when nothing more can be cut at it. */
  nextRound(set: Length): Round | null {
    return nextRound(this.#toCut.keys(), set);
  }

  /** Cuts every workpiece of a round, sheet after sheet, and lays what comes of it. */
  cut({ workpieces, axis, set, repeat, squares }: Round, kinds: Workpieces, number: number): Step {
    const taken = workpieces.flatMap((workpiece) => {
      const alike = this.#toCut.get(workpiece) ?? [];
      this.#toCut.delete(workpiece);
      return alike.map((label) => ({ label, ...kinds.cutOff(workpiece, set) }));
    });
    taken.sort((a, b) => a.label.sheet - b.label.sheet || a.label.laid - b.label.laid);
    const layPart = (part: Workpiece, whole: Label, index: number): string => {
      const id = partName(whole.id, index);
      const waste = part.kind === 'done' && typeof part.becomes === 'string';
      assert(waste || wideEnough(part.size, this.#trimmer), 'The trimmer can hold what it cuts', {
        id,
        size: part.size,
      });
      this.lay(part, id, whole.sheet);
      return id;
    };
    return {
      step: number,
      take: taken.map(({ label }) => label.id),
      axis,
      set,
      repeat,
      gives: taken.map(({ label, parts }) => parts.map((part, index) => layPart(part, label, index))),
      rest: taken.map(({ label, parts, remains }) => {
        return remains === null ? null : layPart(remains, label, parts.length);
      }),
      ...settingFields(set, this.#trimmer),
      ...(squares === null ? {} : { squares }),
    };
  }

  /** What is finished and left over, sheet after sheet, each in the order it was laid. */
  outcome(): { finished: ReadonlyMap<string, number>; leftovers: readonly Leftover[] } {
    const bySheet = (a: Label, b: Label) => a.sheet - b.sheet;
    return {
      finished: new Map(this.#finished.sort(bySheet).map(({ id, item }) => [id, item])),
      leftovers: this.#leftovers.sort(bySheet).map(({ id, size, keep }) => ({ id, size, keep })),
    };
  }
}

/** What a step says of its setting beyond the length, where there is something to say. */
function settingFields(set: Length, trimmer: Trimmer | null): Pick<Step, 'dial' | 'otherSide'> {
  if (trimmer === null) return {};
  const { dial, otherSide } = settingOf(set, trimmer);
  return { ...(dial === set ? {} : { dial }), ...(otherSide ? { otherSide: true as const } : {}) };
}

/** Which workpiece it is: its id, its sheet's place in the list, and when it was laid on the table. */
interface Label {
  readonly id: string;
  readonly sheet: number;
  readonly laid: number;
}
