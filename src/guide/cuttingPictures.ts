import type { Length } from '../measure/index.ts';
import type { Lying } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import type { Paper } from '../stash/index.ts';
import { describeSteps, type Step, type StepDescription } from '../trimming/index.ts';
import { measuredFrom, type StepWords, stepWords, tableOf, type Workpiece } from '../words/index.ts';
import { hatchOf, lengthIn, letterFor, type Manner, type Matter, sizeIn } from './matter.ts';
import {
  type PicturedStep,
  type PictureManner,
  pictureScale,
  type StepPicture,
  stepPicture,
} from './stepPicture.ts';

/** One setting of the trimmer, drawn and said. */
export interface CuttingPicture {
  readonly words: StepWords;
  /** What the picture shows, for someone who listens. */
  readonly says: string;
  /** Draws it, once however often it is asked. That is most of the work, so a page can do it picture by picture. */
  readonly draw: () => StepPicture;
}

/** What the pictures of a plan are made from. */
export type CuttingMatter = Pick<
  Matter,
  'layout' | 'plan' | 'stakes' | 'trimmer' | 'showing' | 'typeface'
> & {
  /** `printed` when absent. */
  readonly manner?: Manner;
  /** What lies there as the plan begins and is no whole sheet; nothing when absent. */
  readonly lying?: readonly Lying[];
};

/**
 * Every setting at which the paper is cut, in the plan's order, all drawn to the largest scale at which each is no
 * wider than the room and no paper in them higher.
 */
export function cuttingPictures(
  matter: CuttingMatter,
  paper: Paper,
  room: { readonly widthPt: number; readonly heightPt: number },
): readonly CuttingPicture[] {
  const { layout, plan, trimmer, showing, typeface, stakes, lying = [] } = matter;
  const table = tableOf(plan, lying);
  const words = stepWords(plan, { layout, trimmer, stakes, lying }, showing);
  const sheets = new Map(plan.sheets.map(({ id, size }) => [id, size]));
  const descriptions = describeSteps(plan.steps, sheets);
  const own = plan.steps.flatMap((step, index) => {
    const said = words[index];
    const described = descriptions[index];
    assert(said !== undefined && described !== undefined, 'Every step is said and described', { step });
    return said.paper === paper.id
      ? [{ words: said, pictured: pictured(step, described, table, matter) }]
      : [];
  });

  // The words beside it say where a length is rounded.
  const length = (of: Length) => lengthIn(showing)(of).replace('about ', '');
  const manner: PictureManner = {
    typeface,
    scale: pictureScale(
      own.map((step) => step.pictured),
      room,
      { typeface, length },
    ),
    hatch: hatchOf(layout, paper.id, { manner: matter.manner ?? 'printed' }),
    directed: paper.up !== 'any',
    measuringEdge: trimmer?.measuringEdge ?? 'left',
    length,
    size: (size) => sizeIn(showing)(size).replaceAll('about ', ''),
  };
  return own.map(({ words: said, pictured: step }) => ({
    words: said,
    says: pictureSays(said),
    draw: once(() => stepPicture(step, manner, room.widthPt)),
  }));
}

function once<Drawn extends object>(draw: () => Drawn): () => Drawn {
  let drawn: Drawn | null = null;
  return () => {
    drawn ??= draw();
    return drawn;
  };
}

/** What a picture shows of a step. */
function pictured(
  step: Step,
  described: StepDescription,
  table: ReadonlyMap<string, Workpiece>,
  { layout, plan, trimmer }: CuttingMatter,
): PicturedStep {
  const given = step.gives.flat().flatMap((id) => table.get(id) ?? []);
  const letterOf = (id: string | null | undefined): string | null => {
    const goes = id === null || id === undefined ? undefined : table.get(id)?.goes;
    if (goes?.kind !== 'finished') return null;
    const piece = plan.pieces.find((candidate) => candidate.id === goes.piece);
    return piece === undefined ? null : letterFor(layout, piece.part);
  };
  const rest = step.rest[0] ?? null;
  return {
    size: described.size,
    axis: described.axis,
    from: measuredFrom(step, given, trimmer?.measuringEdge ?? 'left'),
    set: described.set,
    dial: step.dial ?? null,
    otherSide: step.otherSide ?? false,
    repeat: described.repeat,
    rest: described.rest,
    restLeft: rest !== null && table.get(rest)?.goes.kind === 'leftover',
    letters: (step.gives[0] ?? []).map(letterOf),
    restLetter: letterOf(rest),
    passes: described.passes,
    workpieces: described.workpieces,
    noun: step.take.every((id) => table.get(id)?.from.kind === 'sheet') ? 'sheet' : 'piece',
  };
}

function pictureSays({ step, set, lay, cut, rest }: StepWords): string {
  return [`Picture of step ${step}.`, set, lay, cut, rest].filter((sentence) => sentence !== '').join(' ');
}
