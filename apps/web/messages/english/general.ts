import { capital, inWords } from './count.ts';

export const general = {
  /** The contents line; the screens in the order of their folio numbers. */
  contents: 'Contents',
  screens: {
    shelf: 'Shelf',
    card: 'Card',
    papers: 'Papers',
    trimming: 'Trimming',
    bench: 'Bench',
    guide: 'Guide',
    kit: 'Kit',
  },
  skip: 'To the page itself',
  title: (screen: string, layout: string) => `${layout}: ${screen}`,
  takeCare: 'Take care',
  loading: 'Taking it from the shelf …',
  notThere: 'There is no such layout on the shelf of this browser.',
  toShelf: 'To the shelf',
  undo: 'Undo',
  redo: 'Do again',
  undoes: (sentence: string) => `Undo: ${sentence}`,
  redoes: (sentence: string) => `Do again: ${sentence}`,
  undone: (sentence: string) => `Undone: ${sentence}`,
  redone: (sentence: string) => `Done again: ${sentence}`,
  saving: {
    failed: 'What you did last could not be kept in this browser. It is still here on this page.',
    why: {
      full: 'The browser gives it no more room. Room comes from emptying the bin on the shelf, or from what other pages keep on this device.',
      newer:
        'A newer version of this page has been opened in another window. Save a copy to a file, then load this page again.',
      slow: 'The browser has not answered yet. It may still do so; nothing has to be done again.',
      other: (says: string) => `The browser says: ${says}. It is tried again by itself.`,
    },
    notKept:
      'Nothing is kept in this browser: it has no place for it, or lets pages keep nothing. What you do is on this page only and goes when the page is closed, so save a copy to a file before that.',
    saveCopy: 'Save a copy to a file',
    tryAgain: 'Try again',
    beside:
      'This layout was changed in another window meanwhile. Nothing is lost: what you do here is kept as a second version, beside the first on the shelf.',
  },
  ground: {
    legend: 'This page is',
    asDevice: 'as the device has it',
    light: 'light',
    dark: 'dark',
  },
  failed: 'Something in the program went wrong',
  failedSays: (message: string) => `It says: ${message}.`,
  again: 'Load the page again',
  keptAll: 'All that you did is kept; load the page again to go on.',
  sizeUnknown: (problems: number) =>
    problems === 1
      ? 'One thing has to be put right before the set can be planned; it is told on the card.'
      : `${capital(inWords(problems))} things have to be put right before the set can be planned; they are told on the card.`,
  planning: 'Working out the plan …',
  plannerFailed:
    'The plan could not be worked out: something in the program went wrong. Any change tries again.',
  colophon: 'Everything is worked out on this device and stays there.',
};
