import { dirname, join } from 'node:path';
import {
  type KitEdit,
  kitCounted,
  kitEdited,
  kitLengthSet,
  kitOfferTaken,
  kitOpened,
} from '../../../src/editing/index.ts';
import {
  gatheredKit,
  type KitFileProblem,
  layoutFilesOf,
  readKitFile,
  type SavedKit,
  writeKitFile,
} from '../../../src/files/index.ts';
import { type KitReport, kitReport, layoutName } from '../../../src/kits/index.ts';
import { type Kit, lengthNames } from '../../../src/layout/index.ts';
import { readLength } from '../../../src/measure/index.ts';
import { type KindnessGoal, planRecord } from '../../../src/planning/index.ts';
import {
  bagLines,
  bagSentence,
  bagsName,
  cutListSentences,
  fileProblemSentence,
  kitEnoughSentence,
  kitOfferSentence,
  kitProblemSentence,
  kitSentence,
  kitShortSentences,
  kitTotalsSentences,
  type Showing,
  whyNotALength,
} from '../../../src/words/index.ts';
import { type Opened, openSolver, openTrimmer } from '../opening.ts';
import { cannot, done, type Outcome, wrongUsage } from '../outcome.ts';
import { type World, WorldProblem } from '../world.ts';
import { wrapped } from '../wrapped.ts';

export interface KitsOptions {
  readonly seats?: string;
  readonly teacher?: string;
  readonly spare?: string;
  readonly length?: readonly string[];
  readonly take?: string;
  readonly gather?: string;
  readonly output?: string;
  readonly sheet?: 'letter' | 'a4';
  readonly units?: 'in' | 'mm';
  readonly type?: string;
  readonly trimmer?: string;
  readonly prefer?: readonly KindnessGoal[];
  readonly json?: boolean;
}

/** `cardwright kits`: what goes into each bag of a class, how it is cut from shared sheets, what is short and would help. */
export async function kits(file: string, options: KitsOptions, world: World): Promise<Outcome> {
  const opened = await openKit(file, world);
  const trimmer = await openTrimmer(options.trimmer, world);
  if ('problems' in opened || 'problems' in trimmer) return cannot;
  const asked = changedKit(opened.value, options);
  if ('wrong' in asked) {
    world.err(`${asked.wrong}\n`);
    return asked.outcome;
  }
  const solver = await openSolver();
  const given = {
    trimmer: trimmer.value,
    solver,
    ...(options.prefer === undefined ? {} : { prefer: options.prefer }),
  };
  let report = kitReport(asked.kit, given);
  let saved = asked.file;
  if (options.take !== undefined) {
    const taken = takenOf(options.take, saved, report);
    if ('wrong' in taken) {
      world.err(`${taken.wrong}\n`);
      return wrongUsage;
    }
    saved = taken.file;
    report = kitReport(taken.kit, given);
  }
  const showing: Showing = { units: options.units ?? report.kit.units, glyphs: 'typed' };
  const isWell = isFilled(report);
  const said = options.output === '-' || options.gather === '-' ? world.err : world.out;
  said(
    options.json
      ? `${JSON.stringify(recordOf(report, showing), null, 2)}\n`
      : `${textOf(report, showing)
          .flatMap((line) => wrapped(line, { hang: 4 }))
          .join('\n')}\n`,
  );
  if (options.gather !== undefined) {
    await world.write(options.gather, writeKitFile(saved), { not: [options.trimmer] });
    if (options.gather !== '-') world.err(`Wrote ${options.gather}.\n`);
  }
  if (options.output === undefined) return isWell ? done : cannot;
  const printed = await printedKit(report, options, world);
  return isWell ? printed : cannot;
}

/** Whether every bag can be filled and no layout has an error. */
function isFilled({ problems, planned }: KitReport): boolean {
  return (
    planned !== null &&
    planned.shortage === null &&
    problems.every(({ problem }) => problem.severity !== 'error')
  );
}

async function printedKit(report: KitReport, options: KitsOptions, world: World): Promise<Outcome> {
  const bodyPt = options.type === undefined ? undefined : Number(options.type);
  if (bodyPt !== undefined && !(bodyPt >= 8 && bodyPt <= 24)) {
    world.err(`--type is a size of type from 8 to 24 points, not “${options.type}”.\n`);
    return wrongUsage;
  }
  const output = options.output!;
  if (!isFilled(report)) {
    world.err(
      'No guide is printed for bags that cannot be filled: take an offer, or mend the layouts first.\n',
    );
    return cannot;
  }
  const { kitGuideOf } = await import('../../../src/guide/index.ts');
  const { printPdf, typefaceOf } = await import('../../../src/printing/index.ts');
  const { openFonts } = await import('../fonts.ts');
  const fonts = await openFonts(world);
  const booklet = kitGuideOf({
    report,
    units: options.units ?? report.kit.units,
    sheetFormat: options.sheet ?? (report.kit.units === 'in' ? 'letter' : 'a4'),
    typeface: typefaceOf(fonts),
    ...(bodyPt === undefined ? {} : { bodyPt }),
  });
  await world.write(output, await printPdf(booklet, fonts, { madeAt: world.now() }), {
    not: [options.trimmer],
  });
  if (output !== '-') world.err(`Wrote ${output}, ${booklet.pages.length} pages.\n`);
  return done;
}

