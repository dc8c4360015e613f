/**
 * The one table of the house: which part may know which, and which packages enter where, each with its reason.
 * The dependency rule, the library's doors and ARCHITECTURE.md's table are held to it by tests.
 */

/** `part: [parts it may import]`. What is not named here may not be imported. */
export const arrows = {
  problem: [],
  measure: ['problem'],
  stash: ['problem', 'measure'],
  making: ['problem', 'measure'],
  layout: ['problem', 'measure', 'stash', 'making'],
  cutting: ['problem', 'measure'],
  trimming: ['problem', 'measure', 'cutting'],
  replay: ['problem', 'measure'],
  planning: ['problem', 'measure', 'stash', 'making', 'layout', 'cutting', 'trimming', 'replay'],
  drawing: ['problem', 'measure'],
  printing: ['problem', 'drawing'],
  words: ['problem', 'measure', 'stash', 'making', 'layout', 'cutting', 'trimming', 'planning'],
  guide: [
    'problem',
    'measure',
    'stash',
    'making',
    'layout',
    'cutting',
    'trimming',
    'planning',
    'drawing',
    'words',
  ],
  files: ['problem', 'measure', 'stash', 'making', 'layout', 'trimming', 'words'],
};

/** Packages by the part they enter through. */
export const packages = {
  cutting: { highs: 'linear and integer programmes; only its types here, the loaded solver is handed in' },
  printing: {
    pdfkit: 'tagged PDF with embedded fonts',
    fontkit: 'the same text widths as pdfkit, whose font engine it is',
  },
  files: { zod: 'the shape of saved files, and the published JSON schema from the same source' },
};

/** The shells; they do not know one another. */
export const apps = {
  cli: { commander: 'reading of the command line, spelling hints, help' },
};
