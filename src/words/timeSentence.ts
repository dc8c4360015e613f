import type { Assembly, HandsTime, LineTime, PairTime, SetTime } from '../finished/index.ts';
import type { Layout } from '../layout/index.ts';
import { capital, countedInWords, countWord, listed } from './count.ts';
import type { DocketMatter } from './docketSentences.ts';
import { lastsWords, minutesWords } from './minutesWords.ts';
import { partName } from './partName.ts';
import { taskWords } from './taskWords.ts';
import { type TimeRows, timeRows } from './timeRows.ts';

/** The time of a set as a matter of its docket, and what is drawn beside it; apart, for it is much and seldom asked. */
export function timeMatter(
  time: SetTime,
  assembly: Assembly,
  layout: Layout,
): DocketMatter & { readonly rows: TimeRows } {
  return {
    heading: 'Time',
    says: timeSentences(time, assembly, layout),
    rows: timeRows(time, layout),
  };
}

/** How long a set takes: what counts, how it goes, where it waits, when all is dry, and what of that is estimated. */
export function timeSentences(time: SetTime, assembly: Assembly, layout: Layout): readonly string[] {
  const { line, pair, hands } = time;
  return [
    workSentence(time),
    ...(line === null ? handsSentences(hands, time, layout) : lineSentences(line, time, layout)),
    ...(pair === null ? [] : [pairSentence(pair, layout)]),
    ...(time.dry === 0
      ? []
      : [
          `All of it holds ${minutesWords(assembly.dry)} after the last part is on; only then the cards go into their envelopes${time.closing === null ? '' : `, which takes ${lastsWords(time.closing)} more`}.`,
        ]),
  ];
}

function workSentence({ card, work, tasks }: SetTime): string {
  const said = tasks.filter(({ isSaid }) => isSaid).length;
  const from =
    said === 0
      ? 'from usual minutes a piece (common practice, no source)'
      : said === tasks.length
        ? 'from your own minutes a piece'
        : `from minutes a piece, your own for ${countWord(said)} of ${countedInWords(tasks.length, 'task')} and usual ones for the rest`;
  return `About ${lastsWords(card)} of work a card and ${minutesWords(Math.ceil(work / 60))} in all: an estimate, ${from}. Breaks are not counted; what follows from these minutes is exact.`;
}

function handsSentences(hands: HandsTime, { helpers }: SetTime, layout: Layout): readonly string[] {
  const { cards, batch, finish, idle, guided, order, runs, bound, isProved } = hands;
  const who =
    helpers === 1
      ? `One pair of hands, each task for ${batch === null ? `all ${countedInWords(cards, 'card')}` : `${countedInWords(batch, 'card')} at a time`} in a row`
      : `${capital(countedInWords(helpers, 'helper'))}, each making ${countedInWords(cards, 'card')} at most from beginning to end${batch === null ? '' : `, ${countWord(batch)} at a time`}`;
  const wait = idle === 0 ? 'with nothing to wait for' : `${lastsWords(idle)} of it waiting for glue to set`;
  const proof = isProved
    ? 'No order of the tasks is faster.'
    : `Not all orders could be looked through; none is faster than ${lastsWords(bound)}.`;
  const early =
    order === null
      ? ''
      : ` Put the parts on in this order: ${listed(order.map((id) => partName(layout, id)))}.`;
  const slower =
    guided.finish > finish
      ? ` In the order of assembly above, with all the cutting first, it takes ${lastsWords(guided.finish)}${guided.idle === 0 ? '' : `, ${lastsWords(guided.idle)} of it waiting`}.`
      : '';
  return [`${who}: ${lastsWords(finish)}, ${wait}. ${proof}${early}${slower}`, ...meanwhile(runs, layout)];
}

