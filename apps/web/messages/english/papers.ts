/** The stash: papers and their sheets, in sentences with blanks. */
export const papers = {
  measure:
    'Measure the sheets themselves and write down what they are: one sold as 12 in may be 11 15⁄16 in, and where a plan has no room to spare the last piece would then come out short. A blank for a size opens onto a ruler.',
  none: 'There is no paper in this stash yet.',
  runsOut: 'What runs out first',
  reckoning: 'Working out what these papers are enough for …',

  /** A paper. */
  is: '{name} is {kind}, {gsm}, {thickness}; it {up}. Its main colour is {colour}.',
  otherSide: 'Its other side is {back}.',
  otherSidePrinted: 'Its other side is {back}, which {backUp}; the colour there is {backColour}.',
  labels: {
    name: 'Name',
    kind: 'Kind',
    gsm: 'Weight of the paper',
    thickness: 'Thickness of one sheet',
    up: 'How it may lie',
    colour: 'Main colour',
    back: 'Other side',
    backUp: 'How its other side may lie',
    backColour: 'Main colour of the other side',
  },
  kinds: {
    cardstock: 'cardstock',
    patterned: 'patterned paper',
    vellum: 'vellum',
    paper: 'plain paper',
  },
  noKind: 'a paper',
  gsm: (grams: string) => `${grams} g/m²`,
  pounds: (pounds: string, grams: string) => `${pounds} (${grams} g/m²)`,
  noGsm: 'weight not known',
  thick: (thickness: string) => `${thickness} thick`,
  notThick: 'thickness not known',
  ups: {
    any: 'may lie any way',
    'one-way': 'stands upright',
    'two-way': 'stands upright or half round',
  },
  noColour: 'not known',
  colourShown: 'the one shown here',
  noBack: 'like its front',
  hints: {
    gsm: 'As it is printed on the pack: grams per square metre, or pounds with their kind, such as 80 lb cover. Pounds of one kind are not those of another: 110 lb index is lighter than 80 lb cover. Empty: not known. Enter is done, Escape takes it back.',
    thickness:
      'As measured over ten sheets and divided by ten; millimetres where no unit stands. Empty: not known.',
    back: 'What the other side is called; empty: it is like the front. Enter is done, Escape takes it back.',
    price: 'In your own money, for one sheet; empty: no price. All sheets of a paper have one or none has.',
    margin: 'What is ragged or has a printed strip, and is cut off first; empty: good to the edge.',
    colour:
      'The colour that is seen most, for the pictures. The hatch stays, so that papers are never told apart by colour alone.',
  },
  chooseColour: 'Choose a colour',
  forgetColour: 'Not known',
  plate: (size: string) => `A sheet of ${size}, drawn small.`,
  plateUp: (size: string) => `A sheet of ${size}, drawn small; the arrow shows where its top is.`,
  plateNone: 'Its hatch; there is no sheet of it.',
  swatch: (name: string) => `${name}, with the hatch it is known by`,

  /** Its sheets. */
  sheetsOf: (paper: string) => `Sheets of ${paper}`,
  noSheets: 'No sheets of it are on hand.',
  of: (units: string) => `{count} of {width} by {height} ${units}, {price}; grain {grain}.`,
  scrapOf: (units: string) => `{count} of {width} by {height} ${units}; grain {grain}.`,
  goodEdges: 'Good to its edges',
  badEdges: 'Not good to every edge',
  edges: 'Not usable: {left} on the left, {right} on the right, {top} at the top, {bottom} at the bottom.',
  sheetLabels: {
    count: 'How many',
    width: 'Width as measured, the print upright',
    height: 'Height as measured, the print upright',
    price: 'Price of one sheet',
    grain: 'Grain',
    left: 'Not usable on the left',
    right: 'Not usable on the right',
    top: 'Not usable at the top',
    bottom: 'Not usable at the bottom',
  },
  counted: (count: number) => (count === 0 ? 'No sheets' : count === 1 ? '1 sheet' : `${count} sheets`),
  scraps: (count: number) => (count === 1 ? 'A scrap' : `${count} scraps`),
  asNeeded: 'As many sheets as needed',
  boughtAsNeeded: 'As many as needed',
  each: (price: string) => `${price} each`,
  noPrice: 'price not known',
  grains: { width: 'along its width', height: 'along its height', unknown: 'not known' },
  good: 'nothing',
  cutInto: 'One of these has been cut into',
  takeSheets: 'Take these out',

  /** Other sheets and papers. */
  addSheets: 'Also sheets of {size}.',
  add: 'Put these in',
  sizeLabel: 'Size of the sheets',
  another: 'Another paper',
  anotherIs: 'A {kind}, {name}, {count} of {size}.',
  names: {
    cardstock: 'New cardstock',
    patterned: 'New print',
    vellum: 'New vellum',
    paper: 'New paper',
  },
  put: 'Put it into the stash',
  /** Sizes of sheets that are usually sold. */
  sizes: {
    letter: 'Letter, 8 1/2 by 11 in',
    square12: '12 by 12 in',
    square8: '8 by 8 in',
    square6: '6 by 6 in',
    a3: 'A3, 297 by 420 mm',
    a4: 'A4, 210 by 297 mm',
    a5: 'A5, 148 by 210 mm',
    square305: '305 by 305 mm',
    square150: '150 by 150 mm',
  },

  /** Taking one out. */
  take: 'Take it out of the stash',
  takeNamed: (paper: string) => `Take ${paper} out of the stash`,
  isCut: 'These are cut from it:',
  theBase: 'the base',
  cutInstead: 'They can be cut from this one instead:',
  noOther: 'There is no other paper to cut them from: put one into the stash first.',
  takeAndGive: 'Cut them from that one and take this out',
  leaveIt: 'Leave it in',

  leftovers: {
    heading: 'From what is left',
    looking: 'Looking what the leftovers could still give …',
    about:
      'Once the set is cut, the stash can be brought up to date in one step: the sheets that were cut go out, and what is left of them comes in as scraps.',
    restock: 'The set is cut: bring the stash up to date',
    /** Small things beside the cards. */
    extras: {
      add: 'Want something else of the leftovers: a tag, a snippet for a friend',
      first: 'Gift tag',
      sized: (units: string) =>
        `Wanted of the leftovers: {name}, {width} by {height} ${units}, {count} of them.`,
      round: (units: string) =>
        `Wanted of the leftovers: {name}, {diameter} ${units} across, {count} of them.`,
      asMany: 'as many as there are',
      take: 'Not wanted any more',
      takeNamed: (name: string) => `${name}: not wanted any more`,
      labels: {
        name: 'What it is called',
        width: 'How wide it is',
        height: 'How high it is',
        diameter: 'How far it is across',
        count: 'How many are wanted',
      },
    },
  },

  /** What the set takes of it. */
  takes: 'What this set takes',
  unused: 'Nothing of it is cut for this set.',
  othersShort: 'That is known as soon as there is enough of the other papers.',
  left: (left: number, of: number) =>
    left === 0 ? 'No sheet is left whole.' : `${left} of ${of} stay whole.`,
};
