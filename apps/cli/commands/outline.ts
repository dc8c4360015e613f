import { readSvgFile, type SvgOutline, writtenLength } from '../../../src/files/index.ts';
import type { Length } from '../../../src/measure/index.ts';
import { svgProblemSentence } from '../../../src/words/index.ts';
import { cannot, done, type Outcome } from '../outcome.ts';
import type { World } from '../world.ts';
import { wrapped } from '../wrapped.ts';

export interface OutlineOptions {
  readonly json?: boolean;
}

/** `cardwright outline`: the outline drawn in an SVG document, as the fields of a part, or all in it that is none. */
export async function outline(file: string, options: OutlineOptions, world: World): Promise<Outcome> {
  const read = readSvgFile(await world.read(file));
  if ('problems' in read) {
    const said = read.problems.map((problem) => ({ ...problem, says: svgProblemSentence(problem) }));
    world.err(said.map(({ says }) => `${says}\n`).join(''));
    if (options.json) writeJson({ problems: said, part: null, ratio: null }, world);
    return cannot;
  }
  const part = partOf(read);
  if (options.json) {
    writeJson({ problems: [], part, ratio: [read.ratio.width, read.ratio.height] }, world);
    return done;
  }
  const size =
    part.size === undefined ? [] : [`"size": [${part.size.map((text) => `"${text}"`).join(', ')}]`];
  const fields = [`"shape": "${part.shape}"`, ...size, `"outline": "${part.outline}"`];
  world.out(`${fields.join(',\n')}\n`);
  world.err(`${wrapped(adviceOn(read), { hang: 0 }).join('\n')}\n`);
  return done;
}

/** The fields of a part with this outline; without a size where the document names none. */
interface OutlinedPart {
  readonly shape: 'outline';
  readonly size?: readonly [width: string, height: string];
  readonly outline: string;
}

function partOf({ outline: path, size }: SvgOutline): OutlinedPart {
  if (size === null) return { shape: 'outline', outline: path };
  const text = (length: Length) => writtenLength(length, size.units, false);
  return { shape: 'outline', size: [text(size.width), text(size.height)], outline: path };
}

function adviceOn({ ratio, size }: SvgOutline): string {
  const place =
    'These are the fields of a part, to be put in a layout file between the braces of one of its "parts".';
  if (size !== null) return place;
  const [width, height] = [ratio.width, ratio.height].map((length) => Number(length.toPrecision(4)));
  return `${place} The drawing names no true size: give the part a "size" as well. It keeps its form where width is to height as ${width} to ${height}.`;
}

function writeJson(answer: unknown, world: World): void {
  world.out(`${JSON.stringify(answer, null, 2)}\n`);
}
