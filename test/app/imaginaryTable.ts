import { expect } from 'vitest';

/*
 * A hand that does what it is told at an imaginary table, and nothing else: it reads English sentences, as a maker does,
 * and shares no code with what writes them. Whatever it cannot do as it is said fails the test.
 */

/** What one line says: the setting, and the sentences that follow it. */
export interface SaidLine {
  /** `Step 4 Set 1 in.` */
  readonly heading: string;
  readonly sentences: readonly string[];
}

/** A width and a height with the pattern upright, in the layout's units; halves of halves are exact in a number. */
export type Sizes = readonly [width: number, height: number];

/** A trimmer as its owner says it, in the layout's units. */
export interface OwnTrimmer {
  readonly marks: number;
  /** Of what is kept or cut again. */
  readonly narrowest: number;
}

/** A paper as it lies in the stash. */
export interface OwnPaper {
  readonly sheet: Sizes;
  readonly count: number;
  /** Whether its print has a top, so that nothing of it may be turned. */
  readonly isOneWay: boolean;
}

interface Workpiece {
  readonly paper: string;
  readonly size: Sizes;
  /** Sides that no cut has measured: they are what the sheet brings. */
  unmeasured: readonly [boolean, boolean];
  readonly from: { readonly step: number; readonly kind: 'piece' | 'rest'; readonly along: number } | null;
  /** What was said to become of it: `Panel`, `step 5`, `keep`, `too small`; empty after the rest was planned again. */
  goes: string;
}

/** The table, and what has been done at it. */
export class ImaginaryTable {
  private readonly lying: Workpiece[] = [];
  private readonly sheets = new Set<string>();
  private isPlannedAgain = false;
  /** Blade strokes of each step, by its number. */
  readonly passes = new Map<number, number>();
  private readonly papers: Readonly<Record<string, OwnPaper>>;
  private readonly trimmer: OwnTrimmer;

  constructor(papers: Readonly<Record<string, OwnPaper>>, trimmer: OwnTrimmer) {
    this.papers = papers;
    this.trimmer = trimmer;
  }

  /** Cuts as one line says. */
  follow(line: SaidLine): void {
    const heading = plain(line.heading);
    const said = line.sentences.map(plain).join(' ');
    const [, number, length] = matched(/^Step (\d+) Set ([^,]*?)\.$/u, heading);
    const [step, set] = [Number(number), lengthOf(length!)];
    expect(set % this.trimmer.marks, `${heading} A mark is there`).toBe(0);

    const [, takes, size] = matched(/Take (.*?), (?:each )?([^,]*? × [^,]*?)\. /u, `${said} `);
    const taken = this.taken(takes!, sizesOf(size!), step);
    const [first] = taken;
    const lies = /\. (?:Give (?:it|them) a quarter turn and lay|Lay) (?:it|them) (.*?)\. Cut /u.exec(
      said,
    )?.[1];
    const [, gives, eachGives] = matched(/That makes (.*?), (?:each )?([^,]*? × [^,]*?)\./u, said);
    const given = listOf(gives!);
    const along = this.alongOf(first!, { lies: lies ?? '', set, gives: sizesOf(eachGives!) });
    const has = first!.size[along];

    // How often it is cut, and what that leaves.
    const [, into] = /Cut (?:it|each) into (\d+):/u.exec(said) ?? [];
    const [, off] = /Cut (\d+) pieces? off/u.exec(said) ?? [];
    const repeat = Number(into ?? off);
    const left = has - set * repeat;
    expect(left, said).toBeGreaterThanOrEqual(0);
    if (into !== undefined) expect(left, said).toBe(0);
    const strokes = taken.length * (left === 0 ? repeat - 1 : repeat);
    expect(Number(/: (\d+) pass(?:es)?\b/u.exec(said)?.[1]), said).toBe(strokes);
    expect(strokes, said).toBeGreaterThan(0);
    this.passes.set(step, strokes);
    if (!this.isPlannedAgain) {
      const isTurned = taken.every(({ from }) => from !== null && from.along !== along);
      expect(said.includes('Give '), said).toBe(isTurned);
    }

    // What comes off, and what remains.
    const resized = (to: number): Sizes =>
      along === 0 ? [to, first!.size[1]] : ([first!.size[0], to] as const);
    expect(sizesOf(eachGives!), said).toEqual(resized(set));
    const pieces = given.flatMap(({ count, goes }) => Array.from({ length: count }, () => goes));
    expect(pieces, said).toHaveLength(taken.length * repeat);
    const rests = left === 0 ? [] : this.restsSaid(said, taken.length, resized(left));
    // The last piece is then whatever the sheet has left.
    const isExact = (left === 0 || rests.some(isFinished)) && taken.some((one) => one.unmeasured[along]);
    expect(said.includes('Nothing to spare'), said).toBe(isExact);
    for (const [index, workpiece] of taken.entries()) {
      this.lying.splice(this.lying.indexOf(workpiece), 1);
      const measured = (isMeasured: boolean) =>
        workpiece.unmeasured.map((before, side) => (side === along ? !isMeasured : before)) as [
          boolean,
          boolean,
        ];
      for (let nth = 0; nth < repeat; nth += 1) {
        const isLast = left === 0 && nth === repeat - 1;
        this.lay({
          paper: workpiece.paper,
          size: resized(set),
          unmeasured: measured(!isLast || !workpiece.unmeasured[along]),
          from: { step, kind: 'piece', along },
          goes: pieces[index * repeat + nth]!,
        });
      }
      if (left > 0)
        this.lay({
          paper: workpiece.paper,
          size: resized(left),
          unmeasured: workpiece.unmeasured,
          from: { step, kind: 'rest', along },
          goes: rests[index]!,
        });
    }
  }

