import { readSavedLayout, type SavedLayout, writtenLength } from '../../../src/files/index.ts';
import { type FoldedMade, foldedMade } from '../../../src/finished/index.ts';
import { arrange, checkLayout, type Layout } from '../../../src/layout/index.ts';
import {
  type NoRibbon,
  ribbonOfSize,
  slantForGap,
  templateForGap,
  writtenSlant,
} from '../../../src/making/index.ts';
import {
  type Length,
  lengthOfTicks,
  readLength,
  readSize,
  type Size,
  type Units,
} from '../../../src/measure/index.ts';
import { assert } from '../../../src/problem/index.ts';
import {
  fileProblemSentence,
  layoutProblemSentence,
  noRibbonSentence,
  ribbonSentences,
  whyNotALength,
} from '../../../src/words/index.ts';
import { cannot, done, type Outcome, wrongUsage } from '../outcome.ts';
import type { World } from '../world.ts';
import { wrapped } from '../wrapped.ts';

export interface RibbonOptions {
  readonly strip: string;
  readonly template?: string;
  readonly slant?: string;
  readonly gap?: string;
  /** What the folded ribbon is to measure. */
  readonly overall?: string;
  /** When absent, as the strip is given. */
  readonly units?: Units;
  readonly output?: string;
  readonly json?: boolean;
}

/** `cardwright ribbon`: the measures of a folded ribbon, forwards or backwards, and its template. */
export async function ribbon(options: RibbonOptions, world: World): Promise<Outcome> {
  const asked = asks(options);
  if ('wrong' in asked) {
    world.err(asked.wrong.map((line) => `${line}\n`).join(''));
    return wrongUsage;
  }
  const { units } = asked;
  const showing = { units, glyphs: 'typed' } as const;
  const refuse = (says: string): Outcome => {
    world.err(`${wrapped(says, { hang: 0 }).join('\n')}\n`);
    return cannot;
  };
  const found = solved(asked);
  if ('cannot' in found) return refuse(noRibbonSentence(found, showing));

  // The fields go in by the one door of all layouts, so that what is wrong with them is found and said as anywhere.
  const part = partOf(found, units);
  const read = readSavedLayout(layoutAround(part, units));
  if ('problems' in read) return refuse(read.problems.map(fileProblemSentence).join(' '));
  const { layout } = read;
  const folding = checkLayout(layout, arrange(layout)).filter(
    ({ code }) => code === 'stripTooShort' || code === 'foldedOverItself',
  );
  if (folding.length > 0)
    return refuse(folding.map((problem) => layoutProblemSentence(problem, showing)).join(' '));

  const made = foldedMade(layout.parts[0]!);
  assert(made !== null && made.kind === 'ribbon', 'A ribbon that was read is one');
  const says = ribbonSentences(made, layout, showing);
  const drawn = await written(made, layout, options.output, world);
  if (drawn === 'standard output') return done;
  const { measures } = made;
  world.out(
    options.json
      ? `${JSON.stringify({ cardwright_ribbon: 1, part, measures, says }, null, 2)}\n`
      : `${[...says.flatMap((line) => wrapped(line)), '', fieldsOf(part)].join('\n')}\n`,
  );
  return done;
}

/** Writes the template where one is asked for. */
async function written(
  made: FoldedMade,
  layout: Layout,
  output: string | undefined,
  world: World,
): Promise<'nothing' | 'file' | 'standard output'> {
  if (output === undefined) return 'nothing';
  const [{ ribbonDrawing }, { svgOf }, { typefaceOf }, { openFonts }] = await Promise.all([
    import('../../../src/guide/index.ts'),
    import('../../../src/drawing/index.ts'),
    import('../../../src/printing/index.ts'),
    import('../fonts.ts'),
  ]);
  const { units } = layout;
  const page = ribbonDrawing(made, { units, typeface: typefaceOf(await openFonts(world)) });
  assert(page !== null, 'What can be folded has a template', { part: layout.parts[0]!.id });
  await world.write(output, svgOf(page, { units, title: 'Folding template' }), { not: [] });
  if (output === '-') return 'standard output';
  world.err(`Wrote ${output}.\n`);
  return 'file';
}

// --- What is asked ---

interface Asked {
  readonly units: Units;
  readonly width: Length;
  readonly length: Length;
  readonly template?: Length;
  readonly slant?: number;
  readonly gap?: Length;
  readonly overall?: Size;
}

