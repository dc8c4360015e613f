import { describe, expect, it, vi } from 'vitest';
import { arrange } from '../../src/layout/index.ts';
import { layoutOf, paper, part } from '../../src/layout/testing/build.ts';
import { inches } from '../../src/measure/index.ts';
import type { CardSet, Plan, PlanningProgress, Shortage } from '../../src/planning/index.ts';
import type { Hearing } from './lane.ts';
import { type Answer, messagesVersion, type Request } from './messages.ts';
import { type PlanOptions, plannerOver } from './planner.ts';

/** A worker that says what the test has it say. */
interface PuppetWorker {
  readonly asked: Request[];
  isEnded: boolean;
  isBusy: boolean;
  readonly says: Hearing;
}

function puppets(isReady = true) {
  const workers: PuppetWorker[] = [];
  const planner = plannerOver((says) => {
    const worker: PuppetWorker = { asked: [], isEnded: false, isBusy: false, says };
    workers.push(worker);
    if (isReady) queueMicrotask(() => says.answer({ kind: 'ready', version: messagesVersion }));
    return {
      post: (request) => void worker.asked.push(request),
      end: () => {
        worker.isEnded = true;
      },
      busy: (busy) => {
        worker.isBusy = busy;
      },
    };
  });
  return { planner, workers };
}

const layout = layoutOf({
  cards: 4,
  base: [inches(4), inches(5)],
  papers: [paper('meadow', [{ size: { width: inches(12), height: inches(12) } }])],
  parts: [part('panel', { size: [inches(2), inches(3)], papers: ['meadow'] })],
});
const set: CardSet = { layout, arrangement: arrange(layout), trimmer: null };
// Nothing here looks into a plan: it is carried, and told apart by its name.
const plan = { kind: 'plan', cards: 4 } as Plan;
const quick = { kind: 'plan', cards: 4, steps: [] as Plan['steps'] } as Plan;
const progress: PlanningProgress = { paper: 'meadow', cards: 4, cost: 2, bound: 1, measuredIn: 'sheets' };

const settled = () => new Promise<void>((resolve) => setTimeout(resolve));

/** A request with everything that it is told, in order. */
function asking(planner: ReturnType<typeof puppets>['planner'], options: PlanOptions = {}) {
  const told: unknown[] = [];
  const answer: Promise<Plan | Shortage | Error> = planner
    .plan(set, {
      onFirst: (first) => void told.push(['first', first]),
      onProgress: (come) => void told.push(['progress', come]),
      ...options,
    })
    .then(
      (found) => {
        told.push(['planned', found]);
        return found;
      },
      (reason: Error) => {
        told.push(['given up', reason.name]);
        return reason;
      },
    );
  return { told, answer };
}

describe('a request', () => {
  it('is told the first plan, then how far the proof has come, then the plan', async () => {
    const { planner, workers } = puppets();
    const { told, answer } = asking(planner);
    await settled();
    const [first, proof] = workers as [PuppetWorker, PuppetWorker];
    expect(first.asked).toEqual([{ kind: 'first', id: 1, set }]);
    expect([first.isBusy, proof.isBusy]).toEqual([true, false]);
    first.says.answer({ kind: 'first', id: 1, plan: quick });
    expect(proof.asked).toEqual([{ kind: 'plan', id: 1, set }]);
    expect([first.isBusy, proof.isBusy]).toEqual([false, true]);
    proof.says.answer({ kind: 'progress', id: 1, progress });
    proof.says.answer({ kind: 'planned', id: 1, answer: plan });
    expect(await answer).toBe(plan);
    expect(told).toEqual([
      ['first', quick],
      ['progress', progress],
      ['planned', plan],
    ]);
    expect(proof.isBusy).toBe(false);
    expect(workers).toHaveLength(2);
  });

  it('waits for its turn, and for workers that are still starting', async () => {
    const { planner, workers } = puppets(false);
    const one = asking(planner);
    const two = asking(planner);
    const [first, proof] = workers as [PuppetWorker, PuppetWorker];
    expect(first.asked).toEqual([]);
    const ready: Answer = { kind: 'ready', version: messagesVersion };
    first.says.answer(ready);
    first.says.answer({ kind: 'first', id: 1, plan: null });
    first.says.answer({ kind: 'first', id: 2, plan: null });
    expect(proof.asked).toEqual([]);
    proof.says.answer(ready);
    expect(proof.asked.map(({ id }) => id)).toEqual([1]);
    proof.says.answer({ kind: 'planned', id: 1, answer: plan });
    expect(proof.asked.map(({ id }) => id)).toEqual([1, 2]);
    proof.says.answer({ kind: 'planned', id: 2, answer: plan });
    expect([await one.answer, await two.answer]).toEqual([plan, plan]);
  });
});