/** What is done while glue sets, for each task that waits. */
function meanwhile(runs: HandsTime['runs'], layout: Layout): readonly string[] {
  return runs.flatMap(({ task, waitsFor, idle }, at) => {
    // What has been waited for once has set.
    const before = new Set(runs.slice(0, at).flatMap((run) => run.waitsFor));
    if (waitsFor.every((id) => before.has(id))) return [];
    const last = Math.max(...waitsFor.map((id) => runs.findIndex((run) => run.task === id)));
    const between = runs.slice(last + 1, at).map((run) => taskWords(run.task, layout));
    const names = listed(waitsFor.map((id) => partName(layout, id.slice('lay '.length))));
    const then = `before ${taskWords(task, layout)}`;
    if (between.length === 0 && idle === 0) return [];
    const filled = between.length === 0 ? '' : ` comes ${listed(between)}`;
    const rest =
      idle === 0 ? '' : `${filled === '' ? ' there are' : ', then'} ${lastsWords(idle)} of waiting`;
    return [`While the glue under ${names} sets,${filled}${rest}, ${then}.`];
  });
}

function lineSentences(line: LineTime, { helpers, hands }: SetTime, layout: Layout): readonly string[] {
  const { stations, finish, bound, isProved, cutting, lying, withRoom } = line;
  const count = stations.length;
  const slowest = stations.reduce(
    (slow, { span, helpers: those }, at) =>
      span / those > stations[slow]!.span / stations[slow]!.helpers ? at : slow,
    0,
  );
  const pace = stations[slowest];
  const proof = isProved
    ? `No other sharing of tasks and helpers over ${countedInWords(count, 'station')} is faster.`
    : `Not every sharing could be looked through; none is faster than ${lastsWords(bound)}.`;
  const perHelper = Math.ceil(cutting / helpers);
  return [
    ...(cutting === 0
      ? []
      : [
          `Before the line begins all is cut: ${lastsWords(cutting)} of one person's work, ${lastsWords(perHelper)} where all ${countWord(helpers)} cut.`,
        ]),
    `${capital(countedInWords(helpers, 'helper'))} at ${countedInWords(count, 'station')}: ${countedInWords(layout.cards, 'card')} in ${lastsWords(finish)}${cutting === 0 ? '' : `, ${lastsWords(finish + perHelper)} with the cutting`}. ${proof}`,
    ...stations.map(
      ({ tasks, helpers: those, span, over }, at) =>
        `Station ${at + 1}, ${countedInWords(those, 'helper')}: ${listed(tasks.map((id) => taskWords(id, layout)))}; ${lastsWords(span)} a card${over === 0 ? '' : `, ${lastsWords(over)} of it waiting over its own glue`}.`,
    ),
    ...(pace === undefined
      ? []
      : [
          `Station ${slowest + 1} sets the pace: a card every ${lastsWords(Math.round(pace.span / pace.helpers))}.`,
        ]),
    ...lying.map(({ station, most, at }) => {
      const room = layout.making?.dryAtOnce ?? null;
      const isFull = room !== null && most >= room;
      return `In front of station ${station + 1} cards lie to dry: ${countedInWords(most, 'card')} at once at most, from ${lastsWords(at)} after the beginning on${isFull ? '; there is no room for more' : ''}.`;
    }),
    ...(withRoom === null
      ? []
      : [`With room for all that dry it would be done ${lastsWords(finish - withRoom)} sooner.`]),
    `Without stations, each making ${countedInWords(hands.cards, 'card')} from beginning to end, it takes ${lastsWords(hands.finish)} with the cutting. That a hand which does one thing only gets quicker at it is not counted.`,
  ];
}

function pairSentence({ times, finish, bound, isProved, idle, cutting }: PairTime, layout: Layout): string {
  const order = listed(times.map(({ part }) => (part === '' ? 'the bases' : partName(layout, part))));
  const proof = isProved
    ? 'no order that both keep is faster'
    : `no order that both keep is faster than ${lastsWords(bound)}`;
  return `Or one makes ready and the other puts on, once all is cut (${lastsWords(Math.ceil(cutting / 2))} for both): ${lastsWords(finish)}, ${idle === 0 ? 'and nobody waits' : `${lastsWords(idle)} of which the other waits`}, in this order: ${order}; ${proof}.`;
}
