import {
  type Block,
  fineStroke,
  groupOf,
  type Mark,
  type PageFormat,
  type Row,
  setParagraph,
  stackOf,
  type TextStyle,
} from '../drawing/index.ts';
import { type Bag, type KitReport, layoutName } from '../kits/index.ts';
import { counted } from '../words/index.ts';
import { heading } from './heading.ts';
import type { Matter } from './matter.ts';

/** A label for every bag, in large type, in two columns to be cut apart; those of one row are cut by the same lines. */
export function bagLabels(matter: Matter, report: KitReport, format: PageFormat): readonly Block[] {
  const { styles, typeface, widthPt } = matter;
  const labels = report.contents
    .flatMap((bag) => bag.bags.map((number) => ({ number, bag })))
    .sort((a, b) => a.number - b.number)
    .map(({ number, bag }) => labelOf(matter, report, bag, number));
  const columnPt = widthPt / 2;
  const mostPt = format.heightPt - format.marginPt.top - format.marginPt.bottom;
  const highestPt = Math.min(mostPt, Math.max(...labels.map(({ heightPt }) => heightPt)) + 2 * insetPt);
  const rows = Array.from({ length: Math.ceil(labels.length / 2) }, (_, row) =>
    labels.slice(row * 2, row * 2 + 2),
  );
  return [
    { ...heading(matter, 'Labels for the bags'), newPage: true },
    setParagraph({
      words: 'Cut along the fine lines; one label for each bag.',
      widthPt,
      style: styles.body,
      typeface,
      beforePt: 2,
      afterPt: 8,
    }),
    {
      content: rows.map((row): Row => {
        const line = (xPt: number, yPt: number, toXPt: number, toYPt: number): Mark => ({
          kind: 'line',
          from: { xPt, yPt },
          to: { xPt: toXPt, yPt: toYPt },
          stroke: fineStroke,
        });
        const widePt = row.length * columnPt;
        return {
          heightPt: highestPt,
          marks: [
            line(0, 0, widePt, 0),
            line(0, highestPt, widePt, highestPt),
            ...Array.from({ length: row.length + 1 }, (_, edge) =>
              line(edge * columnPt, 0, edge * columnPt, highestPt),
            ),
            ...row.map(
              ({ marks }, column): Mark => ({
                kind: 'group',
                marks,
                move: { xPt: column * columnPt + insetPt, yPt: insetPt },
              }),
            ),
          ],
        };
      }),
    },
  ];
}

/** White inside the cutting lines. */
const insetPt = 12;

function labelOf(matter: Matter, report: KitReport, bag: Bag, number: number): Row {
  const { styles, typeface, widthPt } = matter;
  const { kit, bags } = report;
  const line = (text: string, style: TextStyle, beforePt = 0): Block =>
    setParagraph({ words: text, widthPt: widthPt / 2 - 2 * insetPt, style, typeface, beforePt });
  const large: TextStyle = {
    ...styles.title,
    sizePt: Math.max(26, styles.title.sizePt),
    leadingPt: Math.max(30, styles.title.leadingPt),
  };
  const envelopes = bag.layouts.reduce((sum, { envelopes: each }) => sum + each, 0);
  const block: Block = {
    content: [
      line(`Bag ${number} of ${bags}`, large),
      line(`${whose(number, report)} · ${kit.title}`, { ...styles.body, weight: 'semibold' }),
      ...bag.layouts.map(({ layout, pieces }) =>
        line(
          `${layoutName(layout)}: ${counted(
            pieces.reduce((sum, { count }) => sum + count, 0),
            'piece',
          )}`,
          styles.body,
          2,
        ),
      ),
      line(
        [
          `${counted(bag.pieces, 'piece')} in all`,
          ...(envelopes === 0 ? [] : [counted(envelopes, 'envelope')]),
          ...bag.bought.map(({ name, count }) => `${count} ${name}`),
        ].join('; '),
        styles.body,
        2,
      ),
      ...standsIn(bag, report).map((words) => line(words, { ...styles.body, weight: 'semibold' }, 2)),
    ],
  };
  const set = stackOf([block]);
  return { heightPt: set.heightPt, marks: [groupOf({ content: [] }, set.marks)] };
}

/** Whose bag it is. */
function whose(number: number, { kit: { seats, teacher } }: KitReport): string {
  if (number <= seats) return `Seat ${number}`;
  return number <= seats + teacher ? 'Teacher' : 'Spare';
}

/** What this bag has otherwise than the first: the papers of parts that are not the same. */
function standsIn(bag: Bag, { contents }: KitReport): readonly string[] {
  const first = contents[0];
  if (first === undefined || first === bag) return [];
  return bag.layouts.flatMap(({ layout, pieces }, at) =>
    pieces
      .filter(
        ({ part, paper, count }) =>
          !first.layouts[at]!.pieces.some(
            (other) => other.part === part && other.paper === paper && other.count === count,
          ),
      )
      .map(({ part, paper }) => {
        const name = layout.layout.parts.find(({ id }) => id === part)?.name ?? 'Base';
        return `${layoutName(layout)}: ${name} of ${layout.layout.papers.get(paper)?.name ?? paper}`;
      }),
  );
}