function asks(options: RibbonOptions): Asked | { readonly wrong: readonly string[] } {
  const wrong: string[] = [];
  const units = unitsOf(options);
  const size = (option: string, text: string | undefined, such: string): Size | undefined => {
    if (text === undefined) return undefined;
    const read = readSize(text, units);
    if (read.ok && read.size.width > 0 && read.size.height > 0) return read.size;
    const why =
      read.ok || read.why === 'not-two' ? `“${text}” is none` : whyNotALength(read.refusal, read.text);
    wrong.push(`${option} wants ${such}: ${why.replace(/\.$/, '')}.`);
    return undefined;
  };
  const length = (option: string, text: string | undefined, least: number): Length | undefined => {
    if (text === undefined) return undefined;
    const read = readLength(text, units);
    if (read.ok && read.length >= least) return read.length;
    const why = read.ok ? `“${text}” is less than that may be` : whyNotALength(read, text).replace(/\.$/, '');
    wrong.push(`${option} wants a length, such as 3 in or 76 mm: ${why}.`);
    return undefined;
  };
  const strip = size('--strip', options.strip, 'the length and the width of a strip, such as 6 3/4 x 1/2 in');
  const template = length('--template', options.template, 1);
  const gap = length('--gap', options.gap, 0);
  const overall = size('--overall', options.overall, 'a width and a height, such as 4 x 2 in');
  const slant = slantIn(options.slant, wrong);
  const given = [template, slant, gap].filter((one) => one !== undefined).length;
  if (wrong.length === 0 && (overall === undefined ? given !== 2 : given > 0))
    wrong.push('A ribbon is given by two of --template, --slant and --gap, or by --overall alone.');
  if (wrong.length > 0 || strip === undefined) return { wrong };
  return {
    units,
    width: lengthOfTicks(Math.min(strip.width, strip.height)),
    length: lengthOfTicks(Math.max(strip.width, strip.height)),
    ...(template === undefined ? {} : { template }),
    ...(slant === undefined ? {} : { slant }),
    ...(gap === undefined ? {} : { gap }),
    ...(overall === undefined ? {} : { overall }),
  };
}

function unitsOf({ units, strip }: RibbonOptions): Units {
  const read = readSize(strip, 'in');
  return units ?? (read.ok ? read.units : 'in');
}

function slantIn(text: string | undefined, wrong: string[]): number | undefined {
  if (text === undefined) return undefined;
  const number = /^[-+−]?\d+(?:[.,]\d+)?\s*°?$/.test(text.trim())
    ? Number(text.trim().replace(',', '.').replace('−', '-').replace(/\s*°$/, ''))
    : Number.NaN;
  if (Math.abs(number) <= 85) return number;
  wrong.push(`--slant wants degrees from -85 to 85, such as 20, not “${text}”.`);
  return undefined;
}

interface Solved {
  readonly width: Length;
  readonly length: Length;
  readonly template: Length;
  readonly slant: number;
}

/** What is given, or what follows from the gap or the size that is wanted. */
function solved({ width, length, template, slant, gap, overall }: Asked): Solved | NoRibbon {
  if (overall !== undefined) {
    const found = ribbonOfSize(width, overall);
    if ('cannot' in found) return found;
    // Longer tails would stand out over the creases of the other end, and it would be wider than was asked for.
    const cut = lengthOfTicks(Math.min(length, found.length));
    return { width, length: cut, template: found.template, slant: writtenSlant(found.slant) };
  }
  if (template !== undefined && slant !== undefined) return { width, length, template, slant };
  assert(gap !== undefined, 'Two of three are given');
  if (template !== undefined) {
    const found = slantForGap({ width, length, template }, gap);
    return 'cannot' in found ? found : { width, length, template, slant: writtenSlant(found.slant) };
  }
  assert(slant !== undefined, 'Two of three are given');
  const found = templateForGap({ width, length, slant }, gap);
  return 'cannot' in found ? found : { width, length, template: found.template, slant };
}

// --- What is answered ---

/** The fields of a part that is folded so. */
interface RibbonPart {
  readonly shape: 'ribbon';
  readonly size: readonly [length: string, width: string];
  readonly template: string;
  readonly slant: number;
}

function partOf({ width, length, template, slant }: Solved, units: Units): RibbonPart {
  const text = (one: Length) => writtenLength(one, units, false);
  return { shape: 'ribbon', size: [text(length), text(width)], template: text(template), slant };
}

function fieldsOf({ shape, size, template, slant }: RibbonPart): string {
  return [
    `"shape": "${shape}"`,
    `"size": [${size.map((text) => `"${text}"`).join(', ')}]`,
    `"template": "${template}"`,
    `"slant": ${slant}`,
  ].join(',\n');
}

/** A layout with nothing but the ribbon on a card. */
function layoutAround({ shape, size, template, slant }: RibbonPart, units: Units): SavedLayout {
  return {
    cardwright: 1,
    units,
    cards: 1,
    base: { size: ['9000 mm', '9000 mm'], fold: 'none', paper: null },
    papers: {},
    parts: [{ id: 'ribbon', name: 'Ribbon', shape, size: [...size], template, slant, paper: null }],
  };
}
