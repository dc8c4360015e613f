import { capital, inWords } from './count.ts';

const lines = (count: number) => `${inWords(count)} ${count === 1 ? 'line' : 'lines'}`;

/** Making the set, a line at a time. */
export const bench = {
  /** Before anything was begun. */
  about:
    'Here the set is made, one line at a time, in type that can be read from a little way off. What is done is kept at once; you can close the page at any line and go on another day.',
  begin: 'Begin cutting',
  noPlan: 'The set can be begun as soon as there is a plan to cut by.',
  unproved:
    'Whether a better plan exists is still being worked out; you can wait for that, or begin with this one.',
  /** Where it stands. */
  stands: (done: number, all: number) =>
    done === 0
      ? `Nothing is done yet of ${lines(all)}.`
      : `${capital(lines(done))} of ${inWords(all)} ${done === 1 ? 'is' : 'are'} done.`,
  allDone: 'All is done: the set is made.',
  /** For which trimmer the settings are. */
  cutBy: {
    none: 'It is cut with no trimmer in particular: any setting may come up, also between the marks of your ruler.',
    say: 'Say what your trimmer can do',
    trimmer: 'It is cut with your trimmer, {name}.',
    unnamed: 'It is cut with your trimmer.',
    other: 'Look at your trimmer',
  },
  trimmerSince:
    'You have said otherwise what your trimmer can do since this set was begun. It goes on as it was begun; begin anew to cut by what is planned now.',
  changedSince:
    'The layout or its papers were changed since this set was begun. It goes on as it was begun; begin anew to cut by what is planned now.',
  beginAnew: 'Begin anew',
  sureAnew:
    'What is noted of the set that is being made is given up. What is cut already then counts as not there.',
  anew: 'Give it up and begin anew',
  keep: 'Go on with it',
  list: 'Lines that are done',
  earlier: (count: number) => `${capital(lines(count))} done before`,
  present: 'The line to do now',
  next: 'The next line',
  step: (step: number) => `Step ${step}`,
  scoring: 'Scoring the bases',
  onEach: (cards: number) => (cards === 1 ? 'On the card:' : `On each of the ${cards} cards:`),
  /** When glue has set so far that the work can be turned over, and when it is hard; clock times. */
  setAt: (time: string) => `Set at ${time}.`,
  turnAt: (time: string) => `Dry enough to turn over at ${time}.`,
  hardAt: (time: string) => `The glue is hard at ${time}; the cards go into their envelopes then.`,
  /** A time of the clock, as it is reckoned now. */
  doneBy: (time: string) => `Done by about ${time}, if you go on without a break.`,
  /** What a set that is made teaches of minutes a piece. */
  learnt: {
    heading: 'This set took otherwise than was reckoned:',
    of: {
      cut: 'cutting one piece',
      score: 'scoring and folding one base',
      ready: 'making one piece ready',
      lay: 'putting one piece on',
    },
    minutes: (what: string, now: string, was: string) => `${what}, ${now} minutes instead of ${was}`,
    how: 'It is reckoned from when each line was told to be done; lines with a long break are left out, waiting for glue too.',
    take: 'Reckon with these minutes from now on',
    taken: 'These minutes are reckoned with from now on; that can be undone on the Card screen.',
  },
  ruler: 'The setting on the ruler',
  partly: (cut: number, of: number) =>
    `${capital(inWords(cut))} of ${inWords(of)} ${cut === 1 ? 'is' : 'are'} cut.`,
  done: 'Done',
  oneDone: (of: number) => `One of the ${inWords(of)} is cut`,
  takeBack: 'Take back what was noted last',
  spoiled: 'A piece is spoiled or lost',
  /** How it is shown. */
  shown: 'The type is {type}; it is {voice}.',
  type: 'Size of the type',
  types: { usual: 'large', large: 'very large', larger: 'as large as it goes' },
  voice: 'Reading aloud',
  voices: { silent: 'not read aloud', aloud: 'read aloud' },
  noVoice: 'This device has no voice of its own to read with.',
  awake: {
    awake: 'The screen stays on while this page is open.',
    asleep: 'The screen may go dark by itself; the browser does not let this page keep it on.',
  },
  elsewhere: 'Something was noted in another window meanwhile; it stands here now.',
  notReadable: 'What was noted at this bench cannot be read at the moment. It has not gone away.',
  /** What was told and could not be noted. */
  notNoted: {
    here: 'This was not noted, for it does not go with what lies on the table now:',
    elsewhere:
      'Something was noted in another window first, and stands here now. This does not go with it and was not noted:',
    look: 'Look whether the line that stands here is the one that comes next at your table; if it is not, take back what was noted last, or note it again.',
    what: {
      begun: 'the set is begun.',
      cut: (step: number) => `step ${step} is cut.`,
      spoiled: 'something is spoiled or lost.',
      found: 'a scrap was found.',
      'planned again': 'the rest is cut by the plan that was made again.',
      made: 'a line of the putting together is done.',
      'taken back': 'what was noted last is taken back.',
    },
  },
  /** When something is spoiled. */
  spoil: {
    heading: 'What is spoiled or lost?',
    says: 'Say what is no longer any good, or is gone. The rest of the set is then planned again from what lies on the table, and nothing that is cut is wasted.',
    pieces: 'Pieces that are finished',
    workpieces: 'Sheets, strips and what is left over',
    base: 'Base',
    piece: (part: string, size: string, there: number) => `${part}, ${size}: ${there} there`,
    workpiece: (paper: string, size: string) => `${paper}, ${size}`,
    sheet: (paper: string, size: string) => `${paper}, a whole sheet of ${size}`,
    one: 'This one',
    /** Where several are alike. */
    oneOf: 'One of these',
    nothing: 'Nothing lies on the table.',
    notAfterAll: 'Nothing is spoiled after all',
    more: 'Something else is spoiled too',
    nothingElse: 'Nothing else is spoiled',
    planning: 'The rest is being planned again …',
    failed: 'The rest could not be planned again: something in the program went wrong.',
    goOn: 'Go on with this plan',
    short: 'What lies there is not enough',
    ways: 'What can be done instead:',
    take: 'Do that',
    /** A scrap besides. */
    found: {
      heading: 'There is a scrap besides that could be used',
      says: 'A scrap of {paper}, {width} by {height}, its print upright.',
      take: 'Plan with it too',
      notAfterAll: 'Plan without that scrap after all',
      labels: {
        paper: 'Paper of the scrap',
        width: 'Width of the scrap, its print upright',
        height: 'Height of the scrap, its print upright',
      },
    },
  },
};
