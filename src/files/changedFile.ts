import type { Layout } from '../layout/index.ts';
import { type Edge, type Length, readLength, type Units } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { Price, SheetStock } from '../stash/index.ts';
import type { FileProblem } from './fileProblem.ts';
import { isList, isObject, type Json, type JsonObject } from './json.ts';
import { readSavedLayout, type SavedLayout } from './layoutFile.ts';
import { neighbourFields } from './layoutShape.ts';
import { type Path, pathText } from './path.ts';
import { hasUnit, readsAs, writtenLength } from './writtenLength.ts';

/** What is to stand in a layout file in place of what stands there; what is not named stays. */
export interface FileChanges {
  /**
   * By the path of a length as in `Layout.typed` (`parts[2].size[0]`), or of a gap to a neighbour that was left out
   * (`parts[3].place.gap`).
   */
  readonly lengths?: ReadonlyMap<string, Length>;
  readonly units?: Units;
  readonly cards?: number;
  readonly title?: string;
  /** By the id of a paper: all its sheets. */
  readonly sheets?: ReadonlyMap<string, readonly SheetStock[]>;
}

/**
 * The file with these changes and the layout that is read in it, or what is then wrong with it: rooms that no
 * longer go up, a margin as wide as a new sheet.
 *
 * All else stays as it was typed and in its order, with the fields of other tools. A changed length is written in
 * the units of the file, without its unit where it had none and the units stay; one that these cannot say exactly, as
 * `writtenLength` says. Another unit for the file changes no length: those without a unit get that which they were
 * read in. A sheet in the new list that is one of the old is kept as it was typed.
 * Law, tested on random files: what is written is read back as the very lengths, and without changes the file is
 * the same text. Throws where the file is no layout and on a path where no length stands.
 */
export function changedFile(
  file: SavedLayout,
  changes: FileChanges,
): { layout: Layout; file: SavedLayout } | { problems: FileProblem[] } {
  const before = readSavedLayout(file);
  assert('layout' in before, 'A saved layout is a layout', before);
  const { layout } = before;
  const { units = layout.units, sheets = new Map<string, readonly SheetStock[]>() } = changes;

  // The texts of lengths first: sheets that stay have theirs among them.
  const texts = textsOf(layout, pathsIn(file, changes.lengths ?? new Map()), units);
  const written = new Set<string>();
  const withLengths = withTexts(file, [], texts, written);
  assert(isObject(withLengths), 'A file is an object');
  for (const path of texts.keys()) assert(written.has(path), noLength, { path });

  for (const id of sheets.keys()) {
    assert(layout.papers.has(id), 'Sheets are of a paper of the file', { id });
    for (const path of changes.lengths?.keys() ?? [])
      assert(!path.startsWith(`papers.${id}.sheets[`), 'A sheet is changed or replaced, not both', { path });
  }
  const papers = withLengths.papers ?? null;
  const changed = fieldsChanged(withTitle(withLengths, changes.title), {
    units,
    ...(changes.cards === undefined ? {} : { cards: changes.cards }),
    papers: sheets.size === 0 || !isObject(papers) ? papers : withSheets(papers, layout, sheets, units),
  });
  return readSavedLayout(changed);
}

// --- Lengths ---

const noLength = 'A length is changed where there is one';

/** The changes by the paths of the file: a gap that was left out has its place even where that is a list of one. */
function pathsIn(file: SavedLayout, lengths: ReadonlyMap<string, Length>): ReadonlyMap<string, Length> {
  const parts = isList(file.parts) ? file.parts : [];
  return new Map(
    [...lengths].map(([path, length]) => {
      const index = /^parts\[(\d+)\]\.place\.gap$/.exec(path)?.[1];
      const part = index === undefined ? undefined : parts[Number(index)];
      const listed = isObject(part) && isList(part.place) && part.place.length === 1;
      return [listed ? `parts[${index}].place[0].gap` : path, length];
    }),
  );
}

/** The texts that change, by their paths: those of changed lengths, and those that lose the units they are in. */
function textsOf(
  layout: Layout,
  lengths: ReadonlyMap<string, Length>,
  units: Units,
): ReadonlyMap<string, string> {
  const texts = new Map<string, string>();
  if (units !== layout.units) {
    for (const [path, text] of layout.typed) {
      if (!hasUnit(text)) texts.set(path, withUnit(text, layout.units));
    }
  }
  for (const [path, length] of lengths) {
    const text = layout.typed.get(path);
    assert(text !== undefined || path.endsWith('.gap'), noLength, { path });
    const bare = units === layout.units && text !== undefined && !hasUnit(text);
    texts.set(path, writtenLength(length, units, bare));
  }
  return texts;
}

