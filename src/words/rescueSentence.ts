import type { Layout } from '../layout/index.ts';
import { showSize } from '../measure/index.ts';
import type { RecutShort, Rescue, TableNow } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import { capital, counted, listed } from './count.ts';
import { partName } from './partName.ts';
import { happened } from './recutSentence.ts';
import type { Showing } from './showing.ts';
import { changeWords, effectSentences, isBorder } from './sizeChange.ts';

/** Why the table does not give what is still needed, and what can be done instead, a sentence for each. */
export function rescueSentences(
  short: RecutShort,
  of: { readonly layout: Layout; readonly table: TableNow },
  showing: Showing,
): readonly string[] {
  return [
    ...wantingSentences(short, of, showing),
    'What can be done instead:',
    ...short.rescues.map((rescue) => `- ${rescueSentence(rescue, of.layout, showing)}`),
  ];
}

/** One way out, in a sentence: `Make 11 cards, 1 fewer: the table gives them; it gives no more.` */
export function rescueSentence(rescue: Rescue, layout: Layout, showing: Showing): string {
  return rescueWords[rescue.kind](rescue as never, { layout, showing });
}

/** Why the table does not give what is still needed, paper by paper. */
export function wantingSentences(
  { papers }: RecutShort,
  { layout, table }: { readonly layout: Layout; readonly table: TableNow },
  showing: Showing,
): readonly string[] {
  return papers.flatMap(({ paper: id, missing, proved }) => {
    const paper = layout.papers.get(id);
    assert(paper !== undefined, 'A paper that is short is a paper of the layout', { id });
    const said = happened(paper, { layout, table }, showing);
    const wanting = [...missing].map(([piece, count]) => {
      const { pieces } = table.inHand.plan;
      return `${counted(count, 'piece')} for ${partName(layout, pieces.find((one) => one.id === piece)?.part ?? piece)}`;
    });
    const sure = proved ? 'that is proved' : 'that there is no way is not proved';
    return [
      ...(said.length > 0 ? [`${paper.name}: ${said.join('; ')}.`] : []),
      `What lies there of ${nameOf(layout, id)} and the sheets that are whole do not give what is still needed: ${listed(wanting)} would be wanting; ${sure}.`,
    ];
  });
}

interface Told {
  readonly layout: Layout;
  readonly showing: Showing;
}

const rescueWords: {
  readonly [Kind in Rescue['kind']]: (rescue: Extract<Rescue, { kind: Kind }>, told: Told) => string;
} = {
  'no spares': ({ papers }, { layout }) =>
    `Make no spares of ${listed(papers.map((id) => nameOf(layout, id)))}: the set comes out without them.`,
  'other sizes': ({ changes, effect, recut }, { layout, showing }) => {
    const sizes = changes.filter(({ name }) => !isBorder(name));
    const words = (sizes.length > 0 ? sizes : changes).map((change) => changeWords(change, layout, showing));
    const trimmed = recut.plan.steps.some(({ take }) =>
      take.some((id) => recut.onTable.lying.some((thing) => thing.id === id)),
    );
    return [
      `${capital(listed(words))} for all cards: the set comes out${trimmed ? ', what is cut already trimmed down' : ''}.`,
      ...effectSentences(effect, sizes, layout, showing),
    ].join(' ');
  },
  'more sheets': ({ sheets }, { layout, showing }) => {
    const more = sheets.map(({ paper, stock, count }) => {
      const size = layout.papers.get(paper)!.sheets[stock]!.size;
      return `${count} more ${count === 1 ? 'sheet' : 'sheets'} of ${nameOf(layout, paper)} (${showSize(size, showing.units, showing.glyphs)})`;
    });
    const several = sheets.some(({ count }) => count > 1);
    const proved = sheets.every((sheet) => sheet.proved);
    const sure = proved
      ? several
        ? '; with fewer it does not'
        : ''
      : '; whether fewer would do is not proved';
    return `With ${listed(more)} the set comes out${sure}.`;
  },
  'fewer cards': ({ cards, proved, spares }, { layout }) => {
    const without = spares || layoutHasNoSpares(layout) ? '' : ' without spares';
    if (cards === 0)
      return proved
        ? `The table gives not even one card${without}.`
        : `No way was found to make even one card${without}; that there is none is not proved.`;
    const fewer = layout.cards - cards;
    const sure = proved ? 'it gives no more' : 'whether it gives more is not proved';
    return `Make ${counted(cards, 'card')}${without}, ${fewer} fewer: the table gives them; ${sure}.`;
  },
};

function layoutHasNoSpares({ base, parts }: Layout): boolean {
  return base.spare === 0 && parts.every(({ spare }) => spare === 0);
}

function nameOf(layout: Layout, id: string): string {
  const paper = layout.papers.get(id);
  assert(paper !== undefined, 'A paper that is short is a paper of the layout', { id });
  return paper.name;
}
