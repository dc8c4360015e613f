import type { AssemblyStep } from '../../../../src/finished/index.ts';
import type { StepStakes } from '../../../../src/planning/index.ts';
import type { Step } from '../../../../src/trimming/index.ts';
import {
  assemblyWords,
  dealtWords,
  type Showing,
  type StepWords,
  scoringWords,
  stepWords,
} from '../../../../src/words/index.ts';
import type { Making } from '../../state/benchState.ts';

/** One line of the docket at the bench. */
export type Line =
  /** A setting of the trimmer and what is cut at it; of its workpieces so many are cut. */
  | {
      readonly kind: 'cut';
      readonly key: string;
      readonly isDone: boolean;
      readonly step: Step;
      readonly cut: number;
      readonly words: StepWords;
    }
  /** Something that is done with every card; the sentences are the library's. */
  | {
      readonly kind: 'made';
      readonly key: string;
      readonly isDone: boolean;
      /** What it is called in the docket: the part's name; `null`: the scoring. */
      readonly name: string | null;
      readonly sentences: readonly string[];
      /** The step of the assembly; `null`: the scoring. */
      readonly step: AssemblyStep | null;
      /** When it was told to be done, where that was noted. */
      readonly at: number | null;
    };

/** All lines of a set that is being made, in the order they are gone through: cutting, scoring, putting together. */
export function linesOf(
  { set, tallied, made, madeAt }: Making,
  stakes: readonly StepStakes[],
  showing: Showing,
): readonly Line[] {
  const { plan, onTable } = tallied.inHand;
  const { layout, trimmer } = set;
  const words = new Map(
    stepWords(plan, { layout, trimmer, lying: onTable.lying, stakes }, showing).map((each) => [
      each.step,
      each,
    ]),
  );
  const cutting = plan.steps.map((step): Line => {
    const noted = tallied.soFar.done.get(step.step) ?? 0;
    const cut = noted === 'all' ? step.take.length : noted;
    return {
      kind: 'cut',
      key: `step ${step.step}`,
      isDone: cut >= step.take.length,
      step,
      cut,
      words: words.get(step.step)!,
    };
  });
  return [...cutting, ...puttingTogether(set, showing, { made, madeAt })];
}

function puttingTogether(
  { layout, arrangement }: Making['set'],
  showing: Showing,
  { made, madeAt }: Pick<Making, 'made' | 'madeAt'>,
): readonly Line[] {
  const scoring = layout.base.papers.length === 0 ? null : scoringWords(layout, layout.cards, showing);
  const parts = new Map(arrangement.parts.map((part) => [part.part.id, part]));
  const line = (
    key: string,
    name: string | null,
    sentences: readonly string[],
    step: AssemblyStep | null,
  ): Line => ({
    kind: 'made',
    key,
    isDone: made.has(key),
    name,
    sentences: sentences.filter((sentence) => sentence !== ''),
    step,
    at: madeAt.get(key) ?? null,
  });
  return [
    ...(scoring === null ? [] : [line('score', null, [scoring.says], null)]),
    ...assemblyWords(layout, arrangement, showing).map(({ part, name, first, prepare, lay, step }) => {
      const dealt = dealtWords(parts.get(part)!.part, layout);
      return line(`part ${part}`, name, [first, prepare, lay, dealt === '' ? '' : `${dealt}.`], step);
    }),
  ];
}