  /** A piece that was finished is spoiled, and what lies there may become something else. */
  spoil(piece: string): void {
    const index = this.lying.findIndex(({ goes }) => goes === piece);
    expect(index, `${piece} is there to be spoiled`).toBeGreaterThanOrEqual(0);
    this.lying.splice(index, 1);
    this.isPlannedAgain = true;
    for (const workpiece of this.lying) {
      if (isFinished(workpiece.goes)) continue;
      workpiece.goes = '';
      // Nobody knows for sure how long a strip is that lay there.
      workpiece.unmeasured = [true, true];
    }
  }

  /** The sizes of the pieces that are finished, by what they are for. */
  finished(): Readonly<Record<string, readonly Sizes[]>> {
    return grouped(
      this.lying.filter(({ goes }) => isFinished(goes)),
      ({ goes }) => goes,
    );
  }

  /** The sizes of all that lies there and is no finished piece, by paper; the largest first. */
  left(): Readonly<Record<string, readonly Sizes[]>> {
    const left = this.lying.filter(({ goes }) => !isFinished(goes));
    const area = ([width, height]: Sizes) => width * height;
    return grouped(
      [...left].sort((one, other) => area(other.size) - area(one.size)),
      ({ paper }) => paper,
    );
  }

  /** How many sheets of each paper were cut into. */
  sheetsTaken(): Readonly<Record<string, number>> {
    const counts: Record<string, number> = {};
    for (const sheet of this.sheets) {
      const paper = sheet.replace(/ \d+$/u, '');
      counts[paper] = (counts[paper] ?? 0) + 1;
    }
    return counts;
  }

  private lay(workpiece: Workpiece): void {
    const { goes, size } = workpiece;
    if (goes !== 'too small')
      expect(Math.min(...size), `${goes}: ${size}`).toBeGreaterThanOrEqual(this.trimmer.narrowest);
    this.lying.push(workpiece);
  }

  /** What a sentence says to take: each sheet once, and what earlier steps have made for this one. */
  private taken(takes: string, size: Sizes, step: number): readonly Workpiece[] {
    const sheets = /^(\D*) sheets? (\d[\d ,toand]*\d|\d)/u.exec(takes);
    const made = [...takes.matchAll(/the (?:(\d+) )?(?:strip|piece)s? (left at|from) step (\d+)/gu)];
    const taken: Workpiece[] = [];
    if (sheets !== null) {
      const paper = sheets[1]!;
      const own = this.papers[paper];
      if (own === undefined) throw new Error(`“${takes}” is of a paper that is there`);
      expect(size, takes).toEqual(own.sheet);
      for (const number of numbersOf(sheets[2]!)) {
        const sheet = `${paper} ${number}`;
        expect(number, takes).toBeLessThanOrEqual(own.count);
        expect(this.sheets.has(sheet), `${sheet} is taken once`).toBe(false);
        this.sheets.add(sheet);
        const workpiece: Workpiece = { paper, size, unmeasured: [true, true], from: null, goes: '' };
        this.lying.push(workpiece);
        taken.push(workpiece);
      }
    }
    for (const [said, count, how, from] of made) {
      const kind = how === 'from' ? 'piece' : 'rest';
      const fitting = this.lying.filter(
        (one) =>
          one.from?.step === Number(from) &&
          one.from.kind === kind &&
          `${one.size}` === `${size}` &&
          [`step ${step}`, ''].includes(one.goes),
      );
      const wanted = Number(count ?? 1);
      expect(fitting.length, `${said}, ${size}`).toBeGreaterThanOrEqual(wanted);
      taken.push(...fitting.slice(0, wanted));
    }
    expect(taken.length, takes).toBeGreaterThan(0);
    expect(new Set(taken.map(({ paper }) => paper)).size, takes).toBe(1);
    return taken;
  }

  /** Which side lies along the ruler: 0 for the width. */
  private alongOf(
    { paper, size }: Workpiece,
    { lies, set, gives }: { readonly lies: string; readonly set: number; readonly gives: Sizes },
  ): 0 | 1 {
    const [, side] = /the side of (.*?) along the ruler/u.exec(lies) ?? [];
    const bySide = side === undefined ? null : size.indexOf(lengthOf(side));
    const byPrint = /\b(upright|sideways)\b/u.exec(lies)?.[1];
    if (this.papers[paper]!.isOneWay) expect(byPrint, lies).toBeDefined();
    const along = bySide ?? (gives[0] === set && gives[1] === size[1] ? 0 : 1);
    expect([0, 1], lies).toContain(along);
    if (byPrint !== undefined) expect(along, lies).toBe(byPrint === 'upright' ? 0 : 1);
    return along as 0 | 1;
  }

