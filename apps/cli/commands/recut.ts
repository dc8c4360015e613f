import { readPlanFile } from '../../../src/files/index.ts';
import type { Layout } from '../../../src/layout/index.ts';
import {
  type CardSet,
  type CutSoFar,
  type KindnessGoal,
  planSet,
  proveFirstOf,
  type ReadPlan,
  readSavedPlan,
  recutRecord,
  recutSet,
  type SetToPlan,
  type StepStakes,
  stakesOf,
  stakesRecord,
  tableNow,
  untouchedTable,
} from '../../../src/planning/index.ts';
import type { Trimmer } from '../../../src/trimming/index.ts';
import {
  counted,
  effortSentence,
  fileProblemSentence,
  leftoverSentences,
  type RecutTold,
  recutSentences,
  rescueSentences,
  type Showing,
  shortageSentences,
  sittingsSentence,
  stepSentence,
  stepWords,
  tableProblemSentence,
  trimmerSentences,
} from '../../../src/words/index.ts';
import { openLayout, openPile, openSet, openTrimmer } from '../opening.ts';
import { cannot, done, type Outcome, wrongUsage } from '../outcome.ts';
import { readDone, readFound, readSpoiled } from '../tableArguments.ts';
import type { World } from '../world.ts';
import { wrapped } from '../wrapped.ts';
import { planJson } from './plan.ts';

export interface RecutOptions {
  readonly plan?: string;
  readonly done: string;
  readonly spoiled: readonly string[];
  readonly found: readonly string[];
  readonly trimmer?: string;
  readonly prefer?: readonly KindnessGoal[];
  readonly json?: boolean;
}

/** `cardwright recut`: the set planned again from the table as it is; or what is short and the ways out of it. */
export async function recut(file: string, options: RecutOptions, world: World): Promise<Outcome> {
  const opened = await openLayout(file, world);
  const trimmer = await openTrimmer(options.trimmer, world);
  if ('problems' in opened || 'problems' in trimmer) return cannot;
  const layout = opened.value;
  const state = readState(layout, options);
  if ('wrong' in state) {
    world.err(state.wrong.map((sentence) => `${sentence}\n`).join(''));
    return wrongUsage;
  }
  const arrangement = openPile(layout, world);
  if (arrangement === null) return cannot;
  const { prefer } = options;
  const wanted = { layout, arrangement, trimmer: trimmer.value, ...(prefer === undefined ? {} : { prefer }) };
  const set = await openSet(wanted, world);
  const read = options.plan === undefined ? planAnew(set, world) : await openPlan(set, options.plan, world);
  if (read === null) return cannot;

  const { inHand, moreSpares, json } = read;
  const toRecut = moreSpares.size === 0 ? set : { ...set, moreSpares };
  const showing: Showing = { units: layout.units, glyphs: 'typed' };
  const table = tableNow(layout, inHand, state.value);
  if ('problems' in table) {
    world.err(table.problems.map((problem) => `${tableProblemSentence(problem, showing)}\n`).join(''));
    return cannot;
  }
  const answer = recutSet(toRecut, table);
  if (answer.kind === 'short') {
    world.err(`${rescueSentences(answer, { layout, table }, showing).join('\n')}\n`);
    return cannot;
  }
  const stakes = stakesOf(toRecut, answer);
  const record = () => ({
    ...recutRecord(answer, moreSpares),
    stakes: stakesRecord(stakes, proveFirstOf(answer.plan, layout)),
  });
  const asJson = () => (answer.plan === inHand.plan ? json() : `${JSON.stringify(record(), null, 2)}\n`);
  world.out(
    options.json
      ? asJson()
      : `${recutText({ layout, table, recut: answer }, { trimmer: trimmer.value, stakes }, showing)
          .flatMap((line) => wrapped(line, { hang: 4 }))
          .join('\n')}\n`,
  );
  return done;
}

