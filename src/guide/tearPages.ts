import {
  type Block,
  type Mark,
  outlineStroke,
  type PageFormat,
  rectangle,
  setFigure,
  setParagraph,
  textWidthPt,
  white,
  wideStroke,
} from '../drawing/index.ts';
import { tearsOf } from '../finished/index.ts';
import { type TearDepth, tearOf } from '../making/index.ts';
import { type Edge, type Length, lengthOfTicks, pointsOf } from '../measure/index.ts';
import { usualMarks } from '../planning/index.ts';
import {
  capital,
  coreSentence,
  listed,
  tearingAdvice,
  tearSentence,
  tearsSentences,
} from '../words/index.ts';
import { hatchOf, lengthIn, letterFor, type Matter } from './matter.ts';
import { leastStroke, mostStroke, tearFigure } from './tearFigure.ts';
import { trueSizeHead } from './trueSizeHead.ts';

/** How the torn edges are torn and what becomes of them: drawn, in words; nothing where nothing is torn. */
export function tearSection(matter: Matter): readonly Block[] {
  const { layout, arrangement, showing, styles, typeface, widthPt } = matter;
  const torn = tornAlike(matter);
  if (torn.length === 0) return [];
  const marks = matter.trimmer?.marks ?? usualMarks(layout);
  const tears = tearsOf(layout, arrangement, { marks });
  const figures = torn.map((each): Block => {
    const papers = layout.parts.find(({ id }) => id === each.edges[0]!.part)?.papers ?? [];
    const fill = papers[0] === undefined ? { colour: white } : { hatch: hatchOf(layout, papers[0]) };
    const figure = tearFigure(each.tear, {
      fill: { kind: 'path', path: [], fill },
      length: lengthIn(showing),
      typeface,
    });
    const caption = `${capital(edgesWords(matter, each.edges))}, ${figure.scale === 1 ? 'at its size' : figure.scale === 2 ? 'twice as large' : `${figure.scale} times as large`}: broken line the least, full line the usual, dotted line the most that is torn off.`;
    return setFigure({
      marks: figure.marks,
      heightPt: figure.heightPt,
      xPt: Math.max(0, (widthPt - figure.widthPt) / 2),
      says: `${capital(edgesWords(matter, each.edges))}: ${depthWords(matter, each.tear)} from the cut edge.`,
      caption: { words: caption, widthPt, style: styles.small, typeface },
      beforePt: 8,
      afterPt: 6,
    });
  });
  const paragraphs = (all: readonly string[]): readonly Block[] =>
    all.map((words) => setParagraph({ words, widthPt, style: styles.body, typeface, beforePt: 4 }));
  return [
    setParagraph({
      words: 'Tearing the edges',
      widthPt,
      style: styles.heading,
      typeface,
      role: 'heading',
      beforePt: 24,
      withNext: true,
    }),
    ...paragraphs(tearingAdvice()),
    ...figures,
    ...paragraphs(
      layout.parts.map((part) => coreSentence(part, layout, showing)).filter((says) => says !== ''),
    ),
    ...paragraphs(tears.joins.map((join) => tearSentence(join, tears, layout, showing))),
    ...paragraphs(tearsSentences(tears)),
  ];
}

/**
 * Templates to tear against at true size, one for each depth, with the two bars that tell whether the page was printed
 * true; nothing where nothing is torn.
 */
