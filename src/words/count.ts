const small = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
] as const;

/** A count as a sentence says it: in words up to twelve, then in figures. */
export function countWord(count: number): string {
  return small[count] ?? String(count);
}

/** A count in figures with its noun: `1 pass`, `6 passes`. */
export function counted(count: number, noun: string): string {
  return `${count} ${count === 1 ? noun : plural(noun)}`;
}

/** A count in words with its noun: `one sheet`, `two sheets`, `14 sheets`. */
export function countedInWords(count: number, noun: string): string {
  return `${countWord(count)} ${count === 1 ? noun : plural(noun)}`;
}

/** The regular plural of one of our own nouns; names that people gave are never bent. */
export function plural(noun: string): string {
  return /(?:s|x|ch|sh)$/.test(noun) ? `${noun}es` : `${noun}s`;
}

/** Things named one after the other: `a`, `a and b`, `a, b and c`. */
export function listed(things: readonly string[]): string {
  if (things.length < 2) return things.join('');
  return `${things.slice(0, -1).join(', ')} and ${things.at(-1)}`;
}

/** Things to choose from: `a`, `a or b`, `a, b or c`. */
export function either(things: readonly string[]): string {
  if (things.length < 2) return things.join('');
  return `${things.slice(0, -1).join(', ')} or ${things.at(-1)}`;
}

/** Whole numbers in order with runs drawn together: `1`, `1 and 2`, `1 to 4`, `1 to 3 and 7`. */
export function numbersListed(numbers: readonly number[]): string {
  const runs: { first: number; last: number }[] = [];
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const run = runs.at(-1);
    if (run !== undefined && number === run.last + 1) run.last = number;
    else runs.push({ first: number, last: number });
  }
  return listed(
    runs.flatMap(({ first, last }) =>
      last - first < 2 ? [...new Set([first, last])].map(String) : [`${first} to ${last}`],
    ),
  );
}

/** The sentence with its first letter large. */
export function capital(sentence: string): string {
  const first = [...sentence][0] ?? '';
  return first.toLocaleUpperCase('en') + sentence.slice(first.length);
}
