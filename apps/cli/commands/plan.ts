import type { Arrangement, Layout } from '../../../src/layout/index.ts';
import {
  type KindnessGoal,
  type LeftoverUses,
  leftoverUses,
  leftoverUsesRecord,
  offeredOf,
  type PieceSpares,
  type Plan,
  planRecord,
  planSet,
  proveFirstOf,
  type SetToPlan,
  type StepStakes,
  settledBy,
  sparesOf,
  sparesRecord,
  stakesOf,
  stakesRecord,
  untouchedTable,
} from '../../../src/planning/index.ts';
import { assert } from '../../../src/problem/index.ts';
import type { Trimmer } from '../../../src/trimming/index.ts';
import {
  counted,
  docketOf,
  effortSentence,
  extraSentences,
  fromLeftoversSentences,
  kindnessSentence,
  leftoverSentences,
  otherUsesSentence,
  planSentence,
  type Showing,
  shortageSentences,
  sittingsSentence,
  slackSentences,
  sparesMadeSentence,
  sparesSentences,
  stepSentence,
  stepWords,
  trimmerSentences,
} from '../../../src/words/index.ts';
import { openLayout, openPile, openSet, openTrimmer } from '../opening.ts';
import { cannot, done, type Outcome } from '../outcome.ts';
import type { World } from '../world.ts';
import { wrapped } from '../wrapped.ts';

export interface PlanOptions {
  readonly trimmer?: string;
  readonly json?: boolean;
  readonly withSpares?: boolean;
  readonly prefer?: readonly KindnessGoal[];
}

/** `cardwright plan`: the cutting plan of the set, in words or as JSON; or why there is none, on standard error. */
export async function plan(file: string, options: PlanOptions, world: World): Promise<Outcome> {
  const planned = await planFile(file, options, world);
  if (planned === null) return cannot;
  world.out(
    options.json
      ? planJson(planned)
      : `${planText(planned, { spares: sparesTold(planned), stakes: stakesTold(planned) })
          .flatMap((line) => wrapped(line, { hang: 4 }))
          .join('\n')}\n`,
  );
  return done;
}

/** The plan as `plan --json` writes it. */
export function planJson(planned: Pick<PlannedFile, 'set' | 'plan' | 'made'>): string {
  const record = {
    ...planRecord(planned.plan),
    spares: sparesRecord(sparesTold(planned), planned.made !== null),
    leftoverUses: leftoverUsesRecord(usesOf(planned), planned.set.layout),
    stakes: stakesRecord(stakesTold(planned), proveFirstOf(planned.plan, planned.set.layout)),
  };
  return `${JSON.stringify(record, null, 2)}\n`;
}

function sparesTold({ set, plan, made }: Pick<PlannedFile, 'set' | 'plan' | 'made'>): readonly PieceSpares[] {
  return made ?? sparesOf(set, plan);
}

/** What the leftovers of a plan can still give. */
function usesOf({ set, plan }: Pick<PlannedFile, 'set' | 'plan'>): LeftoverUses {
  return leftoverUses(settledBy(set, plan.dealt), plan);
}

function leftoversTold(
  planned: Pick<PlannedFile, 'set' | 'plan' | 'layout'>,
  showing: Showing,
): readonly string[] {
  const uses = usesOf(planned);
  const others = otherUsesSentence(uses, planned.layout, showing);
  const told = [...extraSentences(uses, planned.layout, showing), ...(others === null ? [] : [others])];
  return told.length === 0 ? [] : ['', 'From what is left', ...told.map((sentence) => `  ${sentence}`)];
}

/** What is at stake at each step of a plan that begins with nothing cut. */
export function stakesTold({
  set,
  plan,
  made,
}: Pick<PlannedFile, 'set' | 'plan' | 'made'>): readonly StepStakes[] {
  const making = made === null ? set : { ...set, moreSpares: offeredOf(made) };
  return stakesOf(making, { plan, onTable: untouchedTable });
}

