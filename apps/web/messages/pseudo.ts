import { english } from './english/english.ts';
import type { Messages } from './messages.ts';

/**
 * A language that nobody speaks: every letter of the English words is marked and the words are longer, what is filled
 * in stays. A page shown in it betrays each word that is not in the catalogue, and each place too narrow for longer
 * words.
 */
export function pseudoMessages(): Messages {
  // What is marked has every name that it had; the types of a catalogue are too narrow to say so.
  return marked(english) as Messages;
}

/** What a catalogue is made of. */
type Words =
  | string
  | ((...parameters: never[]) => string)
  | readonly Words[]
  | { readonly [name: string]: Words };

function marked(value: Words): Words {
  if (typeof value === 'string') return markedText(value);
  if (typeof value === 'function') return (...parameters) => markedSaying(value, parameters);
  if (isList(value)) return value.map(marked);
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, marked(inner)]));
}

function isList(value: Words): value is readonly Words[] {
  return Array.isArray(value);
}

/** What is said of the parameters, marked; texts that are filled in stay as they were. */
function markedSaying(say: (...parameters: never[]) => string, parameters: readonly unknown[]): string {
  const filled: string[] = [];
  const stood = parameters.map((parameter) => {
    if (typeof parameter !== 'string') return parameter;
    filled.push(parameter);
    return String.fromCodePoint(firstStandIn + filled.length - 1);
  });
  const said: unknown = Reflect.apply(say, undefined, stood);
  if (typeof said !== 'string') throw new Error('A message says a text');
  return markedText(said).replace(
    /[\u{F0000}-\u{F00FF}]/gu,
    (standIn) => filled[standIn.codePointAt(0)! - firstStandIn] ?? standIn,
  );
}

/** From the private planes, so that no text has it. */
const firstStandIn = 0xf0000;

/** `Lay it here` → `Ļáẏ íţ ĥéŕé ~~~`; what stands in braces is a blank of a sentence and stays. */
function markedText(text: string): string {
  const letters = text.replace(/\{[^}]*\}|[a-z]/giu, (found) =>
    found.length > 1 ? found : (accented[found] ?? found),
  );
  return text.trim() === '' ? text : `${letters}${'~'.repeat(Math.ceil(text.length / 4))}`;
}

const plain = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ';
const withMarks = 'áƀçđéƒĝĥíĵķļḿńóṕɋŕšţúṽŵẋýžÁƁÇĐÉƑĜĤÍĴĶĻḾŃÓṔɊŔŠŢÚṼŴẊÝŽ';
const accented: Readonly<Record<string, string>> = Object.fromEntries(
  [...plain].map((letter, index) => [letter, [...withMarks][index]!]),
);
