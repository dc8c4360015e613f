import type { FoldKind } from '../../../../src/making/index.ts';
import { capital, inWords } from './count.ts';

const layouts = (count: number) => `${inWords(count)} ${count === 1 ? 'layout' : 'layouts'}`;
const day = new Intl.DateTimeFormat('en', { dateStyle: 'long' });
const date = (when: number) => day.format(when);

const foldNames = {
  left: 'side fold',
  top: 'top fold',
  gate: 'gate fold',
  shutter: 'shutter fold',
  trifold: 'trifold',
  roll: 'roll fold',
  parallel: 'double parallel fold',
  z: 'Z fold',
  none: 'flat',
} as const satisfies Record<FoldKind, string>;

/** The shelf. `{title}` is where the person's own title stands. */
export const shelf = {
  documentTitle: 'Shelf',
  empty:
    'Here you plan a set of handmade cards before any paper is cut. The shelf is still empty: take one of the examples below to look around in, or begin a set of your own.',
  stands: (count: number, uncopied: number) => {
    const there = `${capital(layouts(count))} ${count === 1 ? 'stands' : 'stand'} on the shelf`;
    if (uncopied === 0)
      return count === 1
        ? `${there}, copied to a file as it is now.`
        : `${there}, all copied to files as they are now.`;
    if (uncopied === count)
      return count === 1
        ? `${there}, and is kept in this browser only.`
        : `${there}, and are kept in this browser only.`;
    return `${there}; ${uncopied === 1 ? 'one is' : `${uncopied} are`} kept in this browser only as ${uncopied === 1 ? 'it is' : 'they are'} now.`;
  },
  /** Where nothing is kept. */
  standsHere: (count: number) =>
    `${capital(layouts(count))} ${count === 1 ? 'stands' : 'stand'} on the shelf until this page is closed.`,
  reading: 'Looking at what is on the shelf …',
  list: 'On the shelf',
  untitled: 'Without a title',
  facts: (cards: number, size: string, fold: FoldKind) =>
    `${cards === 1 ? '1 card' : `${cards} cards`}, ${size}, ${foldNames[fold]}.`,
  picture: 'The front of {title}',
  notReadable: 'This layout cannot be shown; a copy of it can still be saved to a file.',
  kept: {
    never: 'Kept in this browser on this device; not copied to a file yet.',
    asIs: (when: number) =>
      `Kept in this browser on this device; copied to a file as it is now, on ${date(when)}.`,
    older: (when: number) =>
      `Kept in this browser on this device; changed since it was last copied to a file, on ${date(when)}.`,
  },
  /** Where nothing is kept. */
  here: {
    never: 'On this page only; not copied to a file yet.',
    asIs: (when: number) => `On this page only; copied to a file as it is now, on ${date(when)}.`,
    older: (when: number) =>
      `On this page only; changed since it was last copied to a file, on ${date(when)}.`,
  },
  second:
    'A second version: the one above was changed in another window, or came from a file, while this one differed. Nothing of either is lost; keep the one you want, and put the other into the bin.',
  secondAlone: 'A second version of a layout that is not on the shelf any more.',
  open: 'Open {title}',
  saveCopy: 'Save a copy to a file',
  another: 'Begin another like it',
  anotherTitle: (title: string) => `${title}, another`,
  toBin: 'Put into the bin',
  begin: {
    heading: 'Begin a set',
    sentence:
      'A set of {cards} cards called {title}, each {width} wide and {height} high when it is closed, folded {fold}.',
    labels: {
      cards: 'How many cards',
      title: 'What the set is called',
      width: 'Width of the closed card',
      height: 'Height of the closed card',
      fold: 'Where the card is folded',
    },
    folds: {
      left: 'at the side',
      top: 'at the top',
      gate: 'as a gate: two doors that meet in the middle',
      shutter: 'as a shutter: two doors folded back on themselves',
      trifold: 'in three, rolled up',
      roll: 'in four, rolled up',
      parallel: 'in half, and in half again',
      z: 'in three, to and fro',
      none: 'not at all',
    },
    measuredIn: 'Measured in',
    units: { in: 'inches', mm: 'millimetres' },
    title: 'My new set',
    go: 'Begin this set',
  },
  examples: {
    heading: 'Examples to begin with',
    says: 'Each is a whole set with its papers. You work on a copy of your own, so nothing you do to it can spoil anything.',
    take: 'Take a copy of {title}',
  },
  files: {
    heading: 'Files',
    says: 'A layout file, or a zip that was saved here, can be opened from this device, or dropped anywhere on this page.',
    open: 'Open a file',
    saveAll: 'Save everything in one file',
    saveAllSays:
      'One zip with each layout as a file of its own, all that can be undone and what was noted at the bench. Opened here or in another browser, it puts everything back.',
    drop: 'Let go to open what you hold.',
  },
  bin: {
    heading: (count: number) => `The bin: ${layouts(count)}`,
    says: 'What lies in the bin goes for good 30 days after it was put there.',
    goes: (when: number) => `{title} goes for good on ${date(when)}.`,
    back: 'Put {title} back on the shelf',
    empty: 'Empty the bin',
    sure: (count: number) =>
      `${capital(layouts(count))} will be gone for good, with all that was done to ${count === 1 ? 'it' : 'them'}. This cannot be undone.`,
    yes: 'Empty it for good',
    no: 'Leave it as it is',
  },
  where: {
    heading: 'Where all this is kept',
    device:
      'Everything is kept by this browser, on this device. Nothing is sent anywhere, and nobody else can see it. Another browser, or another device, has a shelf of its own.',
    nowhere:
      'Nothing is kept: this browser has no place for it, or lets pages keep nothing. What stands on the shelf goes when this page is closed. Save copies of what you would miss to files; they can be opened here again.',
    promised:
      'The browser has promised to keep it: it clears nothing by itself. It would still go with the device, so copies in files are a good habit.',
    notPromised:
      'The browser has not promised to keep it: when the device runs out of room, or after weeks without a visit, it may clear it. Save copies of what you would miss to files.',
    cannotAsk:
      'Over a plain address in the house (http), the browser cannot be asked to promise that it keeps this: when the device runs out of room, or after weeks without a visit, it may clear it. Save copies of what you would miss to files.',
  },
  /** Whether the page itself works without a network; `{file}` is the address of a file. */
  offline: {
    kept: 'The page itself is kept here too: it opens and works without a network.',
    beingKept:
      'The page itself is being kept here too, so that it works without a network. A minute or two may go by until it is.',
    notKept:
      'The page itself could not be kept here this time, so it opens only with a network. It is tried again at each visit.',
    missing:
      'The page itself could not be kept here, so it opens only with a network: of its files, {file} is missing where it comes from, or is not whole there. It is tried again at each visit.',
    thePage: 'the page itself',
    cannot:
      'The page itself cannot be kept in this browser at this address. To open it, the machine that it comes from must be on and in reach; once open, what it has loaded works on.',
    newer: 'A newer version of this page is here. You go on in yours until you load the newer one.',
    load: 'Load the newer version',
    unsaved:
      'It was not loaded: something that you did on this page is not kept yet, and would go with it. Save a copy of it to a file first, or wait until it is kept.',
  },
  done: {
    saved: 'A copy of {title} was handed to your browser to save.',
    savedAll: (count: number) => `A zip of ${layouts(count)} was handed to your browser to save.`,
    binned: '{title} lies in the bin.',
    takeBack: 'Take it out again',
    back: '{title} stands on the shelf again.',
    emptied: 'The bin is empty.',
    putBack: ({
      added,
      beside,
      further,
      there,
    }: {
      readonly added: number;
      readonly beside: number;
      readonly further: number;
      readonly there: number;
    }) =>
      [
        added > 0 ? `${capital(layouts(added))} came onto the shelf.` : '',
        beside > 0
          ? `${capital(layouts(beside))} ${beside === 1 ? 'differs from the one' : 'differ from those'} that stood here, and ${beside === 1 ? 'stands' : 'stand'} beside ${beside === 1 ? 'it as a second version' : 'them as second versions'}.`
          : '',
        further > 0
          ? `${capital(layouts(further))} stood here already; what was noted since at the bench stands there now too.`
          : '',
        there > 0 ? `${capital(layouts(there))} stood here already, just the same.` : '',
      ]
        .filter((part) => part !== '')
        .join(' '),
  },
  problems: {
    notOpened: '{name} was not opened, and nothing on the shelf was changed.',
    tooLarge: 'It is much larger than any file of ours.',
    noText: 'It holds no text, so it is neither a layout file nor a zip.',
    noLayout: 'It holds some text, but it is neither a layout file nor a zip.',
    'not a zip': 'It ends too early or is damaged: it can be read neither as a zip nor as a layout file.',
    'too large': 'What is packed in it is much more than a shelf comes to.',
    damaged: 'In it, {inner} is damaged. Another copy of the zip may be sound.',
    'nothing of ours': 'There is no layout in it: no file whose name ends in .card.json.',
    layout: 'In it, {inner} is not sound:',
    history:
      'In it, {inner} does not fit the layout beside it. The layout files in the zip can be unpacked and opened one by one.',
    bench:
      'In it, {inner} does not fit together: what it tells of the bench can have happened at no table. The layout files in the zip can be unpacked and opened one by one.',
    newer: 'In it, {inner} was written by a newer version of this program.',
    storage: 'This browser did not do it, and nothing was changed.',
    shelf: 'What is on the shelf cannot be read at the moment. It has not gone away.',
    says: (says: string) => `The browser says: ${says}`,
    full: 'The browser gives no more room. Room comes from emptying the bin, or from what other pages keep on this device.',
    newerPage: 'A newer version of this page has been opened in another window. Load this page again.',
    tryAgain: 'Try again',
  },
};
