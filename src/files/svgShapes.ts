import { SaxesParser, type SaxesTagNS } from 'saxes';
import type { Problem } from '../problem/index.ts';
import { isTransform, readPath, transformedPath } from '../shape/index.ts';
import type { SvgProblemCode } from '../words/index.ts';
import { excerpt } from './excerpt.ts';
import { mostProblems } from './fileOrder.ts';
import { longestFile } from './fileText.ts';
import { type DrawnShape, pathOfShape } from './svgGeometry.ts';
import { placesIn, svgProblem, type TextPlace } from './svgProblem.ts';

/** A closed shape of a drawing, where its element stands. */
export interface SvgShape {
  readonly element: string;
  readonly place: TextPlace;
  /** Path data in units of the document, transforms done. */
  readonly path: string;
  readonly fill: 'nonzero' | 'evenodd';
}

/** A length as the document names it; without a unit it is one of the document's. */
export interface SvgLength {
  readonly number: number;
  readonly unit: '' | 'px' | 'pt' | 'pc' | 'in' | 'mm' | 'cm' | 'q';
}

/** What the outermost element says of the size of all. */
export interface SvgSheet {
  readonly width: SvgLength | null;
  readonly height: SvgLength | null;
  readonly viewBox: { readonly width: number; readonly height: number } | null;
  /** How the view fills that size: evenly and whole, evenly and full, or pressed. */
  readonly aspect: 'meet' | 'slice' | 'none';
}

/** The shapes of a drawing in the order of the document, one at least; or everything that is no outline. */
export function readSvgShapes(
  text: string,
):
  | { readonly shapes: readonly SvgShape[]; readonly sheet: SvgSheet }
  | { readonly problems: readonly Problem<SvgProblemCode>[] } {
  const start = { line: 1, column: 1, index: 0 };
  if (text.length > longestFile) {
    return { problems: [svgProblem('svgTooLarge', start, {}, { found: text.length, high: longestFile })] };
  }
  if (/^\uFEFF?\s*$/.test(text)) return { problems: [svgProblem('svgEmpty', start)] };
  const reader = new Reader(text.replace(/^\uFEFF/, ''));
  reader.read();
  const { problems, shapes, sheet } = reader;
  if (problems.length === 0 && shapes.length === 0) return { problems: [svgProblem('svgNothing', start)] };
  if (problems.length === 0 && sheet !== null) return { shapes, sheet };
  const told = problems.slice(0, mostProblems);
  const more =
    problems.length > told.length ? [svgProblem('svgMore', start, {}, { shown: mostProblems })] : [];
  return { problems: [...told, ...more] };
}

const svgSpace = 'http://www.w3.org/2000/svg';
const xhtmlSpace = 'http://www.w3.org/1999/xhtml';
const linkSpace = 'http://www.w3.org/1999/xlink';

/** How many shapes a drawing may have, and how deep groups may stand in one another. */
const mostShapes = 2_000;
const deepest = 50;

/** What is handed down from an element to those in it. */
interface Inherited {
  /** `passed`: all in it is passed over, but for what would run a program. `defs`: nothing may stand in it. */
  readonly kind: 'drawn' | 'passed' | 'defs' | 'refused';
  /** The innermost first. */
  readonly transforms: readonly string[];
  readonly fill: boolean;
  readonly display: boolean;
  readonly visible: boolean;
  readonly fillRule: 'nonzero' | 'evenodd';
}

interface Attribute {
  readonly name: string;
  readonly value: string;
  readonly place: TextPlace;
}

class Reader {
  readonly problems: Problem<SvgProblemCode>[] = [];
  readonly shapes: SvgShape[] = [];
  sheet: SvgSheet | null = null;
  private readonly place: (index: number) => TextPlace;
  private readonly parser = new SaxesParser({ xmlns: true, position: true });
  private readonly open: Inherited[] = [];
  /** No text further down is looked at once it is no XML any more, or no drawing. */
  private isBroken = false;

  constructor(private readonly text: string) {
    this.place = placesIn(text);
  }

