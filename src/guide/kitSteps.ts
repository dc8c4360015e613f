import {
  type Block,
  besideOf,
  groupOf,
  largePrintPt,
  type PageFormat,
  type Row,
  setParagraph,
  stackOf,
  type TextStyle,
} from '../drawing/index.ts';
import { assemblyOf, bordersShown, holdingOf, shownOn } from '../finished/index.ts';
import { layoutName } from '../kits/index.ts';
import { arrange, type KitLayout } from '../layout/index.ts';
import { type Length, pointsOf } from '../measure/index.ts';
import { assemblyWords, bordersSentence, listed, partName, scoringWords, standing } from '../words/index.ts';
import { assemblyPlates } from './assemblyPlate.ts';
import { frontFigure } from './frontFigure.ts';
import { heading } from './heading.ts';
import { lengthIn, letterFor, type Matter, sizeIn } from './matter.ts';

/**
 * A page for whoever makes the cards of one layout: the finished front with what to look for beside it, then every step
 * drawn and said, in two columns. The pictures become smaller until all of it is on one page; in large print, and where
 * steps are many, it may take more.
 */
export function kitStepsPage(matter: Matter, one: KitLayout, format: PageFormat): readonly Block[] {
  const { layout } = one;
  const own: Matter = { ...matter, layout, arrangement: arrange(layout) };
  const roomPt = format.heightPt - format.marginPt.top - format.marginPt.bottom;
  const head = heading(own, layoutName(one));
  let made: readonly Block[] = [];
  for (const { scale, platePt } of sizes) {
    made = [{ ...head, newPage: true }, ...finished(own, scale), ...steps(own, platePt)];
    // Who asks for large print cannot read small pictures: they take the pages they need.
    if (stackOf(made).heightPt <= roomPt || own.styles.body.sizePt >= largePrintPt) break;
  }
  return made;
}

/** From the size that is best to see to the least that can be. */
const sizes = [
  { scale: 0.5, platePt: 96 },
  { scale: 0.45, platePt: 80 },
  { scale: 0.4, platePt: 66 },
  { scale: 0.36, platePt: 54 },
  { scale: 0.3, platePt: 46 },
] as const;

/** The front when it is done, and what to look for. */
function finished(matter: Matter, scale: number): readonly Block[] {
  const { layout, arrangement, styles, typeface, widthPt, showing } = matter;
  const fits = Math.min(scale, (widthPt * 0.42) / pointsOf(arrangement.card.width));
  const figure = frontFigure(matter, { card: 0, scale: fits, lettered: true });
  const textPt = widthPt - figure.widthPt - 18;
  const parts = layout.parts.map((part) => `${letterFor(layout, part.id)} ${part.name}`);
  const paragraph = (topic: string, words: string, style: TextStyle): Block =>
    setParagraph({
      words: [...(topic === '' ? [] : [{ text: `${topic} `, weight: 'semibold' as const }]), { text: words }],
      widthPt: textPt,
      style,
      typeface,
      beforePt: 3,
    });
  const scored = layout.base.papers.length === 0 ? null : scoringWords(layout, 1, showing);
  const words = stackOf([
    paragraph('When it is done:', `${sizeIn(showing)(arrangement.card)}. ${parts.join(', ')}.`, styles.body),
    ...(scored === null ? [] : [paragraph('First:', scored.says, styles.body)]),
    ...lookFor(matter).map((sentence, index) =>
      paragraph(index === 0 ? 'Look for:' : '', sentence, styles.body),
    ),
  ]);
  const picture: Row = {
    heightPt: figure.heightPt,
    marks: [
      groupOf(
        {
          role: 'figure',
          says: `The finished front of ${layout.title}, with ${parts.join(', ')}.`,
          content: [],
        },
        figure.marks,
      ),
    ],
  };
  return [
    {
      content: [
        besideOf([
          { xPt: 0, row: words },
          { xPt: textPt + 18, row: picture },
        ]),
      ],
      beforePt: 4,
      afterPt: 8,
    },
  ];
}

/** What tells a card that is right: its even borders, what lies flush, and how its prints stand. */
function lookFor({ layout, arrangement, showing }: Matter): readonly string[] {
  const borders = bordersShown(arrangement, shownOn(layout, arrangement, 0));
  const even = new Map<Length, string[]>();
  const flush: string[] = [];
  for (const one of borders) {
    const edges = Object.values(one.edges);
    const [first] = edges;
    if (first !== undefined && first.breadth > 0 && edges.every(({ breadth }) => breadth === first.breadth)) {
      const name = partName(layout, one.part);
      const names = even.get(first.breadth) ?? [];
      if (!names.includes(name)) even.set(first.breadth, [...names, name]);
    } else if (edges.some(({ breadth }) => breadth === 0))
      flush.push(bordersSentence(one, layout, showing) ?? '');
  }
  const used = new Set([layout.base, ...layout.parts].flatMap(({ papers }) => papers));
  const prints = [...layout.papers.values()].filter(({ id, up }) => used.has(id) && up !== 'any');
  return [
    ...[...even].map(
      ([breadth, names]) => `An even ${lengthIn(showing)(breadth)} all round ${listed(names)}.`,
    ),
    ...new Set(flush.filter((sentence) => sentence !== '')),
    ...prints.map(({ name, up }) => `${name} ${standing(up)}.`),
  ];
}

const gutterPt = 20;

/** Every step, its plate over its words, two beside each other. */
function steps(matter: Matter, platePt: number): readonly Block[] {
  const { layout, arrangement, styles, typeface, widthPt, showing } = matter;
  const columnPt = (widthPt - gutterPt) / 2;
  const plates = assemblyPlates({
    layout,
    arrangement,
    card: 0,
    assembly: assemblyOf(layout, arrangement),
    holding: holdingOf(layout, arrangement),
    room: { widthPt: columnPt * 0.85, heightPt: platePt },
  });
  const cells = assemblyWords(layout, arrangement, showing).map(
    ({ part, name, first, prepare, lay, step }): Row => {
      const plate = plates.find((each) => each.step.part === part);
      const said = stackOf([
        setParagraph({
          words: [
            { text: `${step.number}. ${letterFor(layout, part)} ${name}. `, weight: 'semibold' },
            { text: [first, prepare, lay].filter((sentence) => sentence !== '').join(' ') },
          ],
          widthPt: columnPt,
          style: styles.small,
          typeface,
        }),
      ]);
      const figure: Row =
        plate === undefined
          ? { heightPt: 0, marks: [] }
          : {
              heightPt: plate.heightPt + 3,
              marks: [groupOf({ role: 'figure', says: plate.says, content: [] }, plate.marks)],
            };
      return {
        heightPt: figure.heightPt + said.heightPt,
        marks: [
          { kind: 'group', marks: figure.marks, move: { xPt: 0, yPt: 0 } },
          { kind: 'group', marks: said.marks, move: { xPt: 0, yPt: figure.heightPt } },
        ],
      };
    },
  );
  return Array.from({ length: Math.ceil(cells.length / 2) }, (_, row): Block => {
    const pair = cells.slice(row * 2, row * 2 + 2);
    return {
      together: true,
      beforePt: 9,
      content: [besideOf(pair.map((cell, column) => ({ xPt: column * (columnPt + gutterPt), row: cell })))],
    };
  });
}
