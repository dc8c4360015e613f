import { type Axis, type Length, lengthOfTicks, type Size, times, zero } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { type Effort, passesOn, type Step } from './step.ts';

/** A step as a picture of it needs to know it. */
export interface StepDescription {
  readonly step: number;
  /** Of each workpiece taken, before the step; width then height of the sheet as it stands. */
  readonly size: Size;
  readonly workpieces: number;
  readonly axis: Axis;
  readonly set: Length;
  readonly repeat: number;
  /** What remains of the workpiece along `axis`; zero when nothing is left. */
  readonly rest: Length;
  /** The workpiece is exactly `repeat` times `set`: a hair too much on one piece and the last is short. */
  readonly nothingToSpare: boolean;
  /** For each workpiece, whether it has been quarter turned since it was made; false for a sheet not cut yet. */
  readonly turned: readonly boolean[];
  /** Blade strokes, each workpiece counted. */
  readonly passes: number;
}

/**
 * For each step what its workpieces are like when it begins, found from the steps and the sheets' sizes alone.
 *
 * `sheets`: size by id, of every sheet that is cut. Throws when the steps cannot be followed: a workpiece that
 * is not on the table, workpieces of unequal sizes, more cut off than there is.
 */
export function describeSteps(
  steps: readonly Step[],
  sheets: ReadonlyMap<string, Size>,
): readonly StepDescription[] {
  const sizes = new Map(sheets);
  const turns = turnsOf(steps);
  return steps.map((step, at) => {
    const { axis, set, repeat } = step;
    const size = sizes.get(step.take[0]!);
    assert(size !== undefined, 'A step takes what is not on the table', { step });
    const rest = lengthOfTicks(size[axis] - times(set, repeat));
    assert(rest >= 0, 'A step cuts off more than there is', { step, size });
    for (const [index, id] of step.take.entries()) {
      const own = sizes.get(id);
      assert(
        own?.width === size.width && own.height === size.height,
        'Workpieces of a step are of one size',
        {
          step,
        },
      );
      assert((step.rest[index] === null) === (rest === 0), 'A rest is null where nothing is left', { step });
      sizes.delete(id);
      for (const given of step.gives[index]!) sizes.set(given, { ...size, [axis]: set });
      const left = step.rest[index]!;
      if (left !== null) sizes.set(left, { ...size, [axis]: rest });
    }
    return {
      step: step.step,
      size,
      workpieces: step.take.length,
      axis,
      set,
      repeat,
      rest,
      nothingToSpare: rest === zero,
      turned: turns[at]!,
      passes: passesOfStep(step),
    };
  });
}

/** The work in a run of steps of one paper, in their order. */
export function effortOf(steps: readonly Step[]): Effort {
  const total = { passes: 0, settings: 0, turns: 0 };
  const turns = turnsOf(steps);
  for (const [at, step] of steps.entries()) {
    total.passes += passesOfStep(step);
    if (steps[at - 1]?.set !== step.set) total.settings += 1;
    total.turns += turns[at]!.filter((turned) => turned).length;
  }
  return total;
}

function passesOfStep(step: Step): number {
  return step.take.reduce((passes, _, index) => passes + passesOn(step, index), 0);
}

/** For each step and workpiece whether it was made along the other axis; what no step made is a sheet. */
function turnsOf(steps: readonly Step[]): readonly (readonly boolean[])[] {
  const madeAlong = new Map<string, Axis>();
  return steps.map(({ take, axis, gives, rest }) => {
    const turned = take.map((id) => (madeAlong.get(id) ?? axis) !== axis);
    for (const id of [...gives.flat(), ...rest]) if (id !== null) madeAlong.set(id, axis);
    return turned;
  });
}