  read(): void {
    const { parser } = this;
    const whole =
      <T extends unknown[]>(listen: (...told: T) => void) =>
      (...told: T) => {
        if (!this.isBroken) listen(...told);
      };
    parser.on(
      'error',
      whole((error: Error) => {
        const says = error.message.replace(/^[\d:]+\s*/, '').replace(/\.$/, '');
        this.stop('svgXml', Math.min(parser.position, this.text.length), {
          found: excerpt(says).slice(1, -1),
        });
      }),
    );
    parser.on(
      'doctype',
      whole(() => this.stop('svgDoctype', this.before('<!DOCTYPE'))),
    );
    parser.on(
      'processinginstruction',
      whole(({ target }: { target: string }) =>
        this.tell('svgInstruction', this.before('<?'), { found: `<?${shown(target)}?>` }),
      ),
    );
    parser.on(
      'text',
      whole((text: string) => this.looseText(text)),
    );
    parser.on(
      'cdata',
      whole((text: string) => this.looseText(text)),
    );
    parser.on(
      'opentag',
      whole((tag: SaxesTagNS) => this.element(tag)),
    );
    parser.on(
      'closetag',
      whole(() => void this.open.pop()),
    );
    parser.write(this.text).close();
  }

  private element(tag: SaxesTagNS): void {
    const index = this.before(`<${tag.name}`);
    const within = this.open.at(-1);
    const inherited = within === undefined ? this.root(tag, index) : this.inner(tag, index, within);
    this.open.push(inherited);
    if (this.open.length > deepest) this.stop('svgDeep', index, {}, { high: deepest });
  }

  private root(tag: SaxesTagNS, index: number): Inherited {
    if (tag.uri !== svgSpace || tag.local !== 'svg') {
      const wrongSpace = tag.local === 'svg' ? 'space' : 'name';
      this.stop('svgRoot', index, { element: shown(tag.name), why: wrongSpace });
      return outermost;
    }
    const attributes = this.attributes(tag, index);
    const inherited = this.looks(tag, attributes, outermost, ['width', 'height', 'viewBox', ...ofRoot]);
    this.sheet = this.sheetOf(attributes);
    return inherited;
  }

  private inner(tag: SaxesTagNS, index: number, within: Inherited): Inherited {
    const element = shown(tag.name);
    const isSvg = tag.uri === svgSpace;
    // What would run a program or fetch something is told wherever it stands.
    const whys = isSvg ? refusedElements[tag.local] : tag.uri === xhtmlSpace ? 'web' : undefined;
    if (whys !== undefined) {
      this.tell('svgElement', index, { element, why: whys });
      return refused;
    }
    if (within.kind === 'refused' || within.kind === 'passed') return within;
    if (!isSvg || passedElements.includes(tag.local)) return { ...within, kind: 'passed' };
    if (within.kind === 'defs') {
      this.tell('svgElement', index, { element, why: 'defs' });
      return refused;
    }
    const geometry = geometries[tag.local];
    if (tag.local === 'defs')
      return { ...this.looks(tag, this.attributes(tag, index), within, []), kind: 'defs' };
    if (tag.local !== 'g' && geometry === undefined) {
      this.tell('svgElement', index, { element, why: 'other' });
      return refused;
    }
    const attributes = this.attributes(tag, index);
    const before = this.problems.length;
    const inherited = this.looks(tag, attributes, within, ['transform', ...(geometry ?? [])]);
    if (geometry !== undefined && this.problems.length === before) {
      this.shape({ element: tag.local, attributes, place: this.place(index) }, inherited);
    }
    return inherited;
  }