// --- Reading ---

interface KitInFile {
  readonly kit: Kit;
  /** With its layouts in it. */
  readonly file: SavedKit;
}

/** Reads a kit and the layout files that it names; what is wrong is said on standard error, a sentence a line. */
async function openKit(path: string, world: World): Promise<Opened<KitInFile>> {
  const text = await world.read(path);
  const beside = new Map<string, string>();
  for (const name of layoutFilesOf(text)) {
    try {
      beside.set(name, await world.read(path === '-' ? name : join(dirname(path), name)));
    } catch (problem) {
      // The kit's own sentence says where it names a file that is not there.
      if (!(problem instanceof WorldProblem)) throw problem;
    }
  }
  const read = readKitFile(text, beside);
  if ('kit' in read) return { value: { kit: read.kit, file: gatheredKit(read.file, beside) } };
  world.err(read.problems.map((problem) => `${saidOf(problem)}\n`).join(''));
  return { problems: read.problems };
}

function saidOf(problem: KitFileProblem): string {
  const sentence = fileProblemSentence(problem);
  return problem.file === undefined ? sentence : `${problem.file}: ${sentence}`;
}

// --- What is asked for ---

type Asked = KitInFile | { readonly wrong: string; readonly outcome: typeof wrongUsage | typeof cannot };

/** The kit with what the options say otherwise. */
function changedKit(opened: KitInFile, options: KitsOptions): Asked {
  let now = opened;
  const go = (edit: KitEdit): string | null => {
    const before = kitOpened({ file: now.file, done: [], undone: [] });
    if ('problems' in before) return before.problems.map(saidOf).join('\n');
    const after = kitEdited(before, edit);
    if ('problems' in after) return after.problems.map(saidOf).join('\n');
    now = after;
    return null;
  };
  for (const what of ['seats', 'teacher', 'spare'] as const) {
    const text = options[what];
    if (text === undefined) continue;
    const least = what === 'seats' ? 1 : 0;
    if (!/^\d{1,4}$/.test(text) || Number(text) < least || Number(text) > 1_000)
      return {
        wrong: `--${what} is a whole number from ${least} to 1000, not “${text}”.`,
        outcome: wrongUsage,
      };
    const wrong = go(kitCounted(now.file, what, Number(text)));
    if (wrong !== null) return { wrong, outcome: cannot };
  }
  for (const text of options.length ?? []) {
    const read = readKitLength(text, now.kit);
    if ('wrong' in read) return { wrong: read.wrong, outcome: wrongUsage };
    const edit = kitLengthSet(now.file, now.kit, read.value);
    if ('refused' in edit) return { wrong: refusalOf(text, edit.refused, now.kit), outcome: cannot };
    const wrong = go(edit);
    if (wrong !== null) return { wrong, outcome: cannot };
  }
  return now;
}

type Length = Parameters<typeof kitLengthSet>[2];

/** `path strip height 5 3/4 in`: the layout, the part, which length, and what it is to be. */
function readKitLength(text: string, kit: Kit): { readonly value: Length } | { readonly wrong: string } {
  const [, id, part, name, length] = /^\s*(\S+)\s+(\S+)\s+(\S+)\s+(.+?)\s*$/.exec(text) ?? [];
  const form =
    'Write a layout, a part, which of its lengths and how long, like “window panel width 2 1/2 in”.';
  if (id === undefined || part === undefined || name === undefined || length === undefined)
    return { wrong: `--length holds “${text}”. ${form}` };
  const one = kit.layouts.find((layout) => layout.id === id);
  if (one === undefined)
    return {
      wrong: `“${id}” is no layout of this kit; it has ${kit.layouts.map((layout) => layout.id).join(', ')}.`,
    };
  const names = lengthNames(one.layout, part);
  if (names.length === 0) {
    const parts = ['base', ...one.layout.parts.map((each) => each.id)].join(', ');
    return { wrong: `“${part}” is no part of ${layoutName(one)}; it has ${parts}.` };
  }
  if (!names.includes(name))
    return { wrong: `“${part}” of ${layoutName(one)} has no ${name}; it has ${names.join(', ')}.` };
  const reading = readLength(length, one.layout.units);
  if (!reading.ok) return { wrong: whyNotALength(reading, length) };
  return { value: { layout: id, part, name, length: reading.length } };
}

function refusalOf(
  text: string,
  refused: Extract<ReturnType<typeof kitLengthSet>, { refused: unknown }>['refused'],
  kit: Kit,
): string {
  const asked = `--length “${text}” is refused, and nothing is changed.`;
  switch (refused.why) {
    case 'none':
      return `${asked} That size follows from others; set those.`;
    case 'file':
      return [asked, ...refused.problems.map(saidOf)].join('\n');
    case 'worse': {
      const about = { kit: refused.kit, planned: null };
      const showing: Showing = { units: kit.units, glyphs: 'typed' };
      return [asked, ...refused.problems.map((problem) => kitProblemSentence(problem, about, showing))].join(
        '\n',
      );
    }
  }
}

