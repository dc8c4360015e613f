import { describe, expect, test } from 'vitest';
import type { Problem } from '../problem/index.ts';
import { type FileProblemCode, fileProblemCodes, fileProblemSentence } from './fileProblem.ts';

type Told = Partial<Pick<Problem, 'where' | 'names' | 'numbers'>>;

function sentence(code: string, { where = '', names = {}, numbers = {} }: Told): string {
  return fileProblemSentence({ code, severity: 'error', where, names, numbers });
}

const spot = { line: 3, column: 16 };

/** For each code what a file may bring, and the whole sentence: where it is, what stands there, what may stand there. */
const cases: Readonly<Record<FileProblemCode, readonly (readonly [told: Told, says: string])[]>> = {
  fileEmpty: [
    [
      { names: { field: 'cardwright' } },
      'The file is empty; it may hold an object that begins with { "cardwright": 1, … }.',
    ],
  ],
  fileTooLarge: [
    [
      { numbers: { found: 5_000_001, high: 5_000_000 } },
      'The file holds 5 000 001 characters; it may hold no more than 5 000 000.',
    ],
  ],
  fileEncoding: [
    [
      { numbers: spot },
      'At line 3, column 16 stands something that is no UTF-8 text; the file may be saved only as UTF-8.',
    ],
  ],
  fileKind: [
    [
      { where: 'cardwright', names: { field: 'cardwright' } },
      'The file has no field "cardwright"; a file of this kind begins with { "cardwright": 1, … }.',
    ],
    [
      { where: 'cardwright', names: { field: 'cardwright', other: 'cardwright_trimmer' } },
      'The file has the field "cardwright_trimmer" and not "cardwright", so it is of another kind; here may stand only a file that begins with { "cardwright": 1, … }.',
    ],
  ],
  versionNewer: [
    [
      { where: 'cardwright', names: { found: '2' } },
      'cardwright holds 2, which is newer than this program; it may hold 1, so a newer cardwright is needed for this file.',
    ],
  ],
  moreProblems: [
    [
      { numbers: { shown: 100 } },
      'The file has more problems than the 100 named here; put these right first.',
    ],
  ],
  jsonEnds: [
    [
      { names: { wanted: 'json-next-field' }, numbers: spot },
      'The file ends too early, at line 3, column 16: a comma or } is missing.',
    ],
    [
      { names: { wanted: 'json-name' }, numbers: spot },
      'The file ends too early, at line 3, column 16: the name of a field in double quotes is missing.',
    ],
  ],
  jsonUnexpected: [
    [
      { names: { sign: '"', wanted: 'json-next-entry' }, numbers: spot },
      'At line 3, column 16 stands a double quote; only a comma or ] may stand there.',
    ],
    [
      { names: { sign: ',', wanted: 'json-value' }, numbers: spot },
      'At line 3, column 16 stands a comma; only a value such as "mat", 12 or null may stand there.',
    ],
    [
      { names: { hidden: '\\u00a0', wanted: 'json-colon' }, numbers: spot },
      'At line 3, column 16 stands the invisible character \\u00a0; only a colon may stand there.',
    ],
  ],
  jsonAfterEnd: [
    [
      { names: { sign: '}' }, numbers: spot },
      'At line 3, column 16, after the end of the object, stands the sign }; nothing may follow the last }.',
    ],
  ],
  jsonTrailingComma: [
    [
      { names: { found: ']' }, numbers: spot },
      'At line 3, column 16 a comma stands before ]; leave it out, for a comma may stand only between two entries.',
    ],
  ],
  jsonComment: [
    [
      { numbers: spot },
      'At line 3, column 16 stands a comment; JSON has none, but a field whose name begins with x- may hold a note.',
    ],
  ],
  jsonQuote: [
    [
      { names: { sign: "'" }, numbers: spot },
      'At line 3, column 16 stands a single quote; names and texts may stand only in straight double quotes, such as "mat".',
    ],
    [
      { names: { found: 'cards' }, numbers: spot },
      'At line 3, column 16 stands cards; names and texts may stand only in straight double quotes, such as "mat".',
    ],
  ],
  jsonUnquoted: [
    [
      { names: { found: '1/8 in' }, numbers: spot },
      'At line 3, column 16 stands 1/8 in without quotes; texts and lengths may stand only in double quotes, such as "2 1/4 in", and only a number, true, false or null without.',
    ],
  ],
  jsonInchMark: [
    [
      { numbers: spot },
      'At line 3, column 16 stands a second double quote; inches may be written as in, such as "2 1/4 in", and two texts want a comma between them.',
    ],
  ],
  jsonTextOpen: [
    [
      { numbers: spot },
      'The text that begins at line 3, column 16 has no closing double quote on its line; a text may hold no line break.',
    ],
  ],
  jsonControl: [
    [
      { names: { hidden: '\\t' }, numbers: spot },
      'At line 3, column 16 stands a tab inside a text; a text may hold no tab or other control character.',
    ],
  ],
  jsonEscape: [
    [
      { names: { found: '"\\\\q"' }, numbers: spot },
      'At line 3, column 16 stands "\\\\q"; after a backslash may stand only one of " \\ / b f n r t, or u and four hexadecimal digits.',
    ],
  ],
  jsonNumber: [
    [
      { names: { found: '012' }, numbers: spot },
      'At line 3, column 16 stands 012; a number may be written only like 12, -3 or 0.5, with no + and no needless 0 before it.',
    ],
  ],
  jsonNumberInexact: [
    [
      { where: 'x-stock', names: { found: '1e999' }, numbers: spot },
      'x-stock holds the number 1e999 (line 3, column 16), too large to be kept exactly; such a number may be written as text.',
    ],
  ],
  jsonDeep: [
    [
      { numbers: { ...spot, high: 100 } },
      'At line 3, column 16 too many brackets stand inside one another; they may stand no more than 100 deep, and a file of this kind needs fewer than ten.',
    ],
  ],
  fieldTwice: [
    [
      { where: 'cards', numbers: spot },
      'cards stands in the file a second time (line 3, column 16); a name may stand only once in its object, else one of the two would be lost.',
    ],
  ],
  fieldReserved: [
    [
      { where: 'papers.__proto__', numbers: spot },
      'papers.__proto__ (line 3, column 16) has a name that no field or id may have; choose another name.',
    ],
  ],
  fieldUnknown: [
    [
      { where: 'base.inset', names: { fields: 'size, fold, paper' } },
      'base.inset is no field known here; a field here may be size, fold, paper, or begin with x-.',
    ],
    [
      { where: 'base.sise', names: { fields: 'size, fold, paper', nearest: 'size' } },
      'base.sise is no field known here (perhaps "size" was meant); a field here may be size, fold, paper, or begin with x-.',
    ],
  ],
  fieldMissing: [
    [
      { where: 'cards', names: { wanted: 'whole-number' }, numbers: { low: 1, high: 100_000 } },
      'cards is missing; it may hold a whole number from 1 to 100 000.',
    ],
  ],
  fieldType: [
    [
      { names: { found: 'null', wanted: 'file' } },
      'The file holds null; it may hold one object in braces, { }.',
    ],
    [
      {
        where: 'cards',
        names: { found: '"12"', wanted: 'whole-number' },
        numbers: { low: 1, high: 100_000 },
      },
      'cards holds "12"; it may hold a whole number from 1 to 100 000, without quotes.',
    ],
    [
      { where: 'papers.bark.sheets[0].scrap', names: { found: '"yes"', wanted: 'flag' } },
      'papers.bark.sheets[0].scrap holds "yes"; it may hold true or false.',
    ],
  ],
  fieldChoice: [
    [
      {
        where: 'base.fold',
        names: {
          found: '"lfet"',
          wanted: 'choice',
          values: '"left", "top" or "none"',
          nearest: '"left"',
        },
      },
      'base.fold holds "lfet" (perhaps "left" was meant); it may hold "left", "top" or "none".',
    ],
  ],
  numberRange: [
    [
      { where: 'cards', names: { found: '0', wanted: 'whole-number' }, numbers: { low: 1, high: 100_000 } },
      'cards holds 0; it may hold a whole number from 1 to 100 000.',
    ],
  ],
  listLength: [
    [
      { where: 'base.size', names: { wanted: 'size' }, numbers: { found: 1 } },
      'base.size holds one entry; it may hold a list of two lengths, width then height, such as ["4 1/4 in", "5 1/2 in"].',
    ],
    [
      { where: 'base.paper', names: { wanted: 'paper-choice' }, numbers: { found: 0, high: 200 } },
      'base.paper holds an empty list; it may hold the id of a paper, a list of 1 to 200 such ids, or null for what is bought.',
    ],
  ],
  tooMany: [
    [
      { where: 'parts', numbers: { found: 501, high: 500 } },
      'parts holds 501 entries; it may hold no more than 500.',
    ],
  ],
  textTooLong: [
    [
      { where: 'title', names: { found: '"A very…"' }, numbers: { found: 201, high: 200 } },
      'title holds a text of 201 characters, "A very…"; it may hold no more than 200.',
    ],
  ],
  textOdd: [
    [
      { where: 'title', names: { found: '"two\\nlines"', character: '"\\n"' } },
      'title holds "two\\nlines", with the character "\\n", which cannot be printed; it may hold one line of letters, digits and signs.',
    ],
  ],
  textEncoding: [
    [
      { where: 'title', names: { found: '"Caf\\ufffd"' } },
      'title holds "Caf\\ufffd", with a character that is no UTF-8; it may hold that character once the file is saved as UTF-8.',
    ],
  ],
  lengthBareNumber: [
    [
      { where: 'parts[2].size[0]', names: { found: '2.25', write: '"2.25 in"' } },
      'parts[2].size[0] holds the bare number 2.25; a length may stand only as text with its unit: write "2.25 in".',
    ],
  ],
  lengthUnreadable: [
    [
      { where: 'parts[2].size[0]', names: { text: '2 1/4 inn', units: 'in' } },
      'parts[2].size[0]: “2 1/4 inn” is no length: “inn” is no unit known here (in, ft, mm and cm are). Write it like 5 1/4, 5.25 in or 133 mm.',
    ],
  ],
  lengthNotPositive: [
    [
      { where: 'base.size[0]', names: { found: '"-4 in"' } },
      'base.size[0] holds "-4 in"; it may hold only a length greater than zero.',
    ],
  ],
  lengthTooSmall: [
    [
      { where: 'base.size[0]', names: { found: '"0.0000001 in"' }, numbers: { low: 1 } },
      'base.size[0] holds "0.0000001 in", which is too short to be measured; it may hold no length below 0.000625 mm.',
    ],
  ],
  lengthNegative: [
    [
      { where: 'papers.bark.sheets[0].margin', names: { found: '"-1 in"' } },
      'papers.bark.sheets[0].margin holds "-1 in"; it may hold only a length of zero or more.',
    ],
  ],
  lengthTooLarge: [
    [
      { where: 'base.size[0]', names: { found: '"11 000 mm"' }, numbers: { high: 16_000_000 } },
      'base.size[0] holds "11 000 mm"; it may hold a length of no more than 10 000 mm.',
    ],
  ],
  idMalformed: [
    [
      { where: 'parts[6].id', names: { found: '"two words"' } },
      'parts[6].id holds the id "two words"; an id may hold only letters (a to z), digits, - and _.',
    ],
  ],
  idReserved: [
    [
      { where: 'parts[6].id', names: { found: '"back"' } },
      'parts[6].id holds "back", which names a face of the card; a part may have any other id.',
    ],
  ],
  idTwice: [
    [
      { where: 'parts[6].id', names: { found: '"mat"', first: 'parts[0]' } },
      'parts[6].id holds "mat", the id of parts[0] already; each part may have only an id of its own.',
    ],
  ],
  paperUnknown: [
    [
      { where: 'base.paper', names: { found: '"ivroy"', nearest: '"ivory"', papers: '"ivory", "bark"' } },
      'base.paper holds "ivroy", but there is no such paper (perhaps "ivory" was meant); it may hold "ivory", "bark".',
    ],
    [
      { where: 'base.paper', names: { found: '"ivory"' } },
      'base.paper holds "ivory", but there is no such paper; it may hold null, for the file has no papers.',
    ],
  ],
  onUnknown: [
    [
      { where: 'parts[6].on', names: { found: '"front"', wanted: 'on' } },
      'parts[6].on holds "front", but there is no such part; it may hold "base" (the front), "inside", "back" or the id of a part that stands earlier in the list.',
    ],
  ],
  orderUnknown: [
    [
      { where: 'order[1]', names: { found: '"mta"', nearest: '"mat"' } },
      'order[1] holds "mta", but there is no such part (perhaps "mat" was meant); it may hold the id of a part.',
    ],
  ],
  stationsUnmanned: [
    [
      { where: 'making.stations', numbers: { stations: 7, helpers: 5 } },
      'making.stations holds 7, but the set has 5 helpers, and each station wants one of its own; it may hold at most 5, or "helpers" more.',
    ],
  ],
  orderTwice: [
    [
      { where: 'order[2]', names: { found: '"mat"', first: 'order[0]' } },
      'order[2] holds "mat", and so does order[0]; each part may stand there only once.',
    ],
  ],
  onItself: [
    [
      { where: 'parts[2].place.below', names: { found: '"strip"', wanted: 'neighbour' } },
      'parts[2].place.below holds "strip", the part itself; it may hold the id of a part that stands earlier in the list on the same face.',
    ],
  ],
  onLater: [
    [
      { where: 'parts[0].on', names: { found: '"note"', wanted: 'on', later: 'parts[6]' } },
      'parts[0].on holds "note", which stands later in the list (parts[6]); it may hold "base" (the front), "inside", "back" or the id of a part that stands earlier in the list.',
    ],
  ],
  neighbourFace: [
    [
      {
        where: 'parts[6].place.below',
        names: { found: '"mat"', wanted: 'neighbour', theirs: 'base', ours: 'inside' },
      },
      'parts[6].place.below holds "mat", which lies on the face "base" and not on "inside"; it may hold the id of a part that stands earlier in the list on the same face.',
    ],
  ],
  extentMissing: [
    [
      { where: 'parts[6]' },
      'parts[6] has none of "size", "inset" and "diameter"; it may have only one of them, and must have one.',
    ],
  ],
  extentTwice: [
    [
      { where: 'parts[6]', names: { fields: '"size" and "inset"' } },
      'parts[6] has "size" and "inset"; it may have only one of them.',
    ],
  ],
  diameterShape: [
    [
      { where: 'parts[3].diameter' },
      'parts[3].diameter holds a diameter, but the part is a rectangle; it may stand only with "shape": "circle".',
    ],
  ],
  circleSize: [
    [
      { where: 'parts[6].size' },
      'parts[6].size holds a width and a height, but the part is a circle; a circle may have "diameter" or "inset".',
    ],
  ],
  outlineUnreadable: [
    [
      { where: 'parts[3].outline', names: { fault: 'open', found: 'M0 0L3 4' }, numbers: { at: 0 } },
      'parts[3].outline holds no outline. The line that begins at character 1 of the path, M0 0L3 4, is open; it may only come back to where it began, or end with Z.',
    ],
  ],
  edgeShape: [
    [
      { where: 'parts[3].torn', names: { does: 'torn', shape: '"circle"' } },
      'parts[3].torn tears what has the shape "circle"; only a rectangle may be torn.',
    ],
    [
      { where: 'parts[3].tuck', names: { does: 'tuck', shape: '"oval"' } },
      'parts[3].tuck tucks what has the shape "oval"; only a rectangle may be tucked.',
    ],
  ],
  shapeField: [
    [
      { where: 'parts[3].corner', names: { shapes: '"rounded"' } },
      'parts[3].corner may stand only with "shape": "rounded".',
    ],
  ],
  foldedField: [
    [
      { where: 'parts[3].margin', names: { field: 'margin', shape: '"ribbon"' } },
      'parts[3].margin may not stand with the shape "ribbon": what is folded is cut as a plain strip, as long and as wide as its "size".',
    ],
  ],
  foldedFill: [
    [
      { where: 'parts[3].size[0]', names: { shape: '"loops"' } },
      'parts[3].size[0] lets a part with the shape "loops" fill its room; a strip that is folded may only have a length there.',
    ],
  ],
  shapeFieldMissing: [
    [
      { where: 'parts[3].ends', names: { shape: 'banner' } },
      'parts[3].ends is missing; a part with "shape": "banner" needs it.',
    ],
  ],
  tearNowhere: [
    [
      { where: 'parts[3].tear' },
      'parts[3].tear says how deep the tears of the part go, but no edge of it is torn; it may stand only beside "torn".',
    ],
  ],
  tearOrder: [
    [
      { where: 'parts[3].tear', names: { smaller: 'least', less: '"8 mm"', larger: 'most', more: '"7 mm"' } },
      'parts[3].tear has "8 mm" as "least" and "7 mm" as "most"; "least" may be no more than "usual", and that no more than "most".',
    ],
  ],
  foamFlat: [
    [
      { where: 'parts[3].foam' },
      'parts[3].foam says how high foam raises the part, but it is not raised; it may stand only with "adhere": "raised".',
    ],
  ],
  opensFixed: [
    [
      { where: 'base.opens', names: { fold: '"left"', folds: '"gate" or "z"' } },
      'base.opens says which way the base opens, but that of the fold "left" is settled; it may stand only with "gate" or "z".',
    ],
  ],
  allowanceNowhere: [
    [
      { where: 'base.allowance', names: { fold: '"gate"', folds: '"trifold" or "roll"' } },
      'base.allowance says how much narrower panels are that lie within others, but the fold "gate" has none such; it may stand only with "trifold" or "roll".',
    ],
  ],
  boughtOnly: [
    [
      { where: 'parts[3].grams' },
      'parts[3].grams may stand only where "paper" is null, for what is bought; what is cut is as thick and as heavy as its paper.',
    ],
  ],
  fromBought: [
    [
      { where: 'parts[3].from' },
      'parts[3].from says where the part is cut from, but it is bought; it may stand only where "paper" names papers.',
    ],
  ],
  extraSize: [
    [
      { where: 'extras[0]', numbers: { both: 1 } },
      'extras[0] has both "size" and "diameter"; it may have one of the two.',
    ],
    [
      { where: 'extras[0]', numbers: { both: 0 } },
      'extras[0] has neither "size" nor "diameter"; it may have one of the two.',
    ],
  ],
  extraRound: [
    [
      { where: 'extras[0].diameter' },
      'extras[0].diameter does not go with the rest: an extra with the shape "circle" may have only a "diameter", and one with a "diameter" may only be a circle.',
    ],
  ],
  extraFieldMissing: [
    [
      { where: 'extras[0].corner', names: { shape: 'rounded' } },
      'extras[0].corner is missing; an extra with "shape": "rounded" needs it.',
    ],
  ],
  circleInset: [
    [
      { where: 'parts[4].inset', names: { on: '"mat"' } },
      'parts[4].inset insets a circle on "mat", which is no circle; a circle may be inset only on a circle, else it may have "diameter".',
    ],
  ],
  endFixedTwice: [
    [
      { where: 'parts[2].place.left', names: { edge: 'left', other: 'parts[2].place.rightOf' } },
      "parts[2].place.left fixes the part's left edge, and so does parts[2].place.rightOf; only one of the two may stand there.",
    ],
  ],
  gapAlone: [
    [
      { where: 'parts[5].place.gap', names: { fields: '"below", "above"' } },
      'parts[5].place.gap is a gap to no neighbour; it may stand only with "below", "above".',
    ],
  ],
  piecesTooMany: [
    [
      { where: 'parts[5].count', numbers: { cards: 100_000, count: 1000, high: 1_000_000 } },
      'parts[5].count holds 1 000, which for 100 000 cards is more than the 1 000 000 pieces of one part that a set may have.',
    ],
  ],
  placesCount: [
    [
      { where: 'parts[5].place', numbers: { found: 2, wanted: 3 } },
      'parts[5].place lists 2 places where "count" is 3; it may list one place for each piece, or be one place for all.',
    ],
    [
      { where: 'parts[5].place', numbers: { found: 1, wanted: 2 } },
      'parts[5].place lists 1 place where "count" is 2; it may list one place for each piece, or be one place for all.',
    ],
  ],
  roomOrder: [
    [
      { where: 'parts[1].room.width', names: { least: '"3 in"', most: '"2 in"' } },
      'parts[1].room.width goes from "3 in" down to "2 in"; it may hold the least, then the most, and the two may be the same.',
    ],
  ],
  roomWithoutLength: [
    [
      { where: 'parts[1].room.inset', names: { of: 'part', fields: '"width", "height", "left"' } },
      'parts[1].room.inset gives room to a length that the part does not name; here may stand only "width", "height", "left".',
    ],
    [
      { where: 'parts[3].room.width', names: { of: 'circle', fields: '"diameter", "top"' } },
      'parts[3].room.width gives room to a length that a circle has not; here may stand only "diameter", "top".',
    ],
  ],
  weightTwice: [
    [
      { where: 'papers.bark.lb', names: { other: 'papers.bark.gsm' } },
      'papers.bark.lb gives the weight in pounds, and papers.bark.gsm gives it too; only one of the two may stand there.',
    ],
  ],
  priceMissing: [
    [
      { where: 'papers.ivory.sheets[1].price', names: { other: 'papers.ivory.sheets[0]' } },
      'papers.ivory.sheets[1].price is missing, though papers.ivory.sheets[0] has a price; a price may stand on every sheet of a paper or on none, scraps aside.',
    ],
  ],
  marginAll: [
    [
      { where: 'papers.bark.sheets[0].margin', names: { axis: 'width', size: '"12 in"' } },
      'papers.bark.sheets[0].margin takes the whole width of the sheet ("12 in"); it may take less, so that something is left.',
    ],
  ],
  kitIdTwice: [
    [
      { where: 'layouts[1].id', names: { found: '"tall"', first: 'layouts[0]' } },
      'layouts[1].id holds "tall", the id of layouts[0] already; each layout of a kit may have only an id of its own.',
    ],
  ],
  kitLayoutWhere: [
    [
      { where: 'layouts[0]', names: { has: 'neither "layout" nor "file"' } },
      'layouts[0] has neither "layout" nor "file"; it may have either "layout", the layout itself, or "file", the path of its file.',
    ],
  ],
  kitFileMissing: [
    [
      { where: 'layouts[0].file', names: { found: '"tall.card.json"' } },
      'layouts[0].file names the file "tall.card.json", which was not found; here may stand the path of a layout file from the folder of the kit, or the layout itself under "layout".',
    ],
  ],
  kitPaperTwice: [
    [
      { where: 'layouts[1]', names: { found: '"fern"', other: 'layouts[0]' } },
      'layouts[1] names the paper "fern", and so does layouts[0]; which sheets the two share may stand only in "papers" of the kit.',
    ],
  ],
  kitInsteadLayout: [
    [
      { where: 'instead[0].layout', names: { found: '"wide"', layouts: '"tall", "long"' } },
      'instead[0].layout holds "wide", which is no layout of this kit; it may hold "tall", "long".',
    ],
  ],
  kitInsteadPart: [
    [
      { where: 'instead[0].part', names: { found: '"pane"', layout: '"tall"' } },
      'instead[0].part holds "pane", which is no part of the layout "tall"; it may hold "base" or the id of one of its parts.',
    ],
  ],
  kitInsteadPaper: [
    [
      { where: 'instead[0].paper', names: { found: '"moss"', part: '"panel"', papers: '"fern"' } },
      'instead[0].paper holds "moss", but "panel" is not cut from that paper; it may hold "fern".',
    ],
  ],
  trimmerMarks: [
    [
      { where: 'marks', names: { found: '"2 cm"', most: '"1 cm"' } },
      'marks holds "2 cm", which is more than the longest cut, "1 cm"; it may hold the distance from one mark to the next, such as "1/16 in" or "1 mm".',
    ],
  ],
  trimmerReach: [
    [
      { where: 'reach.measuringSide', names: { found: '"1/4 in"', limit: 'narrowest', most: '"1/2 in"' } },
      'reach.measuringSide holds "1/4 in", which is less than narrowest, "1/2 in", so that nothing could be measured off; it may be no less than that.',
    ],
  ],
  limitOrder: [
    [
      {
        where: 'classes[0].least.length',
        names: { found: '"300 mm"', limit: 'classes[0].most.length', most: '"240 mm"' },
      },
      'classes[0].least.length holds "300 mm", which is more than classes[0].most.length, "240 mm", so that nothing could be of this kind; it may be no more than that.',
    ],
  ],
  testCutShort: [
    [
      { where: 'testCut.set', names: { found: '"1/2 in"', units: 'in' }, numbers: { low: 40_640 } },
      'testCut.set holds "1/2 in"; a test cut may be no shorter than 1 in, so that it can be measured well.',
    ],
  ],
  testCutFar: [
    [
      {
        where: 'testCut.measured',
        names: { found: '"5 in"', set: '"4 in"', units: 'in' },
        numbers: { high: 10_160 },
      },
      'testCut.measured holds "5 in" where the trimmer was set to "4 in"; a ruler may be off by no more than 1/4 in, so measure that cut again.',
    ],
  ],
  trimmerNarrow: [
    [
      { where: 'narrowest', names: { found: '"2 cm"', most: '"1 cm"' } },
      'narrowest holds "2 cm", which is more than the longest cut, "1 cm"; it may be no more than that.',
    ],
  ],
};

describe('each code has its sentence', () => {
  test.each(
    fileProblemCodes().flatMap((code) => cases[code].map(([told, says]) => [code, says, told] as const)),
  )('%s: %s', (code, says, told) => {
    expect(sentence(code, told)).toBe(says);
  });
});

test('every sentence says what may stand there, or what to do', () => {
  for (const says of Object.values(cases).flatMap((each) => each.map(([, text]) => text)))
    expect(says).toMatch(/\bmay\b|\bwrite\b|Write|begins with|is missing|choose|put these right/);
});

test('a code of another part is a mistake of ours', () => {
  expect(() => sentence('paperShort', {})).toThrow('has a code of a file');
  expect(() => sentence('toString', {})).toThrow('has a code of a file');
});