/** How far the cutting has come, as the arguments say it. */
function readState(
  layout: Layout,
  { done: steps, spoiled, found }: RecutOptions,
): { readonly value: CutSoFar } | { readonly wrong: readonly string[] } {
  const read = {
    done: steps === '' ? { value: new Map() } : readDone(steps),
    spoiled: spoiled.map((text) => readSpoiled(text)),
    found: found.map((text) => readFound(text, layout.units)),
  };
  const wrong = [read.done, ...read.spoiled, ...read.found].flatMap((each) =>
    'wrong' in each ? [each.wrong] : [],
  );
  if (wrong.length > 0) return { wrong };
  const values = <T>(all: readonly ({ readonly value: T } | { readonly wrong: string })[]) =>
    all.flatMap((each) => ('value' in each ? [each.value] : []));
  return {
    value: {
      done: values([read.done])[0] ?? new Map(),
      spoiled: values(read.spoiled),
      found: values(read.found),
    },
  };
}

/** A plan to be cut by, and how it is written as JSON. */
interface OpenPlan extends ReadPlan {
  readonly json: () => string;
}

/** The plan of the untouched set; `null` when there is none, with the reasons said on standard error. */
function planAnew(set: SetToPlan, world: World): OpenPlan | null {
  const plan = planSet(set);
  if (plan.kind === 'plan') {
    const json = () => planJson({ set, plan, made: null });
    return { inHand: { plan, onTable: untouchedTable }, moreSpares: new Map(), json };
  }
  const { layout } = set;
  const sentences = shortageSentences(plan, layout, { units: layout.units, glyphs: 'typed' });
  world.err(`${sentences.join('\n')}\n`);
  return null;
}

/** The plan in a file; `null` when it is none or does not fit the layout, with the reasons said on standard error. */
async function openPlan(set: CardSet, file: string, world: World): Promise<OpenPlan | null> {
  const text = await world.read(file);
  const read = readPlanFile(text);
  if ('problems' in read) {
    world.err(read.problems.map((problem) => `${file}: ${fileProblemSentence(problem)}\n`).join(''));
    return null;
  }
  const saved = readSavedPlan(set, read.plan);
  if (!('problems' in saved)) return { ...saved, json: () => text };
  const showing: Showing = { units: set.layout.units, glyphs: 'typed' };
  world.err(saved.problems.map((problem) => `${file}: ${tableProblemSentence(problem, showing)}\n`).join(''));
  return null;
}

/** Where things stand, then paper after paper the steps that are left, and what is left over by them. */
function recutText(
  told: RecutTold,
  { trimmer, stakes }: { readonly trimmer: Trimmer | null; readonly stakes: readonly StepStakes[] },
  showing: Showing,
): readonly string[] {
  const { layout, recut: answer } = told;
  const { plan, onTable } = answer;
  const steps = stepWords(plan, { layout: answer.layout, trimmer, lying: onTable.lying, stakes }, showing);
  const { title } = layout;
  const lines = [`${title === '' ? 'The set' : title}: planned again from the table`, ''];
  lines.push(...recutSentences(told, showing));
  if (steps.length === 0) return [...lines, '', `All is cut for ${counted(plan.cards, 'card')}.`];
  if (trimmer !== null) lines.push(...trimmerSentences(trimmer, showing));
  const breaks = sittingsSentence(plan, trimmer);
  if (breaks !== '') lines.push(breaks);
  for (const id of plan.papers.keys()) {
    const own = steps.filter((step) => step.paper === id);
    if (own.length === 0) continue;
    const paper = answer.layout.papers.get(id)!;
    lines.push('', `${paper.name}: ${effortSentence(paper, plan, trimmer)}`);
    lines.push(...own.map((words) => `  ${String(words.step).padStart(2)}. ${stepSentence(words)}`));
    lines.push(...leftoverSentences(paper, plan, showing).map((sentence) => `  Left: ${sentence}`));
  }
  return lines;
}
