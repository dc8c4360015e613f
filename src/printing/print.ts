import PDFDocument, { type StructureElement, type StructureOptions } from 'pdfkit';
import { toBytes } from 'pdfkit/output';
import {
  type Booklet,
  type Frame,
  frameOf,
  type GroupMark,
  hatchMarks,
  type Mark,
  type Page,
  type PathStep,
  type Point,
  polyline,
  type Role,
  ringsOf,
  type Stroke,
  shownText,
  standIn,
  type TextMark,
  xmlText,
} from '../drawing/index.ts';
import { assert } from '../problem/index.ts';
import { type Fonts, shownBy, useFonts } from './typeface.ts';

export interface PrintOptions {
  /** Stands in the file as its date; the same booklet, fonts and date give the same bytes. */
  readonly madeAt: Date;
  /** Content streams as plain text, for tests and for reviewing changes. */
  readonly uncompressed?: boolean;
}

/**
 * The booklet as a PDF 1.7 at true scale, made by the rules of PDF/UA-1 (ISO 14289-1): tagged in reading order,
 * decoration marked as such, fonts embedded (what is used of them), title and language stated.
 *
 * Asks viewers to print at actual size on the sheet the page is made for; that is only a request, so pages with
 * true-size drawings still need test bars.
 */
export async function printPdf(booklet: Booklet, fonts: Fonts, options: PrintOptions): Promise<Uint8Array> {
  const document = new PDFDocument({
    autoFirstPage: false,
    font: null,
    pdfVersion: '1.7',
    subset: 'PDF/UA',
    tagged: true,
    lang: booklet.language,
    displayTitle: true,
    compress: options.uncompressed !== true,
    info: {
      Title: new TitleForBoth(booklet.title),
      Creator: 'Cardwright',
      Producer: 'PDFKit',
      CreationDate: options.madeAt,
      ModDate: options.madeAt,
    },
  });
  Object.assign(document._root.data.ViewerPreferences.data, {
    PrintScaling: 'None',
    PickTrayByPDFSize: true,
  });
  useFonts(document, fonts);
  const bytes = toBytes(document);

  const print = printer(document);
  const root = document.struct('Document');
  document.addStructure(root);
  const whole: Element = { structure: root, holds: 'elements', last: new Map() };
  for (const page of booklet.pages) {
    document.addPage({ size: [page.widthPt, page.heightPt], margin: 0 });
    print(page, whole);
  }

  document.end();
  return bytes;
}

/** A structure element under way, with its last child of each role, to go on with on the next page. */
interface Element {
  readonly structure: StructureElement;
  readonly holds: Holds;
  readonly last: Map<Role, Element>;
  /** Of a list item: what follows its label; made when the first of it comes. */
  body?: Element;
}

/**
 * What stands in an element: other elements, so that a bare mark in it is decoration; content, with elements or
 * without; a picture, whose roles are not read; or a label and a body.
 */
type Holds = 'elements' | 'content' | 'picture' | 'labelAndBody';

/** Where a mark stands on its page: how far its groups are moved and which rectangles it is seen through. */
interface Place {
  readonly move: Point;
  readonly clips: readonly Frame[];
}

/** PDF 1.7 structure types (ISO 32000-1, 14.8.4) of the roles, and what they hold. */
const structures: Readonly<Record<Role, { readonly type: string; readonly holds: Holds }>> = {
  title: { type: 'H1', holds: 'content' },
  heading: { type: 'H2', holds: 'content' },
  subheading: { type: 'H3', holds: 'content' },
  paragraph: { type: 'P', holds: 'content' },
  list: { type: 'L', holds: 'elements' },
  listItem: { type: 'LI', holds: 'labelAndBody' },
  label: { type: 'Lbl', holds: 'content' },
  figure: { type: 'Figure', holds: 'picture' },
  table: { type: 'Table', holds: 'elements' },
  row: { type: 'TR', holds: 'elements' },
  headerCell: { type: 'TH', holds: 'content' },
  cell: { type: 'TD', holds: 'content' },
};