  /** What is said of what remains, one for each workpiece. */
  private restsSaid(said: string, count: number, size: Sizes): readonly string[] {
    const all = (goes: string) => Array.from({ length: count }, () => goes);
    const many = String.raw`(?:(\d+) (?:strip|piece)s, each )?([^,.]*? × [^,.]*?)`;
    const isAs = (found: RegExpExecArray | null) => {
      if (found === null) return false;
      expect(Number(found[1] ?? 1), said).toBe(count);
      expect(sizesOf(found[2]!), said).toEqual(size);
      return true;
    };
    const makes = /What remains makes (.*?), (?:each )?([^,]*? × [^,]*?)\./u.exec(said);
    if (makes !== null) {
      expect(sizesOf(makes[2]!), said).toEqual(size);
      const each = listOf(makes[1]!).flatMap((one) => Array.from({ length: one.count }, () => one.goes));
      expect(each, said).toHaveLength(count);
      return each;
    }
    const again = new RegExp(`What remains, ${many}, is for (step \\d+)\\.`, 'u').exec(said);
    if (isAs(again)) return all(again![3]!);
    if (isAs(new RegExp(`What remains, ${many}, is too small to keep\\.`, 'u').exec(said)))
      return all('too small');
    expect(isAs(new RegExp(`\\. ${many},? (?:is|are) left over: keep`, 'u').exec(said)), said).toBe(true);
    return all('keep');
  }
}

/** Plain spaces, and fractions with a plain slash. */
export function plain(text: string): string {
  return text.replaceAll(/\s+/gu, ' ').replaceAll('\u2044', '/').trim();
}

/** `5 1/4 in`, `85 mm` or `3/4` as a number of those units. */
export function lengthOf(text: string): number {
  const [, whole, upper, lower] = matched(/^(\d+)?(?: ?(\d+)\/(\d+))?(?: (?:in|mm))?$/u, plain(text));
  const length = Number(whole ?? 0) + (upper === undefined ? 0 : Number(upper) / Number(lower));
  expect(length, text).toBeGreaterThan(0);
  return length;
}

/** `8 1/2 × 11 in`. */
function sizesOf(text: string): Sizes {
  const [width, height] = text.split(' × ');
  return [lengthOf(width!), lengthOf(height!)];
}

/** `5 1/4 × 3 in: keep it. Two pieces of 8 1/2 × 1/2 in: for the snippet box.`: the size of each, largest first. */
export function leftSaid(text: string): readonly Sizes[] {
  const said = text.split(/(?<=[.]) (?=\S)/u).filter((sentence) => sentence !== '');
  return said.flatMap((sentence) => {
    const [, many, size] = matched(
      /^(?:(\S+) pieces of )?([^,]*? × [^,]*?)(?:, stands? upright)?: (?:keep (?:it|them)|for the snippet box)\.$/u,
      sentence,
    );
    const count = many === undefined ? 1 : Number(many) || countWords.indexOf(many.toLowerCase());
    expect(count, sentence).toBeGreaterThan(0);
    return Array.from({ length: count }, () => sizesOf(size!));
  });
}

const countWords = 'none one two three four five six seven eight nine ten eleven twelve'.split(' ');

/** `4 pieces for Panel and 2 strips for step 5`: how many go where. */
function listOf(text: string): readonly { readonly count: number; readonly goes: string }[] {
  return text.split(/, | and /u).map((each) => {
    const [, count, noun, goes] = matched(/^(\d+) (bases?|strips?|pieces?)(?: (?:for )?(.+))?$/u, each);
    if (noun!.startsWith('base')) return { count: Number(count), goes: 'Base' };
    const [kept] = /^(?:to keep|too small)/u.exec(goes!) ?? [];
    return { count: Number(count), goes: kept === 'to keep' ? 'keep' : (kept ?? goes!) };
  });
}

/** `1 to 3 and 7`. */
function numbersOf(text: string): readonly number[] {
  return text.split(/, | and /u).flatMap((run) => {
    const [first, last = first] = run.split(' to ').map(Number) as [number, number?];
    return Array.from({ length: last - first + 1 }, (_, index) => first + index);
  });
}

function isFinished(goes: string): boolean {
  return goes !== '' && goes !== 'keep' && goes !== 'too small' && !/^step \d+$/u.test(goes);
}

function grouped(
  workpieces: readonly Workpiece[],
  keyOf: (workpiece: Workpiece) => string,
): Readonly<Record<string, readonly Sizes[]>> {
  const groups: Record<string, Sizes[]> = {};
  for (const workpiece of workpieces) {
    const key = keyOf(workpiece);
    groups[key] = [...(groups[key] ?? []), workpiece.size];
  }
  return groups;
}

function matched(pattern: RegExp, text: string): RegExpExecArray {
  const found = pattern.exec(text);
  if (found === null) throw new Error(`“${text}” is said as ${pattern}`);
  return found;
}
