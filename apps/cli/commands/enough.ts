import type { Layout } from '../../../src/layout/index.ts';
import {
  type Cliff,
  cliffsOf,
  type Enough,
  enoughFor,
  planSet,
  type Shortage,
  type StandIn,
  standInsFor,
} from '../../../src/planning/index.ts';
import {
  cliffSentence,
  counted,
  enoughSentences,
  moreSheetsSentences,
  type Showing,
  standInSentences,
} from '../../../src/words/index.ts';
import { openLayout, openPile, openSet, openTrimmer } from '../opening.ts';
import { cannot, done, type Outcome } from '../outcome.ts';
import type { World } from '../world.ts';
import { wrapped } from '../wrapped.ts';

export interface EnoughOptions {
  readonly trimmer?: string;
  readonly json?: boolean;
}

/** `cardwright enough`: the largest set these papers allow, and the small changes of size that gain from them. */
export async function enough(file: string, options: EnoughOptions, world: World): Promise<Outcome> {
  const opened = await openLayout(file, world);
  const trimmer = await openTrimmer(options.trimmer, world);
  if ('problems' in opened || 'problems' in trimmer) return cannot;
  const layout = opened.value;
  const arrangement = openPile(layout, world);
  if (arrangement === null) return cannot;
  const set = await openSet({ layout, arrangement, trimmer: trimmer.value }, world);
  const found = enoughFor(set);
  const cliffs = cliffsOf(set, found);
  const answer = found.cards !== null && found.cards < layout.cards ? planSet(set) : null;
  const short = answer?.kind === 'short' ? answer : null;
  const showing: Showing = { units: layout.units, glyphs: 'typed' };
  const standIns = short === null ? [] : standInsFor(set, short);
  const told = { layout, found, cliffs, short, standIns };
  world.out(
    options.json
      ? `${JSON.stringify(recordOf(told, showing), null, 2)}\n`
      : `${textOf(told, showing)
          .flatMap((line) => wrapped(line))
          .join('\n')}\n`,
  );
  return done;
}

interface Told {
  readonly layout: Layout;
  readonly found: Enough;
  readonly cliffs: readonly Cliff[];
  /** What is short for the cards that the layout asks for; `null`: nothing. */
  readonly short: Shortage | null;
  /** Other papers that could give what is wanting then. */
  readonly standIns: readonly StandIn[];
}

/** What `enough --json` writes; lengths in ticks. */
function recordOf({ layout, found, cliffs, short, standIns }: Told, showing: Showing) {
  const { cards, proved, limit, papers } = found;
  return {
    cards,
    proved,
    limit,
    papers: Object.fromEntries(papers),
    asked: layout.cards,
    moreSheets: (short?.papers ?? []).flatMap(({ paper, moreSheets }) =>
      moreSheets.map((more) => ({ paper, ...more })),
    ),
    standIns: standIns.map(({ pieces, ...standIn }) => ({ ...standIn, pieces: Object.fromEntries(pieces) })),
    cliffs: cliffs.map((cliff) => ({ ...cliff, says: cliffSentence(cliff, layout, showing) })),
  };
}

/** Small changes that only give a sheet one piece more are many: so many of them are written out. */
const mostPieceCliffs = 3;

function textOf({ layout, found, cliffs, short, standIns }: Told, showing: Showing): readonly string[] {
  const lines = [...(layout.title === '' ? [] : [layout.title, '']), ...enoughSentences(found, layout)];
  if (short !== null) lines.push(...moreSheetsSentences(short, layout, showing));
  lines.push(...standInSentences(standIns, layout));
  const saving = cliffs.filter(({ gains }) => gains.some(({ kind }) => kind !== 'piece'));
  const pieceOnly = cliffs.filter((cliff) => !saving.includes(cliff));
  const shown = [...saving, ...pieceOnly.slice(0, mostPieceCliffs)];
  if (shown.length === 0) {
    return [...lines, '', 'No small change of a size, border or gap would gain anything from these papers.'];
  }
  lines.push('', 'What a small change would gain:');
  lines.push(...shown.map((cliff) => `  ${cliffSentence(cliff, layout, showing)}`));
  const more = cliffs.length - shown.length;
  if (more > 0)
    lines.push(
      `  ${counted(more, 'change')} more would only give a sheet more of a piece (--json names them).`,
    );
  return lines;
}
