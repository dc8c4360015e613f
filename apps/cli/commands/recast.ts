import { recastFile } from '../../../src/editing/index.ts';
import { writeLayoutFile } from '../../../src/files/index.ts';
import { type Layout, sumsOf } from '../../../src/layout/index.ts';
import { type Length, readLength, readSize, type Size, type Units } from '../../../src/measure/index.ts';
import {
  type OtherSheets,
  type Recast,
  type RecastWishes,
  recast as recastSet,
} from '../../../src/planning/index.ts';
import {
  fileProblemSentence,
  layoutProblemSentence,
  type RecastWords,
  recastRefusalSentence,
  recastWords,
  shortageSentences,
  sumSentence,
  whyNotALength,
} from '../../../src/words/index.ts';
import { openLayoutFile, openPile, openSet, openTrimmer } from '../opening.ts';
import { cannot, done, type Outcome, wrongUsage } from '../outcome.ts';
import type { World } from '../world.ts';
import { wrapped } from '../wrapped.ts';

export interface RecastOptions {
  readonly output?: string;
  readonly units?: Units;
  readonly base?: string;
  readonly sheets?: readonly string[];
  readonly marks?: string;
  readonly trimmer?: string;
  readonly cards?: string;
  readonly json?: boolean;
}

/** `cardwright recast`: the layout planned again for another base, other units, marks or sheets, as a new layout file. */
export async function recast(file: string, options: RecastOptions, world: World): Promise<Outcome> {
  const opened = await openLayoutFile(file, world);
  const trimmer = await openTrimmer(options.trimmer, world);
  if ('problems' in opened || 'problems' in trimmer) return cannot;
  const { layout } = opened.value;
  const wishes = wishesOf(options, layout);
  if ('wrong' in wishes) {
    world.err(wishes.wrong.map((sentence) => `${sentence}\n`).join(''));
    return wrongUsage;
  }
  const arrangement = openPile(layout, world);
  if (arrangement === null) return cannot;
  const set = await openSet({ layout, arrangement, trimmer: null }, world);
  const answer = recastSet(set, { ...wishes, trimmer: trimmer.value });
  if (answer.kind === 'refused') {
    const units = wishes.units ?? layout.units;
    world.err(
      answer.refusals
        .map((refusal) => `${recastRefusalSentence(refusal, layout, { units, glyphs: 'typed' })}\n`)
        .join(''),
    );
    return cannot;
  }

  const changed = recastFile(opened.value.file, answer);
  if ('problems' in changed) {
    world.err(changed.problems.map((problem) => `${fileProblemSentence(problem)}\n`).join(''));
    return cannot;
  }
  const words = recastWords(answer, layout);
  const { output } = options;
  if (output !== undefined) {
    await world.write(output, writeLayoutFile(changed.file), { not: [file, options.trimmer] });
  }
  // Where the layout goes to standard output, nothing else does.
  if (options.json) {
    const text = `${JSON.stringify(recordOf(answer, words), null, 2)}\n`;
    if (output === '-') world.err(text);
    else world.out(text);
  } else {
    const text = textOf(answer, layout, words)
      .flatMap((line) => wrapped(line))
      .join('\n');
    if (output === '-') world.err(`${text}\n`);
    else world.out(`${text}\n`);
  }
  if (output !== undefined && output !== '-') world.err(`Wrote ${output}.\n`);
  if (output === undefined && !options.json)
    world.err('Nothing is written: name a file with -o to keep it.\n');
  if (answer.answer.kind === 'plan') return done;
  const showing = { units: answer.layout.units, glyphs: 'typed' } as const;
  world.err(`${shortageSentences(answer.answer, answer.layout, showing).join('\n')}\n`);
  return cannot;
}

// --- What was asked ---

