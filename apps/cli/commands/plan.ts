import type { Arrangement, Layout } from '../../../src/layout/index.ts';
import { type Plan, planRecord, planSet } from '../../../src/planning/index.ts';
import type { Trimmer } from '../../../src/trimming/index.ts';
import {
  counted,
  docketOf,
  effortSentence,
  leftoverSentences,
  planSentence,
  type Showing,
  shortageSentences,
  sittingsSentence,
  slackSentences,
  stepSentence,
  stepWords,
} from '../../../src/words/index.ts';
import { openLayout, openPile, openSet, openTrimmer } from '../opening.ts';
import { cannot, done, type Outcome } from '../outcome.ts';
import type { World } from '../world.ts';
import { wrapped } from '../wrapped.ts';

export interface PlanOptions {
  readonly trimmer?: string;
  readonly json?: boolean;
}

/** `cardwright plan`: the cutting plan of the set, in words or as JSON; or why there is none, on standard error. */
export async function plan(file: string, options: PlanOptions, world: World): Promise<Outcome> {
  const planned = await planFile(file, options, world);
  if (planned === null) return cannot;
  world.out(
    options.json
      ? `${JSON.stringify(planRecord(planned.plan), null, 2)}\n`
      : `${planText(planned)
          .flatMap((line) => wrapped(line, { hang: 4 }))
          .join('\n')}\n`,
  );
  return done;
}

/** A set that has been planned, with all that was read for it. */
export interface PlannedFile {
  readonly layout: Layout;
  readonly trimmer: Trimmer | null;
  readonly plan: Plan;
  readonly arrangement: Arrangement;
}

/** Reads and plans; `null` when that cannot be done, with the reasons said on standard error. */
export async function planFile(
  file: string,
  { trimmer: trimmerFile }: { readonly trimmer?: string },
  world: World,
): Promise<PlannedFile | null> {
  const opened = await openLayout(file, world);
  const trimmer = await openTrimmer(trimmerFile, world);
  if ('problems' in opened || 'problems' in trimmer) return null;
  const layout = opened.value;
  const arrangement = openPile(layout, world);
  if (arrangement === null) return null;
  const set = await openSet({ layout, arrangement, trimmer: trimmer.value }, world);
  const answer = planSet(set);
  if (answer.kind === 'plan') return { layout, trimmer: trimmer.value, plan: answer, arrangement };
  const sentences = shortageSentences(answer, layout, { units: layout.units, glyphs: 'typed' });
  world.err(`${sentences.join('\n')}\n`);
  return null;
}

/** The plan as a docket to read: what it takes, then paper after paper the steps and what is left. */
function planText({ layout, trimmer, plan }: PlannedFile): readonly string[] {
  const showing: Showing = { units: layout.units, glyphs: 'typed' };
  const papers = [...plan.papers.keys()].map((id) => layout.papers.get(id)!);
  const steps = stepWords(plan, { layout, trimmer }, showing);
  const lines = [`${layout.title}: ${counted(layout.cards, 'card')}`.replace(/^: /, ''), ''];
  lines.push(...papers.map((paper) => planSentence(paper, plan)));
  const breaks = sittingsSentence(plan, trimmer);
  if (breaks !== '') lines.push(breaks);
  for (const paper of papers) {
    lines.push('', ...docketOf(paper, showing), effortSentence(paper, plan));
    lines.push(...slackSentences(paper, plan, showing));
    for (const words of steps.filter((step) => step.paper === paper.id)) {
      lines.push(`  ${String(words.step).padStart(2)}. ${stepSentence(words)}`);
    }
    lines.push(...leftoverSentences(paper, plan, showing).map((sentence) => `  Left: ${sentence}`));
  }
  return lines;
}
