import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Json, JsonObject } from '../../../src/files/index.ts';
import { millimetres } from '../../../src/measure/index.ts';
import { type CuttingStore, cuttingKeptIn } from './cutting.ts';

const mine: JsonObject = { cardwright_trimmer: 1, units: 'mm', marks: '5 mm' };

/** A place for preferences that answers when it is told to. */
function place(kept: Record<string, Json> = {}) {
  let answer = () => {};
  const asked = new Promise<void>((resolve) => {
    answer = resolve;
  });
  return {
    kept,
    answer,
    preference: async (name: string) => {
      await asked;
      return kept[name];
    },
    prefer: async (name: string, value: Json) => {
      kept[name] = value;
      await Promise.resolve();
    },
  };
}

describe('how a person cuts', () => {
  it('is nothing in particular until something is said', async () => {
    const shelf = place();
    const cutting = cuttingKeptIn(shelf);
    shelf.answer();
    await cutting.known;
    expect(cutting.getState()).toEqual({ trimmer: null, prefer: [], file: null });
    expect(shelf.kept).toEqual({});
  });

  it('is found again by the next page', async () => {
    const shelf = place();
    shelf.answer();
    const cutting = cuttingKeptIn(shelf);
    expect(cutting.say(mine)).toBeNull();
    cutting.prefer(['leftover']);
    const next = cuttingKeptIn(shelf);
    await next.known;
    expect(next.getState()).toMatchObject({
      trimmer: { marks: millimetres(5) },
      prefer: ['leftover'],
      file: mine,
    });
  });

  it('is what was said while it was looked for', async () => {
    const shelf = place({ trimmer: { file: { ...mine, marks: '1 mm' }, inUse: true }, kindness: ['turns'] });
    const cutting = cuttingKeptIn(shelf);
    cutting.say(mine);
    shelf.answer();
    await cutting.known;
    expect(cutting.getState()).toMatchObject({ trimmer: { marks: millimetres(5) }, prefer: ['turns'] });
  });

  it('stays as it is where a trimmer is refused', async () => {
    const shelf = place();
    shelf.answer();
    const cutting = cuttingKeptIn(shelf);
    cutting.say(mine);
    const before = cutting.getState();
    expect(cutting.say({ ...mine, longest: '2 mm' })).toMatchObject([{ code: 'trimmerMarks' }]);
    expect(cutting.getState()).toBe(before);
    await cutting.known;
    expect(shelf.kept.trimmer).toEqual({ file: mine, inUse: true });
  });

  it('goes by no trimmer when that is laid aside, and keeps it', async () => {
    const shelf = place();
    shelf.answer();
    const cutting = cuttingKeptIn(shelf);
    cutting.say(mine);
    cutting.layAside();
    const next = cuttingKeptIn(shelf);
    await next.known;
    for (const each of [cutting, next]) expect(each.getState()).toMatchObject({ trimmer: null, file: mine });
  });

  it.each([
    ['a later version’s trimmer', { trimmer: { file: { ...mine, cardwright_trimmer: 2 }, inUse: true } }],
    ['something else', { trimmer: 'mine', kindness: 'settings' }],
    ['goals that are not known', { kindness: ['speed'] }],
  ])('is nothing in particular where %s was kept', async (_, kept) => {
    const shelf = place(kept);
    shelf.answer();
    const cutting = cuttingKeptIn(shelf);
    await cutting.known;
    expect(cutting.getState()).toEqual({ trimmer: null, prefer: [], file: null });
  });

  it('is nothing in particular where nothing can be kept', async () => {
    const fails = () => Promise.reject(new Error('no room'));
    const cutting = cuttingKeptIn({ preference: fails, prefer: fails });
    await cutting.known;
    expect(cutting.say(mine)).toBeNull();
    expect(cutting.getState().file).toEqual(mine);
  });

  it('is taken up by another window as soon as it is told, and nothing changes where nothing is new', async () => {
    const shelf = place();
    shelf.answer();
    const pages = windows(shelf, 2);
    const [one, other] = [pages[0]!, pages[1]!];
    let told = 0;
    other.subscribe(() => {
      told += 1;
    });
    one.say(mine);
    one.prefer(['leftover']);
    await settled();
    expect(other.getState()).toEqual(one.getState());
    expect(other.getState()).toMatchObject({ trimmer: { marks: millimetres(5) }, prefer: ['leftover'] });
    expect(told).toBe(2);
    other.lookAgain();
    await settled();
    expect(told).toBe(2);
    other.layAside();
    await settled();
    expect(one.getState()).toMatchObject({ trimmer: null, file: mine });
  });

  it('comes to be the same in all windows and on the disk, however fast they say otherwise', async () => {
    const choice = fc.record({
      window: fc.nat(2),
      what: fc.constantFrom('say', 'aside', 'prefer', 'look', 'wait'),
      marks: fc.integer({ min: 1, max: 9 }),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(choice, { maxLength: 30 }), async (choices) => {
        const shelf = place();
        shelf.answer();
        const pages = windows(shelf, 3);
        for (const { window, what, marks } of choices) {
          const page = pages[window]!;
          if (what === 'say') expect(page.say({ ...mine, marks: `${marks} mm` })).toBeNull();
          else if (what === 'aside') page.layAside();
          else if (what === 'prefer') page.prefer(marks > 5 ? ['turns'] : ['leftover']);
          else if (what === 'look') page.lookAgain();
          else await settled();
        }
        await settled();
        const fresh = cuttingKeptIn(shelf);
        await fresh.known;
        for (const page of pages) expect(page.getState()).toEqual(fresh.getState());
      }),
    );
  });
});

/** So many windows that keep what is said in one place, and hear of each other. */
function windows(shelf: ReturnType<typeof place>, count: number): readonly CuttingStore[] {
  const listeners = new Map<number, () => void>();
  return Array.from({ length: count }, (_, index) =>
    cuttingKeptIn(shelf, {
      tell: () => {
        for (const [other, listener] of listeners) if (other !== index) setTimeout(listener, 0);
      },
      subscribe: (listener) => {
        listeners.set(index, listener);
        return () => listeners.delete(index);
      },
    }),
  );
}

/** All that is on its way has come. */
async function settled(): Promise<void> {
  for (let turn = 0; turn < 6; turn += 1) await new Promise((resolve) => setTimeout(resolve, 0));
}
