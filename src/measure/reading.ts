import type { Units } from './box.ts';
import { type Length, lengthOfTicks, ticksPerInch, ticksPerMillimetre } from './length.ts';

/** A length that was read from text, or why the text is none. */
export type LengthReading =
  | {
      readonly ok: true;
      /** What was written, rounded down (towards the smaller number) to a whole tick. */
      readonly length: Length;
      /** Whether nothing had to be rounded. */
      readonly exact: boolean;
      /** The system of the unit that was written, or the one that was given if none was written. */
      readonly units: Units;
    }
  | LengthRefusal;

/** Why a text is no length: which stretch of it could not be read, as data. */
export interface LengthRefusal {
  readonly ok: false;
  readonly why: LengthFault;
  /** Where the stretch begins, counted in UTF-16 units from 0; the length of the text where something is missing at its end. */
  readonly at: number;
  /** The stretch itself, as it was typed; empty where something is missing. */
  readonly found: string;
}

/** The reasons for which a text is not read as a length. */
export type LengthFault =
  /** Nothing but blanks. */
  | 'empty'
  /** More than 80 characters. */
  | 'too-long'
  /** A unit or a sign without a number. */
  | 'no-number'
  /** Something that has no place in a length, or not there. */
  | 'not-a-length'
  | 'unknown-unit'
  /** `5 1/` */
  | 'unfinished-fraction'
  | 'zero-denominator'
  /** `5 3/2`: likely a slip, for 5 2/3 or for 5 and a half more. */
  | 'improper-fraction'
  /** `5.5 1/4` or `1/4.5` */
  | 'decimal-in-fraction'
  /** `1,234`: a decimal comma, or thousands. */
  | 'ambiguous-comma'
  /** `1,234.5` or `1.2.3` */
  | 'two-separators'
  /** `5 - 1/4`: a hyphen that joins, or a difference. */
  | 'stray-dash'
  /** `5 + 1/4` */
  | 'a-sum'
  /** `4 1/4 x 5 1/2` */
  | 'a-size'
  /** `5 6` or `1 000` */
  | 'two-numbers'
  /** `5'`: feet, or inches with one stroke forgotten. */
  | 'lone-stroke'
  /** `1 ft 14 in` or `1.5 ft 2 in` */
  | 'odd-feet'
  /** Beyond 100 m either way. */
  | 'too-large';

/**
 * The length that a person typed: whole numbers, decimals with point or comma, fractions in every usual
 * typing (`5 1/4`, `5-1/4"`, `5¼`, `5 ¼ in`, `13,3 cm`, `1 ft 2 in`), with a unit or else in `units`.
 *
 * Total: every text is either read exactly or refused with the reason; what can be meant in two ways is
 * refused. Time is linear in the text up to 80 characters; longer texts are refused unread.
 */
export function readLength(text: string, units: Units): LengthReading {
  if (text.length > longestText)
    return refusalOf(text, { why: 'too-long', at: longestText, end: text.length });
  const tokens = tokensOf(text);
  const first = tokenAt(tokens, 0);
  if (first.kind === 'end') return refusalOf(text, { why: 'empty', at: 0, end: 0 });

  // A sign stands before the whole of it: -3 1/2 is three and a half to the left.
  const signed = first.kind === 'dash' || first.kind === 'plus';
  const leading = amountAt(tokens, signed ? 1 : 0);
  if ('why' in leading) return refusalOf(text, leading);
  const unit = unitAt(tokens, leading.next);

  // Some lengths go on after their unit: 1 ft 2 in, 5" 1/4.
  const trailing = trailingAmount(tokens, leading, unit);
  if ('why' in trailing) return refusalOf(text, trailing);

  // A point may end the sentence.
  const ends = tokenAt(tokens, trailing.next + 1).kind === 'end';
  const rest = ends ? skipPoint(tokens, trailing.next) : trailing.next;
  const slip = leftOver(tokens, rest, unit.name !== undefined);
  if (slip) return refusalOf(text, slip);

  const name = unit.name ?? units;
  const perUnit = ticksPerUnit[name];
  const top = leading.top * trailing.bottom * perUnit + trailing.top * leading.bottom * ticksPerUnit.in;
  const bottom = leading.bottom * trailing.bottom;
  const ticks = floorOf(first.kind === 'dash' ? -top : top, bottom);
  if (ticks > mostTicks || ticks < -mostTicks) {
    const end = tokenAt(tokens, rest - 1).end;
    return refusalOf(text, { why: 'too-large', at: first.at, end });
  }
  return {
    ok: true,
    length: lengthOfTicks(Number(ticks)),
    exact: top % bottom === 0n,
    units: name === 'in' || name === 'ft' ? 'in' : 'mm',
  };
}

