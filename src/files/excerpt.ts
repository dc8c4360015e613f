import type { Json } from './json.ts';

/** How many characters of a value a message shows. */
const longest = 50;
/** More UTF-16 units than that many characters have. */
const most = 2 * longest + 2;

// Control characters, what turns or hides its neighbours (bidirectional marks, zero width), line separators,
// lone halves of a pair, code points that are no characters, and the mark of what was no UTF-8.
const hidden = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Cn}\p{Co}\u00a0\u2000-\u200a\u202f\u205f\u3000\ufffd]/gu;

/**
 * What stands in a file, as one line of JSON for a message: shortened (an … stands at its end) and with every character
 * that cannot be seen written as its escape.
 */
export function excerpt(value: Json): string {
  let shown = '';
  for (const piece of pieces(value)) {
    shown += piece;
    if (shown.length > most) break;
  }
  const characters = [...shown.replace(hidden, escaped)];
  if (characters.length <= longest) return characters.join('');
  const end = typeof value === 'string' ? '…"' : '…';
  return `${characters.slice(0, longest - end.length).join('')}${end}`;
}

function* pieces(value: Json): Generator<string> {
  if (value === null || typeof value === 'number' || typeof value === 'boolean') yield String(value);
  else if (typeof value === 'string') {
    // Cut before it is escaped, so that a text of megabytes costs no more than a short one.
    yield JSON.stringify(value.slice(0, most));
  } else if (isEntries(value)) {
    yield '[';
    for (const [index, entry] of value.entries()) {
      if (index > 0) yield ', ';
      yield* pieces(entry);
    }
    yield ']';
  } else {
    let between = '{ ';
    for (const name in value) {
      yield between;
      yield JSON.stringify(name.slice(0, most));
      yield ': ';
      yield* pieces(value[name] ?? null);
      between = ', ';
    }
    yield between === ', ' ? ' }' : '{}';
  }
}

function isEntries(value: Json): value is readonly Json[] {
  return Array.isArray(value);
}

/** Every UTF-16 half as `\uXXXX`, as JSON writes it. */
function escaped(character: string): string {
  return Array.from(
    { length: character.length },
    (_, index) => `\\u${character.charCodeAt(index).toString(16).padStart(4, '0')}`,
  ).join('');
}
