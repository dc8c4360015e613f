import type { FileProblemCode } from '../words/index.ts';
import { excerpt } from './excerpt.ts';
import { type FileProblem, fileProblem } from './fileProblem.ts';
import type { Path } from './path.ts';

/** A JSON value. Objects have no prototype, so that only what the file says is found in them. */
export type Json = null | boolean | number | string | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [field: string]: Json;
}

/** How deep brackets may stand inside brackets. */
export const deepest = 100;

/** How many repeated names and the like are told before reading on in silence. */
const mostTold = 100;

/**
 * The value of a JSON text (RFC 8259), read more strictly than `JSON.parse` and with an answer for people.
 *
 * Refused beside what is no JSON: a name that stands twice in an object (the first would be lost), the name
 * `__proto__`, numbers too large to be kept exactly, nesting deeper than `deepest`. A byte order mark at the
 * start is passed over. With `ok: true` there may still be problems; then `value` holds the first of each
 * repeated name. Lines and columns count from 1.
 */
export function readJson(
  text: string,
): { ok: true; value: Json; problems: FileProblem[] } | { ok: false; problems: FileProblem[] } {
  const reader = new Reader(text);
  const value = reader.document();
  return value === undefined
    ? { ok: false, problems: reader.problems }
    : { ok: true, value, problems: reader.problems };
}

/** Whether a value is an object of fields. */
export function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Whether a value is a list. */
export function isList(value: Json | undefined): value is readonly Json[] {
  return Array.isArray(value);
}

/** What stands at a path of a file; `undefined` where nothing does. */
export function valueAt(file: Json, path: Path): Json | undefined {
  let value: Json | undefined = file;
  for (const key of path) {
    if (isObject(value)) value = value[key];
    else if (isList(value) && typeof key === 'number') value = value[key];
    else return undefined;
  }
  return value;
}

