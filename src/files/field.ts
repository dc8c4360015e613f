import * as z from 'zod/mini';
import { type Length, millimetres, readLength, type Units } from '../measure/index.ts';
import { pathLimits, readPath } from '../shape/index.ts';
import type { FileProblemCode, Wanted } from '../words/index.ts';
import { excerpt } from './excerpt.ts';
import { expecting } from './expectation.ts';
import type { Json } from './json.ts';

// No `new Function`: a page may forbid it by its content security policy.
z.config({ jitless: true });

/** No sheet or roll is longer; areas in square ticks stay exact in a number. */
export const longestLength: Length = millimetres(10_000);

/** Letters, digits, `-` and `_`. */
export const idForm = /^[A-Za-z0-9_-]+$/;
export const longestId = 60;
const longestText = 200;

/** Whether a text may be the id of a part or a paper. */
export function isId(text: string): boolean {
  return text.length <= longestId && idForm.test(text);
}

/** Which lengths a field takes. */
export type LengthRange = 'positive' | 'not negative' | 'any';

/** What a check of ours finds wrong with a field's text, in the `params` of its zod issue. */
export interface Finding {
  readonly code: FileProblemCode;
  readonly names: Readonly<Record<string, string>>;
  readonly numbers: Readonly<Record<string, number>>;
}

/** The length in a value of a file that may not be in shape; `null` where it is none. */
export function lengthIn(value: Json | undefined, units: Units): Length | null {
  if (typeof value !== 'string') return null;
  const reading = readLength(value, units);
  return reading.ok ? reading.length : null;
}

/** An object with these fields and no others. */
export function fields<Shape extends z.core.$ZodLooseShape>(wanted: Wanted, shape: Shape) {
  return z.strictObject(shape, {
    error: () => expecting(wanted, {}, { fields: Object.keys(shape).join(', ') }),
  });
}

/** A field with what the published schema says of it. */
export function described<Schema extends z.ZodMiniType>(schema: Schema, description: string): Schema {
  z.globalRegistry.add(schema, { description });
  return schema;
}

/** A field that need not be there, with what the published schema says of it. */
export function maybe<Schema extends z.ZodMiniType>(
  schema: Schema,
  description: string,
): z.ZodMiniOptional<Schema> {
  return described(z.optional(schema), description);
}

/** A shape that is made when it is first asked for: that is work which a page would do before it shows anything. */
export function once<Shape>(make: () => Shape): () => Shape {
  let made: { readonly shape: Shape } | null = null;
  return () => {
    made ??= { shape: make() };
    return made.shape;
  };
}

/** A shape for each of the units. */
export function inUnits<Shape>(shapeIn: (units: Units) => Shape): (units: Units) => Shape {
  const shapes = { in: once(() => shapeIn('in')), mm: once(() => shapeIn('mm')) };
  return (units) => shapes[units]();
}

/** SVG path data of an outline. */
export function pathText() {
  return judged('outline', (text) => {
    const reading = readPath(text);
    if (reading.ok) return null;
    const names = { fault: reading.code, found: reading.found };
    return { code: 'outlineUnreadable', names, numbers: { at: reading.at } };
  }).register(z.globalRegistry, { maxLength: pathLimits.characters });
}

/** A length as text; one without a unit is in `units`. */
export function lengthText(units: Units, range: LengthRange, wanted: Wanted = 'length') {
  return described(
    judged(wanted, (text) => lengthFinding(text, units, range)),
    'A length as text with its unit, such as "2 1/4 in" or "57 mm".',
  );
}

/** A length or the word `fill`. */
export function lengthOrFill(units: Units) {
  return described(
    judged('length-or-fill', (text) => (text === 'fill' ? null : lengthFinding(text, units, 'positive'))),
    'A length as text with its unit, such as "2 1/4 in" or "57 mm", or "fill".',
  );
}

/** One line of text to be shown to people. */
export function shownText(most = longestText) {
  return judged('text', (text) => textFinding(text, most)).register(z.globalRegistry, { maxLength: most });
}

/** The id of a paper. */
export function idText(wanted: Wanted = 'id') {
  return z
    .string({ error: expecting(wanted) })
    .check(
      z.maxLength(longestId, { error: expecting(wanted, { high: longestId }) }),
      z.regex(idForm, { error: expecting(wanted) }),
    );
}

/** A whole number of that range. */
export function wholeNumber(low: number, high: number, wanted: Wanted = 'whole-number') {
  const error = expecting(wanted, { low, high });
  return z.int({ error }).check(z.minimum(low, { error }), z.maximum(high, { error }));
}

/** A number of that range, whole or not. */
export function numberIn({ low, high }: { readonly low: number; readonly high: number }) {
  const error = expecting('number', { low, high });
  return z.number({ error }).check(z.minimum(low, { error }), z.maximum(high, { error }));
}

/** One of these words. */
export function oneOf<const Words extends readonly string[]>(words: Words) {
  return z.enum(words, { error: expecting('choice', {}, { values: choiceOf(words) }) });
}

/** `"a", "b" or "c"`. */
export function choiceOf(words: readonly string[]): string {
  const quoted = words.map((word) => `"${word}"`).join(', ');
  return quoted.replace(/, (?="[^"]*"$)/, ' or ');
}

/** A text in which a check of ours may find something wrong. */
function judged(wanted: Wanted, findingIn: (text: string) => Finding | null) {
  return z.string({ error: expecting(wanted) }).check(
    z.superRefine((input, context) => {
      const finding = findingIn(input);
      if (finding !== null)
        context.addIssue({ code: 'custom', input, params: { finding }, message: expecting('text') });
    }),
  );
}

function lengthFinding(text: string, units: Units, range: LengthRange): Finding | null {
  const reading = readLength(text, units);
  const found = excerpt(text);
  if (!reading.ok)
    return {
      code: 'lengthUnreadable',
      // A text that is too long to be read is so with one character more than the longest, too.
      names: { found, why: reading.why, text: text.slice(0, 81), units },
      numbers: { at: reading.at },
    };
  if (Math.abs(reading.length) > longestLength)
    return { code: 'lengthTooLarge', names: { found }, numbers: { high: longestLength } };
  if (range === 'positive' && reading.length === 0 && /[1-9]/.test(text))
    return { code: 'lengthTooSmall', names: { found }, numbers: { low: 1 } };
  if (range === 'positive' && reading.length <= 0)
    return { code: 'lengthNotPositive', names: { found }, numbers: { length: reading.length } };
  if (range === 'not negative' && reading.length < 0)
    return { code: 'lengthNegative', names: { found }, numbers: { length: reading.length } };
  return null;
}

// What no page or drawing can hold (control characters, lone halves of a pair, code points that are no
// characters: XML 1.0, section 2.2), line ends, and marks that turn the direction of the text around them.
const odd = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069\ufffe\uffff]/u;
/** What stands for bytes that were no UTF-8, once a file has been decoded. */
const notUtf8 = '\ufffd';

function textFinding(text: string, most: number): Finding | null {
  const found = excerpt(text);
  if (text.length > most)
    return { code: 'textTooLong', names: { found }, numbers: { found: text.length, high: most } };
  if (text.includes(notUtf8)) return { code: 'textEncoding', names: { found }, numbers: {} };
  const character = odd.exec(text)?.[0];
  if (character !== undefined)
    return { code: 'textOdd', names: { found, character: excerpt(character) }, numbers: {} };
  return null;
}