/** Draws pages into the document and their roles into its structure. */
function printer(document: PDFDocument): (page: Page, whole: Element) => void {
  const shows = shownBy(document);

  const drawText = (mark: TextMark, { move }: Place): void => {
    const shown = shownText(mark.text, shows(mark.weight));
    if (shown.trim() === '') return;
    document.font(mark.weight).fontSize(mark.sizePt).fillColor(mark.colour);
    const width = mark.anchor === 'start' ? 0 : document.widthOfString(shown.trimEnd());
    const shift = { start: 0, middle: width / 2, end: width }[mark.anchor];
    const xPt = mark.at.xPt + move.xPt;
    const yPt = mark.at.yPt + move.yPt;
    const turn = mark.turnDegrees ?? 0;
    if (turn !== 0) document.save().rotate(turn, { origin: [xPt, yPt] });
    // What stands as a box on the page is still read and copied as what it is.
    const boxed = shown.includes(standIn) && shown !== mark.text;
    if (boxed) document.markContent('Span', { actual: mark.text });
    document.text(shown, xPt - shift, yPt, { lineBreak: false, baseline: 'alphabetic' });
    if (boxed) document.endMarkedContent();
    if (turn !== 0) document.restore();
  };

  const drawStroked = (path: readonly PathStep[], stroke: Stroke, { move }: Place): void => {
    document.lineWidth(stroke.widthPt).strokeColor(stroke.colour);
    if (stroke.dashPt !== undefined) document.dash(stroke.dashPt);
    if (stroke.cap !== undefined) document.lineCap(stroke.cap);
    tracePath(document, path, move);
    document.stroke();
    if (stroke.dashPt !== undefined) document.undash();
    if (stroke.cap !== undefined) document.lineCap('butt');
  };

  const drawLeaf = (mark: Leaf, place: Place): void => {
    switch (mark.kind) {
      case 'text':
        drawText(mark, place);
        return;
      case 'line':
        drawStroked(polyline([mark.from, mark.to]), mark.stroke, place);
        return;
      case 'path':
        if (mark.fill !== undefined && 'colour' in mark.fill) {
          document.fillColor(mark.fill.colour);
          tracePath(document, mark.path, place.move);
          document.fill();
        }
        if (mark.stroke !== undefined) drawStroked(mark.path, mark.stroke, place);
    }
  };

  const drawPlaced = ({ mark, place }: PlacedLeaf): void => {
    if (place.clips.length === 0) {
      drawLeaf(mark, place);
      return;
    }
    document.save();
    for (const { xPt, yPt, widthPt, heightPt } of place.clips)
      document.rect(xPt, yPt, widthPt, heightPt).clip();
    drawLeaf(mark, place);
    document.restore();
  };

  /** Puts a group with a role into the structure, and its marks into it. */
  const enter = (group: RoleGroup, parent: Element, place: Place): void => {
    const owner = parent.holds === 'labelAndBody' && group.role !== 'label' ? bodyOf(parent) : parent;
    let element = group.continues === true ? owner.last.get(group.role) : undefined;
    if (element === undefined) {
      const { type, holds } = structures[group.role];
      const structure = document.struct(type, structureOptions(group, place));
      owner.structure.add(structure);
      element = { structure, holds, last: new Map() };
      owner.last.set(group.role, element);
    }
    fill(element, group.marks, placeIn(place, group));
  };

  const bodyOf = (item: Element): Element => {
    if (item.body === undefined) {
      const structure = document.struct('LBody');
      item.structure.add(structure);
      item.body = { structure, holds: 'content', last: new Map() };
    }
    return item.body;
  };

  /** Puts marks into an element: groups with a role as its children, runs of others as its content or decoration. */
  const fill = (element: Element, marks: readonly Mark[], place: Place): void => {
    for (const part of partsOf(marks, place, element.holds === 'picture')) {
      if (part.kind === 'role') {
        enter(part.group, element, part.place);
      } else if (element.holds === 'elements') {
        document.markContent('Artifact', { type: 'Layout' });
        part.leaves.forEach(drawPlaced);
        document.endMarkedContent();
      } else {
        const owner = element.holds === 'labelAndBody' ? bodyOf(element) : element;
        owner.structure.add(() => part.leaves.forEach(drawPlaced));
      }
    }
  };

  return (page, whole) => fill(whole, page.marks, { move: { xPt: 0, yPt: 0 }, clips: [] });
}