/** No length that anybody types is longer, and it keeps the numbers small. */
const longestText = 80;
/** 100 m: far beyond any sheet or roll, far within exact numbers. */
const mostTicks = 100_000n * BigInt(ticksPerMillimetre);

type UnitName = Units | 'cm' | 'ft';

const ticksPerUnit: Readonly<Record<UnitName, bigint>> = {
  in: BigInt(ticksPerInch),
  ft: 12n * BigInt(ticksPerInch),
  mm: BigInt(ticksPerMillimetre),
  cm: 10n * BigInt(ticksPerMillimetre),
};

const unitWords: ReadonlyMap<string, UnitName> = new Map([
  ...(['in', 'ins', 'inch', 'inches'] as const).map((word) => [word, 'in'] as const),
  ...(['ft', 'foot', 'feet'] as const).map((word) => [word, 'ft'] as const),
  ...(['mm', 'mms', 'millimetre', 'millimetres', 'millimeter', 'millimeters'] as const).map(
    (word) => [word, 'mm'] as const,
  ),
  ...(['cm', 'cms', 'centimetre', 'centimetres', 'centimeter', 'centimeters'] as const).map(
    (word) => [word, 'cm'] as const,
  ),
]);

/** A stretch of the text, from `at` to before `end`, that could not be read. */
interface Slip {
  readonly why: LengthFault;
  readonly at: number;
  readonly end: number;
}

function refusalOf(text: string, slip: Slip): LengthRefusal {
  return { ok: false, why: slip.why, at: slip.at, found: text.slice(slip.at, slip.end) };
}

// --- From characters to tokens ---

const kinds = [
  'number', // 5  5.25  5,25  .5
  'raised', // ¹⁵ before a slash
  'lowered', // ₁₆ after a slash
  'vulgar', // ¼
  'oneOver', // ⅟, the start of a fraction
  'slash',
  'dash',
  'plus',
  'and',
  'times',
  'inchMark',
  'stroke', // a single one, as for feet
  'word',
  'point',
  'strange',
] as const;

interface Token {
  readonly kind: (typeof kinds)[number] | 'end';
  /** In plain small letters and digits. */
  readonly plain: string;
  readonly at: number;
  readonly end: number;
  /** Whether a blank stands before it. */
  readonly spaced: boolean;
}

const tokenForm = new RegExp(
  [
    '(?<blank>[\\s\\u180e\\u200b-\\u200f\\u202a-\\u202e\\u2060-\\u2064]+)',
    '(?<number>\\d+(?:[.,]\\d+)*|(?:[.,]\\d+)+)',
    '(?<raised>[⁰¹²³⁴-⁹]+)',
    '(?<lowered>[₀-₉]+)',
    '(?<vulgar>[¼½¾⅐-⅞↉])',
    '(?<oneOver>⅟)',
    '(?<slash>/)',
    '(?<dash>[-−])',
    '(?<plus>\\+)',
    '(?<and>&|and(?!\\p{L}))',
    '(?<times>[×*]|x(?!\\p{L}))',
    `(?<inchMark>"|'')`,
    `(?<stroke>')`,
    '(?<word>[\\p{L}㎜㎝㏌][\\p{L}\\p{M}]*)',
    '(?<point>\\.)',
    '(?<strange>.)',
  ].join('|'),
  'gisu',
);

/** What people have on their keyboards and in pasted text for one and the same character. */
const folds: ReadonlyMap<string, string> = new Map(
  Object.entries({
    '/': '⁄∕',
    // The true minus is kept apart: between two numbers it is no hyphen.
    '-': '‐‑‒–﹣',
    '"': '“”„‟″〃ˮ',
    "'": '‘’‚‛′´`ʹʼ',
    '×': '✕✖⨯',
  }).flatMap(([plain, others]) => Array.from(others, (other) => [other, plain] as const)),
);

/** Each UTF-16 unit replaced by one, so that places in the result are places in the text. */
function folded(text: string): string {
  return Array.from({ length: text.length }, (_, index) => {
    const code = text.charCodeAt(index);
    // The full-width forms of the ASCII characters.
    const unit = code >= 0xff01 && code <= 0xff5e ? String.fromCharCode(code - 0xfee0) : text.charAt(index);
    return folds.get(unit) ?? unit;
  }).join('');
}