export function tearTemplates(matter: Matter, format: PageFormat): readonly Block[] {
  const { showing, styles, typeface, widthPt } = matter;
  const torn = tornAlike(matter);
  if (torn.length === 0) return [];
  const length = lengthIn(showing);
  const template = ({ tear, edges, longest }: TornAlike): Block => {
    const longPt = Math.min(pointsOf(longest), textWidthPt(format));
    const at = (depth: Length) => pointsOf(tear.most) - pointsOf(depth) + 6;
    const line = (depth: Length, stroke: typeof leastStroke): Mark => ({
      kind: 'line',
      from: { xPt: 0, yPt: at(depth) },
      to: { xPt: longPt, yPt: at(depth) },
      stroke,
    });
    const marks: Mark[] = [
      {
        kind: 'path',
        path: rectangle({ xPt: 0, yPt: at(tear.usual), widthPt: longPt, heightPt: pointsOf(tear.usual) }),
        fill: { colour: white },
        stroke: outlineStroke,
      },
      line(tear.usual, wideStroke),
      ...(tear.least < tear.usual && tear.least > 0 ? [line(tear.least, leastStroke)] : []),
      ...(tear.most > tear.usual ? [line(tear.most, mostStroke)] : []),
    ];
    const isShort = pointsOf(longest) > longPt;
    return setFigure({
      marks,
      heightPt: pointsOf(tear.most) + 10,
      xPt: Math.max(0, (widthPt - longPt) / 2),
      says: `A strip ${length(tear.usual)} wide at true size, to tear against, with a line at the least and at the most.`,
      caption: {
        words: `For ${edgesWords(matter, edges)}: ${depthWords(matter, tear)}.${isShort ? ' It is shorter than the edge: move it along.' : ''}`,
        widthPt,
        style: styles.small,
        typeface,
      },
      beforePt: 16,
    });
  };
  return pagesOf(torn).flatMap((onPage): readonly Block[] => [
    ...trueSizeHead(matter, {
      heading: 'Tearing templates at true size',
      use: 'Trace a strip onto card and cut it out. Lay it on the piece, flush with the cut edge, mark along its other edge, and tear there against a ruler that lies on the part you keep. Then lay the strip that came off on the drawing here, its cut edge on the lower line: its torn edge should run between the broken and the dotted line.',
    }),
    ...onPage.map(template),
  ]);
}

/** As many templates as go on a page with its own bars, in large print too. */
function pagesOf(torn: readonly TornAlike[]): readonly (readonly TornAlike[])[] {
  const pages: TornAlike[][] = [];
  let leftPt = 0;
  for (const each of torn) {
    const highPt = pointsOf(each.tear.most) + 70;
    if (pages.length === 0 || highPt > leftPt) {
      pages.push([]);
      leftPt = 360;
    }
    pages.at(-1)!.push(each);
    leftPt -= highPt;
  }
  return pages;
}

/** Torn edges of one depth. */
interface TornAlike {
  readonly tear: TearDepth;
  readonly edges: readonly { readonly part: string; readonly edge: Edge }[];
  /** The longest of the edges. */
  readonly longest: Length;
}

function tornAlike({ layout, arrangement }: Matter): readonly TornAlike[] {
  const alike = new Map<string, TornAlike>();
  for (const { part, cut } of arrangement.parts) {
    for (const edge of ['left', 'right', 'top', 'bottom'] as const) {
      const reckoned = part.torn[edge];
      if (reckoned === 0 || cut === null) continue;
      const tear = tearOf(reckoned, part.tear);
      const paper = layout.parts.find(({ id }) => id === part.id)?.papers[0] ?? '';
      const key = `${paper} ${tear.least} ${tear.usual} ${tear.most}`;
      const known = alike.get(key);
      const long = edge === 'left' || edge === 'right' ? cut.height : cut.width;
      alike.set(key, {
        tear,
        edges: [...(known?.edges ?? []), { part: part.id, edge }],
        longest: lengthOfTicks(Math.max(known?.longest ?? 0, long)),
      });
    }
  }
  return [...alike.values()];
}

/** `the torn bottom of B Leaf and the torn top of C Stripe` */
function edgesWords({ layout }: Matter, edges: TornAlike['edges']): string {
  return listed(
    edges.map(
      ({ part, edge }) =>
        `the torn ${edge} of ${letterFor(layout, part)} ${layout.parts.find(({ id }) => id === part)!.name}`,
    ),
  );
}

/** `5 mm at the least, 8 mm as a rule, 11 mm at the most` */
function depthWords({ showing }: Matter, { least, usual, most }: TearDepth): string {
  const length = lengthIn(showing);
  if (least === most) return `${length(usual)} deep, always`;
  return `${length(least)} at the least, ${length(usual)} as a rule, ${length(most)} at the most`;
}