describe('giving up', () => {
  it('ends the proof at once, tells nothing more, and has a fresh worker started for the next', async () => {
    const { planner, workers } = puppets();
    const control = new AbortController();
    const { told, answer } = asking(planner, { signal: control.signal });
    await settled();
    const [first, proof] = workers as [PuppetWorker, PuppetWorker];
    first.says.answer({ kind: 'first', id: 1, plan: quick });
    control.abort();
    expect(proof.isEnded).toBe(true);
    proof.says.answer({ kind: 'progress', id: 1, progress });
    proof.says.answer({ kind: 'planned', id: 1, answer: plan });
    proof.says.broken('it was ended');
    expect(await answer).toBe(control.signal.reason);
    expect(told).toEqual([
      ['first', quick],
      ['given up', 'AbortError'],
    ]);
    expect(first.isEnded).toBe(false);
    expect(workers).toHaveLength(3);
    const next = asking(planner);
    first.says.answer({ kind: 'first', id: 2, plan: quick });
    await settled();
    expect(workers[2]!.asked.map(({ id }) => id)).toEqual([2]);
    workers[2]!.says.answer({ kind: 'planned', id: 2, answer: plan });
    expect(await next.answer).toBe(plan);
  });

  it('can be done while the first plan is told', async () => {
    const { planner, workers } = puppets();
    const control = new AbortController();
    const { answer } = asking(planner, { signal: control.signal, onFirst: () => control.abort() });
    await settled();
    workers[0]!.says.answer({ kind: 'first', id: 1, plan: quick });
    expect(await answer).toBe(control.signal.reason);
    expect(workers[1]!.isEnded).toBe(true);
  });

  it('asks for nothing where it was done before', async () => {
    const { planner, workers } = puppets();
    const { answer } = asking(planner, { signal: AbortSignal.abort() });
    expect(await answer).toMatchObject({ name: 'AbortError' });
    await settled();
    expect(workers.flatMap(({ asked }) => asked)).toEqual([]);
  });

  it('lets a first plan come to its end, but not for long', async () => {
    vi.useFakeTimers();
    try {
      const { planner, workers } = puppets();
      await vi.advanceTimersByTimeAsync(0);
      const one = asking(planner);
      const two = asking(planner, { instead: true });
      expect(await one.answer).toMatchObject({ name: 'AbortError' });
      const first = workers[0]!;
      expect(first.asked.map(({ id }) => id)).toEqual([1]);
      first.says.answer({ kind: 'first', id: 1, plan: quick });
      expect(first.asked.map(({ id }) => id)).toEqual([1, 2]);
      expect(one.told).toEqual([['given up', 'AbortError']]);
      const three = asking(planner, { instead: true });
      expect(await two.answer).toMatchObject({ name: 'AbortError' });
      await vi.advanceTimersByTimeAsync(100);
      expect(first.isEnded).toBe(true);
      expect(workers[2]!.asked.map(({ id }) => id)).toEqual([3]);
      workers[2]!.says.answer({ kind: 'first', id: 3, plan: quick });
      expect(three.told).toEqual([['first', quick]]);
    } finally {
      vi.useRealTimers();
    }
  });

  it('never ends a worker that is still starting, so that a moving hand does not keep it from its work', async () => {
    const { planner, workers } = puppets(false);
    for (let change = 0; change < 5; change += 1) asking(planner, { instead: true });
    const last = asking(planner, { instead: true });
    workers[0]!.says.answer({ kind: 'ready', version: messagesVersion });
    workers[1]!.says.answer({ kind: 'ready', version: messagesVersion });
    expect(workers).toHaveLength(2);
    expect(workers[0]!.asked.map(({ id }) => id)).toEqual([6]);
    workers[0]!.says.answer({ kind: 'first', id: 6, plan: null });
    workers[1]!.says.answer({ kind: 'planned', id: 6, answer: plan });
    expect(await last.answer).toBe(plan);
  });

  it('comes with closing', async () => {
    const { planner, workers } = puppets();
    const { answer } = asking(planner);
    await settled();
    planner.close();
    expect(await answer).toMatchObject({ name: 'AbortError', message: 'The planner was closed.' });
    expect(workers.map(({ isEnded }) => isEnded)).toEqual([true, true]);
    expect(await asking(planner).answer).toMatchObject({ message: 'The planner was closed.' });
  });
});