function tokensOf(text: string): Token[] {
  const tokens: Token[] = [];
  let spaced = false;
  for (const match of folded(text).matchAll(tokenForm)) {
    const kind = kinds.find((name) => match.groups?.[name] !== undefined);
    if (kind) {
      const end = match.index + match[0].length;
      const plain = match[0].normalize('NFKC').toLowerCase();
      tokens.push({ kind, plain, at: match.index, end, spaced });
    }
    spaced = kind === undefined;
  }
  tokens.push({ kind: 'end', plain: '', at: text.length, end: text.length, spaced });
  return tokens;
}

/** The token at that place; beyond the last one, the end. */
function tokenAt(tokens: readonly Token[], index: number): Token {
  return tokens[Math.min(index, tokens.length - 1)]!;
}

// --- From tokens to numbers ---

/** A number that is not negative, top / bottom, and the place of the token after it. */
interface Amount {
  readonly top: bigint;
  readonly bottom: bigint;
  readonly next: number;
}

/** A whole number, a decimal, a fraction, or a whole number with a fraction. */
function amountAt(tokens: readonly Token[], start: number): Amount | Slip {
  if (beginsFraction(tokens, start)) return fractionAt(tokens, start);
  const first = tokenAt(tokens, start);
  if (
    first.kind === 'end' ||
    (first.kind === 'word' && unitWords.has(first.plain)) ||
    first.kind === 'inchMark'
  ) {
    return slipOf('no-number', first);
  }
  if (first.kind !== 'number') return slipOf('not-a-length', first);
  const number = numberOf(first, start + 1);
  if ('why' in number) return number;
  const fractionStart = joinedFraction(tokens, start + 1);
  if (fractionStart === undefined) return number;

  if (!isWhole(first)) return slipOf('decimal-in-fraction', first);
  const fraction = properFractionAt(tokens, fractionStart);
  if ('why' in fraction) return fraction;
  return { ...fraction, top: number.top * fraction.bottom + fraction.top };
}

function slipOf(why: LengthFault, from: Token, to: Token = from): Slip {
  return { why, at: from.at, end: to.end };
}

function numberOf(token: Token, next: number): Amount | Slip {
  const [whole = '', decimals = '', ...more] = token.plain.split(/[.,]/);
  if (more.length > 0) return slipOf('two-separators', token);
  // 0,125 and 1,25 and 1234,567 can only be decimals; 1,234 can be both.
  if (/^[1-9]\d{0,2},\d{3}$/.test(token.plain)) return slipOf('ambiguous-comma', token);
  return { top: BigInt(whole + decimals), bottom: 10n ** BigInt(decimals.length), next };
}

function isWhole(token: Token): boolean {
  return /^\d+$/.test(token.plain);
}

function beginsFraction(tokens: readonly Token[], start: number): boolean {
  const { kind } = tokenAt(tokens, start);
  if (kind === 'vulgar' || kind === 'oneOver') return true;
  return (kind === 'number' || kind === 'raised') && tokenAt(tokens, start + 1).kind === 'slash';
}

/** Where the fraction begins that belongs to the whole number before `start`, if there is one. */
function joinedFraction(tokens: readonly Token[], start: number): number | undefined {
  if (beginsFraction(tokens, start)) return start;
  const join = tokenAt(tokens, start);
  const joins =
    join.kind === 'and' ||
    // 5-1/4 is how many write 5 1/4; with blanks or a true minus it may be a difference.
    (join.kind === 'dash' && join.plain === '-' && !join.spaced && !tokenAt(tokens, start + 1).spaced);
  return joins && beginsFraction(tokens, start + 1) ? start + 1 : undefined;
}

function properFractionAt(tokens: readonly Token[], start: number): Amount | Slip {
  const fraction = fractionAt(tokens, start);
  if ('why' in fraction || fraction.top < fraction.bottom) return fraction;
  return slipOf('improper-fraction', tokenAt(tokens, start), tokenAt(tokens, fraction.next - 1));
}

