/** The printed guide. */
export const guide = {
  about:
    'The guide is a booklet that a stranger can follow: what is needed, every cut drawn and said, scoring, putting together, and the front at its true size.',
  /** The options, as a sentence. */
  printed: 'It is printed on {sheet}, with measures in {units} and type of {type}.',
  sheet: 'Paper of the printer',
  sheets: { letter: 'letter paper (8 1⁄2 × 11 in)', a4: 'A4 paper (210 × 297 mm)' },
  units: 'Measures',
  unitWords: { in: 'inches', mm: 'millimetres' },
  type: 'Size of the type',
  types: { usual: 'the usual size', large: 'a large size', larger: 'a very large size' },
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