/** A set that has been planned, with all that was read for it. */
export interface PlannedFile {
  readonly layout: Layout;
  readonly trimmer: Trimmer | null;
  readonly plan: Plan;
  readonly arrangement: Arrangement;
  readonly set: SetToPlan;
  /** The spares that come for nothing, when they were asked for and the plan makes them; else `null`. */
  readonly made: readonly PieceSpares[] | null;
}

/** Reads and plans; `null` when that cannot be done, with the reasons said on standard error. */
export async function planFile(
  file: string,
  { trimmer: trimmerFile, withSpares, prefer }: Pick<PlanOptions, 'trimmer' | 'withSpares' | 'prefer'>,
  world: World,
): Promise<PlannedFile | null> {
  const opened = await openLayout(file, world);
  const trimmer = await openTrimmer(trimmerFile, world);
  if ('problems' in opened || 'problems' in trimmer) return null;
  const layout = opened.value;
  const arrangement = openPile(layout, world);
  if (arrangement === null) return null;
  const wanted = { layout, arrangement, trimmer: trimmer.value, ...(prefer === undefined ? {} : { prefer }) };
  const set = await openSet(wanted, world);
  const answer = planSet(set);
  if (answer.kind === 'plan') {
    const planned = { layout, trimmer: trimmer.value, arrangement, set };
    return { ...planned, ...(withSpares ? makingSpares(set, answer) : { plan: answer, made: null }) };
  }
  const sentences = shortageSentences(answer, layout, { units: layout.units, glyphs: 'typed' });
  world.err(`${sentences.join('\n')}\n`);
  return null;
}

/** The set planned again with all the spares that come for nothing. */
function makingSpares(set: SetToPlan, plan: Plan): Pick<PlannedFile, 'plan' | 'made'> {
  const made = sparesOf(set, plan);
  const again = planSet({ ...set, moreSpares: offeredOf(made) });
  assert(again.kind === 'plan', 'Spares that are offered can be made');
  return { plan: again, made };
}

/** The plan as a docket to read: what it takes, then paper after paper the steps and what is left. */
function planText(
  planned: PlannedFile,
  { spares, stakes }: { readonly spares: readonly PieceSpares[]; readonly stakes: readonly StepStakes[] },
): readonly string[] {
  const {
    layout,
    trimmer,
    plan,
    made,
    set: { prefer },
  } = planned;
  const showing: Showing = { units: layout.units, glyphs: 'typed' };
  const papers = [...plan.papers.keys()].map((id) => layout.papers.get(id)!);
  const steps = stepWords(plan, { layout, trimmer, stakes }, showing);
  const lines = [`${layout.title}: ${counted(layout.cards, 'card')}`.replace(/^: /, ''), ''];
  lines.push(...papers.map((paper) => planSentence(paper, plan)));
  if (trimmer !== null) lines.push(...trimmerSentences(trimmer, showing));
  lines.push(kindnessSentence(prefer));
  const breaks = sittingsSentence(plan, trimmer);
  if (breaks !== '') lines.push(breaks);
  lines.push(...fromLeftoversSentences(layout, plan));
  const told = { layout, plan, spares };
  if (made !== null) lines.push(sparesMadeSentence(told));
  for (const paper of papers) {
    lines.push('', ...docketOf(paper, showing), effortSentence(paper, plan, trimmer));
    lines.push(...slackSentences(paper, plan, showing));
    if (made === null) lines.push(...sparesSentences(paper, told, showing));
    for (const words of steps.filter((step) => step.paper === paper.id)) {
      lines.push(`  ${String(words.step).padStart(2)}. ${stepSentence(words)}`);
    }
    lines.push(...leftoverSentences(paper, plan, showing).map((sentence) => `  Left: ${sentence}`));
  }
  lines.push(...leftoversTold(planned, showing));
  return lines;
}
