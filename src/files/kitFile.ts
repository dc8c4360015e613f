import type { Kit, KitInstead, KitLayout, Layout } from '../layout/index.ts';
import { bagsOf } from '../layout/index.ts';
import { assert } from '../problem/index.ts';
import type { Paper } from '../stash/index.ts';
import { excerpt } from './excerpt.ts';
import { type FileProblem, fileProblem } from './fileProblem.ts';
import { readFileText, tellable } from './fileText.ts';
import { withoutForeignFields } from './foreignField.ts';
import { isList, isObject, type Json, type JsonObject, readJson } from './json.ts';
import { type KitShape, kitLimits, kitShape } from './kitShape.ts';
import type { SavedKit } from './kitText.ts';
import { readLayoutFile, readSavedLayout } from './layoutFile.ts';
import { type Path, pathText } from './path.ts';
import { shapeProblems } from './shapeProblems.ts';

/** The version of the kit file that this program writes, and the newest it reads. */
export const kitVersion = 1;

/** Something that is wrong with a kit file, or with a layout file that it names. */
export interface KitFileProblem extends FileProblem {
  /** The layout file that it is in, as the kit names it; absent: the kit file itself. */
  readonly file?: string;
}

/**
 * The kit in the text of a `*.kit.json` file, or everything that is wrong with it.
 *
 * Layouts stand in the file or in files of their own: `beside` has the texts of those by the paths that the kit names
 * (`layoutFilesOf`). The papers of the kit stand for those of the same ids in its layouts, which need not have them
 * at all, and each layout has as many cards as all the bags together make.
 */
export function readKitFile(
  text: string,
  beside: ReadonlyMap<string, string> = new Map(),
): { kit: Kit; file: SavedKit } | { problems: KitFileProblem[] } {
  const read = readFileText(text, 'cardwright_kit', kitVersion);
  return 'problems' in read ? read : readSavedKit(read.file, beside, read.repeated);
}

/** The paths of the layout files that the text of a kit file names, each once; none where it is no kit. */
export function layoutFilesOf(text: string): readonly string[] {
  const read = readFileText(text, 'cardwright_kit', kitVersion);
  if ('problems' in read || !isList(read.file.layouts)) return [];
  const files = read.file.layouts.flatMap((one) =>
    isObject(one) && typeof one.file === 'string' && !('layout' in one) ? [one.file] : [],
  );
  return [...new Set(files)].slice(0, kitLimits.layouts);
}

/** The kit in a file that is no text any more, as `readKitFile` finds it. */
export function readSavedKit(
  file: SavedKit,
  beside: ReadonlyMap<string, string> = new Map(),
  repeated: readonly FileProblem[] = [],
): { kit: Kit; file: SavedKit } | { problems: KitFileProblem[] } {
  if (isList(file.layouts) && file.layouts.length > kitLimits.layouts) {
    const numbers = { found: file.layouts.length, high: kitLimits.layouts };
    return { problems: [fileProblem('tooMany', ['layouts'], {}, numbers)] };
  }
  const own = withoutForeignFields(file);
  const shape = kitShape(own.units === 'mm' ? 'mm' : 'in').safeParse(own);
  const papers = papersIn(file);
  const layouts = layoutsIn(file, beside, papers);
  const problems: KitFileProblem[] = [
    ...repeated,
    ...(shape.success ? [] : shapeProblems(shape.error, own)),
    ...('problems' in papers ? papers.problems : []),
    ...placeProblems(own),
    ...layouts.flatMap((one) => ('problems' in one ? one.problems : [])),
  ];
  if (problems.length > 0) return { problems: told(problems, file) };
  assert(shape.success && 'papers' in papers, 'A file without problems is in shape');
  const kit = kitOf(
    shape.data,
    papers.papers,
    layouts.flatMap((one) => ('layout' in one ? [one.layout] : [])),
  );
  const between = [...sharedPaperProblems(kit), ...insteadProblems(kit)];
  return between.length > 0 ? { problems: told(between, file) } : { kit, file };
}

/** The kit file with every layout in it, so that it is whole without the files that it names. */
export function gatheredKit(file: SavedKit, beside: ReadonlyMap<string, string>): SavedKit {
  if (!isList(file.layouts)) return file;
  const layouts = file.layouts.map((one): Json => {
    if (!isObject(one) || typeof one.file !== 'string' || 'layout' in one) return one;
    const layout = textIn(beside, one.file);
    if (layout === null) return one;
    const { file: _, ...rest } = one;
    return { ...rest, layout };
  });
  return { ...file, layouts };
}

