import type { FinishedProblem } from '../finished/index.ts';
import type { Layout } from '../layout/index.ts';
import type { PostFault } from '../making/index.ts';
import { lengthOfTicks, showLengthWithUnit } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { aboutThick } from './aboutThick.ts';
import { postFaultWords } from './postFault.ts';
import type { Showing } from './showing.ts';

/** What is wrong with a closed card for its envelope or for the post, and what would help. */
export function closedProblemSentence(problem: FinishedProblem, _: Layout, showing: Showing): string {
  const number = (key: string): number => {
    const value = problem.numbers[key];
    assert(value !== undefined, 'A problem brings the numbers of its sentence', { problem, key });
    return value;
  };
  const { names } = problem;
  const length = (key: string) =>
    showLengthWithUnit(lengthOfTicks(Math.abs(number(key))), showing.units, showing.glyphs);
  if (problem.code === 'envelopeTooSmall' || problem.code === 'envelopeTight') {
    const envelope = names.name === undefined ? 'The envelope' : `The envelope ${names.name}`;
    const sides = `along its ${names.side ?? ''} side it is ${length('envelope')}, the card is ${length('card')}`;
    const thick =
      number('thickness') > 0
        ? ` and its thickness, which an envelope goes round, takes about ${aboutThick(lengthOfTicks(number('thickness')), showing)} more`
        : '';
    const instead =
      names.smallest === undefined
        ? `One of ${length('height')} by ${length('length')} or more does.`
        : `${names.smallest} is the smallest usual one that does.`;
    return problem.code === 'envelopeTooSmall'
      ? `${envelope} is too small: ${sides}${thick}. ${instead}`
      : `${envelope} is a tight fit: ${sides}${thick}. Try one card in it before all are made. ${instead.replace(/ does\.$/, ' has the usual room.')}`;
  }
  const faults: string[] = [];
  for (let at = 1; names[`why${at}`] !== undefined; at += 1) {
    const code = names[`why${at}`] as PostFault['code'];
    faults.push(postFaultWords({ code, is: number(`is${at}`), limit: number(`limit${at}`) }, showing));
  }
  const why = faults.join('; and ');
  const post = `The post of ${countryName(names.post ?? '')}`;
  const said = `as its limits were in ${names.asOf ?? ''}`;
  const help = names.change === undefined ? '' : ` ${changeSentence(names)}`;
  return problem.code === 'notPosted'
    ? `${post} takes the card as no letter (${said}), for ${why}.${help} The local post office decides.`
    : `${post} takes the card not as “${names.smallest ?? ''}” but as “${names.as ?? ''}” (${said}), for ${why}.${help} The local post office decides.`;
}

/** `the United States`, `Germany`. */
export function countryName(country: string): string {
  return country.startsWith('United') ? `the ${country}` : country;
}

function changeSentence({
  change = '',
  changed = '',
  becomes = '',
}: Readonly<Record<string, string>>): string {
  const how: Readonly<Record<string, string>> = {
    thinnerFoam: 'With thinner foam',
    flatPart: `With ${changed} laid flat`,
    withoutFoam: 'Without the foam',
    withoutPart: `Without ${changed}`,
    lighterEnvelope: 'In a lighter envelope',
    otherEnvelope: `In an envelope ${changed}`,
    smallerCard: `As a smaller card in an envelope ${changed}`,
  };
  return `${how[change] ?? ''} it is “${becomes}”.`;
}
