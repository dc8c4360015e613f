import type { Problem } from '../problem/index.ts';
import type { PathFault } from '../shape/index.ts';
import { pathRefusalSentence } from './pathRefusal.ts';

/** What is the matter with a drawing that came as an SVG document. Adding a code without its sentence does not compile. */
export type SvgProblemCode = keyof typeof sentences;

/** Every code, in the order of the reading: the text, its elements, their attributes, the shapes together. */
export function svgProblemCodes(): readonly SvgProblemCode[] {
  return Object.keys(sentences) as SvgProblemCode[];
}

/** A sentence that says where in the document it is, what stands there and what may stand there. */
export function svgProblemSentence(problem: Problem<SvgProblemCode>): string {
  return sentences[problem.code](problem);
}

const shapes = 'path, rect, circle, ellipse, polygon, polyline or g';

const sentences = {
  // The text
  svgEmpty: () => 'The file is empty; it may hold an SVG drawing, which begins with <svg>.',
  svgTooLarge: ({ numbers }) =>
    `The file holds ${count(numbers.found)} characters; it may hold no more than ${count(numbers.high)}.`,
  svgXml: (problem) => `At ${spot(problem)} the file is no XML: ${problem.names.found ?? ''}.`,
  svgDoctype: (problem) =>
    `At ${spot(problem)} stands a DOCTYPE, which may name other files and words of its own; leave it out, the drawing is the same without it.`,
  svgInstruction: (problem) =>
    `At ${spot(problem)} stands ${found(problem)}, an instruction to other programs; only the drawing may stand there.`,
  svgRoot: (problem) =>
    problem.names.why === 'space'
      ? `At ${spot(problem)} stands <svg> without its namespace; it may begin only with <svg xmlns="http://www.w3.org/2000/svg">.`
      : `At ${spot(problem)} the file begins with <${element(problem)}>; an SVG drawing begins with <svg>.`,
  svgDeep: (problem) =>
    `At ${spot(problem)} too many groups stand inside one another; they may stand no more than ${count(problem.numbers.high)} deep.`,
  svgText: (problem) =>
    `At ${spot(problem)} stands the text ${found(problem)}, which is no outline; only ${shapes} may stand there.`,

  // Elements
  svgElement: (problem) =>
    `At ${spot(problem)} stands <${element(problem)}>, ${reasons[problem.names.why as keyof typeof reasons] ?? reasons.other}.`,
  svgTooMany: (problem) =>
    `At ${spot(problem)} begins one shape too many; a drawing may have no more than ${count(problem.numbers.high)}.`,
  svgNothing: () => `The drawing holds no shape; it may hold ${shapes}.`,

  // Attributes
  svgAttribute: (problem) =>
    `At ${spot(problem)} <${element(problem)}> has ${attribute(problem)}, which is not known here and may change the outline; leave it out.`,
  svgEvent: (problem) =>
    `At ${spot(problem)} <${element(problem)}> has ${attribute(problem)}, which would run a program; only an outline may stand there.`,
  svgReference: (problem) =>
    `At ${spot(problem)} <${element(problem)}> has ${attribute(problem)} ${found(problem)}, which points to something elsewhere; all of an outline may stand only in its own shape.`,
  svgStyle: (problem) =>
    `At ${spot(problem)} <${element(problem)}> has the style ${problem.names.property ?? ''}, which is not known here and may change the outline; only colours and the look of lines may stand there.`,
  svgTransform: (problem) =>
    `At ${spot(problem)} <${element(problem)}> has the transform ${found(problem)}; it may hold matrix, translate, scale, rotate, skewX and skewY with plain numbers, such as translate(10 20) rotate(45).`,
  svgSize: (problem) =>
    `At ${spot(problem)} the drawing has the ${attribute(problem)} ${found(problem)}; it may hold a number with in, mm, cm, pt, pc, px or no unit, such as 50mm.`,
  svgViewBox: (problem) =>
    `At ${spot(problem)} the drawing has the viewBox ${found(problem)}; it may hold four numbers, of which the last two are greater than zero, such as 0 0 50 70.`,
  svgNumber: (problem) =>
    `At ${spot(problem)} <${element(problem)}> has ${attribute(problem)} ${found(problem)}; it may hold a plain number, without per cent or a unit.`,
  svgNegative: (problem) =>
    `At ${spot(problem)} <${element(problem)}> has ${attribute(problem)} ${found(problem)}; it may hold only a number of zero or more.`,
  svgPoints: (problem) =>
    `At ${spot(problem)} <${element(problem)}> has the points ${found(problem)}; it may hold three places or more, each two numbers, such as 0,0 20,0 10,15.`,

  // Shapes
  svgPath: (problem) => {
    const { fault = 'empty', found = '' } = problem.names;
    const says = pathRefusalSentence({ code: fault as PathFault, at: problem.numbers.at ?? 0, found });
    return `At ${spot(problem)} stands a <${element(problem)}> that is no outline. ${says}`;
  },
  svgOpen: (problem) =>
    `At ${spot(problem)} <${element(problem)}> draws an open line; only a line that comes back to where it began is an outline.`,
  svgFlat: (problem) =>
    `At ${spot(problem)} <${element(problem)}> has no breadth or no height; an outline must have both.`,
  svgAway: (problem) =>
    `At ${spot(problem)} <${element(problem)}> is pressed flat, or put out of all measure, by the transforms round it; an outline must have breadth and height.`,
  svgHidden: (problem) =>
    `At ${spot(problem)} <${element(problem)}> is not shown (${found(problem)}); take it out, or show it if it belongs to the outline.`,
  svgLineOnly: (problem) =>
    `At ${spot(problem)} <${element(problem)}> is drawn as a line without a filling (fill: none); fill it if its inside is paper, or take it out.`,
  svgFilledHole: (problem) =>
    `At ${spot(problem)} <${element(problem)}> has lines inside its own that are filled over, but would be cut; fill it by the even-odd rule (fill-rule: evenodd) if they are holes, or take them out.`,
  svgOverlap: (problem) =>
    `At ${spot(problem)} <${element(problem)}> lies partly on the <${problem.names.other ?? ''}> at line ${count(problem.numbers.otherLine)}, column ${count(problem.numbers.otherColumn)}; join the two into one outline, for every line is cut.`,
  svgMore: ({ numbers }) =>
    `The drawing has more problems than the ${count(numbers.shown)} named here; put these right first.`,
} as const satisfies Record<string, (problem: Problem) => string>;

