import type { Layout } from '../layout/index.ts';
import { type Size, showSize } from '../measure/index.ts';
import type { Lying, PaperRecut, Recut, TableNow } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import type { Paper } from '../stash/index.ts';
import { counted, countedInWords, countWord, listed } from './count.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';

/** A set that was planned again, with the table it was planned from. */
export interface RecutTold {
  /** As its file says it. */
  readonly layout: Layout;
  readonly table: TableNow;
  readonly recut: Recut;
}

/**
 * Where things stand, a sentence for each paper that something happened to, then one for those that go on and one for
 * those that are all cut: `Meadow: 1 piece for Panel is spoiled; it is cut again from the leftover of 3 x 12 in; no new
 * sheet.`
 */
export function recutSentences({ layout, table, recut }: RecutTold, showing: Showing): readonly string[] {
  const changed = [...recut.papers].filter(
    ([id, { way }]) => way === 'again' || table.spoiled.has(id) || table.found.has(id),
  );
  const others = [...recut.papers.keys()].filter((id) => !changed.some(([paper]) => paper === id));
  const steps = new Set(recut.plan.steps.map(({ step }) => table.paperOfStep.get(step)));
  const names = (ids: readonly string[]) => listed(ids.map((id) => paperOf(layout, id).name));
  const going = others.filter((id) => steps.has(id));
  const cut = others.filter((id) => !steps.has(id));
  return [
    ...changed.map(([id, paper]) => {
      const told = paperOf(layout, id);
      const said = happened(told, { layout, table }, showing);
      return `${told.name}: ${[...said, outcome(paper, showing)].join('; ')}.`;
    }),
    ...(going.length > 0 ? [`${names(going)}: ${going.length === 1 ? 'goes' : 'go'} on as planned.`] : []),
    ...(cut.length > 0 ? [`${names(cut)}: all is cut.`] : []),
  ];
}

/** What was spoiled of a paper, what is lost by it, and what was found, as clauses. */
export function happened(
  { id, name }: Paper,
  { layout, table }: Pick<RecutTold, 'layout' | 'table'>,
  showing: Showing,
): readonly string[] {
  const { pieces: planned } = table.inHand.plan;
  const spoiled = table.spoiled.get(id) ?? [];
  const found = table.found.get(id) ?? [];
  const pieces = counts(spoiled.flatMap(({ piece }) => piece ?? []));
  const others = spoiled.filter(({ piece }) => piece === null);
  const part = (piece: string) => partName(layout, planned.find((one) => one.id === piece)?.part ?? piece);
  const lost = [...table.lost].flatMap(([piece, count]) => {
    const own = planned.find((one) => one.id === piece);
    const besides = count - (pieces.get(piece) ?? 0);
    return own?.paper === id && besides > 0 ? [`${besides} for ${part(piece)}`] : [];
  });
  return [
    ...[...pieces].map(
      ([piece, count]) =>
        `${counted(count, 'piece')} for ${part(piece)} ${count === 1 ? 'is' : 'are'} spoiled`,
    ),
    ...others.map(({ size }) => `${shown(size, showing)} of it is spoiled`),
    ...(lost.length > 0 ? [`with that ${listed(lost)} would be wanting`] : []),
    ...(found.length > 0
      ? [`found: ${listed(found.map(({ size }) => shown(size, showing)))} of ${name}`]
      : []),
  ];
}

function outcome({ way, reused, moreSheets }: PaperRecut, showing: Showing): string {
  if (way === 'goes on') return 'there is enough without that, and the plan goes on';
  const from =
    reused.length === 0
      ? 'what is still needed is planned again'
      : `what is still needed is cut from ${listed(reusedWords(reused, showing))}`;
  const sheets =
    moreSheets === 0
      ? 'no new sheet'
      : moreSheets > 0
        ? `${countedInWords(moreSheets, 'new sheet')}`
        : `${countWord(-moreSheets)} ${moreSheets === -1 ? 'sheet' : 'sheets'} fewer than planned`;
  return `${from}; ${sheets}`;
}

/** `the leftover of 3 x 12 in`, `two leftovers of 2 x 5 in`. */
function reusedWords(reused: readonly Lying[], showing: Showing): readonly string[] {
  const kinds = counts(
    reused.map(({ size, from }) => `${from.kind === 'found' ? 'scrap' : 'leftover'} ${shown(size, showing)}`),
  );
  return [...kinds].map(([kind, count]) => {
    const [noun = '', ...size] = kind.split(' ');
    return `${count === 1 ? `the ${noun}` : countedInWords(count, noun)} of ${size.join(' ')}`;
  });
}

function counts(things: readonly string[]): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const thing of things) found.set(thing, (found.get(thing) ?? 0) + 1);
  return found;
}

function shown(size: Size, { units, glyphs }: Showing): string {
  return showSize(size, units, glyphs);
}

function paperOf(layout: Layout, id: string): Paper {
  const paper = layout.papers.get(id);
  assert(paper !== undefined, 'A plan cuts papers of its layout', { id });
  return paper;
}
