import { lengthOfTicks, millimetresOf, readLength, showLengthWithUnit } from '../measure/index.ts';
import { assert, type Problem } from '../problem/index.ts';
import type { PathFault } from '../shape/index.ts';
import { whyNotALength } from './length.ts';
import { pathRefusalSentence } from './pathRefusal.ts';

/** What is the matter with a file that came from outside. Adding a code without its sentence does not compile. */
export type FileProblemCode = keyof typeof sentences;

/** Every code, in the order of the reading: the text, its JSON, its fields, what must go together. */
export function fileProblemCodes(): readonly FileProblemCode[] {
  return Object.keys(sentences).filter(isFileCode);
}

/** What a field may hold. */
export type Wanted = keyof typeof wanted;

/**
 * One sentence for a problem that `files` found in a layout or trimmer file: where it is, what stands there,
 * what may stand there. Throws on a code of another part.
 */
export function fileProblemSentence(problem: Problem): string {
  assert(isFileCode(problem.code), 'A problem of a file has a code of a file', { code: problem.code });
  return sentences[problem.code](problem);
}

function isFileCode(code: string): code is FileProblemCode {
  return Object.hasOwn(sentences, code);
}

/** Why pounds are nothing without the kind of paper; both weights are in printers' manuals (199 and 216 g/m²). */
const poundsDiffer =
  'pounds of one kind are not those of another, and 110 lb index is lighter than 80 lb cover';