/** What an element is that is no outline, and what to do instead. */
const reasons = {
  program: 'which would run a program; only an outline may stand there',
  style:
    'which may change any shape of the drawing; shapes may have their looks only in attributes of their own',
  picture: 'a picture of dots; only drawn shapes have an outline',
  copy: 'which copies a shape from elsewhere; turn it into a shape of its own',
  letters: 'which depends on a typeface; turn its letters into paths',
  web: 'which is part of a web page and no outline; only shapes may stand there',
  link: 'a link; take its shapes out of it',
  gradient: 'a filling that an outline has not; give the shapes a plain colour',
  clip: 'which hides parts of shapes; cut the shapes themselves to what is shown',
  filter: 'which changes how shapes look; an outline may have none',
  marker: 'which draws at the ends of lines; draw it as shapes',
  movement: 'which moves shapes; an outline may only lie still',
  switch: 'which shows one shape or another; only the one that is meant may stand there',
  nested: 'a drawing within the drawing; its shapes may stand only in a group, <g>',
  defs: 'which is kept for elsewhere and not drawn; only an empty <defs> may stand there',
  other: `which is no outline; only ${shapes} may stand there`,
} as const;

function spot({ numbers }: Problem): string {
  return `line ${count(numbers.line)}, column ${count(numbers.column)}`;
}

function element({ names }: Problem): string {
  return names.element ?? '';
}

function attribute({ names }: Problem): string {
  return names.attribute ?? '';
}

function found({ names }: Problem): string {
  return names.found ?? '';
}

function count(number = 0): string {
  return String(number).replace(/(?<=\d)(?=(?:\d{3})+$)/g, ' ');
}
