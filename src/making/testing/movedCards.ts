/** What a line of stations is asked, told anew here: nothing of the library is used. Whole seconds. */
export interface MovedLine {
  readonly tasks: readonly {
    readonly seconds: number;
    readonly sets: number;
    readonly waitsFor: readonly number[];
  }[];
  readonly stations: readonly { readonly from: number; readonly to: number; readonly helpers: number }[];
  readonly cards: number;
  readonly room: number | null;
}

/**
 * Moves cards through a line second by second, as a person who stands beside it would see it: helpers take up cards,
 * work, wait, hold on; cards lie in heaps. Gives when the last card is done, and the most that lay in front of each station.
 */
export function movedCards({ tasks, stations, cards, room }: MovedLine): {
  readonly finish: number;
  readonly lying: readonly number[];
} {
  /** For each card, when each of its tasks ended. */
  const ended = Array.from({ length: cards }, () => new Map<number, number>());
  const heaps: number[][] = stations.map(() => []);
  heaps[0] = Array.from({ length: cards }, (_, card) => card);
  interface Hand {
    card: number;
    task: number;
    left: number;
    isDone: boolean;
  }
  const hands: (Hand | null)[][] = stations.map(({ helpers }) => Array.from({ length: helpers }, () => null));
  const most = stations.map(() => 0);
  const isDryPlace = stations.map(({ from, to }) =>
    tasks.slice(from, to).some(({ waitsFor }) => waitsFor.some((after) => after < from)),
  );
  const setAt = (card: number, after: number) => {
    const end = ended[card]!.get(after);
    return end === undefined ? Number.POSITIVE_INFINITY : end + tasks[after]!.sets;
  };
  let out = 0;
  for (let now = 0; ; now += 1) {
    // As long as anything can still move at this second, it does: cards go on, helpers take up others.
    for (let isMoving = true; isMoving; ) {
      isMoving = false;
      for (let at = stations.length - 1; at >= 0; at -= 1) {
        const { from, to } = stations[at]!;
        for (const [index, hand] of hands[at]!.entries()) {
          if (hand?.isDone !== true) continue;
          // Cards leave a station in their order.
          if (hands[at]!.some((other) => other !== null && other.card < hand.card)) continue;
          const next = at + 1;
          if (next < stations.length) {
            if (room !== null && isDryPlace[next] && heaps[next]!.length >= room) continue;
            heaps[next]!.push(hand.card);
          } else out += 1;
          hands[at]![index] = null;
          isMoving = true;
        }
        for (const [index, hand] of hands[at]!.entries()) {
          if (hand !== null || heaps[at]!.length === 0) continue;
          const card = heaps[at]![0]!;
          // She takes it up when she can go on with it without waiting for what was glued elsewhere.
          let [clock, mayBegin] = [now, true];
          const own = new Map<number, number>();
          for (let task = from; task < to; task += 1) {
            for (const after of tasks[task]!.waitsFor)
              if (after >= from) clock = Math.max(clock, own.get(after)! + tasks[after]!.sets);
            for (const after of tasks[task]!.waitsFor)
              if (after < from && setAt(card, after) > clock) mayBegin = false;
            clock += tasks[task]!.seconds;
            own.set(task, clock);
          }
          if (!mayBegin) continue;
          heaps[at]!.shift();
          hands[at]![index] = { card, task: from, left: tasks[from]!.seconds, isDone: false };
          isMoving = true;
        }
        for (const hand of hands[at]!) {
          if (hand === null || hand.isDone) continue;
          const waiting = tasks[hand.task]!.waitsFor.some((after) => setAt(hand.card, after) > now);
          if (hand.left > 0 || waiting) continue;
          ended[hand.card]!.set(hand.task, now);
          if (hand.task + 1 === to) hand.isDone = true;
          else {
            hand.task += 1;
            hand.left = tasks[hand.task]!.seconds;
          }
          isMoving = true;
        }
      }
    }
    heaps.forEach((heap, at) => {
      if (at > 0) most[at] = Math.max(most[at]!, heap.length);
    });
    if (out === cards) return { finish: now, lying: most };
    for (const at of hands)
      for (const hand of at)
        if (
          hand !== null &&
          !hand.isDone &&
          hand.left > 0 &&
          tasks[hand.task]!.waitsFor.every((after) => setAt(hand.card, after) <= now)
        )
          hand.left -= 1;
  }
}