/** What may stand in a field, as the end of "it may hold …". A text with `{low}` shows that number of the problem. */
const wanted = {
  // fields
  file: 'one object in braces, { }',
  object: 'an object in braces, { }',
  text: 'text in double quotes',
  flag: 'true or false',
  'whole-number': 'a whole number from {low} to {high}',
  'whole-number-or-null': 'a whole number from {low} to {high}, or null for no limit',
  'sheet-count': 'a whole number from {low} to {high}, or null for as many as needed',
  number: 'a number from {low} to {high}',
  length: 'a length as text with its unit, such as "2 1/4 in" or "57 mm"',
  'length-or-null': 'a length as text with its unit, such as "1/16 in", or null',
  reach: 'an object such as { "measuringSide": "12 in", "otherSide": "6 in" }, or null for no limit',
  'test-cut': 'an object such as { "set": "4 in", "measured": "4 1/32 in" }, or null for a true ruler',
  'length-or-fill': 'a length as text with its unit, such as "2 1/4 in" or "57 mm", or the word "fill"',
  size: 'a list of two lengths, width then height, such as ["4 1/4 in", "5 1/2 in"]',
  'part-size': 'a list of two, width then height, each a length such as "5 in" or the word "fill"',
  gap: 'a length, or a list of two lengths, across then down',
  edges: 'an object of lengths by edge (left, right, top, bottom), such as { "right": "1/2 in" }',
  margin: 'a length for all four edges, or an object of lengths by edge (left, right, top, bottom)',
  'banner-ends': 'an object of ends by edge (left, right, top, bottom), such as { "right": "notched" }',
  outline: 'SVG path data of closed lines as text, such as "M0 0H20V10Z"',
  tear: 'an object such as { "least": "5 mm", "most": "11 mm" }',
  envelope: 'an object such as { "size": ["4 3/8 in", "5 3/4 in"] }',
  adhesives: 'an object such as { "raised": { "kind": "foam-squares", "width": "12 mm" } }',
  adhesive: 'an object such as { "width": "12 mm", "roll": "2 m", "handle": 30 }',
  making: 'an object such as { "helpers": 9, "stations": 5 }',
  'making-minutes': 'an object of minutes such as { "cut": 0.25, "score": 0.5, "close": 0.5 }',
  'part-minutes': 'an object of minutes such as { "ready": 1.5, "lay": 0.75 }',
  'dry-at-once': 'a whole number from {low} to {high}, or null for as many as come',
  extras: 'a list of things wanted of the leftovers, each an object with "name" and "size" or "diameter"',
  extra: 'an object such as { "name": "Gift tag", "size": ["1 1/2 in", "3 in"], "count": 6 }',
  'extra-count': 'a whole number from {low} to {high}, or null for as many as there are',
  'extra-papers': 'the id of a paper, or a list of 1 to {high} such ids',
  order: 'a list of ids of parts, in the order in which they are put on',
  room: '"none", or an object such as { "width": ["2 in", "2 1/2 in"] }',
  'room-pair': 'a list of two lengths, the least then the most, such as ["2 in", "2 1/2 in"]',
  place: 'an object such as { "left": "1/8 in" }, or a list of them, one for each piece',
  'one-place': 'an object such as { "left": "1/8 in" }',
  'paper-id': 'the id of a paper',
  'paper-choice': 'the id of a paper, a list of 1 to {high} such ids, or null for what is bought',
  'paper-table': 'an object with one paper for each id',
  paper: 'an object that has "sheets"',
  back: 'an object such as { "name": "Stripe", "up": "two-way" }',
  colour: 'a colour as # and six hexadecimal digits for red, green and blue, such as "#d9c7a3"',
  pounds: `an object such as { "pounds": 80, "of": "cover" }: ${poundsDiffer}`,
  'pound-kind': `"bond", "bristol", "cover", "index", "tag" or "text", for ${poundsDiffer}`,
  sheets: 'a list of sheets, each an object with "size" and "count"',
  sheet: 'an object with "size" and "count"',
  price: 'the price of one sheet as text, such as "0.35", with no more than 4 decimals',
  base: 'an object with "size", "fold" and "paper"',
  parts: 'a list of parts, bottom of the pile first',
  part: 'an object with "id", "paper" and one of "size", "inset", "diameter"',
  id: 'an id of letters, digits, - and _',
  'part-id': 'an id of letters, digits, - and _',
  on: '"base" (the front), "inside", "back" or the id of a part that stands earlier in the list',
  neighbour: 'the id of a part that stands earlier in the list on the same face',
  choice: '{values}',
  version: 'the number 1, without quotes',
  // a post
  'post-classes': 'a list of {low} to {high} kinds of mail, the smallest first',
  'post-class': 'an object that has "name", and may have limits such as "most": { "length": "240 mm" }',
  'post-sizes': 'an object such as { "length": "240 mm", "height": "165 mm", "thickness": "5 mm" }',
  'post-stiffer': 'an object with "length", "height" and "thickness"',
  'post-range': 'an object such as { "least": 2, "most": 50 }',
  // a kit
  'kit-layouts': 'a list of {low} to {high} layouts, each with an "id" and its "layout" or "file"',
  'kit-layout': 'an object such as { "id": "tall", "each": 1, "file": "tall.card.json" }',
  'kit-file': 'the path of a layout file from the folder of the kit, such as "tall.card.json"',
  'kit-things': 'a list of what else is put in a bag, each with "name" and "each"',
  'kit-thing': 'an object such as { "name": "Length of twine", "each": 3 }',
  'kit-instead': 'a list of papers that stand in for others',
  'kit-stand-in':
    'an object such as { "layout": "tall", "part": "panel", "paper": "fern", "by": "moss", "cards": 2 }',
  // a plan
  ticks: 'a whole number of ticks from {low} to {high}',
  'tick-size': 'a list of two whole numbers of ticks, width then height, such as [91440, 203200]',
  'ticks-per-inch': 'the number 40640, without quotes',
  'plan-list': 'a list as plan --json writes it, of no more than 100 000 entries',
  'plan-table': 'an object in braces as plan --json writes it',
  // JSON itself
  'json-value': 'a value such as "mat", 12 or null',
  'json-name': 'the name of a field in double quotes',
  'json-colon': 'a colon',
  'json-next-field': 'a comma or }',
  'json-next-entry': 'a comma or ]',
} as const satisfies Record<string, string>;

