import { inWords } from './count.ts';

/** How the set is cut. */
export const trimming = {
  /** Said while the plan that was found first stands there. */
  proving: 'This plan can be cut as it stands. Whether a better one exists is still being worked out:',
  nothing: 'Nothing has to be cut for this set.',
  short: 'The papers are short',
  toPapers: 'To the papers',
  toBench: 'To the bench: cut it there, one line at a time',
  left: 'Left over',
  step: (step: number) => `Step ${step}`,
  reading:
    'Each setting has its picture. The sheet lies as you turn it under the blade, which runs up and down. The heavy rule is the measuring edge: push the work against it, and the pieces come off on that side.',
  /** Beside the pictures of prints that have a top. */
  arrow: 'The arrow points to the top of the print.',
  /** The small pictures of all steps of a paper, in a row. */
  flipBook: {
    about:
      'First, a row of small pictures shows from left to right how the sheets become pieces; each leads to its step.',
    label: 'The cutting, picture by picture',
    to: (step: number) => `To step ${step}`,
    back: 'Back to the row of pictures',
  },
  noTrimmer: 'For no trimmer in particular: one that can be set to any length and cuts as long as you like.',
  /** The person's trimmer, as a form. */
  trimmer: {
    heading: 'Your trimmer',
    none: 'No trimmer has been said yet. Say what yours can do, and every plan, every step and every guide goes by it, for all your layouts.',
    aside: 'Plans go by no trimmer now. The one that you said is kept.',
    say: 'Say what your trimmer can do',
    takeUp: 'Plan for the trimmer that you said',
    layAside: 'Plan for no trimmer',
    save: 'Save your trimmer to a file',
    fileName: 'my trimmer',
    named: 'It is called {name} and measures in {units}. It can be set {marks}.',
    limits: 'It cuts {longest}, and you keep or cut again strips of {narrowest}.',
    measured:
      'Work is measured on the {edge} of the blade, where the ruler reads {reach}, and {other} on the other side. You work it with the {hand} hand.',
    work: 'You cut {sheets} at once, and {cuts} in a sitting.',
    labels: {
      name: 'Name of the trimmer',
      units: 'Units',
      marks: 'Marks',
      longest: 'Longest cut',
      narrowest: 'Narrowest strip',
      edge: 'Measuring edge',
      reach: 'Reach of the ruler on the measuring side',
      other: 'Reach of a ruler on the other side of the blade',
      hand: 'Hand',
      sheets: 'Sheets at once',
      cuts: 'Cuts in a sitting',
    },
    units: { in: 'inches', mm: 'millimetres' },
    marked: (step: string) => `every ${step}`,
    unmarked: 'to any length',
    longest: {
      none: 'as long as you like',
      toNone: 'Any length',
      limited: (length: string) => `up to ${length}`,
    },
    narrowest: {
      none: 'any width',
      toNone: 'Any width',
      limited: (length: string) => `${length} and wider`,
    },
    reach: {
      none: 'as far as you like',
      toNone: 'As far as you like',
      limited: (length: string) => `up to ${length}`,
    },
    other: {
      none: 'nothing',
      toNone: 'There is no ruler on that side',
      limited: (length: string) => `up to ${length}`,
    },
    sides: { left: 'left', right: 'right' },
    sheets: (sheets: number) => `${inWords(sheets)} ${sheets === 1 ? 'sheet' : 'sheets'}`,
    cuts: {
      any: 'any number of cuts',
      toAny: 'Any number of cuts',
      counted: (cuts: number, written: string) => `${written} ${cuts === 1 ? 'cut' : 'cuts'} at most`,
    },
    test: {
      heading: 'Is its ruler true?',
      how: {
        in: 'One test cut tells. Take a scrap of cardstock with a straight edge, push that edge against the measuring edge, set the ruler to 4 inches and cut, with your fingers well away from the blade. Measure the piece that came off with a good steel rule, to a thirty-second of an inch.',
        mm: 'One test cut tells. Take a scrap of cardstock with a straight edge, push that edge against the measuring edge, set the ruler to 100 millimetres and cut, with your fingers well away from the blade. Measure the piece that came off with a good steel rule, to half a millimetre.',
      },
      say: 'Say what a test cut came to',
      says: 'Set to {set}, it cut {measured}.',
      set: 'What the ruler was set to',
      measured: 'What the piece measured',
      none: 'Take the ruler to be true',
    },
    open: {
      open: 'Take a trimmer from a file',
      takeBack: 'Back to the trimmer before',
      refused: 'This file was not taken:',
      noText: 'It is no text, so it is no trimmer file. A trimmer file ends in .trimmer.json.',
    },
  },
  /** What is kind to the person. */
  kindness: {
    heading: 'What is kind to you',
    /** The blanks are the places in her order. */
    says: (blanks: readonly string[]) =>
      `Of the plans that take as few sheets, you want the one with ${blanks.join(', then ')}.`,
    label: (place: number) => (place === 1 ? 'What counts first' : `What counts in place ${place}`),
    /** Behind the goals that were said. */
    usual: 'what is usual',
    goals: {
      settings: 'the fewest settings',
      passes: 'the fewest passes of the blade',
      turns: 'the fewest quarter turns',
      alike: 'sheets that are cut alike',
      leftover: 'the largest leftover in one piece',
      paper: 'scraps and small sheets used before large ones',
    },
  },
  /** What the papers are enough for. */
  enough: {
    heading: 'How many cards these papers are enough for',
    reckoning: 'Being worked out …',
    stack: (cards: number, written: string) =>
      cards === 1 ? 'One finished card' : `A stack of ${written} finished cards`,
    sheet: 'A sheet of the paper that runs out first',
    runsOut: 'Runs out first:',
    cliffs: 'What a small change would gain',
    noCliffs: 'No small change of a size, border or gap would gain anything from these papers.',
    take: 'Make it so:',
    more: (changes: number, written: string) =>
      changes === 1
        ? 'One change more would only give a sheet more of a piece.'
        : `${written} changes more would only give a sheet more of a piece.`,
  },
  /** Sizes that suit the sheets. */
  suit: {
    heading: 'Sizes that suit these sheets',
    about:
      'Say which lengths may move and how far. Of all sizes in whole marks that keep borders and gaps even, the nearest to what you drew that make the cards are looked for.',
    room: 'The {length} of {part} may be from {least} to {most}.',
    keep: 'Keep it as it is',
    letMove: 'Let the {length} of {part} move.',
    let: 'Let it move',
    mayNot: 'nothing of it may move.',
    mayAgain: 'Let it move again where others ask for it',
    noRoom: 'No length may move yet, so there is nothing to look for.',
    onlyFollows:
      'What may move so far follows from other lengths: let one of those move as well, and there is something to look for.',
    unknown: 'A size of the layout is not known yet; sizes are looked for as soon as it is.',
    look: 'Look for sizes that make {cards} cards.',
    go: 'Look for sizes',
    looking: 'Sizes are being looked for …',
    failed: (message: string) => `Sizes could not be looked for: ${message}.`,
    take: (cards: number, written: string) =>
      cards === 1 ? 'Make it so: one card' : `Make it so: ${written} cards`,
    base: 'the base',
    labels: {
      least: 'At least',
      most: 'At most',
      length: 'Length',
      part: 'Part',
      cards: 'How many cards',
    },
    lengths: {
      width: 'width',
      height: 'height',
      diameter: 'measure across',
      inset: 'border all round',
      gap: 'gap',
      left: 'distance from the left',
      right: 'distance from the right',
      top: 'distance from the top',
      bottom: 'distance from the bottom',
    },
  },
};
