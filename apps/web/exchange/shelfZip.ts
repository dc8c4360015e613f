import { changed, type Done, opened, type Track } from '../../../src/editing/index.ts';
import {
  type FileProblem,
  isList,
  isObject,
  type Json,
  type JsonObject,
  readKitFile,
  readLayoutFile,
  type SavedKit,
  type SavedLayout,
  writeKitFile,
  writeLayoutFile,
} from '../../../src/files/index.ts';
import { editSentence } from '../../../src/words/index.ts';
import type { Everything, KeptLayout } from '../storage/everything.ts';
import { benchText, readBench } from './benchFile.ts';
import { stemOf } from './fileName.ts';
import { unzipped, type ZipEntry, type ZipProblem, zipped } from './zipFile.ts';

/**
 * The endings of the files in the zip of a shelf: the layouts, what was done to each, what was told at its bench where
 * its set was begun, and the preferences.
 */
const layoutEnding = '.card.json';
const historyEnding = '.history.json';
const benchEnding = '.bench.json';
const kitEnding = '.kit.json';
const preferencesName = 'preferences.json';

/** The versions of the shapes that are ours alone; that of a bench has its own file. */
const historyVersion = 1;
const preferencesVersion = 1;

/** Why a zip cannot be put on the shelf. Nothing of it is. */
export type ShelfZipProblem =
  | ZipProblem
  /** There is no layout in it. */
  | { readonly kind: 'nothing of ours' }
  /** A layout in it is not sound. */
  | { readonly kind: 'layout'; readonly name: string; readonly problems: readonly FileProblem[] }
  /** What is told of a layout beside it does not fit it, or is of no shape that is known here. */
  | { readonly kind: 'history'; readonly name: string }
  /** What is told of a bench is of no shape that is known here, or can have happened at no table. */
  | { readonly kind: 'bench'; readonly name: string }
  /** A file in it was written by a newer version of the app. */
  | { readonly kind: 'newer'; readonly name: string };

/**
 * Everything on the shelf in one zip: each layout as a file of its own that any door opens, with a file beside it of all
 * that was done to it, and one of all that was told at its bench. The same shelf gives the same bytes.
 */
export function shelfZip({ layouts, kits = [], preferences }: Everything): Promise<Uint8Array<ArrayBuffer>> {
  const stems = uniqueStems(layouts.map(({ track }) => titleOf(track.file)));
  const entries = layouts.flatMap((layout, index): readonly ZipEntry[] => [
    { name: `${stems[index]!}${layoutEnding}`, text: writeLayoutFile(layout.track.file) },
    { name: `${stems[index]!}${historyEnding}`, text: historyText(layout) },
    ...(layout.bench.length === 0
      ? []
      : [{ name: `${stems[index]!}${benchEnding}`, text: benchText(layout.bench) }]),
  ]);
  const kitStems = uniqueStems(kits.map(titleOf));
  const kitEntries = kits.map((kit, index) => ({
    name: `${kitStems[index]!}${kitEnding}`,
    text: writeKitFile(kit),
  }));
  const preferred = { cardwright_preferences: preferencesVersion, values: preferences };
  return zipped([
    ...entries,
    ...kitEntries,
    { name: preferencesName, text: `${JSON.stringify(preferred)}\n` },
  ]);
}

/** What a zip holds of a shelf; or why it cannot be put on one. A zip of layout files alone will do. */
export async function readShelfZip(
  bytes: Uint8Array<ArrayBuffer>,
): Promise<{ readonly everything: Everything } | { readonly problem: ShelfZipProblem }> {
  const unpacked = await unzipped(bytes, isOurs);
  if ('problem' in unpacked) return unpacked;
  const texts = new Map(unpacked.entries.map(({ name, text }) => [name, text]));
  const layouts: KeptLayout[] = [];
  for (const [name, text] of texts) {
    if (!name.endsWith(layoutEnding)) continue;
    const read = readLayoutFile(text);
    if ('problems' in read) return { problem: { kind: 'layout', name, problems: read.problems } };
    const stem = name.slice(0, -layoutEnding.length);
    const historyName = `${stem}${historyEnding}`;
    const history = texts.get(historyName);
    const layout = history === undefined ? alone(read.file) : readHistory(history, read.file);
    if (typeof layout === 'string') return { problem: { kind: layout, name: historyName } };
    const benchName = `${stem}${benchEnding}`;
    const told = texts.get(benchName);
    const bench = told === undefined ? [] : readBench(told);
    if (typeof bench === 'string') return { problem: { kind: bench, name: benchName } };
    layouts.push({ ...layout, bench });
  }
  const kits: SavedKit[] = [];
  for (const [name, text] of texts) {
    if (!name.endsWith(kitEnding)) continue;
    const read = readKitFile(text);
    if ('problems' in read) return { problem: { kind: 'layout', name, problems: read.problems } };
    kits.push(read.file);
  }
  if (layouts.length === 0 && kits.length === 0) return { problem: { kind: 'nothing of ours' } };
  const preferences = readPreferences(texts.get(preferencesName));
  if (preferences === null) return { problem: { kind: 'newer', name: preferencesName } };
  return { everything: { layouts, ...(kits.length === 0 ? {} : { kits }), preferences } };
}