const numberText = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?/y;
const wordText = /[\p{L}\p{N}_$+\-.]+/uy;
/** After a number: what shows that it was to be a text, as in `2 1/4 in` or `4½`. */
const afterNumber = /[ \t]*(?:[\p{L}\p{N}]|\/(?![/*]))/uy;
const inchesOrUnit = /[^\x20-\x7e]|[0-9.](?:in|inch|inches|ft|mm|cm)$/i;
/** To the end of the entry or line. */
const bareText = /[^,\]}"\n\r]{0,200}/y;
const quotes = "'`\u2018\u2019\u201a\u201c\u201d\u201e\u00ab\u00bb";

/** Reads one text from its start; every reading answers `undefined` once something is wrong, and reading ends. */
class Reader {
  readonly problems: FileProblem[] = [];
  private at: number;
  private depth = 0;
  private readonly path: (string | number)[] = [];
  // Lines are counted up to where the last problem stood: problems come in the order of the text.
  private line = 1;
  private lineStart: number;
  private counted: number;

  constructor(private readonly text: string) {
    this.at = text.startsWith('\uFEFF') ? 1 : 0;
    this.lineStart = this.at;
    this.counted = this.at;
  }

  document(): Json | undefined {
    this.space();
    const value = this.value();
    if (value === undefined) return undefined;
    this.space();
    if (this.at < this.text.length) return this.unexpected('nothing');
    return value;
  }

  private value(): Json | undefined {
    switch (this.text[this.at]) {
      case '{':
        return this.nested(() => this.object());
      case '[':
        return this.nested(() => this.list());
      case '"':
        return this.string();
      default:
        return this.word();
    }
  }

  /** What `read` finds inside the bracket that stands here. */
  private nested(read: () => Json | undefined): Json | undefined {
    if (this.depth === deepest) return this.fail('jsonDeep', this.at, {}, { high: deepest });
    this.depth += 1;
    this.at += 1;
    const value = read();
    this.depth -= 1;
    return value;
  }

  private object(): JsonObject | undefined {
    const object = Object.create(null) as { [field: string]: Json };
    this.space();
    if (this.take('}')) return object;
    for (;;) {
      const nameAt = this.at;
      if (this.text[this.at] !== '"') return this.unexpected('json-name');
      const name = this.string();
      if (name === undefined) return undefined;
      this.space();
      if (!this.take(':')) return this.unexpected('json-colon');
      this.space();
      this.path.push(name);
      const reserved = name === '__proto__';
      const twice = name in object;
      if (reserved) this.tell('fieldReserved', nameAt);
      else if (twice) this.tell('fieldTwice', nameAt);
      const value = this.value();
      if (value === undefined) return undefined;
      if (!reserved && !twice) object[name] = value;
      this.path.pop();
      this.space();
      if (this.take('}')) return object;
      const comma = this.at;
      if (!this.take(',')) return this.unexpected('json-next-field');
      this.space();
      if (this.text[this.at] === '}') return this.fail('jsonTrailingComma', comma, { found: '}' });
    }
  }

  private list(): readonly Json[] | undefined {
    const list: Json[] = [];
    this.space();
    if (this.take(']')) return list;
    for (;;) {
      this.path.push(list.length);
      const value = this.value();
      if (value === undefined) return undefined;
      this.path.pop();
      list.push(value);
      this.space();
      if (this.take(']')) return list;
      const comma = this.at;
      if (!this.take(',')) return this.unexpected('json-next-entry');
      this.space();
      if (this.text[this.at] === ']') return this.fail('jsonTrailingComma', comma, { found: ']' });
    }
  }

  private string(): string | undefined {
    const start = this.at;
    let escaped = false;
    for (let at = start + 1; at < this.text.length; at += 1) {
      const unit = this.text.charCodeAt(at);
      if (unit === 0x22) {
        this.at = at + 1;
        // An inch mark: "4 1/4"" ends after the 4, and a second quote stands there.
        if (this.text[this.at] === '"') return this.fail('jsonInchMark', this.at);
        const token = this.text.slice(start, this.at);
        return escaped ? String(JSON.parse(token)) : token.slice(1, -1);
      }
      if (unit === 0x0a || unit === 0x0d) break;
      if (unit < 0x20) return this.fail('jsonControl', at, signNames(this.text[at] ?? ''));
      if (unit === 0x5c) {
        const escaping = /^\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/.exec(this.text.slice(at, at + 6));
        if (escaping === null)
          return this.fail('jsonEscape', at, { found: excerpt(this.text.slice(at, at + 2)) });
        escaped = true;
        at += escaping[0].length - 1;
      }
    }
    return this.fail('jsonTextOpen', start);
  }

  /** A number or one of JSON's three words. */
  private word(): Json | undefined {
    for (const [word, value] of words) {
      if (this.text.startsWith(word, this.at) && this.token() === word) {
        this.at += word.length;
        return value;
      }
    }
    const start = this.at;
    const token = this.token();
    this.at += token.length;
    numberText.lastIndex = start;
    const digits = numberText.exec(this.text)?.[0];
    if (/[\p{L}\p{N}]/u.test(token) && this.isBareText(token)) return this.unquoted(start);
    if (token === '' || digits !== token) {
      this.at = start;
      return /[0-9]/.test(token) || /^[+-]?(?:inf(?:inity)?|nan)$/i.test(token)
        ? this.fail('jsonNumber', start, { found: shown(token) })
        : this.unexpected('json-value');
    }
    const number = Number(digits);
    if (!isKept(digits, number)) this.tell('jsonNumberInexact', start, { found: shown(digits) });
    // JSON cannot say -0 and 0 apart once it is written again.
    return number === 0 ? 0 : number;
  }

  /** Whether `token`, which ends where the reading stands, was to be a text: a word, or a length such as `2 1/4 in`. */
  private isBareText(token: string): boolean {
    if (!/^[+-]?(?:\.?[0-9]|inf|nan)/i.test(token) || inchesOrUnit.test(token)) return true;
    afterNumber.lastIndex = this.at;
    return afterNumber.test(this.text);
  }

  /** A text or a length begins at `start` without its quotes: told as far as it goes. */
  private unquoted(start: number): undefined {
    bareText.lastIndex = start;
    const found = bareText.exec(this.text)?.[0] ?? '';
    return this.fail('jsonUnquoted', start, { found: shown(found.trim()) });
  }

  /** The run of letters, digits and signs that stands here, which may be empty. */
  private token(): string {
    wordText.lastIndex = this.at;
    return wordText.exec(this.text)?.[0] ?? '';
  }

  private space(): void {
    while (' \t\n\r'.includes(this.text[this.at] ?? 'x')) this.at += 1;
  }

  private take(character: string): boolean {
    if (this.text[this.at] !== character) return false;
    this.at += 1;
    return true;
  }

  /** Says what stands here in place of what was wanted, with a word of its own for the usual slips. */
  private unexpected(
    wanted: 'json-value' | 'json-name' | 'json-colon' | 'json-next-field' | 'json-next-entry' | 'nothing',
  ): undefined {
    const character = [...this.text.slice(this.at, this.at + 2)][0];
    if (character === undefined) return this.fail('jsonEnds', this.at, { wanted });
    if (character === '#' || /^\/[/*]/.test(this.text.slice(this.at, this.at + 2)))
      return this.fail('jsonComment', this.at);
    if (character === '\0' || character === '\ufffd') return this.fail('fileEncoding', this.at);
    const token = this.token();
    const standing = token === '' ? signNames(character) : { found: shown(token) };
    if (wanted === 'nothing') return this.fail('jsonAfterEnd', this.at, standing);
    if (quotes.includes(character) || (wanted === 'json-name' && token !== ''))
      return this.fail('jsonQuote', this.at, standing);
    return this.fail('jsonUnexpected', this.at, { ...standing, wanted });
  }

  /** Ends the reading: the text is no JSON, or none that is read here. */
  private fail(
    code: FileProblemCode,
    at: number,
    names: Readonly<Record<string, string>> = {},
    numbers: Readonly<Record<string, number>> = {},
  ): undefined {
    this.problems.push(fileProblem(code, [], names, { ...numbers, ...this.place(at) }));
    return undefined;
  }

  /** Names what is wrong with the field that is being read, and reads on. */
  private tell(code: FileProblemCode, at: number, names: Readonly<Record<string, string>> = {}): void {
    if (this.problems.length < mostTold)
      this.problems.push(fileProblem(code, this.path, names, this.place(at)));
  }

  private place(at: number): { line: number; column: number } {
    for (; this.counted < at; this.counted += 1) {
      const unit = this.text[this.counted];
      if (unit === '\n' || (unit === '\r' && this.text[this.counted + 1] !== '\n')) {
        this.line += 1;
        this.lineStart = this.counted + 1;
      }
    }
    return { line: this.line, column: at - this.lineStart + 1 };
  }
}

const words: readonly (readonly [string, Json])[] = [
  ['true', true],
  ['false', false],
  ['null', null],
];

/** Whether the number stands for what was typed, or is at least written so again. */
function isKept(digits: string, number: number): boolean {
  if (!Number.isFinite(number)) return false;
  if (!/^-?[0-9]+$/.test(digits) || String(number) === digits) return true;
  return BigInt(digits) === BigInt(number);
}

/** A single character: `sign` when it can be seen, else its escape as `hidden`. */
function signNames(character: string): { sign: string } | { hidden: string } {
  const escaped = shown(character);
  return /^\\u/.test(escaped) || character <= ' ' ? { hidden: escaped } : { sign: character };
}

/** Text as an excerpt has it, without the quotes. */
function shown(text: string): string {
  return excerpt(text).slice(1, -1);
}
