import { assert } from '../problem/index.ts';
import { hatchMarks } from './hatch.ts';
import type { Frame, GroupMark, LineMark, Mark, PathMark, Role, Stroke, TextMark } from './mark.ts';
import { rectangle } from './outline.ts';
import type { Page } from './page.ts';
import { svgNumber as number, pathData } from './pathData.ts';
import { xmlText } from './xmlText.ts';

export interface SvgOptions {
  /** Unit of `width` and `height`; a user unit inside is always 1 pt. */
  readonly units: 'in' | 'mm';
  /** What the picture is, for those who listen and as its name in a file viewer. */
  readonly title: string;
  /** More about it, for those who listen. */
  readonly description?: string;
  /** BCP 47 tag of the language of the words; `en` when absent. */
  readonly language?: string;
  /** CSS family list; the type of the guide with common stand-ins when absent. */
  readonly fontFamily?: string;
  /** Begins every id, so that several pictures can stand in one web page. */
  readonly idPrefix?: string;
}

/**
 * The page as an SVG 1.1 document of true physical size, UTF-8, ending in a new line; the same text for the same
 * page and options.
 *
 * Numbers are written with 15 significant digits, which drops nothing but the noise of binary fractions.
 */
export function svgOf(page: Page, options: SvgOptions): string {
  const { units, title } = options;
  const perPoint = units === 'in' ? 1 / 72 : 25.4 / 72;
  const size = (points: number): string => `${number(points * perPoint)}${units}`;
  const clips: string[] = [];
  const body = page.marks.map((mark) => written(mark, clips, options.idPrefix ?? 'cw')).join('');
  const description =
    options.description === undefined ? '' : `<desc>${xmlText(options.description)}</desc>\n`;
  return (
    '<?xml version="1.0" encoding="UTF-8"?>\n' +
    `<svg xmlns="http://www.w3.org/2000/svg" width="${size(page.widthPt)}" height="${size(page.heightPt)}"` +
    ` viewBox="0 0 ${number(page.widthPt)} ${number(page.heightPt)}" xml:lang="${xmlText(options.language ?? 'en')}"` +
    ` xml:space="preserve" role="${hasRoles(page.marks) ? 'group' : 'img'}"` +
    ` font-family="${xmlText(options.fontFamily ?? fontFamily)}" fill="none" stroke-miterlimit="10">\n` +
    `<title>${xmlText(title)}</title>\n${description}` +
    (clips.length === 0 ? '' : `<defs>\n${clips.join('')}</defs>\n`) +
    `${body}</svg>\n`
  );
}

const fontFamily = "'Source Sans 3', 'Noto Sans', 'DejaVu Sans', Arial, Helvetica, sans-serif";

/** ARIA 1.2 roles of the reading structure. */
const ariaRoles: Readonly<Record<Role, string>> = {
  title: 'role="heading" aria-level="1"',
  heading: 'role="heading" aria-level="2"',
  subheading: 'role="heading" aria-level="3"',
  paragraph: 'role="paragraph"',
  list: 'role="list"',
  listItem: 'role="listitem"',
  label: 'role="presentation"',
  figure: 'role="img"',
  table: 'role="table"',
  row: 'role="row"',
  headerCell: 'role="columnheader"',
  cell: 'role="cell"',
};

function written(mark: Mark, clips: string[], prefix: string): string {
  switch (mark.kind) {
    case 'line':
      return writtenLine(mark);
    case 'path':
      return writtenPath(mark);
    case 'text':
      return writtenText(mark);
    case 'group':
      return writtenGroup(mark, clips, prefix);
  }
}

function writtenLine({ from, to, stroke }: LineMark): string {
  const ends = `x1="${number(from.xPt)}" y1="${number(from.yPt)}" x2="${number(to.xPt)}" y2="${number(to.yPt)}"`;
  return `<line ${ends}${strokeAttributes(stroke)}/>\n`;
}

function writtenPath({ path, fill, stroke }: PathMark): string {
  if (fill !== undefined && 'hatch' in fill) {
    const hatched = hatchMarks(path, fill.hatch)
      .map((mark) => written(mark, [], ''))
      .join('');
    const outline = stroke === undefined ? '' : writtenPath({ kind: 'path', path, stroke });
    return `<g>\n${hatched}${outline}</g>\n`;
  }
  const filled = fill === undefined ? '' : ` fill="${xmlText(fill.colour)}"`;
  const stroked = stroke === undefined ? '' : strokeAttributes(stroke);
  return `<path d="${pathData(path)}"${filled}${stroked}/>\n`;
}

function writtenText(mark: TextMark): string {
  const { at, text, sizePt, weight, colour, anchor, turnDegrees = 0 } = mark;
  const turned =
    turnDegrees === 0
      ? ''
      : ` transform="rotate(${number(turnDegrees)} ${number(at.xPt)} ${number(at.yPt)})"`;
  return (
    `<text x="${number(at.xPt)}" y="${number(at.yPt)}" font-size="${number(sizePt)}"` +
    (weight === 'semibold' ? ' font-weight="600"' : '') +
    (anchor === 'start' ? '' : ` text-anchor="${anchor}"`) +
    ` fill="${xmlText(colour)}"${turned}>${xmlText(anchor === 'start' ? text : text.trimEnd())}</text>\n`
  );
}

function writtenGroup(group: GroupMark, clips: string[], prefix: string): string {
  const { role, says, move, clip } = group;
  assert(role !== 'figure' || (says !== undefined && says !== ''), 'A figure says what it shows');
  const inner = group.marks.map((mark) => written(mark, clips, prefix)).join('');
  const attributes = [
    ...(role === undefined
      ? []
      : [role === 'headerCell' && group.heads === 'row' ? 'role="rowheader"' : ariaRoles[role]]),
    ...(says === undefined ? [] : [`aria-label="${xmlText(says)}"`]),
    ...(move === undefined ? [] : [`transform="translate(${number(move.xPt)} ${number(move.yPt)})"`]),
    ...(clip === undefined ? [] : [`clip-path="url(#${clipId(clip, clips, prefix)})"`]),
  ];
  return `<g${attributes.map((attribute) => ` ${attribute}`).join('')}>\n${inner}</g>\n`;
}

function clipId(clip: Frame, clips: string[], prefix: string): string {
  const id = `${xmlText(prefix)}-clip-${clips.length + 1}`;
  clips.push(`<clipPath id="${id}"><path d="${pathData(rectangle(clip))}"/></clipPath>\n`);
  return id;
}

function hasRoles(marks: readonly Mark[]): boolean {
  return marks.some((mark) => mark.kind === 'group' && (mark.role !== undefined || hasRoles(mark.marks)));
}

function strokeAttributes({ colour, widthPt, dashPt, cap }: Stroke): string {
  const dashes = dashPt === undefined ? '' : ` stroke-dasharray="${dashPt.map(number).join(' ')}"`;
  return ` stroke="${xmlText(colour)}" stroke-width="${number(widthPt)}"${dashes}${cap === undefined ? '' : ` stroke-linecap="${cap}"`}`;
}
