import { svgOf, type Typeface } from '../../../src/drawing/index.ts';
import { type Docket, docketOf, usualRisk } from '../../../src/finished/index.ts';
import { timeChart } from '../../../src/guide/index.ts';
import type { Layout } from '../../../src/layout/index.ts';
import { usualMarks } from '../../../src/planning/index.ts';
import { type DocketMatter, docketSentences, timeMatter, typedTimeChart } from '../../../src/words/index.ts';
import { openFonts } from '../fonts.ts';
import { openLayout, openPile, openPost, openTrimmer } from '../opening.ts';
import { cannot, done, type Outcome } from '../outcome.ts';
import type { World } from '../world.ts';
import { wrapped } from '../wrapped.ts';

export interface DocketOptions {
  readonly trimmer?: string;
  /** From 0 to 1, both left out. */
  readonly risk?: number;
  /** A file with the person's own table of a post. */
  readonly post?: string;
  /** Where the time of the set is drawn to, as SVG. */
  readonly timeChart?: string;
  readonly json?: boolean;
}

/** `cardwright docket`: the report on one set, what its cards will be like once they are made. */
export async function docket(file: string, options: DocketOptions, world: World): Promise<Outcome> {
  const opened = await openLayout(file, world);
  const trimmer = await openTrimmer(options.trimmer, world);
  const post = await openPost(options.post, world);
  if ('problems' in opened || 'problems' in trimmer || 'problems' in post) return cannot;
  const layout = opened.value;
  const arrangement = openPile(layout, world);
  if (arrangement === null) return cannot;
  const found = docketOf(layout, arrangement, {
    marks: trimmer.value?.marks ?? usualMarks(layout),
    wanted: options.risk ?? usualRisk,
    ...(post.value === null ? {} : { tables: [post.value] }),
  });
  const matter = timeMatter(found.time, found.assembly, layout);
  const { rows } = matter;
  const matters = [...docketSentences(found, layout, { units: layout.units, glyphs: 'typed' }), matter];
  if (options.timeChart !== undefined) {
    const typeface = await openTypeface(world);
    const page = timeChart(rows, { widthPt: 500, sizePt: 10, typeface });
    const title = `${titleOf(layout)}: ${rows.caption}`;
    await world.write(options.timeChart, svgOf(page, { units: layout.units, title }), { not: [file] });
    if (options.timeChart === '-') return done;
    world.err(`Wrote ${options.timeChart}.\n`);
  }
  world.out(
    options.json
      ? `${JSON.stringify(recordOf(found, layout, matters), null, 2)}\n`
      : `${[...textOf(layout, matters), '', ...typedTimeChart(rows).map((line) => `  ${line}`)].join('\n')}\n`,
  );
  return done;
}

function textOf(layout: Layout, matters: readonly DocketMatter[]): readonly string[] {
  return [
    ...wrapped(`${titleOf(layout)}: ${layout.cards} ${layout.cards === 1 ? 'card' : 'cards'}`),
    ...matters.flatMap(({ heading, says }) => ['', heading, ...says.flatMap((line) => wrapped(`  ${line}`))]),
  ];
}

function titleOf({ title }: Layout): string {
  return title === '' ? 'This set' : title;
}

async function openTypeface(world: World): Promise<Typeface> {
  const { typefaceOf } = await import('../../../src/printing/index.ts');
  return typefaceOf(await openFonts(world));
}

/** What `docket --json` writes, described in docs/docket-json.md. */
function recordOf(found: Docket, layout: Layout, matters: readonly DocketMatter[]): unknown {
  const { borders, gaps, papers, folding, tears, ribbons, assembly, holding, closed, time, postings } = found;
  const { section, weight } = closed;
  return {
    cardwright_docket: 1,
    cards: layout.cards,
    borders,
    gaps,
    papers,
    fold: folding,
    tears,
    assembly,
    holding: {
      parts: holding.parts.map(({ adhesive, pieces, ...part }) => ({
        ...part,
        kind: adhesive.kind,
        // Where it may lie is what it was found by; what is laid is the answer.
        pieces: pieces.map(({ room: _, ...piece }) => piece),
      })),
      needs: holding.needs,
    },
    ribbons,
    section: {
      card: closed.thickestCard + 1,
      thickest: section.thickest,
      thinnest: section.thinnest,
      levels: section.levels,
      evenness: section.evenness,
      round: section.round,
    },
    weight: { card: closed.heaviestCard + 1, ...weight, set: closed.setGrams },
    time,
    postings: postings.map(({ table, envelope, piece, posted, rigid, changes }) => ({
      post: table.id,
      asOf: table.asOf,
      envelope,
      piece,
      as: posted.as?.name ?? null,
      not: posted.not.map(({ class: one, faults }) => ({ class: one.name, faults })),
      rigid,
      changes: changes.map(({ as, ...change }) => ({ as: as.name, ...change })),
    })),
    // What is drawn is in `time`.
    says: matters.map(({ heading, says }) => ({ heading, says })),
  };
}