function textIn(beside: ReadonlyMap<string, string>, path: string): JsonObject | null {
  const text = beside.get(path);
  const read = text === undefined ? null : readJson(text);
  return read?.ok === true && isObject(read.value) ? read.value : null;
}

/** What is in the kit file in its order, then what is in the files that it names. */
function told(problems: readonly KitFileProblem[], file: SavedKit): KitFileProblem[] {
  return [
    ...tellable(
      problems.filter((problem) => problem.file === undefined),
      file,
    ),
    ...problems.filter((problem) => problem.file !== undefined),
  ];
}

// --- Papers and layouts, read as a layout file has them ---

/** The papers of the kit, read as those of a layout with nothing on it, so that the same holds of both. */
function papersIn(file: SavedKit): { papers: ReadonlyMap<string, Paper> } | { problems: FileProblem[] } {
  const read = readSavedLayout({
    cardwright: 1,
    units: file.units === 'mm' ? 'mm' : 'in',
    cards: 1,
    base: { size: ['1 in', '1 in'], fold: 'none', paper: null },
    papers: file.papers ?? {},
    parts: [],
  });
  return 'layout' in read ? { papers: read.layout.papers } : read;
}

type ReadLayout = { readonly layout: Layout } | { readonly problems: KitFileProblem[] };

function layoutsIn(
  file: SavedKit,
  beside: ReadonlyMap<string, string>,
  papers: ReturnType<typeof papersIn>,
): readonly ReadLayout[] {
  if (!isList(file.layouts)) return [];
  const shared = 'papers' in papers ? papers.papers : new Map<string, Paper>();
  const ids = isObject(file.papers) ? Object.keys(file.papers) : [];
  return file.layouts.map((one, index): ReadLayout => {
    if (!isObject(one)) return { problems: [] };
    const at: Path = ['layouts', index];
    const reading = (layout: JsonObject, about: { path: Path } | { file: string }): ReadLayout => {
      const read = readSavedLayout(withKit(layout, ids, cardsOf(file, one)));
      if ('layout' in read)
        return {
          layout: {
            ...read.layout,
            papers: new Map([...read.layout.papers, ...shared]),
          },
        };
      return {
        problems: read.problems.map((problem) => {
          if ('file' in about) return { ...problem, file: about.file };
          const path = [...about.path, ...problem.path];
          return { ...problem, path, where: pathText(path) };
        }),
      };
    };
    if (isObject(one.layout) && !('file' in one)) return reading(one.layout, { path: [...at, 'layout'] });
    if (typeof one.file !== 'string' || 'layout' in one) return { problems: [] };
    const text = beside.get(one.file);
    if (text === undefined)
      return { problems: [fileProblem('kitFileMissing', [...at, 'file'], { found: excerpt(one.file) })] };
    // What is no layout at all is told as of any layout file.
    const whole = readLayoutFile(text);
    const inside = textIn(beside, one.file);
    if (inside === null || inside.cardwright !== 1)
      return {
        problems:
          'problems' in whole
            ? whole.problems.map((problem) => ({ ...problem, file: one.file as string }))
            : [],
      };
    return reading(inside, { file: one.file });
  });
}

/** A layout of the kit as a file of its own would say it: with the shared papers, whose sheets the kit has. */
function withKit(layout: JsonObject, shared: readonly string[], cards: number): JsonObject {
  const own = isObject(layout.papers) ? layout.papers : {};
  const stubs = Object.fromEntries(shared.map((id) => [id, { sheets: [] }]));
  return {
    ...layout,
    cards,
    papers: layout.papers === undefined || isObject(layout.papers) ? { ...own, ...stubs } : layout.papers,
  };
}

/** How many cards of a layout all the bags make, as far as the file can be made out; 1 where it cannot. */
function cardsOf(file: SavedKit, layout: JsonObject): number {
  const whole = (value: Json | undefined, otherwise: number) =>
    typeof value === 'number' && Number.isInteger(value) && value >= 0 ? value : otherwise;
  const bags = whole(file.seats, 1) + whole(file.teacher, 0) + whole(file.spare, 0);
  return Math.max(1, Math.min(100_000, bags * whole(layout.each, 1)));
}

