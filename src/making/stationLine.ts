/** One task that every card goes through on a line of stations, in the order of the list. Times in whole seconds. */
export interface LineTask {
  readonly id: string;
  /** For one card. */
  readonly seconds: number;
  /** How long what it has put on a card has to set before the work can be turned over; 0: no time. */
  readonly sets: number;
  /** The tasks before it, by their places in the list, that have to have set before it begins with the card. */
  readonly waitsFor: readonly number[];
}

/** A station does the tasks from `from` up to but not with `to`; its helpers each take the next card that comes. */
export interface Station {
  readonly from: number;
  readonly to: number;
  readonly helpers: number;
}

/** What is at hand for a line. */
export interface LineAsks {
  readonly cards: number;
  readonly helpers: number;
  /** At most one for each helper and for each task. */
  readonly stations: number;
  /** How many cards there is room for where cards lie to dry, at each such place; `null`: as many as come. */
  readonly room: number | null;
}

/** How a set goes through its stations. By station, then by card: when a helper takes it up, and when it leaves her. */
export interface LineTimes {
  readonly starts: readonly (readonly number[])[];
  readonly ends: readonly (readonly number[])[];
  readonly finish: number;
  /** Where cards lie to dry: in front of this station; how many at once at most, and from when on so many. */
  readonly lying: readonly { readonly station: number; readonly most: number; readonly at: number }[];
  /** How long each station has a card in hand, for one helper and one card; waiting over its own glue counted. */
  readonly spans: readonly number[];
}

/** The best way to share a line out. */
export interface Line {
  readonly stations: readonly Station[];
  readonly finish: number;
  /** No sharing of the tasks over so many stations ends sooner than this. */
  readonly bound: number;
  readonly isProved: boolean;
}

/**
 * How so many alike cards go through these stations, card by card: exact for the times given. Cards keep their order. A
 * helper takes a card up when she is free, when it has come, and when all has set that its tasks here wait for; where a
 * station has to wait for glue of its own, its helper waits with the card. Where there is no room left for cards to dry,
 * the helper before holds hers until there is.
 */
export function lineTimes(
  tasks: readonly LineTask[],
  stations: readonly Station[],
  { cards, room }: Pick<LineAsks, 'cards' | 'room'>,
): LineTimes {
  const bodies = stations.map((station) => bodyOf(tasks, station));
  const starts: number[][] = stations.map(() => []);
  const ends: number[][] = stations.map(() => []);
  for (let card = 0; card < cards; card += 1) {
    bodies.forEach(({ span, lags }, at) => {
      const came = at === 0 ? 0 : ends[at - 1]![card]!;
      const free = ends[at]![card - stations[at]!.helpers] ?? 0;
      const set = lags.map(({ after, own, seconds }) => {
        const there = stations.findIndex(({ to }) => after < to);
        return starts[there]![card]! + bodies[there]!.ends.get(after)! + seconds - own;
      });
      const start = Math.max(came, free, ...set);
      const liesNext = (bodies[at + 1]?.lags.length ?? 0) > 0;
      // The card that has to be taken up before this one finds room.
      const before = room === null || !liesNext ? undefined : starts[at + 1]![card - room];
      starts[at]!.push(start);
      ends[at]!.push(Math.max(start + span, before ?? 0));
    });
  }
  return {
    starts,
    ends,
    finish: ends.at(-1)?.at(-1) ?? 0,
    lying: bodies.flatMap(({ lags }, station) =>
      lags.length === 0 ? [] : [{ station, ...mostLying(ends[station - 1]!, starts[station]!) }],
    ),
    spans: bodies.map(({ span }) => span),
  };
}

/**
 * The sharing of tasks and helpers that ends soonest, of all in which each station does tasks that follow one another:
 * branch and bound, where a station that the others cannot outrun bounds the whole. When so much work was not enough,
 * it says so; the bound then holds for every sharing.
 */
