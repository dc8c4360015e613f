import {
  a4Format,
  type Block,
  type Booklet,
  flow,
  largePrintPt,
  letterFormat,
  runningLines,
  setParagraph,
  setTable,
  type Typeface,
  textStyles,
  textWidthPt,
  type Words,
} from '../drawing/index.ts';
import { type KitReport, layoutName, type PlannedKit } from '../kits/index.ts';
import type { Units } from '../measure/index.ts';
import type { Plan } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import {
  bagLines,
  bagSentence,
  bagsName,
  capital,
  cautionsFor,
  kitEnoughSentence,
  kitSentence,
  kitTotalsSentences,
  partName,
} from '../words/index.ts';
import { cuttingPages } from './cuttingPages.ts';
import { heading } from './heading.ts';
import { bagLabels } from './kitLabels.ts';
import { kitStepsPage } from './kitSteps.ts';
import { letterFor, type Matter, sizeIn } from './matter.ts';
import { printable, printableName } from './printable.ts';

/** What the guide of a kit is made from. */
export interface KitGuideRequest {
  /** Of a kit whose bags can all be filled. */
  readonly report: KitReport;
  readonly sheetFormat: 'letter' | 'a4';
  readonly units: Units;
  readonly typeface: Typeface;
  /** Size of the body text; 10.5 when absent, 16 for large print. */
  readonly bodyPt?: number;
}

/**
 * The printed guide of a kit, for whoever fills the bags and whoever sits before one: what is in each bag, what all of them
 * take, the cut list by paper, each setting drawn and said, a page of steps for each layout with what to look for, cautions,
 * and a label for every bag, to be cut apart.
 */
export function kitGuideOf(request: KitGuideRequest): Booklet {
  const format = request.sheetFormat === 'letter' ? letterFormat : a4Format;
  const { typeface } = request;
  const report = printableReport(request.report, typeface);
  const { kit, planned } = report;
  assert(planned?.plan != null && planned.shortage === null, 'A guide is printed of bags that can be filled');
  const matter: Matter = {
    layout: planned.set.layout,
    arrangement: planned.set.arrangement,
    plan: planned.plan,
    stakes: [],
    trimmer: planned.set.trimmer,
    showing: { units: request.units, glyphs: 'printed' },
    typeface,
    styles: textStyles(request.bodyPt),
    widthPt: textWidthPt(format),
  };
  const blocks: readonly Block[] = [
    setParagraph({
      words: kit.title,
      widthPt: matter.widthPt,
      style: matter.styles.title,
      typeface,
      role: 'title',
    }),
    said(matter, '', kitSentence(report)),
    ...bagLists(matter, report),
    ...together(matter, report),
    ...cutList(matter, planned),
    ...cutting(matter, planned.plan),
    ...kit.layouts.flatMap((one) => kitStepsPage(matter, one, format)),
    ...cautions(matter, report),
    ...bagLabels(matter, report, format),
  ];
  const pages = flow(blocks, {
    format,
    furniture: runningLines({
      format,
      style: matter.styles.small,
      head: { left: kit.title },
      folio: ({ folio }) => String(folio),
    }),
  });
  return { title: kit.title, language: 'en', pages };
}

/** The report with every name such that it can be printed. */
function printableReport(report: KitReport, typeface: Typeface): KitReport {
  const name = (given: string, otherwise: string) => printableName(given, otherwise, typeface);
  const layouts = report.kit.layouts.map((one) => {
    const layout = printable(one.layout, typeface);
    return { ...one, layout: { ...layout, title: name(one.layout.title, one.id) } };
  });
  const byId = new Map(layouts.map((one) => [one.id, one]));
  const bought = <Thing extends { readonly name: string }>(things: readonly Thing[]) =>
    things.map((thing) => ({ ...thing, name: name(thing.name, 'Something') }));
  const { kit, planned } = report;
  return {
    ...report,
    kit: { ...kit, title: name(kit.title, 'A kit of cards'), layouts, bought: bought(kit.bought) },
    contents: report.contents.map((bag) => ({
      ...bag,
      bought: bought(bag.bought),
      layouts: bag.layouts.map((one) => ({ ...one, layout: byId.get(one.layout.id) ?? one.layout })),
    })),
    planned: planned && {
      ...planned,
      set: { ...planned.set, layout: printable(planned.set.layout, typeface) },
    },
  };
}

