/** Just what is used of pdfkit 0.20.2, whose published types know neither `pdfkit/output` nor PDF/UA. */
declare module 'pdfkit' {
  export interface DocumentOptions {
    readonly autoFirstPage: false;
    /** null: no standard font is loaded. */
    readonly font: null;
    readonly pdfVersion?: '1.7';
    readonly subset?: 'PDF/UA';
    readonly tagged?: true;
    readonly lang?: string;
    readonly displayTitle?: true;
    readonly compress?: boolean;
    readonly info?: Readonly<Record<string, { valueOf(): string } | Date>>;
  }

  export interface StructureElement {
    add(child: StructureElement | (() => void)): this;
  }

  export interface StructureOptions {
    readonly alt?: string;
    /** Left, top, right, bottom in points from the top left of the page. */
    readonly bbox?: readonly [number, number, number, number];
    readonly scope?: 'Column' | 'Row';
  }

  /** The methods that draw return the document itself; that is not used here. */
  export default class PDFDocument {
    constructor(options: DocumentOptions);

    /** The catalogue; its viewer preferences are there when `displayTitle` was given. */
    readonly _root: {
      readonly data: { readonly ViewerPreferences: { readonly data: Record<string, unknown> } };
    };
    /** The font in use, as opened by fontkit; heights in thousandths of its size. */
    readonly _font: {
      readonly capHeight: number;
      readonly font: { hasGlyphForCodePoint(codePoint: number): boolean };
    };

    addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): this;
    end(): void;

    registerFont(name: string, source: Uint8Array): this;
    font(name: string): this;
    fontSize(points: number): this;
    widthOfString(text: string): number;
    text(
      text: string,
      x: number,
      y: number,
      options: { readonly lineBreak: false; readonly baseline: 'alphabetic' },
    ): this;

    save(): this;
    restore(): this;
    rotate(degrees: number, options: { readonly origin: readonly [number, number] }): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): this;
    closePath(): this;
    rect(x: number, y: number, width: number, height: number): this;
    clip(): this;
    lineWidth(points: number): this;
    dash(lengths: readonly number[]): this;
    undash(): this;
    lineCap(cap: 'butt' | 'round'): this;
    fillColor(colour: string): this;
    strokeColor(colour: string): this;
    fill(): this;
    stroke(): this;

    struct(type: string, options?: StructureOptions): StructureElement;
    addStructure(element: StructureElement): this;
    markContent(tag: 'Artifact', options: { readonly type: 'Layout' | 'Pagination' }): this;
    markContent(tag: 'Span', options: { readonly actual: string }): this;
    endMarkedContent(): this;
  }
}

declare module 'pdfkit/output' {
  import type PDFDocument from 'pdfkit';

  /** All bytes of the document; asked for before its `end`. */
  export function toBytes(document: PDFDocument): Promise<Uint8Array>;
}