function takenOf(text: string, file: SavedKit, report: KitReport): KitInFile | { readonly wrong: string } {
  const offers = report.planned?.offers ?? [];
  const numbers = text.split(',').map((word) => Number(word.trim()));
  const strange = numbers.find((number) => !Number.isInteger(number) || number < 1 || number > offers.length);
  if (strange !== undefined)
    return {
      wrong:
        offers.length === 0
          ? '--take names an offer, but nothing is short and nothing is offered.'
          : `--take holds “${text}”; it may hold numbers of offers from 1 to ${offers.length}, with commas between.`,
    };
  const history = numbers.reduce(
    (now, number) => {
      if ('problems' in now) return now;
      return kitEdited(now, kitOfferTaken(now.file, now.kit, offers[number - 1]!));
    },
    kitOpened({ file, done: [], undone: [] }),
  );
  return 'problems' in history ? { wrong: history.problems.map(saidOf).join('\n') } : history;
}

// --- Telling ---

function textOf(report: KitReport, showing: Showing): readonly string[] {
  const { kit, bags, contents, problems, planned } = report;
  const lines = [kit.title === '' ? 'This kit' : kit.title, kitSentence(report)];
  const list = (heading: string, sentences: readonly string[]) => {
    if (sentences.length > 0) lines.push('', heading, ...sentences.map((sentence) => `  ${sentence}`));
  };
  const of = (severity: 'error' | 'caution') => [
    ...new Set(
      problems
        .filter(({ problem }) => problem.severity === severity)
        .map((problem) => kitProblemSentence(problem, report, showing)),
    ),
  ];
  list('What would spoil the kit:', of('error'));
  if (planned !== null) {
    list('What is short:', kitShortSentences(planned, bags, showing));
    list(
      'What would help:',
      planned.offers.map((offer, index) => `${index + 1}. ${kitOfferSentence(offer, report, showing)}`),
    );
  }
  for (const bag of contents) {
    lines.push('', `${bagsName(bag, report)}: ${bagSentence(bag)}`);
    for (const one of bag.layouts) {
      const each = one.layout.each === 1 ? '' : `, ${one.layout.each} cards`;
      lines.push(
        `  ${layoutName(one.layout)}${each}`,
        ...bagLines(one, showing).map((line) => `    ${line}`),
      );
    }
    if (bag.bought.length > 0)
      lines.push('  For all of them', ...bag.bought.map(({ name, count }) => `    ${count} ${name}`));
  }
  list('All bags together:', kitTotalsSentences(report));
  if (planned !== null) {
    lines.push('', 'Cut list:');
    for (const cut of planned.cuts) {
      const [first, ...sizes] = cutListSentences(cut, planned.set.layout, showing);
      lines.push(`  ${first}`, ...sizes.map((size) => `    ${size}`));
    }
    lines.push('', kitEnoughSentence(planned));
  }
  list('Worth knowing before you cut:', of('caution'));
  return lines;
}

/** What `kits --json` writes, described in docs/kit-file.md. */
function recordOf(report: KitReport, showing: Showing): unknown {
  const { kit, bags, cards, contents, pieces, envelopes, problems, planned } = report;
  return {
    cardwright_kits: 1,
    kits: { all: bags, seats: kit.seats, teacher: kit.teacher, spare: kit.spare },
    cards,
    pieces,
    envelopes,
    bags: contents.map((bag) => ({
      bags: bag.bags,
      pieces: bag.pieces,
      layouts: bag.layouts.map(({ layout, ...rest }) => ({ layout: layout.id, ...rest })),
      bought: bag.bought,
    })),
    bought: kit.bought.map(({ name, each, spare }) => ({ name, all: each * bags + spare, spare })),
    problems: problems.map((found) => ({
      layout: found.layout,
      ...found.problem,
      says: kitProblemSentence(found, report, showing),
    })),
    short: (planned?.shortage?.papers ?? []).map(({ paper, missing, proved, moreSheets }) => ({
      paper,
      missing: Object.fromEntries(missing),
      proved,
      moreSheets,
    })),
    nearest:
      planned?.shortage == null
        ? null
        : { kits: planned.shortage.nearest.cards, proved: planned.shortage.nearest.proved },
    offers: (planned?.offers ?? []).map((offer, index) => ({
      number: index + 1,
      ...offer,
      says: kitOfferSentence(offer, report, showing),
    })),
    enough: planned && {
      kits: planned.enough.cards,
      proved: planned.enough.proved,
      limit: planned.enough.limit,
    },
    cutList: (planned === null ? [] : planned.cuts).map(({ paper, sheets, whole, sizes }) => ({
      paper: paper.id,
      sheets,
      whole,
      sizes: sizes.map(({ pieces: kinds, ...size }) => ({
        ...size,
        pieces: kinds.map(({ id, need }) => ({ piece: id, need })),
      })),
    })),
    plan: planned?.plan == null || planned.shortage !== null ? null : planRecord(planned.plan),
  };
}