describe('a failure', () => {
  it('of a worker is told to whoever waited for it, and the next request works', async () => {
    const { planner, workers } = puppets();
    const one = asking(planner);
    const two = asking(planner);
    await settled();
    workers[0]!.says.broken('its memory is full');
    expect(await one.answer).toMatchObject({
      name: 'PlannerFailure',
      message: 'The planner failed: its memory is full.',
    });
    await settled();
    expect(workers[2]!.asked.map(({ id }) => id)).toEqual([2]);
    workers[2]!.says.answer({ kind: 'first', id: 2, plan: quick });
    workers[1]!.says.answer({ kind: 'planned', id: 2, answer: plan });
    expect(await two.answer).toBe(plan);
  });

  it('inside a worker comes out as data, and a fresh worker takes its place', async () => {
    const { planner, workers } = puppets();
    const { answer } = asking(planner);
    await settled();
    workers[0]!.says.answer({ kind: 'first', id: 1, plan: quick });
    workers[1]!.says.answer({ kind: 'failed', id: 1, message: 'a plan does not come out' });
    expect(await answer).toMatchObject({ message: 'The planner failed: a plan does not come out.' });
    expect(workers[1]!.isEnded).toBe(true);
    expect(workers).toHaveLength(3);
  });

  it('to start is told to all who wait, and tried again for the next', async () => {
    const { planner, workers } = puppets(false);
    const one = asking(planner);
    workers[0]!.says.broken('there is no such script');
    expect(await one.answer).toMatchObject({ name: 'PlannerFailure' });
    expect(workers).toHaveLength(2);
    asking(planner);
    expect(workers).toHaveLength(3);
  });

  it('of halves that do not belong together is told as such', async () => {
    const { planner, workers } = puppets(false);
    const { answer } = asking(planner);
    workers[0]!.says.answer({ kind: 'ready', version: messagesVersion + 1 });
    expect(await answer).toMatchObject({ message: expect.stringContaining('another version') as string });
    expect(workers[0]!.isEnded).toBe(true);
  });
});

describe('a question', () => {
  const enough = { enough: { cards: 36 }, cliffs: [] };
  const asked = { name: 'enough', set } as const;

  it('goes to a worker of its own, started when the first is asked, and is told its answer', async () => {
    const { planner, workers } = puppets();
    expect(workers).toHaveLength(2);
    const answer = planner.ask(asked);
    await settled();
    const [, , third] = workers as [PuppetWorker, PuppetWorker, PuppetWorker];
    expect(third.asked).toEqual([{ kind: 'question', id: 1, question: asked }]);
    third.says.answer({ kind: 'told', id: 1, told: enough as never });
    expect(await answer).toBe(enough);
    planner.close();
    expect(third.isEnded).toBe(true);
  });

  it('waits for the one before, and a worker that breaks fails only the one it was at', async () => {
    const { planner, workers } = puppets();
    const first = planner.ask(asked).catch((reason: Error) => reason.message);
    const second = planner.ask(asked);
    await settled();
    const third = workers[2]!;
    expect(third.asked.map(({ id }) => id)).toEqual([1]);
    third.says.answer({ kind: 'failed', id: 1, message: 'a slip' });
    expect(await first).toBe('The planner failed: a slip.');
    await settled();
    const anew = workers[3]!;
    anew.says.answer({ kind: 'told', id: 2, told: enough as never });
    expect(await second).toBe(enough);
    planner.close();
  });

  it('is given up at once when it is aborted, and when its planner is closed', async () => {
    const { planner, workers } = puppets();
    const control = new AbortController();
    const answer = planner.ask(asked, { signal: control.signal }).catch((reason: Error) => reason.name);
    await settled();
    control.abort();
    expect(await answer).toBe('AbortError');
    expect(workers[2]!.isEnded).toBe(true);
    planner.close();
    expect(await planner.ask(asked).catch((reason: Error) => reason.name)).toBe('AbortError');
  });
});
