import * as z from 'zod/mini';
import { assert } from '../problem/index.ts';
import { expecting } from './expectation.ts';
import { longestLength, once, oneOf, wholeNumber } from './field.ts';
import type { FileProblem } from './fileProblem.ts';
import { readFileText, tellable } from './fileText.ts';
import { shapeProblems } from './shapeProblems.ts';

/** The version of the plan file that this program reads. */
export const planVersion = 1;

/** What a plan file holds, as far as it is needed to go on from it; fields beside these are passed over. */
export type PlanFile = z.infer<ReturnType<typeof planShape>>;

/**
 * The plan in the text that `plan --json` or `recut --json` wrote, or everything that is wrong with its fields, in
 * their order. Whether it fits a layout and comes out is for `planning` to say.
 */
export function readPlanFile(text: string): { plan: PlanFile } | { problems: FileProblem[] } {
  const read = readFileText(text, 'cardwright_plan', planVersion);
  if ('problems' in read) return read;
  const { file, repeated } = read;
  const parsed = planShape().safeParse(file);
  const problems = [...repeated, ...(parsed.success ? [] : shapeProblems(parsed.error, file))];
  if (problems.length > 0) return { problems: tellable(problems, file) };
  assert(parsed.success, 'A file without problems is in shape');
  return { plan: parsed.data };
}

const most = 100_000;
const longestText = 200;

const planShape = once(() => {
  const text = z
    .string({ error: expecting('text') })
    .check(z.maxLength(longestText, { error: expecting('text', { high: longestText }) }));
  const count = wholeNumber(0, 10_000_000);
  const ticks = wholeNumber(1, longestLength, 'ticks');
  const size = z.readonly(z.tuple([ticks, ticks], { error: expecting('tick-size') }));
  const flag = z.boolean({ error: expecting('flag') });
  const cost = z.number({ error: expecting('number', { low: 0, high: 1e12 }) }).check(
    z.minimum(0, {
      error: expecting('number', { low: 0, high: 1e12 }),
    }),
  );
  const edge = oneOf(['left', 'right', 'top', 'bottom']);
  const object = <Shape extends z.core.$ZodLooseShape>(fields: Shape) =>
    z.object(fields, { error: expecting('object') });
  const list = <Of extends z.ZodMiniType>(of: Of) =>
    z
      .array(of, { error: expecting('plan-list') })
      .check(z.maxLength(most, { error: expecting('plan-list', { high: most }) }));
  const name = z
    .string()
    .check(z.maxLength(longestText, { error: expecting('text', { high: longestText }) }));
  const table = <Of extends z.ZodMiniType>(of: Of) => z.record(name, of, { error: expecting('plan-table') });

  return object({
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
        take: list(text).check(z.minLength(1, { error: expecting('plan-list') })),
        axis: oneOf(['width', 'height']),
        set: ticks,
        repeat: wholeNumber(1, most),
        gives: list(list(text)),
        rest: list(z.nullable(text)),
        dial: z.exactOptional(wholeNumber(-longestLength, longestLength, 'ticks')),
        otherSide: z.exactOptional(z.literal(true, { error: expecting('flag') })),
        squares: z.exactOptional(edge),
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
        measuredIn: z.exactOptional(oneOf(['price', 'sheets', 'square inches'])),
        leastSettings: z.exactOptional(count),
        leastPasses: z.exactOptional(count),
      }),
    ),
    dealt: z.exactOptional(table(list(object({ paper: text, cards: wholeNumber(1, most), beyond: count })))),
    spares: z.exactOptional(object({ made: flag, offers: list(object({ piece: text, offered: count })) })),
    recut: z.exactOptional(
      object({
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
                margin: z.exactOptional(z.partialRecord(edge, ticks, { error: expecting('plan-table') })),
                stock: z.nullable(count),
                from: z.nullable(object({ kind: oneOf(['piece', 'rest']), step: count })),
              }),
            ),
          }),
        ),
      }),
    ),
  });
});