const sentences = {
  // The text as a whole
  fileEmpty: ({ names }) => `The file is empty; it may hold an object that begins with ${beginning(names)}.`,
  fileTooLarge: ({ numbers }) =>
    `The file holds ${count(numbers.found)} characters; it may hold no more than ${count(numbers.high)}.`,
  fileEncoding: (problem) =>
    `At ${spot(problem)} stands something that is no UTF-8 text; the file may be saved only as UTF-8.`,
  fileKind: ({ names }) =>
    names.other === undefined
      ? `The file has no field "${names.field ?? ''}"; a file of this kind begins with ${beginning(names)}.`
      : `The file has the field "${names.other}" and not "${names.field ?? ''}", so it is of another kind; here may stand only a file that begins with ${beginning(names)}.`,
  versionNewer: (problem) =>
    `${at(problem)} holds ${found(problem)}, which is newer than this program; it may hold 1, so a newer cardwright is needed for this file.`,
  moreProblems: ({ numbers }) =>
    `The file has more problems than the ${count(numbers.shown)} named here; put these right first.`,

  // JSON
  jsonEnds: (problem) => `The file ends too early, at ${spot(problem)}: ${mayStand(problem)} is missing.`,
  jsonUnexpected: (problem) =>
    `At ${spot(problem)} stands ${standing(problem)}; only ${mayStand(problem)} may stand there.`,
  jsonAfterEnd: (problem) =>
    `At ${spot(problem)}, after the end of the object, stands ${standing(problem)}; nothing may follow the last }.`,
  jsonTrailingComma: (problem) =>
    `At ${spot(problem)} a comma stands before ${found(problem)}; leave it out, for a comma may stand only between two entries.`,
  jsonComment: (problem) =>
    `At ${spot(problem)} stands a comment; JSON has none, but a field whose name begins with x- may hold a note.`,
  jsonQuote: (problem) =>
    `At ${spot(problem)} stands ${standing(problem)}; names and texts may stand only in straight double quotes, such as "mat".`,
  jsonUnquoted: (problem) =>
    `At ${spot(problem)} stands ${found(problem)} without quotes; texts and lengths may stand only in double quotes, such as "2 1/4 in", and only a number, true, false or null without.`,
  jsonInchMark: (problem) =>
    `At ${spot(problem)} stands a second double quote; inches may be written as in, such as "2 1/4 in", and two texts want a comma between them.`,
  jsonTextOpen: (problem) =>
    `The text that begins at ${spot(problem)} has no closing double quote on its line; a text may hold no line break.`,
  jsonControl: (problem) =>
    `At ${spot(problem)} stands ${standing(problem)} inside a text; a text may hold no tab or other control character.`,
  jsonEscape: (problem) =>
    `At ${spot(problem)} stands ${found(problem)}; after a backslash may stand only one of " \\ / b f n r t, or u and four hexadecimal digits.`,
  jsonNumber: (problem) =>
    `At ${spot(problem)} stands ${found(problem)}; a number may be written only like 12, -3 or 0.5, with no + and no needless 0 before it.`,
  jsonNumberInexact: (problem) =>
    `${at(problem)} holds the number ${found(problem)} (${spot(problem)}), too large to be kept exactly; such a number may be written as text.`,
  jsonDeep: (problem) =>
    `At ${spot(problem)} too many brackets stand inside one another; they may stand no more than ${count(problem.numbers.high)} deep, and a file of this kind needs fewer than ten.`,
  fieldTwice: (problem) =>
    `${at(problem)} stands in the file a second time (${spot(problem)}); a name may stand only once in its object, else one of the two would be lost.`,
  fieldReserved: (problem) =>
    `${at(problem)} (${spot(problem)}) has a name that no field or id may have; choose another name.`,

  // Fields
  fieldUnknown: (problem) =>
    `${at(problem)} is no field known here${
      problem.names.nearest === undefined ? '' : ` (perhaps "${problem.names.nearest}" was meant)`
    }; a field here may be ${problem.names.fields ?? ''}, or begin with x-.`,
  fieldMissing: (problem) => `${at(problem)} is missing; it may hold ${mayStand(problem)}.`,
  fieldType: (problem) =>
    `${at(problem)} holds ${found(problem)}; it may hold ${mayStand(problem)}${unquoted(problem)}.`,
  fieldChoice: (problem) =>
    `${at(problem)} holds ${found(problem)}${perhaps(problem)}; it may hold ${mayStand(problem)}.`,
  numberRange: (problem) => `${at(problem)} holds ${found(problem)}; it may hold ${mayStand(problem)}.`,
  listLength: (problem) => `${at(problem)} holds ${entries(problem)}; it may hold ${mayStand(problem)}.`,
  tooMany: (problem) =>
    `${at(problem)} holds ${entries(problem)}; it may hold no more than ${count(problem.numbers.high)}.`,
  textTooLong: (problem) =>
    `${at(problem)} holds a text of ${count(problem.numbers.found)} characters, ${found(problem)}; it may hold no more than ${count(problem.numbers.high)}.`,
  textOdd: (problem) =>
    `${at(problem)} holds ${found(problem)}, with the character ${problem.names.character ?? ''}, which cannot be printed; it may hold one line of letters, digits and signs.`,
  textEncoding: (problem) =>
    `${at(problem)} holds ${found(problem)}, with a character that is no UTF-8; it may hold that character once the file is saved as UTF-8.`,

  // Lengths
  lengthBareNumber: (problem) =>
    `${at(problem)} holds the bare number ${found(problem)}; a length may stand only as text with its unit: write ${problem.names.write ?? ''}.`,
  lengthUnreadable: (problem) => `${at(problem)}: ${noLength(problem)}`,
  lengthNotPositive: (problem) =>
    `${at(problem)} holds ${found(problem)}; it may hold only a length greater than zero.`,
  lengthTooSmall: (problem) =>
    `${at(problem)} holds ${found(problem)}, which is too short to be measured; it may hold no length below ${metric(problem.numbers.low)}.`,
  lengthNegative: (problem) =>
    `${at(problem)} holds ${found(problem)}; it may hold only a length of zero or more.`,
  lengthTooLarge: (problem) =>
    `${at(problem)} holds ${found(problem)}; it may hold a length of no more than ${metric(problem.numbers.high)}.`,

  // Ids and what they name
  idMalformed: (problem) =>
    `${at(problem)} holds the id ${found(problem)}; an id may hold only letters (a to z), digits, - and _.`,
  idReserved: (problem) =>
    `${at(problem)} holds ${found(problem)}, which names a face of the card; a part may have any other id.`,
  idTwice: (problem) =>
    `${at(problem)} holds ${found(problem)}, the id of ${problem.names.first ?? ''} already; each part may have only an id of its own.`,
  paperUnknown: (problem) =>
    `${at(problem)} holds ${found(problem)}, but there is no such paper${perhaps(problem)}; it may hold ${papersOf(problem)}.`,
  onUnknown: (problem) =>
    `${at(problem)} holds ${found(problem)}, but there is no such part${perhaps(problem)}; it may hold ${mayStand(problem)}.`,
  onItself: (problem) =>
    `${at(problem)} holds ${found(problem)}, the part itself; it may hold ${mayStand(problem)}.`,
  onLater: (problem) =>
    `${at(problem)} holds ${found(problem)}, which stands later in the list (${problem.names.later ?? ''}); it may hold ${mayStand(problem)}.`,
  orderUnknown: (problem) =>
    `${at(problem)} holds ${found(problem)}, but there is no such part${perhaps(problem)}; it may hold the id of a part.`,
  stationsUnmanned: (problem) =>
    `${at(problem)} holds ${count(problem.numbers.stations)}, but the set has ${count(problem.numbers.helpers)} ${problem.numbers.helpers === 1 ? 'helper' : 'helpers'}, and each station wants one of its own; it may hold at most ${count(problem.numbers.helpers)}, or "helpers" more.`,
  orderTwice: (problem) =>
    `${at(problem)} holds ${found(problem)}, and so does ${problem.names.first ?? ''}; each part may stand there only once.`,
  neighbourFace: (problem) =>
    `${at(problem)} holds ${found(problem)}, which lies on the face "${problem.names.theirs ?? ''}" and not on "${problem.names.ours ?? ''}"; it may hold ${mayStand(problem)}.`,

  // Fields that must go together
  extentMissing: (problem) =>
    `${at(problem)} has none of "size", "inset" and "diameter"; it may have only one of them, and must have one.`,
  extentTwice: (problem) => `${at(problem)} has ${problem.names.fields ?? ''}; it may have only one of them.`,
  diameterShape: (problem) =>
    `${at(problem)} holds a diameter, but the part is a rectangle; it may stand only with "shape": "circle".`,
  circleSize: (problem) =>
    `${at(problem)} holds a width and a height, but the part is a circle; a circle may have "diameter" or "inset".`,
  outlineUnreadable: (problem) => `${at(problem)} holds no outline. ${pathRefusal(problem)}`,
  edgeShape: (problem) =>
    `${at(problem)} ${problem.names.does === 'tuck' ? 'tucks' : 'tears'} what has the shape ${problem.names.shape ?? ''}; only a rectangle may be ${problem.names.does === 'tuck' ? 'tucked' : 'torn'}.`,
  shapeField: (problem) => `${at(problem)} may stand only with "shape": ${problem.names.shapes ?? ''}.`,
  foldedField: (problem) =>
    `${at(problem)} may not stand with the shape ${problem.names.shape ?? ''}: what is folded is cut as a plain strip, as long and as wide as its "size".`,
  foldedFill: (problem) =>
    `${at(problem)} lets a part with the shape ${problem.names.shape ?? ''} fill its room; a strip that is folded may only have a length there.`,
  shapeFieldMissing: (problem) =>
    `${at(problem)} is missing; a part with "shape": "${problem.names.shape ?? ''}" needs it.`,
  tearNowhere: (problem) =>
    `${at(problem)} says how deep the tears of the part go, but no edge of it is torn; it may stand only beside "torn".`,
  tearOrder: ({ names, where }) =>
    `${where} has ${names.less ?? ''} as "${names.smaller ?? ''}" and ${names.more ?? ''} as "${names.larger ?? ''}"; "least" may be no more than "usual", and that no more than "most".`,
  foamFlat: (problem) =>
    `${at(problem)} says how high foam raises the part, but it is not raised; it may stand only with "adhere": "raised".`,
  boughtOnly: (problem) =>
    `${at(problem)} may stand only where "paper" is null, for what is bought; what is cut is as thick and as heavy as its paper.`,
  fromBought: (problem) =>
    `${at(problem)} says where the part is cut from, but it is bought; it may stand only where "paper" names papers.`,
  extraSize: (problem) =>
    `${at(problem)} has ${problem.numbers.both === 1 ? 'both "size" and "diameter"' : 'neither "size" nor "diameter"'}; it may have one of the two.`,
  extraRound: (problem) =>
    `${at(problem)} does not go with the rest: an extra with the shape "circle" may have only a "diameter", and one with a "diameter" may only be a circle.`,
  extraFieldMissing: (problem) =>
    `${at(problem)} is missing; an extra with "shape": "${problem.names.shape ?? ''}" needs it.`,
  opensFixed: (problem) =>
    `${at(problem)} says which way the base opens, but that of the fold ${problem.names.fold ?? ''} is settled; it may stand only with ${problem.names.folds ?? ''}.`,
  allowanceNowhere: (problem) =>
    `${at(problem)} says how much narrower panels are that lie within others, but the fold ${problem.names.fold ?? ''} has none such; it may stand only with ${problem.names.folds ?? ''}.`,
  circleInset: (problem) =>
    `${at(problem)} insets a circle on ${problem.names.on ?? ''}, which is no circle; a circle may be inset only on a circle, else it may have "diameter".`,
  endFixedTwice: (problem) =>
    `${at(problem)} fixes the part's ${problem.names.edge ?? ''} edge, and so does ${problem.names.other ?? ''}; only one of the two may stand there.`,
  gapAlone: (problem) =>
    `${at(problem)} is a gap to no neighbour; it may stand only with ${problem.names.fields ?? ''}.`,
  placesCount: (problem) =>
    `${at(problem)} lists ${count(problem.numbers.found)} ${problem.numbers.found === 1 ? 'place' : 'places'} where "count" is ${count(problem.numbers.wanted)}; it may list one place for each piece, or be one place for all.`,
  piecesTooMany: (problem) =>
    `${at(problem)} holds ${count(problem.numbers.count)}, which for ${count(problem.numbers.cards)} cards is more than the ${count(problem.numbers.high)} pieces of one part that a set may have.`,
  roomOrder: (problem) =>
    `${at(problem)} goes from ${problem.names.least ?? ''} down to ${problem.names.most ?? ''}; it may hold the least, then the most, and the two may be the same.`,
  roomWithoutLength: (problem) =>
    `${at(problem)} gives room to a length that ${
      problem.names.of === 'circle' ? 'a circle has not' : 'the part does not name'
    }; here may stand only ${problem.names.fields ?? ''}.`,
  weightTwice: (problem) =>
    `${at(problem)} gives the weight in pounds, and ${problem.names.other ?? ''} gives it too; only one of the two may stand there.`,
  priceMissing: (problem) =>
    `${at(problem)} is missing, though ${problem.names.other ?? ''} has a price; a price may stand on every sheet of a paper or on none, scraps aside.`,
  marginAll: (problem) =>
    `${at(problem)} takes the whole ${problem.names.axis ?? ''} of the sheet (${problem.names.size ?? ''}); it may take less, so that something is left.`,
  kitIdTwice: (problem) =>
    `${at(problem)} holds ${found(problem)}, the id of ${problem.names.first ?? ''} already; each layout of a kit may have only an id of its own.`,
  kitLayoutWhere: (problem) =>
    `${at(problem)} has ${problem.names.has ?? ''}; it may have either "layout", the layout itself, or "file", the path of its file.`,
  kitFileMissing: (problem) =>
    `${at(problem)} names the file ${found(problem)}, which was not found; here may stand the path of a layout file from the folder of the kit, or the layout itself under "layout".`,
  kitPaperTwice: (problem) =>
    `${at(problem)} names the paper ${found(problem)}, and so does ${problem.names.other ?? ''}; which sheets the two share may stand only in "papers" of the kit.`,
  kitInsteadLayout: (problem) =>
    `${at(problem)} holds ${found(problem)}, which is no layout of this kit; it may hold ${problem.names.layouts ?? ''}.`,
  kitInsteadPart: (problem) =>
    `${at(problem)} holds ${found(problem)}, which is no part of the layout ${problem.names.layout ?? ''}; it may hold "base" or the id of one of its parts.`,
  kitInsteadPaper: (problem) =>
    `${at(problem)} holds ${found(problem)}, but ${problem.names.part ?? ''} is not cut from that paper; it may hold ${papersOf(problem)}.`,
  trimmerMarks: (problem) =>
    `${at(problem)} holds ${found(problem)}, which is more than the longest cut, ${problem.names.most ?? ''}; it may hold the distance from one mark to the next, such as "1/16 in" or "1 mm".`,
  trimmerNarrow: (problem) =>
    `${at(problem)} holds ${found(problem)}, which is more than the longest cut, ${problem.names.most ?? ''}; it may be no more than that.`,
  trimmerReach: (problem) =>
    `${at(problem)} holds ${found(problem)}, which is less than ${problem.names.limit ?? ''}, ${problem.names.most ?? ''}, so that nothing could be measured off; it may be no less than that.`,
  limitOrder: (problem) =>
    `${at(problem)} holds ${found(problem)}, which is more than ${problem.names.limit ?? ''}, ${problem.names.most ?? ''}, so that nothing could be of this kind; it may be no more than that.`,
  testCutShort: (problem) =>
    `${at(problem)} holds ${found(problem)}; a test cut may be no shorter than ${lengthOf(problem, 'low')}, so that it can be measured well.`,
  testCutFar: (problem) =>
    `${at(problem)} holds ${found(problem)} where the trimmer was set to ${problem.names.set ?? ''}; a ruler may be off by no more than ${lengthOf(problem, 'high')}, so measure that cut again.`,
} as const satisfies Record<string, (problem: Problem) => string>;

