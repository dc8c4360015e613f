import { createContext, useContext } from 'react';

/** How a person of a place writes numbers. The words round them may be of another language. */
interface Numbers {
  /** A count, with the marks between thousands that are usual there. */
  count(count: number): string;
  /** A number or length as the library says it, with the decimal mark of the place: `114.3 mm` becomes `114,3 mm`. */
  shown(text: string): string;
  /** A moment as clocks there show it, `4:20 PM`; of another day than `since` with its weekday. Milliseconds since 1970. */
  clock(at: number, since: number): string;
  /** The count that was typed, with marks between thousands or without; `NaN`: it is no whole number. */
  readCount(text: string): number;
  /**
   * A number or length that was typed, as a layout file has it: decimals after a point. `null`: there the point may as
   * well stand between thousands, so that it can be meant in two ways.
   */
  written(text: string): string | null;
}

/** How numbers are written where a language is spoken (Unicode CLDR, as the browser has it), in the digits 0 to 9. */
export function numbersFor(language: string): Numbers {
  const format = formatFor(language);
  const partOf = (kind: 'group' | 'decimal') =>
    format.formatToParts(1_234_567.5).find(({ type }) => type === kind)?.value ?? '';
  const [group, decimal] = [partOf('group'), partOf('decimal')];
  const grouped = new RegExp(
    `^\\d{1,3}(?:${groupPattern(group)}\\d{2,3})*${groupPattern(group)}\\d{3}$`,
    'u',
  );
  return {
    count: (count) => format.format(count),
    clock(at, since) {
      const isSameDay = new Date(at).toDateString() === new Date(since).toDateString();
      return new Intl.DateTimeFormat(format.resolvedOptions().locale, {
        hour: 'numeric',
        minute: '2-digit',
        ...(isSameDay ? {} : { weekday: 'long' }),
      }).format(at);
    },
    shown: (text) => (decimal === '.' ? text : text.replace(/(?<=\d)\.(?=\d)/gu, decimal)),
    readCount(text) {
      const typed = text.trim();
      if (/^\d+$/u.test(typed)) return Number(typed);
      return group !== '' && grouped.test(typed) ? Number(typed.replace(/\D/gu, '')) : Number.NaN;
    },
    written(text) {
      // Where the point stands before decimals, the library refuses 1,234 itself.
      if (decimal !== ',') return text;
      if (group === '.' && /(?<![\d.,])[1-9]\d{0,2}\.\d{3}(?![\d.,])/u.test(text)) return null;
      return text.replace(/(?<![\d.,])(\d+),(?=\d+(?![\d.,]))/gu, '$1.');
    },
  };
}

/** A language that the browser does not know writes them as English does. */
function formatFor(language: string): Intl.NumberFormat {
  try {
    return new Intl.NumberFormat(language, { numberingSystem: 'latn' });
  } catch {
    return new Intl.NumberFormat('en');
  }
}

/** The kinds of blanks and of apostrophes are not told apart by hand. */
function groupPattern(group: string): string {
  if (/^\s$/u.test(group)) return '\\s';
  if (/^['’]$/u.test(group)) return "['’]";
  return `[${group}]`;
}

const NumbersContext = createContext<Numbers>(numbersFor(globalThis.navigator?.language ?? 'en'));

/** How numbers are written where the person is, as her browser says. */
export function useNumbers(): Numbers {
  return useContext(NumbersContext);
}