/** A paragraph that may begin with the word it is about. */
function said({ styles, typeface, widthPt }: Matter, topic: string, words: string, beforePt = 4): Block {
  return setParagraph({
    words: [...(topic === '' ? [] : [{ text: `${topic}. `, weight: 'semibold' as const }]), { text: words }],
    widthPt,
    style: styles.body,
    typeface,
    beforePt,
  });
}

/** What is put into each bag: as a table to count by, layout after layout. */
function bagLists(matter: Matter, report: KitReport): readonly Block[] {
  const { styles, typeface, widthPt, showing } = matter;
  return [
    heading(matter, 'What is in each bag'),
    ...report.contents.flatMap((bag): readonly Block[] => [
      { ...said(matter, bagsName(bag, report), bagSentence(bag), 8), withNext: true },
      ...bag.layouts.map((one) => ({
        ...setTable({
          columns: [{ head: layoutName(one.layout) }, { head: 'In the bag', align: 'end' as const }],
          rows: bagLines(one, showing).map((line): readonly Words[] => {
            const [, count, what] = /^(\d+) (.*)$/u.exec(line) ?? [];
            return [capital(what ?? line), count ?? ''];
          }),
          widthPt,
          full: true,
          style: styles.table,
          typeface,
          beforePt: 8,
        }),
        together: true,
      })),
    ]),
  ];
}

function together(matter: Matter, report: KitReport): readonly Block[] {
  return [
    heading(matter, 'All bags together'),
    ...kitTotalsSentences(report).map((sentence) => said(matter, '', sentence)),
    ...(report.planned === null ? [] : [said(matter, '', kitEnoughSentence(report.planned))]),
  ];
}

/** The cut list as a printer's table, by paper. */
function cutList(matter: Matter, planned: PlannedKit): readonly Block[] {
  const { layout, styles, typeface, widthPt } = matter;
  const size = sizeIn(matter.showing);
  const isLarge = styles.body.sizePt >= largePrintPt;
  const rows = planned.cuts.flatMap(({ paper, sheets, sizes }) =>
    sizes.flatMap(({ size: cut, pieces, yield: made }, at) =>
      pieces.map((piece, index): readonly Words[] => [
        [{ text: letterFor(layout, piece.part), weight: 'semibold' }],
        partName(layout, piece.part),
        size(cut),
        piece.spare === 0 ? String(piece.need) : `${piece.need}, ${piece.spare} spare`,
        at + index === 0 ? paper.name : '',
        at + index === 0 ? String(sheets ?? '') : '',
        ...(isLarge ? [] : [index === 0 && made !== null ? String(made.perSheet) : '']),
      ]),
    ),
  );
  return [
    heading(matter, 'Cut list'),
    setTable({
      columns: [
        { head: '', widthPt: 24 },
        { head: 'For' },
        { head: 'Cut' },
        { head: 'Pieces', align: 'end' },
        { head: 'From' },
        { head: 'Sheets', align: 'end' },
        ...(isLarge ? [] : [{ head: 'A sheet gives', align: 'end' as const }]),
      ],
      rows,
      widthPt,
      full: true,
      style: styles.table,
      typeface,
      beforePt: 6,
    }),
  ];
}

function cutting(matter: Matter, plan: Plan): readonly Block[] {
  const edge = matter.trimmer?.measuringEdge ?? 'left';
  return [
    heading(matter, 'How to read the cutting pictures'),
    said(
      matter,
      '',
      `Each setting has its picture. The sheet lies as you turn it under the blade, and the blade runs up and down the page. The heavy rule on the ${edge} is the measuring edge: push the work against it, and the pieces come off on that side, drawn a little apart. Letters name the pieces as in the cut list; the strokes under a picture count the passes of the blade. The arrow points to the top of the print.`,
    ),
    ...[...plan.papers.keys()].flatMap((id) => {
      const paper = matter.layout.papers.get(id);
      return paper === undefined ? [] : cuttingPages(matter, paper, []);
    }),
  ];
}

function cautions(matter: Matter, { kit }: KitReport): readonly Block[] {
  const all = cautionsFor({
    scored: kit.layouts.some(({ layout }) => layout.base.fold !== 'none'),
    glued: kit.layouts.some(({ layout }) => layout.parts.length > 0),
    bought:
      kit.bought.length > 0 ||
      kit.layouts.some(({ layout }) => layout.parts.some(({ papers }) => papers.length === 0)),
  });
  return [
    { ...heading(matter, 'Take care'), newPage: true },
    ...all.map(({ topic, says }) => said(matter, topic, says)),
  ];
}