/** Not what some systems put into every zip. */
function isOurs(name: string): boolean {
  if (name.startsWith('__MACOSX/')) return false;
  return (
    [layoutEnding, historyEnding, benchEnding, kitEnding].some((ending) => name.endsWith(ending)) ||
    name === preferencesName
  );
}

/** A layout as it is kept, apart from its bench. */
type WithHistory = Omit<KeptLayout, 'bench'>;

function alone(file: SavedLayout): WithHistory {
  return { id: null, revision: 0, besides: null, track: { file, done: [], undone: [] } };
}

function historyText({ id, revision, besides, track: { done, undone } }: WithHistory): string {
  return `${JSON.stringify({ cardwright_history: historyVersion, id, revision, besides, done, undone })}\n`;
}

/** What was done to the file, held against it; or what is the matter. */
function readHistory(text: string, file: SavedLayout): WithHistory | 'history' | 'newer' {
  let read: Json;
  try {
    read = JSON.parse(text) as Json;
  } catch {
    return 'history';
  }
  if (!isObject(read)) return 'history';
  const { cardwright_history: version, id, revision, besides, done, undone } = read;
  if (typeof version === 'number' && version > historyVersion) return 'newer';
  if (
    version !== historyVersion ||
    typeof id !== 'string' ||
    id === '' ||
    !Number.isSafeInteger(revision) ||
    (revision as number) < 0 ||
    !(besides === null || typeof besides === 'string') ||
    !isList(done) ||
    !isList(undone) ||
    !done.every(isDone) ||
    !undone.every(isDone)
  )
    return 'history';
  const track = { file, done, undone };
  return fits(track) ? { id, revision: revision as number, besides, track } : 'history';
}

function isDone(value: Json): value is JsonObject & Done {
  if (!isObject(value) || !isObject(value.edit)) return false;
  const { edit, back, joins } = value;
  return (
    (joins === null || typeof joins === 'string') &&
    isList(edit.changes) &&
    edit.changes.every(isChange) &&
    isList(back) &&
    back.every(isChange) &&
    isTold(edit.told)
  );
}

function isChange(value: Json): boolean {
  if (!isObject(value) || !isList(value.path)) return false;
  const { kind, path, at } = value;
  if (!path.every((key) => typeof key === 'string' || (Number.isSafeInteger(key) && (key as number) >= 0)))
    return false;
  if (kind === 'take') return true;
  if (value.value === undefined) return false;
  return kind === 'put' || (kind === 'add' && Number.isSafeInteger(at) && (at as number) >= 0);
}

/** Whether a sentence can be made of what is told of an edit: it is all that is ever done with it. */
function isTold(told: Json | undefined): boolean {
  try {
    return isObject(told) && typeof editSentence(told as never) === 'string';
  } catch {
    // It has not what a sentence needs.
    return false;
  }
}

/** Whether all that was done can be undone, down to a sound file, and all that was undone be done again. */
function fits({ file, done, undone }: Track): boolean {
  try {
    let back: JsonObject = file;
    for (const one of done.toReversed()) back = changed(back, one.back).file;
    let forth: JsonObject = file;
    for (const one of undone.toReversed()) forth = changed(forth, one.edit.changes).file;
    return [back, forth].every((end) => !('problems' in opened(end)));
  } catch {
    // It was done to another file.
    return false;
  }
}

/** What was preferred; nothing where it is not told or cannot be made out; `null`: a newer version wrote it. */
function readPreferences(text: string | undefined): Everything['preferences'] | null {
  try {
    const read = JSON.parse(text ?? '{}') as Json;
    if (!isObject(read) || !isObject(read.values)) return {};
    const { cardwright_preferences: version, values } = read;
    return typeof version === 'number' && version > preferencesVersion ? null : values;
  } catch {
    return {};
  }
}

/** A name for each title, no two alike, whatever a system takes for alike. */
function uniqueStems(titles: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return titles.map((title) => {
    const stem = stemOf(title);
    let unique = stem;
    for (let number = 2; taken.has(unique); number += 1) unique = `${stem}-${number}`;
    taken.add(unique);
    return unique;
  });
}

function titleOf({ title }: SavedLayout): string {
  return typeof title === 'string' ? title : '';
}