/** Where it is: the field, or the file. */
function at(problem: Problem): string {
  return problem.where === '' ? 'The file' : problem.where;
}

/** What stands there, as it is shown. */
function found({ names }: Problem): string {
  return names.found ?? '';
}

/** What stands where the text is no JSON: a word, or a character by the name that people call it. */
function standing({ names }: Problem): string {
  const { sign, hidden } = names;
  if (hidden !== undefined) return hidden === '\\t' ? 'a tab' : `the invisible character ${hidden}`;
  if (sign === undefined) return names.found ?? '';
  return signs[sign] ?? `the sign ${sign}`;
}

const signs: Readonly<Record<string, string>> = {
  ',': 'a comma',
  ':': 'a colon',
  '"': 'a double quote',
  "'": 'a single quote',
};

function beginning(names: Readonly<Record<string, string>>): string {
  return `{ "${names.field ?? ''}": 1, … }`;
}

function entries({ numbers }: Problem): string {
  if (numbers.found === 0) return 'an empty list';
  return numbers.found === 1 ? 'one entry' : `${count(numbers.found)} entries`;
}

/** A number that was written as a text. */
function unquoted({ names }: Problem): string {
  const written = /^"-?[0-9.]+"$|^"(?:true|false)"$/.test(names.found ?? '');
  return written && /number|count|flag/.test(names.wanted ?? '') ? ', without quotes' : '';
}