/** The text of a length that was read in `units`, with the unit; written anew where that cannot be added to it. */
function withUnit(text: string, units: Units): string {
  const reading = readLength(text, units);
  assert(reading.ok, 'A length of a layout can be read', { text });
  const longer = `${text.trimEnd()} ${units}`;
  return readsAs(longer, units, reading.length) ? longer : writtenLength(reading.length, units, false);
}

/** `value`, which stands at `path`, with these texts in it; the paths of the texts that found their place are added to `written`. */
function withTexts(value: Json, path: Path, texts: ReadonlyMap<string, string>, written: Set<string>): Json {
  if (isList(value)) return value.map((entry, index) => withTexts(entry, [...path, index], texts, written));
  if (isObject(value)) {
    const changed = objectOf(
      Object.entries(value).map(([name, entry]) => [name, withTexts(entry, [...path, name], texts, written)]),
    );
    const besideSomething = path[2] === 'place' && neighbourFields.some((field) => field in value);
    if (!besideSomething || 'gap' in value) return changed;
    const gap = textAt([...path, 'gap'], texts, written);
    return gap === undefined ? changed : fieldsChanged(changed, { gap });
  }
  return typeof value === 'string' ? (textAt(path, texts, written) ?? value) : value;
}

function textAt(path: Path, texts: ReadonlyMap<string, string>, written: Set<string>): string | undefined {
  const place = pathText(path);
  const text = texts.get(place);
  if (text !== undefined) written.add(place);
  return text;
}

// --- Sheets ---

function withSheets(
  papers: JsonObject,
  layout: Layout,
  sheets: ReadonlyMap<string, readonly SheetStock[]>,
  units: Units,
): JsonObject {
  return objectOf(
    Object.entries(papers).map(([id, paper]) => {
      const wanted = sheets.get(id);
      if (wanted === undefined || !isObject(paper)) return [id, paper];
      const old = layout.papers.get(id)?.sheets ?? [];
      return [id, fieldsChanged(paper, { sheets: sheetsOf(wanted, old, paper.sheets ?? null, units) })];
    }),
  );
}

/** The wanted sheets, each as it was typed where it is one of the old. */
function sheetsOf(
  wanted: readonly SheetStock[],
  old: readonly SheetStock[],
  typed: Json,
  units: Units,
): readonly Json[] {
  const left = new Set(old.keys());
  return wanted.map((sheet) => {
    const same = [...left].find((index) => sameStock(old[index], sheet));
    if (same === undefined || !isList(typed)) return sheetOf(sheet, units);
    left.delete(same);
    return typed[same] ?? sheetOf(sheet, units);
  });
}

function sameStock(one: SheetStock | undefined, other: SheetStock): boolean {
  return (
    one !== undefined &&
    one.size.width === other.size.width &&
    one.size.height === other.size.height &&
    one.count === other.count &&
    one.price === other.price &&
    one.grain === other.grain &&
    one.scrap === other.scrap &&
    edges.every((edge) => one.margin[edge] === other.margin[edge])
  );
}

const edges: readonly Edge[] = ['left', 'right', 'top', 'bottom'];

function sheetOf({ size, count, price, grain, scrap, margin }: SheetStock, units: Units): JsonObject {
  const text = (length: Length) => writtenLength(length, units, false);
  const [first, ...others] = edges.map((edge) => margin[edge]);
  const even = others.every((one) => one === first);
  const ragged = edges.filter((edge) => margin[edge] !== 0);
  return {
    size: [text(size.width), text(size.height)],
    count,
    ...(price === null ? {} : { price: priceText(price) }),
    ...(grain === null ? {} : { grain }),
    ...(scrap ? { scrap } : {}),
    ...(ragged.length === 0
      ? {}
      : {
          margin: even
            ? text(margin.left)
            : Object.fromEntries(ragged.map((edge) => [edge, text(margin[edge])])),
        }),
  };
}

/** 3500 ten-thousandths → `0.35`; two decimals unless it has more. */
function priceText(price: Price): string {
  const digits = String(price).padStart(5, '0');
  return `${digits.slice(0, -4)}.${digits.slice(-4).replace(/0{1,2}$/, '')}`;
}

// --- Objects ---

/** A title that was left out stands after the version. */
function withTitle(file: JsonObject, title: string | undefined): JsonObject {
  if (title === undefined) return file;
  if ('title' in file) return fieldsChanged(file, { title });
  return objectOf(
    Object.entries(file).flatMap((entry) =>
      entry[0] === 'cardwright' ? [entry, ['title', title] as const] : [entry],
    ),
  );
}

/** The object with these values in its fields; a field that it has not comes last. */
function fieldsChanged(object: JsonObject, values: JsonObject): JsonObject {
  return objectOf(Object.entries({ ...object, ...values }));
}

/** Without a prototype, as all objects of a file. */
function objectOf(entries: readonly (readonly [string, Json])[]): JsonObject {
  const object = Object.create(null) as { [name: string]: Json };
  for (const [name, value] of entries) object[name] = value;
  return object;
}
