import * as z from 'zod';
import { assert } from '../problem/index.ts';
import { expecting } from './expectation.ts';
import { longestLength, oneOf, wholeNumber } from './field.ts';
import type { FileProblem } from './fileProblem.ts';
import { readFileText, tellable } from './fileText.ts';
import { shapeProblems } from './shapeProblems.ts';

/** The version of the plan file that this program reads. */
export const planVersion = 1;

/** What a plan file holds, as far as it is needed to go on from it; fields beside these are passed over. */
export type PlanFile = z.infer<typeof shape>;

/**
 * The plan in the text that `plan --json` or `recut --json` wrote, or everything that is wrong with its fields, in
 * their order. Whether it fits a layout and comes out is for `planning` to say.
 */
export function readPlanFile(text: string): { plan: PlanFile } | { problems: FileProblem[] } {
  const read = readFileText(text, 'cardwright_plan', planVersion);
  if ('problems' in read) return read;
  const { file, repeated } = read;
  const parsed = shape.safeParse(file);
  const problems = [...repeated, ...(parsed.success ? [] : shapeProblems(parsed.error, file))];
  if (problems.length > 0) return { problems: tellable(problems, file) };
  assert(parsed.success, 'A file without problems is in shape');
  return { plan: parsed.data };
}

const most = 100_000;
const longestText = 200;

const text = z
  .string({ error: expecting('text') })
  .max(longestText, { error: expecting('text', { high: longestText }) });
const count = wholeNumber(0, 10_000_000);
const ticks = wholeNumber(1, longestLength, 'ticks');
const size = z.tuple([ticks, ticks], { error: expecting('tick-size') }).readonly();
const flag = z.boolean({ error: expecting('flag') });
const cost = z.number({ error: expecting('number', { low: 0, high: 1e12 }) }).min(0, {
  error: expecting('number', { low: 0, high: 1e12 }),
});
const edge = oneOf(['left', 'right', 'top', 'bottom']);
const object = <Shape extends z.core.$ZodLooseShape>(fields: Shape) =>
  z.object(fields, { error: expecting('object') });
const list = <Of extends z.ZodType>(of: Of) =>
  z.array(of, { error: expecting('plan-list') }).max(most, { error: expecting('plan-list', { high: most }) });
const table = <Of extends z.ZodType>(of: Of) =>
  z.record(z.string().max(longestText, { error: expecting('text', { high: longestText }) }), of, {
    error: expecting('plan-table'),
  });

const shape = object({
  cardwright_plan: z.literal(1, { error: expecting('version') }),
  ticks_per_inch: z.literal(40_640, { error: expecting('ticks-per-inch') }),
  cards: wholeNumber(1, most),
  pieces: list(
    object({ piece: text, part: text, paper: text, size, need: count, turn: oneOf(['locked', 'free']) }),
  ),
  sheets: list(object({ id: text, paper: text, stock: count, size })),
  steps: list(
    object({
      step: wholeNumber(1, 10_000_000),
      take: list(text).min(1, { error: expecting('plan-list') }),
      axis: oneOf(['width', 'height']),
      set: ticks,
      repeat: wholeNumber(1, most),
      gives: list(list(text)),
      rest: list(text.nullable()),
      dial: wholeNumber(-longestLength, longestLength, 'ticks').exactOptional(),
      otherSide: z.literal(true, { error: expecting('flag') }).exactOptional(),
      squares: edge.exactOptional(),
    }),
  ),
  finished: table(text),
  leftovers: list(object({ id: text, size, keep: flag })),
  papers: table(
    object({
      sheets: count,
      cost,
      bound: cost,
      proved: flag,
      passes: count,
      settings: count,
      turns: count,
      measuredIn: oneOf(['price', 'sheets', 'square inches']).exactOptional(),
      leastSettings: count.exactOptional(),
      leastPasses: count.exactOptional(),
    }),
  ),
  spares: object({ made: flag, offers: list(object({ piece: text, offered: count })) }).exactOptional(),
  recut: object({
    steps: count,
    moreSpares: table(count),
    papers: table(
      object({
        begun: list(count),
        sheets: count,
        lying: list(
          object({
            id: text,
            size,
            margin: z.partialRecord(edge, ticks, { error: expecting('plan-table') }).exactOptional(),
            stock: count.nullable(),
            from: object({ kind: oneOf(['piece', 'rest']), step: count }).nullable(),
          }),
        ),
      }),
    ),
  }).exactOptional(),
});