function kitOf(shape: KitShape, papers: ReadonlyMap<string, Paper>, layouts: readonly Layout[]): Kit {
  const kit = {
    title: shape.title ?? '',
    units: shape.units,
    seats: shape.seats,
    teacher: shape.teacher ?? 0,
    spare: shape.spare ?? 0,
    papers,
    envelopes: shape.envelopes ?? true,
    bought: (shape.bought ?? []).map(({ name, each, spare }) => ({ name, each, spare: spare ?? 0 })),
    instead: shape.instead ?? [],
  };
  const bags = bagsOf(kit);
  return {
    ...kit,
    layouts: shape.layouts.map(({ id, each = 1 }, index): KitLayout => {
      const layout = layouts[index];
      assert(layout !== undefined, 'Every layout of a kit without problems was read', { id });
      return { id, each, layout: { ...layout, cards: bags * each } };
    }),
  };
}

// --- What must go together ---

/** Ids that stand twice, and layouts that stand nowhere or in two places. */
function placeProblems(file: JsonObject): FileProblem[] {
  if (!isList(file.layouts)) return [];
  const first = new Map<string, number>();
  return file.layouts.flatMap((one, index) => {
    if (!isObject(one)) return [];
    const at: Path = ['layouts', index];
    const problems: FileProblem[] = [];
    const has = ['layout', 'file'].filter((field) => field in one);
    if (has.length !== 1)
      problems.push(
        fileProblem('kitLayoutWhere', at, {
          has: has.length === 0 ? 'neither "layout" nor "file"' : '"layout" and "file"',
        }),
      );
    else if (has[0] === 'layout' && !isObject(one.layout))
      problems.push(
        fileProblem('fieldType', [...at, 'layout'], { found: excerpt(one.layout ?? null), wanted: 'object' }),
      );
    if (typeof one.id !== 'string') return problems;
    const before = first.get(one.id);
    if (before === undefined) first.set(one.id, index);
    else
      problems.push(
        fileProblem('kitIdTwice', [...at, 'id'], {
          found: excerpt(one.id),
          first: pathText(['layouts', before]),
        }),
      );
    return problems;
  });
}

/** Papers of two layouts that might be one stock or two: only the kit can say. */
function sharedPaperProblems(kit: Kit): FileProblem[] {
  const first = new Map<string, number>();
  return kit.layouts.flatMap(({ layout }, index) =>
    [...layout.papers.keys()].flatMap((id) => {
      if (kit.papers.has(id)) return [];
      const before = first.get(id);
      if (before === undefined) {
        first.set(id, index);
        return [];
      }
      const names = { found: excerpt(id), other: pathText(['layouts', before]) };
      return [fileProblem('kitPaperTwice', ['layouts', index], names)];
    }),
  );
}

function insteadProblems(kit: Kit): FileProblem[] {
  return kit.instead.flatMap((instead, index) => insteadProblem(kit, instead, ['instead', index]));
}

function insteadProblem(kit: Kit, { layout: id, part, paper, by }: KitInstead, at: Path): FileProblem[] {
  const found = kit.layouts.find((one) => one.id === id);
  if (found === undefined) {
    const layouts = kit.layouts.map((one) => excerpt(one.id)).join(', ');
    return [fileProblem('kitInsteadLayout', [...at, 'layout'], { found: excerpt(id), layouts })];
  }
  const { layout } = found;
  const dealt = part === 'base' ? layout.base : layout.parts.find((one) => one.id === part);
  if (dealt === undefined)
    return [fileProblem('kitInsteadPart', [...at, 'part'], { found: excerpt(part), layout: excerpt(id) })];
  if (!dealt.papers.includes(paper)) {
    const papers = dealt.papers.map((one) => excerpt(one)).join(', ');
    const names = { found: excerpt(paper), part: excerpt(part), ...(papers === '' ? {} : { papers }) };
    return [fileProblem('kitInsteadPaper', [...at, 'paper'], names)];
  }
  if (kit.papers.has(by)) return [];
  const papers = [...kit.papers.keys()].map((one) => excerpt(one)).join(', ');
  return [
    fileProblem('paperUnknown', [...at, 'by'], { found: excerpt(by), ...(papers === '' ? {} : { papers }) }),
  ];
}
