import type { Step } from '../step.ts';

/** What was on the table before and after some steps, found by following the rules of the file format only. */
export interface Replayed {
  /** What lies on the table at the end: width and height by id. */
  readonly table: ReadonlyMap<string, readonly [number, number]>;
  readonly passes: number;
  readonly settings: number;
  readonly turns: number;
  /** For each step: the size taken, the rest, and how many workpieces were turned and strokes made. */
  readonly seen: readonly {
    readonly size: readonly [number, number];
    readonly rest: number;
    readonly turned: number;
    readonly passes: number;
  }[];
}

/**
 * Does the steps on imaginary sheets. Shares no code with the makers of steps; throws an `Error` at the first
 * broken rule.
 */
export function replayed(
  steps: readonly Step[],
  sheets: readonly {
    readonly id: string;
    readonly size: { readonly width: number; readonly height: number };
  }[],
): Replayed {
  const table = new Map<string, readonly [number, number]>();
  const axisMade = new Map<string, string>();
  const everUsed = new Set<string>();
  const lay = (id: string, size: readonly [number, number]): void => {
    if (everUsed.has(id)) throw new Error(`${id} is used twice`);
    everUsed.add(id);
    table.set(id, size);
  };
  for (const { id, size } of sheets) lay(id, [size.width, size.height]);

  let passes = 0;
  let settings = 0;
  let turns = 0;
  let blade: number | null = null;
  const seen: Replayed['seen'][number][] = [];
  for (const step of steps) {
    const fail = (why: string): never => {
      throw new Error(`step ${step.step}: ${why}`);
    };
    if (step.take.length === 0) fail('takes nothing');
    if (step.gives.length !== step.take.length || step.rest.length !== step.take.length) fail('lists differ');
    if (!Number.isInteger(step.repeat) || step.repeat < 1) fail('repeat');
    if (!(step.set > 0)) fail('set');
    if (blade !== step.set) settings += 1;
    blade = step.set;
    let stepPasses = 0;
    let stepTurns = 0;
    const sizes = step.take.map((id) => table.get(id) ?? fail(`${id} is not on the table`));
    const [w, h] = sizes[0]!;
    for (let i = 0; i < step.take.length; i += 1) {
      if (sizes[i]![0] !== w || sizes[i]![1] !== h) fail('unequal workpieces');
      const id = step.take[i]!;
      if (!table.delete(id)) fail(`${id} is taken twice`);
      const made = axisMade.get(id);
      if (made !== undefined && made !== step.axis) stepTurns += 1;
      const long = step.axis === 'width' ? w : h;
      const remaining = long - step.set * step.repeat;
      const sized = (length: number): readonly [number, number] =>
        step.axis === 'width' ? [length, h] : [w, length];
      if (remaining < 0) fail('more than there is');
      if (step.gives[i]!.length !== step.repeat) fail('gives as many as it repeats');
      for (const given of step.gives[i]!) {
        lay(given, sized(step.set));
        axisMade.set(given, step.axis);
      }
      const rest = step.rest[i]!;
      if ((remaining === 0) !== (rest === null)) fail('rest');
      if (rest !== null) {
        lay(rest, sized(remaining));
        axisMade.set(rest, step.axis);
      }
      stepPasses += rest === null ? step.repeat - 1 : step.repeat;
    }
    if (stepPasses < 1) fail('makes no pass');
    passes += stepPasses;
    turns += stepTurns;
    seen.push({
      size: [w, h],
      rest: (step.axis === 'width' ? w : h) - step.set * step.repeat,
      turned: stepTurns,
      passes: stepPasses,
    });
  }
  return { table, passes, settings, turns, seen };
}