/** The fraction at a place where `beginsFraction` says that one begins. */
function fractionAt(tokens: readonly Token[], start: number): Amount | Slip {
  const first = tokenAt(tokens, start);
  if (first.kind === 'vulgar') {
    // NFKC makes 1⁄4 of ¼.
    const [top = '', bottom = ''] = first.plain.split('⁄');
    return { top: BigInt(top), bottom: BigInt(bottom), next: start + 1 };
  }
  const below = first.kind === 'oneOver' ? start + 1 : start + 2;
  const last = tokenAt(tokens, below);
  if (last.kind !== 'number' && last.kind !== 'lowered') return slipOf('unfinished-fraction', last);
  const top = first.kind === 'oneOver' ? '1' : first.plain;
  if (!/^\d+$/.test(top) || !isWhole(last)) return slipOf('decimal-in-fraction', first, last);
  const bottom = BigInt(last.plain);
  if (bottom === 0n) return slipOf('zero-denominator', first, last);
  return { top: BigInt(top), bottom, next: below + 1 };
}

// --- Units, and what may stand after them ---

interface UnitRead {
  readonly name: UnitName | undefined;
  /** Whether a single stroke stands for the foot. */
  readonly stroke: Token | undefined;
  readonly next: number;
}

function unitAt(tokens: readonly Token[], start: number): UnitRead {
  const token = tokenAt(tokens, start);
  if (token.kind === 'inchMark') return { name: 'in', stroke: undefined, next: start + 1 };
  if (token.kind === 'stroke') return { name: 'ft', stroke: token, next: start + 1 };
  const name = token.kind === 'word' ? unitWords.get(token.plain) : undefined;
  if (name === undefined) return { name, stroke: undefined, next: start };
  return { name, stroke: undefined, next: skipPoint(tokens, start + 1) };
}

/** Past a point, as of an abbreviation (`2 in.`). */
function skipPoint(tokens: readonly Token[], start: number): number {
  return tokenAt(tokens, start).kind === 'point' ? start + 1 : start;
}

/** The inches after whole feet, or the fraction of an inch after whole inches; 0 where there is neither. */
function trailingAmount(tokens: readonly Token[], leading: Amount, unit: UnitRead): Amount | Slip {
  const none = { top: 0n, bottom: 1n, next: unit.next };
  const start = tokenAt(tokens, unit.next);

  if (unit.name === 'ft') {
    const goesOn = start.kind === 'number' || beginsFraction(tokens, unit.next);
    if (!goesOn) return unit.stroke ? slipOf('lone-stroke', unit.stroke) : none;
    const inches = amountAt(tokens, unit.next);
    if ('why' in inches) return inches;
    const inchUnit = unitAt(tokens, inches.next);
    const last = tokenAt(tokens, inches.next - 1);
    if (inchUnit.name !== 'in') return slipOf('two-numbers', start, last);
    if (leading.bottom !== 1n || inches.top >= 12n * inches.bottom) {
      return slipOf('odd-feet', tokenAt(tokens, 0), last);
    }
    return { ...inches, next: inchUnit.next };
  }

  if (unit.name === 'in' && leading.bottom === 1n && beginsFraction(tokens, unit.next)) {
    const fraction = properFractionAt(tokens, unit.next);
    if ('why' in fraction) return fraction;
    const again = unitAt(tokens, fraction.next);
    return { ...fraction, next: again.name === 'in' ? again.next : fraction.next };
  }
  return none;
}

/** What is wrong with the place at which the length should have ended; nothing if it ends there. */
function leftOver(tokens: readonly Token[], start: number, hasUnit: boolean): Slip | undefined {
  const token = tokenAt(tokens, start);
  switch (token.kind) {
    case 'end':
      return undefined;
    case 'number':
    case 'raised':
    case 'vulgar':
    case 'oneOver': {
      const second = amountAt(tokens, start);
      return slipOf('two-numbers', token, 'why' in second ? token : tokenAt(tokens, second.next - 1));
    }
    case 'dash':
      return slipOf('stray-dash', token);
    case 'plus':
      return slipOf('a-sum', token);
    case 'times':
      return slipOf('a-size', token);
    case 'word':
      return slipOf(hasUnit ? 'not-a-length' : 'unknown-unit', token);
    case 'and':
    case 'inchMark':
    case 'lowered':
    case 'point':
    case 'slash':
    case 'strange':
    case 'stroke':
      return slipOf('not-a-length', token);
  }
}

/** BigInt division drops the remainder towards zero; a length is rounded down, also left of zero. */
function floorOf(top: bigint, bottom: bigint): bigint {
  const quotient = top / bottom;
  return top < 0n && top % bottom !== 0n ? quotient - 1n : quotient;
}
