import { english } from './english/english.ts';
import type { Messages } from './messages.ts';

/**
 * A language that nobody speaks: every letter of the English words is marked and the words are longer, what is filled
 * in stays. A page shown in it betrays each word that is not in the catalogue, and each place too narrow for longer
 * words.
 */
export function pseudoMessages(): Messages {
  return marked(english);
}

function marked<Value>(value: Value): Value {
  if (typeof value === 'string') return markedText(value) as Value;
  if (typeof value === 'function') {
    const say = value as unknown as (...parameters: readonly unknown[]) => string;
    return ((...parameters: readonly unknown[]) => {
      // Texts that are filled in are put back as they were.
      const filled: string[] = [];
      const stood = parameters.map((parameter) => {
        if (typeof parameter !== 'string') return parameter;
        filled.push(parameter);
        return String.fromCodePoint(firstStandIn + filled.length - 1);
      });
      return markedText(say(...stood)).replace(
        /[\u{F0000}-\u{F00FF}]/gu,
        (standIn) => filled[standIn.codePointAt(0)! - firstStandIn] ?? standIn,
      );
    }) as Value;
  }
  if (Array.isArray(value)) return value.map(marked) as Value;
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, marked(inner)])) as Value;
  }
  return value;
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