export function bestLine(
  tasks: readonly LineTask[],
  asks: LineAsks,
  { mostNodes, mostCards }: { readonly mostNodes: number; readonly mostCards: number } = usualEffort,
): Line {
  const { cards, helpers } = asks;
  const count = Math.max(1, Math.min(asks.stations, helpers, tasks.length));
  const work = workAfter(tasks);
  let best = evenLine(tasks, count, helpers);
  let finish = lineTimes(tasks, best, asks).finish;
  let nodes = 0;
  let moved = 0;
  let isCut = false;

  const share = (chosen: readonly Station[], head: number, bound: number): void => {
    nodes += 1;
    if (nodes > mostNodes) isCut = true;
    if (isCut) return;
    const from = chosen.at(-1)?.to ?? 0;
    const left = count - chosen.length;
    const free = helpers - chosen.reduce((sum, station) => sum + station.helpers, 0);
    if (left === 0) {
      if (bound >= finish) return;
      moved += cards * count;
      if (moved > mostCards) {
        isCut = true;
        return;
      }
      const ends = lineTimes(tasks, chosen, asks).finish;
      if (ends < finish) {
        finish = ends;
        best = chosen;
      }
      return;
    }
    // What the stations that are left cannot do sooner, however they share it.
    const rest = work[from]!;
    const slowest = Math.max(0, ((cards - (free - left + 1)) * rest) / free);
    if (Math.max(bound, head + rest + slowest) >= finish) return;
    for (let to = left === 1 ? tasks.length : from + 1; to <= tasks.length - left + 1; to += 1) {
      for (let those = left === 1 ? free : 1; those <= free - left + 1; those += 1) {
        const station = { from, to, helpers: those };
        const { span } = bodyOf(tasks, station);
        const again = Math.floor((cards - 1) / those) * span;
        const its = head + again + span + work[to]!;
        if (Math.max(bound, its) < finish) share([...chosen, station], head + span, Math.max(bound, its));
      }
    }
  };
  share([], 0, 0);

  const bound = isCut ? Math.min(finish, boundOf(tasks, { ...asks, stations: count })) : finish;
  return { stations: best, finish, bound, isProved: bound === finish };
}

const usualEffort = { mostNodes: 400_000, mostCards: 6_000_000 };

/**
 * What no sharing beats: the first card takes all the work, the slowest station takes no less for a card than the work
 * shared out evenly, and none has more helpers than the others leave over.
 */
function boundOf(tasks: readonly LineTask[], { cards, helpers, stations }: LineAsks): number {
  const all = tasks.reduce((sum, { seconds }) => sum + seconds, 0);
  const most = helpers - stations + 1;
  const longest = Math.max(0, ...tasks.map(({ seconds }) => seconds));
  return Math.ceil(
    all + Math.max(0, ((cards - most) * all) / helpers, Math.floor((cards - 1) / most) * longest),
  );
}

interface Body {
  /** How long a card is in hand. */
  readonly span: number;
  /** When each of its tasks ends, from when the card is taken up. */
  readonly ends: ReadonlyMap<number, number>;
  /** Tasks of earlier stations that have to have set so long when its own work has gone on for `own`. */
  readonly lags: readonly { readonly after: number; readonly own: number; readonly seconds: number }[];
}

function bodyOf(tasks: readonly LineTask[], { from, to }: Pick<Station, 'from' | 'to'>): Body {
  const ends = new Map<number, number>();
  const lags: { after: number; own: number; seconds: number }[] = [];
  let span = 0;
  for (let at = from; at < to; at += 1) {
    const { seconds, waitsFor } = tasks[at]!;
    for (const after of waitsFor) {
      const end = ends.get(after);
      if (end !== undefined) span = Math.max(span, end + tasks[after]!.sets);
    }
    for (const after of waitsFor)
      if (after < from) lags.push({ after, own: span, seconds: tasks[after]!.sets });
    span += seconds;
    ends.set(at, span);
  }
  return { span, ends, lags };
}

/** The work of the tasks from each on. */
function workAfter(tasks: readonly LineTask[]): readonly number[] {
  const work = [0];
  for (const { seconds } of tasks.toReversed()) work.unshift(work[0]! + seconds);
  return work;
}

/** The sharing whose slowest station is the least slow, so that there is something good to beat. */
function evenLine(tasks: readonly LineTask[], count: number, helpers: number): readonly Station[] {
  interface Way {
    readonly slowest: number;
    readonly stations: readonly Station[];
  }
  // By how many tasks and helpers the stations so far have taken.
  let ways = new Map<string, Way>([['0 0', { slowest: 0, stations: [] }]]);
  for (let at = 0; at < count; at += 1) {
    const next = new Map<string, Way>();
    const after = count - at - 1;
    for (const { slowest, stations } of ways.values()) {
      const from = stations.at(-1)?.to ?? 0;
      const free = helpers - stations.reduce((sum, each) => sum + each.helpers, 0);
      for (let to = after === 0 ? tasks.length : from + 1; to <= tasks.length - after; to += 1) {
        const { span } = bodyOf(tasks, { from, to });
        for (let those = after === 0 ? free : 1; those <= free - after; those += 1) {
          const way = {
            slowest: Math.max(slowest, span / those),
            stations: [...stations, { from, to, helpers: those }],
          };
          const key = `${to} ${free - those}`;
          const other = next.get(key);
          if (other === undefined || way.slowest < other.slowest) next.set(key, way);
        }
      }
    }
    ways = next;
  }
  return [...ways.values()][0]!.stations;
}

/** How many cards lie between two stations at once at most, and from when on: they come and go in one order. */
function mostLying(
  came: readonly number[],
  gone: readonly number[],
): { readonly most: number; readonly at: number } {
  let most = 0;
  let at = 0;
  let left = 0;
  came.forEach((moment, card) => {
    while (left < gone.length && gone[left]! <= moment) left += 1;
    if (card + 1 - left > most) {
      most = card + 1 - left;
      at = moment;
    }
  });
  return { most, at };
}
