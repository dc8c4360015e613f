import { getDocument, OPS, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** One page of a PDF as pdf.js, an independent reader, finds it. */
export interface ReadPage {
  readonly widthPt: number;
  readonly heightPt: number;
  /** Runs of text in their order, with where their baselines start; y downwards from the top. */
  readonly runs: readonly TextRun[];
  /** Straight lines and curves of every path that is painted, in page points, y downwards. */
  readonly paths: readonly (readonly Point[])[];
  readonly structure: StructureNode | null;
}

export interface TextRun {
  readonly text: string;
  readonly xPt: number;
  readonly yPt: number;
  readonly widthPt: number;
  /** Of the type, across the line. */
  readonly sizePt: number;
}

export interface StructureNode {
  readonly role?: string;
  readonly alt?: string;
  readonly children?: readonly (StructureNode | { readonly type: string; readonly id?: string })[];
}

type Point = readonly [xPt: number, yPt: number];
type Matrix = readonly [number, number, number, number, number, number];

/** A PDF read back. */
export interface ReadPdf {
  readonly pages: readonly ReadPage[];
  readonly title: string;
  readonly language: string;
  readonly marked: boolean;
}

/** Reads a PDF with pdf.js; coordinates are single precision there, good to about 1e-4 pt. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false });
  const document = await task.promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number += 1) pages.push(await readPage(document, number));
  const { info } = (await document.getMetadata()) as { info: { Title?: string; Language?: string } };
  const marked = ((await document.getMarkInfo()) as { Marked?: boolean } | null)?.Marked === true;
  await task.destroy();
  return { pages, title: info.Title ?? '', language: info.Language ?? '', marked };
}

/** The words of a page in one line: plain spaces, fractions with a plain slash. */
export function wordsOf(page: ReadPage): string {
  return page.runs
    .map(({ text }) => text)
    .join(' ')
    .replaceAll(/[\s\u00a0\u202f]+/g, ' ')
    .replaceAll('\u2044', '/');
}

/** Every node of a structure tree, in reading order. */
export function structureNodes(node: StructureNode | null): readonly StructureNode[] {
  if (node === null) return [];
  return [node, ...(node.children ?? []).flatMap((child) => ('type' in child ? [] : structureNodes(child)))];
}

async function readPage(document: PDFDocumentProxy, number: number): Promise<ReadPage> {
  const page = await document.getPage(number);
  const [left, bottom, right, top] = page.view as [number, number, number, number];
  const content = await page.getTextContent();
  const runs = content.items.flatMap((item): TextRun[] => {
    if (!('str' in item) || item.str === '') return [];
    const [, , c, d, x, y] = item.transform as [number, number, number, number, number, number];
    return [{ text: item.str, xPt: x, yPt: top - y, widthPt: item.width, sizePt: Math.hypot(c, d) }];
  });
  const operators = await page.getOperatorList();
  return {
    widthPt: right - left,
    heightPt: top - bottom,
    runs,
    paths: pathsOf(operators.fnArray, operators.argsArray as unknown[][], top),
    structure: await page.getStructTree(),
  };
}

/** Follows the operators that move the plane, and lists what the path operators draw. */
function pathsOf(operators: readonly number[], operands: readonly unknown[][], top: number): Point[][] {
  const paths: Point[][] = [];
  const saved: Matrix[] = [];
  let plane: Matrix = [1, 0, 0, 1, 0, 0];
  operators.forEach((operator, index) => {
    const values = operands[index] ?? [];
    if (operator === OPS.save) saved.push(plane);
    else if (operator === OPS.restore) plane = saved.pop() ?? plane;
    else if (operator === OPS.transform) plane = times(plane, values as readonly unknown[] as Matrix);
    else if (operator === OPS.constructPath) {
      const [, drawn] = values as [number, ArrayLike<number>[]];
      paths.push(...drawnPaths(drawn[0] ?? [], plane, top));
    }
  });
  return paths;
}

/** How many numbers follow each drawing code of a constructed path: move, line, curve, quadratic curve, close. */
const operandCounts = [2, 2, 6, 4, 0] as const;

function drawnPaths(drawn: ArrayLike<number>, [a, b, c, d, e, f]: Matrix, top: number): Point[][] {
  const paths: Point[][] = [];
  for (let at = 0; at < drawn.length; ) {
    const code = drawn[at]!;
    const count = operandCounts[code]!;
    if (code === 0) paths.push([]);
    for (let pair = at + 1; pair < at + 1 + count; pair += 2) {
      const [x, y] = [drawn[pair]!, drawn[pair + 1]!];
      paths.at(-1)?.push([a * x + c * y + e, top - (b * x + d * y + f)]);
    }
    at += 1 + count;
  }
  return paths;
}

function times([a, b, c, d, e, f]: Matrix, [a2, b2, c2, d2, e2, f2]: Matrix): Matrix {
  return [
    a * a2 + c * b2,
    b * a2 + d * b2,
    a * c2 + c * d2,
    b * c2 + d * d2,
    a * e2 + c * f2 + e,
    b * e2 + d * f2 + f,
  ];
}