  /** Takes a shape into the drawing, or says why it is none. */
  private shape(drawn: DrawnShape, inherited: Inherited): void {
    const { element, place } = drawn;
    const tell = (code: SvgProblemCode, names: Readonly<Record<string, string>> = {}) =>
      this.problems.push(svgProblem(code, place, { element, ...names }));
    if (!inherited.display) return void tell('svgHidden', { found: 'display: none' });
    if (!inherited.visible) return void tell('svgHidden', { found: 'visibility: hidden' });
    const found = pathOfShape(drawn);
    if ('problem' in found) return void this.problems.push(found.problem);
    // An open line is told as such, whether it is filled or not.
    const reading = readPath(found.path);
    if (!reading.ok) return void this.problems.push(this.pathProblem(drawn, found.path, reading));
    if (!inherited.fill) return void tell('svgLineOnly');
    if (this.shapes.length === mostShapes) {
      this.problems.push(svgProblem('svgTooMany', place, {}, { high: mostShapes }));
      this.isBroken = true;
      return;
    }
    const path = transformedPath(found.path, inherited.transforms, finest);
    const transformed = readPath(path);
    if (!transformed.ok) return void tell('svgAway', { fault: transformed.code });
    this.shapes.push({ element, place, path, fill: inherited.fillRule });
  }

