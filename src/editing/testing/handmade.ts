import fc from 'fast-check';
import {
  type Json,
  type JsonObject,
  readSavedLayout,
  writeLayoutFile,
  writtenLength,
} from '../../files/index.ts';
import { type Anchor, arrange, type Layout, type Part, type Place } from '../../layout/index.ts';
import { randomLayout } from '../../layout/testing/randomLayout.ts';
import type { Length, Units } from '../../measure/index.ts';
import { changed } from '../change.ts';
import type { Edit } from '../edit.ts';
import type { InHand } from '../inHand.ts';

/** The layout in hand that a file makes; throws where the file is not sound. */
export function inHandOf(file: JsonObject): InHand {
  const read = readSavedLayout(file);
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  return { ...read, arrangement: arrange(read.layout) };
}

/** The layout after an edit, which is also undone, to the byte, and saved and made again. */
export function edited({ file }: InHand, edit: Edit): InHand {
  const { file: next, back } = changed(file, edit.changes);
  const undone = changed(next, back).file;
  if (writeLayoutFile(undone) !== writeLayoutFile(file)) throw new Error('undoing leads elsewhere');
  const saved = JSON.parse(JSON.stringify(edit)) as Edit;
  if (writeLayoutFile(changed(file, saved.changes).file) !== writeLayoutFile(next))
    throw new Error('a saved edit does something else');
  return inHandOf(next);
}

/** Random layouts as files: with units or without, lists of places or one place for all, one gap or two. */
export function randomInHand(of: { coarse: boolean; overFixed: boolean }): fc.Arbitrary<InHand> {
  return fc
    .record({
      layout: randomLayout(of),
      units: fc.constantFrom<Units>('in', 'mm'),
      bare: fc.boolean(),
      shared: fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }),
      oneGap: fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }),
    })
    .map((draft) => inHandOf(fileOf(draft)));
}

interface Draft {
  readonly layout: Layout;
  readonly units: Units;
  readonly bare: boolean;
  /** By part: whether all its pieces have the first one's place. */
  readonly shared: readonly boolean[];
  /** By part: whether both axes have one gap. */
  readonly oneGap: readonly boolean[];
}

function fileOf({ layout, units, bare, shared, oneGap }: Draft): JsonObject {
  const text = (length: Length) => writtenLength(length, units, bare);
  const faceOf = (id: string): string => {
    const part = layout.parts.find((other) => other.id === id);
    return part === undefined ? id : faceOf(part.on);
  };
  const anchored = (part: Part, anchor: Anchor | null, edge: string, neighbour: string): JsonObject => {
    if (anchor === null) return {};
    if (anchor.from === 'edge') return { [edge]: text(anchor.distance) };
    return faceOf(anchor.part) === faceOf(part.on) ? { [neighbour]: anchor.part } : {};
  };
  const placeOf = (part: Part, { across, down }: Place, index: number): JsonObject => {
    const fields = {
      ...anchored(part, across.start, 'left', 'rightOf'),
      ...anchored(part, across.end, 'right', 'leftOf'),
      ...anchored(part, down.start, 'top', 'below'),
      ...anchored(part, down.end, 'bottom', 'above'),
    };
    const gaps = [across, down].map(({ start, end }) => {
      const found = [start, end].find((anchor) => anchor?.from === 'part');
      return found?.from === 'part' ? text(found.gap) : '0';
    });
    const laid = ['rightOf', 'leftOf', 'below', 'above'].some((field) => field in fields);
    return {
      ...fields,
      ...(laid ? { gap: oneGap[index] ? (gaps.find((gap) => gap !== '0') ?? '0') : gaps } : {}),
    };
  };
  return JSON.parse(
    JSON.stringify({
      cardwright: 1,
      units,
      cards: 4,
      base: {
        size: [text(layout.base.size.width), text(layout.base.size.height)],
        fold: 'left',
        paper: null,
      },
      papers: {},
      parts: layout.parts.map((part, index): Json => {
        const places = part.places.map((place) => placeOf(part, place, index));
        const torn = Object.entries(part.torn).flatMap(([edge, length]) =>
          length > 0 ? [[edge, text(length)] as const] : [],
        );
        const one = shared[index] || places.length === 1;
        return {
          id: part.id,
          on: part.on,
          ...(part.shape.kind === 'circle' ? { shape: 'circle' } : {}),
          ...extentOf(part, text),
          ...(torn.length > 0 ? { torn: Object.fromEntries(torn) } : {}),
          ...(one && Object.keys(places[0]!).length === 0 ? {} : { place: one ? places[0]! : places }),
          paper: null,
          count: places.length,
        };
      }),
    }),
  ) as JsonObject;
}

function extentOf({ extent }: Part, text: (length: Length) => string): JsonObject {
  switch (extent.by) {
    case 'size':
      return { size: [extent.width, extent.height].map((side) => (side === null ? 'fill' : text(side))) };
    case 'inset':
      return { inset: text(extent.inset) };
    case 'diameter':
      return { diameter: text(extent.diameter) };
  }
}
