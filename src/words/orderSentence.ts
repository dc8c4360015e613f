import type { Assembly, AssemblyStep, FinishedProblem, OrderRule } from '../finished/index.ts';
import type { Layout } from '../layout/index.ts';
import { assert } from '../problem/index.ts';
import { capital, listed } from './count.ts';
import { minutesWords } from './minutesWords.ts';
import { partName } from './partName.ts';
import { placeName } from './tearSentence.ts';

/** One rule of the order of assembly as a sentence without its stop: what has to come first, and why. */
export function ruleWords(
  { why, lower, upper, first, last }: Omit<OrderRule, 'before'> & { readonly last: string },
  layout: Layout,
): string {
  const [low, high, one, other] = [lower, upper, first, last].map((id) => partName(layout, id));
  switch (why) {
    case 'wraps':
      return `${high} cannot go down before ${low} is round it, for the ends of ${low} go behind it`;
    case 'ends':
      return `${one} has to be on before ${other}, for ${high} covers the ends of ${low}`;
    case 'over':
      return first === lower && last === upper
        ? `${one} has to be on before ${other}, which lies over it`
        : `${one} has to be on before ${other}, for ${high} lies over ${low}`;
    case 'named':
      return `the order has ${one} before ${other}`;
  }
}

/** Why an order cannot be kept, or why there is none. */
export function orderProblemSentence({ code, names }: FinishedProblem, layout: Layout): string {
  const rules = rulesIn(names);
  const reasons = rules.map((rule) => ruleWords(rule, layout));
  if (code === 'orderRefused') {
    const [only, other] = reasons;
    return other === undefined && only !== undefined
      ? `The parts cannot be put on in this order: ${only}.`
      : `The parts cannot be put on in this order, for it goes round in a ring: ${reasons.join('; ')}.`;
  }
  assert(code === 'orderNone', 'Every problem of the order has its sentence', { code });
  const wrap = rules.find(({ why }) => why === 'wraps');
  const between = rules.find(({ why, lower }) => why === 'over' && lower === wrap?.upper);
  const way =
    wrap === undefined || between === undefined
      ? ''
      : ` Let ${partName(layout, between.upper)} lie on ${partName(layout, wrap.upper)}, so that both go down together.`;
  return `There is no order in which the parts can be put on: ${reasons.join('; ')}.${way}`;
}

/** The order of putting a card together, a sentence for each step with what had to come before it. */
export function orderSentences(assembly: Assembly, layout: Layout): readonly string[] {
  const { steps, dry } = assembly;
  return [
    ...steps.map((step) => stepSentence(step, steps, layout)),
    ...liftSentences(assembly, layout),
    ...(dry === 0
      ? []
      : [`Then let the card dry for ${minutesWords(dry)} before it goes into its envelope.`]),
  ];
}

/** What may be laid out first and lifted as one, so that gaps stay as they are. */
export function liftSentences({ lifts }: Pick<Assembly, 'lifts'>, layout: Layout): readonly string[] {
  return lifts.map((ids) => {
    const names = listed(ids.map((id) => partName(layout, id)));
    return `${capital(names)} are laid to one another: lay ${ids.length === 2 ? 'both' : 'them'} out where they belong, put removable tape across their fronts, and lift them as one to put the glue or foam on; so the gaps stay as they are. Try the tape on a scrap of the paper first, for it may tear the print.`;
  });
}

function stepSentence(step: AssemblyStep, steps: readonly AssemblyStep[], layout: Layout): string {
  const { number, part, does, onto, carries, reasons, releases } = step;
  const name = (id: string) => partName(layout, id);
  const how = does === 'wrap' ? `round ${placeName(layout, onto)}` : `onto ${placeName(layout, onto)}`;
  const wait = waitWords(step, steps, layout);
  const along = carries.length === 0 ? '' : `, with ${listed(carries.map(name))} on it`;
  // What simply lies under it is told in one.
  const isPlain = (rule: OrderRule) =>
    rule.why === 'over' && rule.first === rule.lower && rule.upper === part;
  const under = reasons.filter(isPlain).map(({ first }) => name(first));
  const why = [
    ...(under.length === 0
      ? []
      : [
          `${listed(under)} ${under.length === 1 ? 'has' : 'have'} to be on before, for ${name(part)} lies over ${under.length === 1 ? 'it' : 'them'}`,
        ]),
    ...reasons.filter((rule) => !isPlain(rule)).map((rule) => ruleWords({ ...rule, last: part }, layout)),
  ];
  const tape = releases.length === 0 ? '' : ` ${releaseWords(releases, layout)}`;
  return `${number}. ${name(part)} ${how}${along}.${wait === '' ? '' : ` ${wait}`}${tape}${why.length === 0 ? '' : ` ${capital(why.join('; '))}.`}`;
}

/** What has to have set before the work is turned over for a step; `''` where nothing has. */
export function waitWords(
  { waitsFor, turned }: AssemblyStep,
  steps: readonly AssemblyStep[],
  layout: Layout,
): string {
  if (waitsFor.length === 0) return '';
  const wet = steps.filter(({ number }) => waitsFor.includes(number));
  const minutes = Math.max(...wet.map(({ handle }) => handle));
  const under = listed(wet.map(({ part }) => partName(layout, part)));
  const what = turned === 'base' || turned === null ? 'the card' : partName(layout, turned);
  return `Let the glue under ${under} set for ${minutesWords(minutes)} before you turn ${what} over.`;
}

/** What becomes of the tape that held the ends of bands. */
export function releaseWords(bands: readonly string[], layout: Layout): string {
  return `Take off the tape that holds the ends of ${listed(bands.map((id) => partName(layout, id)))}, or leave it where this covers it.`;
}

function rulesIn(
  names: Readonly<Record<string, string>>,
): readonly (Omit<OrderRule, 'before'> & { readonly last: string })[] {
  const rules = [];
  for (let at = 1; names[`why${at}`] !== undefined; at += 1) {
    const name = (of: string) => names[`${of}${at}`] ?? '';
    rules.push({
      why: name('why') as OrderRule['why'],
      lower: name('lower'),
      upper: name('upper'),
      first: name('first'),
      last: name('last'),
    });
  }
  return rules;
}