  private pathProblem(
    { element, attributes, place }: DrawnShape,
    path: string,
    { code, at, found }: { code: string; at: number; found: string },
  ): Problem<SvgProblemCode> {
    const data = attributes.find(({ name }) => name === 'd');
    if (data === undefined || data.value !== path) {
      const openLine = code === 'open' || element === 'line';
      return svgProblem(openLine ? 'svgOpen' : 'svgPath', place, { element, fault: code, found: '' }, { at });
    }
    // In the attribute as it is written, where nothing in it stands for something else.
    const value = this.text.slice(data.place.index).search(/["']/) + 1 + data.place.index;
    const written = this.text.slice(value, value + path.length);
    const exact = written.replace(/\s/g, ' ') === path.replace(/\s/g, ' ');
    const spot = exact ? this.place(value + at) : data.place;
    return svgProblem('svgPath', spot, { element, fault: code, found: excerpt(found).slice(1, -1) }, { at });
  }

  /** Looks at every attribute of an element; what it hands down to those in it. */
  private looks(
    tag: SaxesTagNS,
    attributes: readonly Attribute[],
    within: Inherited,
    own: readonly string[],
  ): Inherited {
    const element = shown(tag.name);
    let found: Inherited = { ...within, display: within.display };
    for (const { name, value, place } of attributes) {
      const fault = faultOf(name, value, own);
      if (fault !== null) {
        const told = { element, attribute: shown(name), found: excerpt(value), ...fault.names };
        this.problems.push(svgProblem(fault.code, place, told));
      } else if (name === 'style') {
        for (const { property, value: set } of declarationsIn(value)) found = changed(found, property, set);
      } else if (name === 'transform') {
        found = { ...found, transforms: [value, ...found.transforms] };
      } else if (!attributes.some((other) => other.name === 'style' && sets(other.value, name))) {
        // A style is stronger than an attribute of the same name.
        found = changed(found, name, value);
      }
    }
    return found;
  }

  private attributes(tag: SaxesTagNS, index: number): Attribute[] {
    return Object.values(tag.attributes).flatMap(({ name, uri, prefix, local, value }) => {
      // Of other languages only what links elsewhere means anything to a drawing.
      const isLink = uri === linkSpace && local === 'href';
      const isBase = prefix === 'xml' && local === 'base';
      if (prefix !== '' && !isLink && !isBase) return [];
      if (name === 'xmlns') return [];
      const escaped = name.replace(/[.\-:]/g, '\\$&');
      const behind = this.text.slice(index).search(new RegExp(`(?<=\\s)${escaped}\\s*=`));
      return [{ name: isLink ? 'href' : name, value, place: this.place(index + Math.max(0, behind)) }];
    });
  }

  private sheetOf(attributes: readonly Attribute[]): SvgSheet {
    const attribute = (name: string) => attributes.find((one) => one.name === name);
    const length = (name: string): SvgLength | null => {
      const found = attribute(name);
      if (found === undefined) return null;
      const read = readSheetLength(found.value);
      if (read === null) {
        this.problems.push(
          svgProblem('svgSize', found.place, { attribute: name, found: excerpt(found.value) }),
        );
      }
      return read;
    };
    const [width, height] = [length('width'), length('height')];
    const view = attribute('viewBox');
    const box = view === undefined ? null : readViewBox(view.value);
    if (view !== undefined && box === null) {
      this.problems.push(svgProblem('svgViewBox', view.place, { found: excerpt(view.value) }));
    }
    const kept = attribute('preserveAspectRatio')?.value ?? '';
    const aspect = /^\s*none/.test(kept) ? 'none' : /slice\s*$/.test(kept) ? 'slice' : 'meet';
    return { width, height, viewBox: box, aspect };
  }

  private looseText(text: string): void {
    const trimmed = text.trim();
    const within = this.open.at(-1)?.kind ?? 'drawn';
    if (trimmed === '' || within === 'passed' || within === 'refused') return;
    const begins = trimmed.split(/\s/, 1)[0]!;
    const index = this.text.lastIndexOf(begins, this.parser.position);
    this.tell('svgText', Math.max(0, index), { found: excerpt(trimmed) });
  }

  /** Where the last such thing before what the parser has come to begins. */
  private before(sign: string): number {
    return Math.max(0, this.text.lastIndexOf(sign, this.parser.position - 1));
  }

  private tell(
    code: SvgProblemCode,
    index: number,
    names: Readonly<Record<string, string>> = {},
    numbers: Readonly<Record<string, number>> = {},
  ): void {
    this.problems.push(svgProblem(code, this.place(index), names, numbers));
  }

  private stop(...told: Parameters<Reader['tell']>): void {
    this.tell(...told);
    this.isBroken = true;
  }
}

/** Decimals that change nothing, where shapes are put together. */
const finest = 15;

const outermost: Inherited = {
  kind: 'drawn',
  transforms: [],
  fill: true,
  display: true,
  visible: true,
  fillRule: 'nonzero',
};
const refused: Inherited = { ...outermost, kind: 'refused' };

/** What each shape is described by. */
const geometries: Readonly<Record<string, readonly string[]>> = {
  path: ['d', 'pathLength'],
  rect: ['x', 'y', 'width', 'height', 'rx', 'ry', 'pathLength'],
  circle: ['cx', 'cy', 'r', 'pathLength'],
  ellipse: ['cx', 'cy', 'rx', 'ry', 'pathLength'],
  polygon: ['points', 'pathLength'],
  polyline: ['points', 'pathLength'],
  line: ['x1', 'y1', 'x2', 'y2', 'pathLength'],
};

const passedElements = ['title', 'desc', 'metadata'];
const ofRoot = ['x', 'y', 'version', 'baseProfile', 'preserveAspectRatio'];

/** Elements that are refused with a reason of their own, by the key of its words. */
const refusedElements: Readonly<Record<string, string>> = {
  script: 'program',
  style: 'style',
  image: 'picture',
  use: 'copy',
  symbol: 'copy',
  text: 'letters',
  tspan: 'letters',
  textPath: 'letters',
  foreignObject: 'web',
  iframe: 'web',
  video: 'web',
  audio: 'web',
  a: 'link',
  linearGradient: 'gradient',
  radialGradient: 'gradient',
  pattern: 'gradient',
  clipPath: 'clip',
  mask: 'clip',
  filter: 'filter',
  marker: 'marker',
  animate: 'movement',
  animateMotion: 'movement',
  animateTransform: 'movement',
  set: 'movement',
  switch: 'switch',
  svg: 'nested',
};

/** Properties that change nothing of where a shape's edge is, but for those that `changed` minds. */
const looks = new Set(
  `fill fill-opacity fill-rule clip-rule color opacity stroke stroke-width stroke-opacity stroke-linecap stroke-linejoin
  stroke-miterlimit stroke-dasharray stroke-dashoffset paint-order vector-effect shape-rendering color-rendering
  color-interpolation image-rendering text-rendering display visibility overflow isolation mix-blend-mode
  pointer-events cursor enable-background background background-color solid-color solid-opacity stop-color
  stop-opacity font-family font-size font-style font-weight font-variant font-stretch line-height text-anchor
  text-align letter-spacing word-spacing white-space writing-mode direction`.split(/\s+/),
);

const anywhere = new Set(['id', 'class', 'style', 'lang', 'role', 'tabindex', 'xml:base']);

interface Fault {
  readonly code: SvgProblemCode;
  readonly names?: Readonly<Record<string, string>>;
}

/** Why an attribute may not stand there; null where it may. */
function faultOf(name: string, value: string, own: readonly string[]): Fault | null {
  if (/^on/i.test(name)) return { code: 'svgEvent' };
  if (name === 'href' || name === 'src' || name === 'xml:base') return { code: 'svgReference' };
  if (name === 'style') return faultOfStyle(value);
  if (looks.has(name)) return refersElsewhere(value) ? { code: 'svgReference' } : null;
  if (name === 'transform' && own.includes(name)) return isTransform(value) ? null : { code: 'svgTransform' };
  if (own.includes(name) || anywhere.has(name) || /^(?:aria|data)-/.test(name)) return null;
  return { code: 'svgAttribute' };
}

function faultOfStyle(style: string): Fault | null {
  for (const { property, value } of declarationsIn(style)) {
    if (property === '') return { code: 'svgStyle', names: { property: excerpt(value).slice(1, -1) } };
    if (refersElsewhere(value)) return { code: 'svgReference' };
    // Properties of drawing programs' own begin with a hyphen.
    if (!looks.has(property) && !property.startsWith('-')) {
      return { code: 'svgStyle', names: { property: shown(property) } };
    }
  }
  return null;
}

function refersElsewhere(value: string): boolean {
  return /url\s*\(|image\s*\(|@import|expression\s*\(|\\/i.test(value);
}

/** The declarations of a style attribute; one without a colon has no property. */
function declarationsIn(style: string): { property: string; value: string }[] {
  return style
    .replace(/\/\*.*?\*\//gs, ' ')
    .split(';')
    .filter((text) => text.trim() !== '')
    .map((text) => {
      const colon = text.indexOf(':');
      return colon < 0
        ? { property: '', value: text.trim() }
        : { property: text.slice(0, colon).trim().toLowerCase(), value: text.slice(colon + 1).trim() };
    });
}

function sets(style: string, name: string): boolean {
  return declarationsIn(style).some(({ property }) => property === name);
}

function changed(found: Inherited, property: string, text: string): Inherited {
  const value = text
    .replace(/!\s*important$/i, '')
    .trim()
    .toLowerCase();
  if (value === 'inherit') return found;
  switch (property) {
    case 'fill':
      return { ...found, fill: value !== 'none' };
    // What stands in something that is not shown is not shown either, whatever it says of itself.
    case 'display':
      return value === 'none' ? { ...found, display: false } : found;
    case 'visibility':
      return { ...found, visible: value !== 'hidden' && value !== 'collapse' };
    case 'fill-rule':
      return { ...found, fillRule: value === 'evenodd' ? 'evenodd' : 'nonzero' };
    default:
      return found;
  }
}

function readSheetLength(text: string): SvgLength | null {
  const found = /^\s*\+?(\d+\.?\d*(?:e[+-]?\d+)?|\.\d+(?:e[+-]?\d+)?)\s*(px|pt|pc|in|mm|cm|q)?\s*$/i.exec(
    text,
  );
  if (found === null) return null;
  const number = Number(found[1]);
  const unit = (found[2] ?? '').toLowerCase() as SvgLength['unit'];
  return number > 0 && number <= 1e9 ? { number, unit } : null;
}

function readViewBox(text: string): { width: number; height: number } | null {
  const numbers = text.trim().split(/\s*,\s*|\s+/);
  if (numbers.length !== 4 || numbers.some((one) => !/^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(one)))
    return null;
  const [, , width, height] = numbers.map(Number);
  return width! > 0 && height! > 0 && width! <= 1e9 && height! <= 1e9
    ? { width: width!, height: height! }
    : null;
}

/** A name as a message shows it. */
function shown(name: string): string {
  return excerpt(name).slice(1, -1);
}