/** The wishes of the options, or what of them cannot be read. */
function wishesOf(
  { units, base, marks, cards, sheets }: RecastOptions,
  layout: Layout,
): RecastWishes | { readonly wrong: readonly string[] } {
  const asked = units ?? layout.units;
  const wrong: string[] = [];
  const sized = (option: string, text: string): Size | undefined => {
    const read = readSize(text, asked);
    if (read.ok) return read.size;
    const why = read.why === 'not-two' ? `“${text}” is no size` : whyNotALength(read.refusal, read.text);
    wrong.push(
      `${option} wants a width and a height, such as 105 x 148 mm or 4 1/4 x 5 1/2 in: ${why}.`.replace(
        /\.\.$/,
        '.',
      ),
    );
    return undefined;
  };
  const closed = base === undefined ? undefined : sized('--base', base);
  let mark: Length | undefined;
  if (marks !== undefined) {
    const read = readLength(marks, asked);
    if (read.ok) mark = read.length;
    else wrong.push(`--marks wants the distance of two marks: ${whyNotALength(read, marks)}`);
  }
  if (cards !== undefined && !/^\d{1,9}$/.test(cards))
    wrong.push(`--cards wants how many cards the set shall have, a whole number, not “${cards}”.`);
  const others = (sheets ?? []).map((text) => otherSheets(text, layout, (size) => sized('--sheets', size)));
  if (wrong.length > 0) return { wrong };
  return {
    ...(units === undefined ? {} : { units }),
    ...(closed === undefined ? {} : { base: closed }),
    ...(mark === undefined ? {} : { marks: mark }),
    ...(cards === undefined ? {} : { cards: Number(cards) }),
    sheets: others.filter((other) => other !== null),
  };
}

/** `meadow 300 x 300 mm, 2`, `210 x 297 mm for 8 1/2 x 11 in`: for one paper or all, how many, in whose place. */
function otherSheets(
  text: string,
  layout: Layout,
  sized: (text: string) => Size | undefined,
): OtherSheets | null {
  const [wanted = '', replaced] = text.split(/\s+for\s+/i);
  const counted = /^(.*?),\s*(\d{1,6}|as many as needed)\s*$/i.exec(wanted);
  const named = (counted?.[1] ?? wanted).trim();
  const first = /^(\S+)\s+(.+)$/.exec(named);
  const isPaper = first !== null && (layout.papers.has(first[1]!) || /^[a-z]/i.test(first[1]!));
  const size = sized(isPaper ? first[2]! : named);
  const insteadOf = replaced === undefined ? null : sized(replaced);
  if (size === undefined || insteadOf === undefined) return null;
  const count = counted?.[2];
  return {
    paper: isPaper ? first[1]! : null,
    size,
    insteadOf,
    ...(count === undefined ? {} : { count: /^\d/.test(count) ? Number(count) : null }),
  };
}

// --- What is answered ---

function textOf(answer: Recast, drawn: Layout, words: RecastWords): readonly string[] {
  const { layout, arrangement } = answer;
  const showing = { units: layout.units, glyphs: 'typed' } as const;
  const sums = [...new Set(sumsOf(arrangement).map((sum) => sumSentence(sum, layout, showing)))];
  const section = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)];
  return [
    drawn.title === '' ? 'This layout' : drawn.title,
    ...words.head,
    ...section('What changed, and why:', words.changes),
    ...section('The sums:', sums),
    ...section('Paper by paper:', words.papers),
    ...section('Worth a look:', words.worse),
    ...section('Had each length only been converted:', words.conversion),
  ];
}

/** What `recast --json` writes: lengths in whole ticks, and every sentence under `says`. */
function recordOf(answer: Recast, says: RecastWords): unknown {
  const {
    layout,
    marks,
    lengths,
    allowance,
    rooms,
    effect,
    pieces,
    papers,
    suiting,
    cards,
    worse,
    problems,
  } = answer;
  const { conversion, squeezed } = answer;
  const showing = { units: layout.units, glyphs: 'typed' } as const;
  const size = ({ width, height }: Size) => [width, height];
  const pieceRecords = (of: Recast['pieces']) =>
    of.map(({ size: { from, to }, ...piece }) => ({ ...piece, size: { from: size(from), to: size(to) } }));
  const problemRecords = (of: Recast['problems']) =>
    of.map((problem) => ({ ...problem, says: layoutProblemSentence(problem, showing) }));
  return {
    cardwright_recast: 1,
    units: layout.units,
    marks,
    cards: { asked: layout.cards, given: cards },
    suiting,
    lengths,
    allowance,
    rooms: Object.fromEntries(rooms),
    effect,
    pieces: pieceRecords(pieces),
    papers,
    worse: { uneven: [...worse.uneven], wrong: [...worse.wrong] },
    problems: problemRecords(problems),
    squeezed,
    conversion: {
      cards: conversion.answer === null ? null : cardsOf(conversion.answer),
      uneven: conversion.uneven,
      betweenMarks: conversion.betweenMarks,
      problems: problemRecords(conversion.problems),
      pieces: pieceRecords(conversion.pieces),
    },
    says,
  };
}

function cardsOf(answer: Recast['answer']): number {
  return answer.kind === 'plan' ? answer.cards : answer.nearest.cards;
}