type RoleGroup = GroupMark & { readonly role: Role };
type Leaf = Exclude<Mark, GroupMark>;
interface PlacedLeaf {
  readonly mark: Leaf;
  readonly place: Place;
}
type Part =
  | { readonly kind: 'role'; readonly group: RoleGroup; readonly place: Place }
  | { readonly kind: 'leaves'; readonly leaves: PlacedLeaf[] };

/** The marks in order, groups without a role opened, everything else between two roles together. */
function partsOf(marks: readonly Mark[], place: Place, inPicture: boolean): readonly Part[] {
  const parts: Part[] = [];
  const visit = (mark: Mark, here: Place): void => {
    if (mark.kind === 'group') {
      if (mark.role !== undefined && !inPicture) {
        parts.push({ kind: 'role', group: { ...mark, role: mark.role }, place: here });
        return;
      }
      const inside = placeIn(here, mark);
      for (const inner of mark.marks) visit(inner, inside);
      return;
    }
    const last = parts.at(-1);
    const leaves = leavesOf(mark).map((leaf) => ({ mark: leaf, place: here }));
    if (last?.kind === 'leaves') last.leaves.push(...leaves);
    else parts.push({ kind: 'leaves', leaves });
  };
  for (const mark of marks) visit(mark, place);
  return parts;
}

/** A hatched path as the marks it is made of. */
function leavesOf(mark: Leaf): readonly Leaf[] {
  if (mark.kind !== 'path' || mark.fill === undefined || !('hatch' in mark.fill)) return [mark];
  const { path, fill, stroke } = mark;
  return [
    ...hatchMarks(path, fill.hatch),
    ...(stroke === undefined ? [] : [{ kind: 'path', path, stroke } as const]),
  ];
}

function placeIn({ move, clips }: Place, group: GroupMark): Place {
  const moved = {
    xPt: move.xPt + (group.move?.xPt ?? 0),
    yPt: move.yPt + (group.move?.yPt ?? 0),
  };
  if (group.clip === undefined) return { move: moved, clips };
  const { clip } = group;
  return {
    move: moved,
    clips: [...clips, { ...clip, xPt: clip.xPt + moved.xPt, yPt: clip.yPt + moved.yPt }],
  };
}

function structureOptions(group: RoleGroup, place: Place): StructureOptions {
  switch (group.role) {
    case 'figure': {
      assert(group.says !== undefined && group.says !== '', 'A figure says what it shows');
      const { xPt, yPt, widthPt, heightPt } = extentOf(group, place);
      return { alt: group.says, bbox: [xPt, yPt, xPt + widthPt, yPt + heightPt] };
    }
    case 'headerCell':
      return { scope: group.heads === 'row' ? 'Row' : 'Column' };
    default:
      return {};
  }
}

/** Where on the page the drawn lines and areas of a group lie; its text is taken as the points it hangs on. */
function extentOf(group: GroupMark, place: Place): Frame {
  const points = partsOf(group.marks, placeIn(place, group), true).flatMap((part) =>
    part.kind === 'role'
      ? []
      : part.leaves.flatMap(({ mark, place: here }) =>
          pointsOf(mark).map(({ xPt, yPt }) => ({ xPt: xPt + here.move.xPt, yPt: yPt + here.move.yPt })),
        ),
  );
  return frameOf(points);
}

function pointsOf(mark: Leaf): readonly Point[] {
  switch (mark.kind) {
    case 'line':
      return [mark.from, mark.to];
    case 'path':
      return ringsOf(mark.path).flat();
    case 'text':
      return [mark.at];
  }
}

/**
 * The title for the information dictionary, which takes a string's value, and for the XML metadata, where pdfkit
 * writes it in as it stands.
 */
class TitleForBoth extends String {
  override toString(): string {
    return xmlText(this.valueOf());
  }
}

function tracePath(document: PDFDocument, path: readonly PathStep[], { xPt: x, yPt: y }: Point): void {
  for (const step of path) {
    switch (step.to) {
      case 'move':
        document.moveTo(x + step.xPt, y + step.yPt);
        break;
      case 'line':
        document.lineTo(x + step.xPt, y + step.yPt);
        break;
      case 'curve':
        document.bezierCurveTo(
          x + step.x1Pt,
          y + step.y1Pt,
          x + step.x2Pt,
          y + step.y2Pt,
          x + step.xPt,
          y + step.yPt,
        );
        break;
      case 'close':
        document.closePath();
    }
  }
}
