import { changedFile, type SavedLayout, writeLayoutFile } from '../../../src/files/index.ts';
import { type Layout, type RoomName, roomNames, roomNamesOf, withRoom } from '../../../src/layout/index.ts';
import { readLength } from '../../../src/measure/index.ts';
import { planRecord, type Suited, type SuitedSizes, suitedSet } from '../../../src/planning/index.ts';
import { assert } from '../../../src/problem/index.ts';
import {
  planSentence,
  roomRefusal,
  type Showing,
  suitSentences,
  whyNotALength,
} from '../../../src/words/index.ts';
import { openLayoutFile, openPile, openSet, openTrimmer } from '../opening.ts';
import { cannot, done, type Outcome, wrongUsage } from '../outcome.ts';
import type { World } from '../world.ts';
import { wrapped } from '../wrapped.ts';

export interface SuitOptions {
  readonly cards?: string;
  readonly room?: readonly string[];
  readonly output?: string;
  readonly trimmer?: string;
  readonly json?: boolean;
}

/** `cardwright suit`: sizes within their room that make the cards from the sheets on hand, written as a new layout. */
export async function suit(file: string, options: SuitOptions, world: World): Promise<Outcome> {
  const opened = await openLayoutFile(file, world);
  const trimmer = await openTrimmer(options.trimmer, world);
  if ('problems' in opened || 'problems' in trimmer) return cannot;
  const asked = cardsOf(options.cards, opened.value.layout);
  const layout = (options.room ?? []).reduce<Layout | string>(
    (drawn, text) => (typeof drawn === 'string' ? drawn : roomed(drawn, text)),
    opened.value.layout,
  );
  if (asked === null || typeof layout === 'string') {
    world.err(
      `${typeof layout === 'string' ? layout : `--cards is a number from 1 to 100000, not “${options.cards}”.`}\n`,
    );
    return wrongUsage;
  }
  const arrangement = openPile(layout, world);
  if (arrangement === null) return cannot;
  const set = await openSet({ layout, arrangement, trimmer: trimmer.value }, world);
  const suited = suitedSet(set, asked);
  const showing: Showing = { units: layout.units, glyphs: 'typed' };
  const sentences = suitSentences(suited, layout, asked, showing);
  if (suited.kind !== 'suited' || suited.cards === 0) {
    world.err(`${sentences.join('\n')}\n`);
    return cannot;
  }
  if (options.output !== undefined) {
    await world.write(options.output, textOf(opened.value.file, suited), { not: [file, options.trimmer] });
  }
  const said = options.output === '-' ? world.err : world.out;
  said(
    options.json
      ? `${JSON.stringify(recordOf(suited, asked, sentences), null, 2)}\n`
      : `${[...sentences, '', ...sheetsOf(suited)].flatMap((line) => wrapped(line)).join('\n')}\n`,
  );
  if (options.output !== undefined && options.output !== '-') world.err(`Wrote ${options.output}.\n`);
  return suited.cards === asked ? done : cannot;
}

function cardsOf(text: string | undefined, layout: Layout): number | null {
  if (text === undefined) return layout.cards;
  const cards = Number(text);
  return Number.isInteger(cards) && cards >= 1 && cards <= 100_000 ? cards : null;
}

/** The layout with the room that a text asks for, `panel width 2 in to 2 1/2 in`; or what is wrong with the text. */
function roomed(layout: Layout, text: string): Layout | string {
  const [, part, name, from, to] = /^\s*(\S+)\s+(\S+)\s+(.+?)\s+to\s+(.+?)\s*$/.exec(text) ?? [];
  if (part === undefined || name === undefined || from === undefined || to === undefined) {
    return `“${text}” is no room. Write a part, a length and from where to where, like “panel width 2 in to 2 1/2 in”.`;
  }
  const refusal = roomRefusal({ part, name }, roomNamesOf(layout, part), layout);
  if (refusal !== null) return refusal;
  const ends = [from, to].map((end) => readLength(end, layout.units));
  for (const [index, end] of ends.entries()) if (!end.ok) return whyNotALength(end, index === 0 ? from : to);
  const [least, most] = ends.map((end) => (end.ok ? end.length : null));
  assert(isRoomName(name) && least != null && most != null, 'A room that can be read has its ends');
  return least > most
    ? `“${text}”: ${from} is more than ${to}.`
    : withRoom(layout, part, name, { least, most });
}

function isRoomName(name: string): name is RoomName {
  return roomNames.some((one) => one === name);
}

/** The file with the sizes that suit, and with as many cards as come out. */
function textOf(file: SavedLayout, { cards, changes }: SuitedSizes): string {
  const changed = changedFile(file, { cards, lengths: new Map(changes.map(({ path, to }) => [path, to])) });
  assert('file' in changed, 'A layout with sizes that suit is a layout', changed);
  return writeLayoutFile(changed.file);
}

/** What `suit --json` writes; lengths in ticks. */
function recordOf(suited: SuitedSizes, asked: number, says: readonly string[]) {
  const { cards, proved, nearest, alike, marks, changes, effect, plan } = suited;
  return {
    cards,
    asked,
    proved,
    nearest,
    alike,
    marks,
    changes,
    effect,
    plan: plan && planRecord(plan),
    says,
  };
}

function sheetsOf({ plan, set }: Extract<Suited, { kind: 'suited' }>): readonly string[] {
  if (plan === null) return [];
  return [...plan.papers.keys()].map((id) => planSentence(set.layout.papers.get(id)!, plan));
}
