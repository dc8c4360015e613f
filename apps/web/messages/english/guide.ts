/** The printed guide. */
export const guide = {
  about:
    'The guide is a booklet that a stranger can follow: what is needed, every cut drawn and said, scoring, putting together, and the front at its true size.',
  /** The options, as a sentence. */
  printed: 'It is printed on {sheet}, with measures in {units} and type of {type}, for {hand}.',
  sheet: 'Paper of the printer',
  sheets: { letter: 'letter paper (8 1⁄2 × 11 in)', a4: 'A4 paper (210 × 297 mm)' },
  units: 'Measures',
  unitWords: { in: 'inches', mm: 'millimetres' },
  type: 'Size of the type',
  types: { usual: 'the usual size', large: 'a large size', larger: 'a very large size' },
  hand: 'Hand that works the trimmer',
  /** With no choice: the hand of the trimmer, where one was said. */
  usualHand: {
    none: 'either hand',
    left: 'the left hand, as your trimmer is worked',
    right: 'the right hand, as your trimmer is worked',
  },
  hands: { left: 'the left hand', right: 'the right hand' },
  /** On which side the work is measured, for a hand that was chosen. */
  edge: {
    left: 'The measuring edge is then on the left. Left and right change places from hand to hand, but every setting is the same, and no print is mirrored.',
    right:
      'The measuring edge is then on the right. Left and right change places from hand to hand, but every setting is the same, and no print is mirrored.',
  },
  save: 'Save the guide as a PDF',
  print: 'Print the guide',
  making: 'The guide is being made …',
  saved: (file: string, pages: number) => `Saved: ${file}, ${pages === 1 ? 'one page' : `${pages} pages`}.`,
  printing: (pages: number) =>
    `The guide, ${pages === 1 ? 'one page' : `${pages} pages`}, was handed to the browser to be printed.`,
  failed: (message: string) => `The guide could not be made: ${message}.`,
  actualSize:
    'Print it at its actual size (100 %, not “fit to page”), then measure the test bar beside the front that is drawn at its true size.',
  unproved:
    'Whether a better plan exists is still being worked out. Until then the guide is made from the plan that was found first, and says so.',
  noPlan: 'There is a guide as soon as there is a plan to cut by.',
  short:
    'There can be no guide yet, for the papers are short. What is wanting, and the nearest that can be made, is told under',
  plate: 'Plate 1. The front.',
  /** The pages as they are printed. */
  pages: {
    heading: 'Its pages',
    laying: 'The pages are being laid out …',
    at: (page: number, of: number) => `Page ${page} of ${of}`,
    back: 'Leaf back',
    on: 'Leaf on',
  },
};