function spot({ numbers }: Problem): string {
  return `line ${numbers.line ?? 0}, column ${numbers.column ?? 0}`;
}

function mayStand(problem: Problem): string {
  const kind = problem.names.wanted ?? '';
  const phrase = isWanted(kind) ? wanted[kind] : kind;
  return phrase.replace(
    /\{(\w+)\}/g,
    (_, name: string) => problem.names[name] ?? count(problem.numbers[name]),
  );
}

function isWanted(kind: string): kind is Wanted {
  return Object.hasOwn(wanted, kind);
}

/** What is wrong with the text that was to be a length, as `measure` reads it. */
function noLength({ names }: Problem): string {
  const text = names.text ?? '';
  const reading = readLength(text, names.units === 'mm' ? 'mm' : 'in');
  assert(!reading.ok, 'An unreadable length cannot be read', { text });
  return whyNotALength(reading, text);
}

function pathRefusal({ names, numbers }: Problem): string {
  return pathRefusalSentence({
    code: names.fault as PathFault,
    at: numbers.at ?? 0,
    found: names.found ?? '',
  });
}

function papersOf({ names }: Problem): string {
  return names.papers ?? 'null, for the file has no papers';
}

function perhaps({ names }: Problem): string {
  return names.nearest === undefined ? '' : ` (perhaps ${names.nearest} was meant)`;
}

/** A count with its thousands set apart, which a reader of either decimal sign takes rightly. */
function count(number = 0): string {
  return String(number).replace(/(?<!\.\d*)(?<=\d)(?=(?:\d{3})+$)/g, ' ');
}

/** A length of the problem in the units of its file. */
function lengthOf({ names, numbers }: Problem, name: string): string {
  return showLengthWithUnit(lengthOfTicks(numbers[name] ?? 0), names.units === 'mm' ? 'mm' : 'in');
}

function metric(ticks = 0): string {
  return `${count(millimetresOf(lengthOfTicks(ticks)))} mm`;
}
