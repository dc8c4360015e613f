import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Length,
  lengthOfTicks,
  millimetres,
  readLength,
  ticksPerMillimetre,
  zero,
} from '../measure/index.ts';
import { areaOf, type PathShape, pathOutline, pathSize, readPath, regionOf } from '../shape/index.ts';
import { type SvgProblemCode, svgProblemCodes, svgProblemSentence } from '../words/index.ts';
import { readLayoutFile } from './layoutFile.ts';
import { readSvgFile, type SvgOutline } from './svgFile.ts';
import { plainLayout } from './testing/plainLayout.ts';
import { writtenLength } from './writtenLength.ts';

const space = 'xmlns="http://www.w3.org/2000/svg"';
const svg = (inside: string, attributes = '') => `<svg ${space}${attributes}>${inside}</svg>`;
const square = '<path d="M0 0H10V10H0Z"/>';

function refused(text: string): { code: SvgProblemCode; says: string }[] {
  const read = readSvgFile(text);
  if (!('problems' in read)) throw new Error(`Taken: ${read.outline}`);
  return read.problems.map((problem) => ({ code: problem.code, says: svgProblemSentence(problem) }));
}

function taken(text: string): SvgOutline {
  const read = readSvgFile(text);
  if ('problems' in read) throw new Error(read.problems.map(svgProblemSentence).join('\n'));
  return read;
}

function pathIn(outline: string): PathShape {
  const reading = readPath(outline);
  if (!reading.ok) throw new Error(reading.code);
  return reading.path;
}

/** The area of an outline in square units of its document, a unit as 1000 ticks. */
function areaIn({ outline }: SvgOutline): number {
  const path = pathIn(outline);
  const { width, height } = pathSize(path);
  const ticks = (units: number) => lengthOfTicks(Math.round(units * 1000));
  const box = { left: ticks(0), top: ticks(0), width: ticks(width), height: ticks(height) };
  return areaOf(regionOf(pathOutline(path, box))) / 1e6;
}

describe('readSvgFile refuses', () => {
  const element = (inside: string, says: string): [SvgProblemCode, string, string] => [
    'svgElement',
    svg(inside),
    `At line 1, column 41 stands ${says}.`,
  ];
  const cases: readonly (readonly [code: SvgProblemCode, text: string, says: string])[] = [
    ['svgEmpty', ' \n', 'The file is empty; it may hold an SVG drawing, which begins with <svg>.'],
    [
      'svgTooLarge',
      svg(' '.repeat(5_000_000)),
      'The file holds 5 000 046 characters; it may hold no more than 5 000 000.',
    ],
    ['svgXml', `<svg ${space}>\n<g></svg>`, 'At line 2, column 10 the file is no XML: unexpected close tag.'],
    ['svgXml', svg('<path d="&leaf;"/>'), 'At line 1, column 56 the file is no XML: undefined entity.'],
    ['svgXml', 'M0 0H10V10Z', 'At line 1, column 12 the file is no XML: text data outside of root node.'],
    [
      'svgDoctype',
      `<!DOCTYPE svg [<!ENTITY a "aaaa">]>${svg('&a;')}`,
      'At line 1, column 1 stands a DOCTYPE, which may name other files and words of its own; leave it out, the drawing is the same without it.',
    ],
    [
      'svgDoctype',
      `<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">${svg(square)}`,
      'At line 1, column 1 stands a DOCTYPE, which may name other files and words of its own; leave it out, the drawing is the same without it.',
    ],
    [
      'svgInstruction',
      `<?xml-stylesheet href="looks.css"?>\n${svg(square)}`,
      'At line 1, column 1 stands <?xml-stylesheet?>, an instruction to other programs; only the drawing may stand there.',
    ],
    [
      'svgRoot',
      '<html><body/></html>',
      'At line 1, column 1 the file begins with <html>; an SVG drawing begins with <svg>.',
    ],
    [
      'svgRoot',
      `<svg>${square}</svg>`,
      'At line 1, column 1 stands <svg> without its namespace; it may begin only with <svg xmlns="http://www.w3.org/2000/svg">.',
    ],
    [
      'svgDeep',
      svg('<g>'.repeat(60) + square + '</g>'.repeat(60)),
      'At line 1, column 188 too many groups stand inside one another; they may stand no more than 50 deep.',
    ],
    [
      'svgText',
      svg(`${square} Happy day`),
      'At line 1, column 67 stands the text "Happy day", which is no outline; only path, rect, circle, ellipse, polygon, polyline or g may stand there.',
    ],
    [
      'svgText',
      svg(`<![CDATA[words]]>${square}`),
      'At line 1, column 50 stands the text "words", which is no outline; only path, rect, circle, ellipse, polygon, polyline or g may stand there.',
    ],
    element('<script>run()</script>', '<script>, which would run a program; only an outline may stand there'),
    element(
      '<style>path { display: none }</style>',
      '<style>, which may change any shape of the drawing; shapes may have their looks only in attributes of their own',
    ),
    element('<image href="photo.png"/>', '<image>, a picture of dots; only drawn shapes have an outline'),
    element(
      '<use href="#leaf"/>',
      '<use>, which copies a shape from elsewhere; turn it into a shape of its own',
    ),
    element(
      `<symbol id="leaf">${square}</symbol>`,
      '<symbol>, which copies a shape from elsewhere; turn it into a shape of its own',
    ),
    element('<text>Joy</text>', '<text>, which depends on a typeface; turn its letters into paths'),
    element(
      '<foreignObject><p xmlns="http://www.w3.org/1999/xhtml">Joy</p></foreignObject>',
      '<foreignObject>, which is part of a web page and no outline; only shapes may stand there',
    ),
    element('<a href="#"><path d="M0 0H9V9Z"/></a>', '<a>, a link; take its shapes out of it'),
    element(
      '<linearGradient id="g"><stop offset="0"/></linearGradient>',
      '<linearGradient>, a filling that an outline has not; give the shapes a plain colour',
    ),
    element(
      '<pattern id="p"/>',
      '<pattern>, a filling that an outline has not; give the shapes a plain colour',
    ),
    element(
      '<clipPath id="c"/>',
      '<clipPath>, which hides parts of shapes; cut the shapes themselves to what is shown',
    ),
    element(
      '<mask id="m"/>',
      '<mask>, which hides parts of shapes; cut the shapes themselves to what is shown',
    ),
    element('<filter id="f"/>', '<filter>, which changes how shapes look; an outline may have none'),
    element('<marker id="m"/>', '<marker>, which draws at the ends of lines; draw it as shapes'),
    element('<animate attributeName="r"/>', '<animate>, which moves shapes; an outline may only lie still'),
    element(
      `<switch>${square}</switch>`,
      '<switch>, which shows one shape or another; only the one that is meant may stand there',
    ),
    element(
      `<svg>${square}</svg>`,
      '<svg>, a drawing within the drawing; its shapes may stand only in a group, <g>',
    ),
    element(
      '<view id="v"/>',
      '<view>, which is no outline; only path, rect, circle, ellipse, polygon, polyline or g may stand there',
    ),
    element(
      '<p xmlns="http://www.w3.org/1999/xhtml">Joy</p>',
      '<p>, which is part of a web page and no outline; only shapes may stand there',
    ),
    [
      'svgElement',
      svg(`<defs>${square}</defs>`),
      'At line 1, column 47 stands <path>, which is kept for elsewhere and not drawn; only an empty <defs> may stand there.',
    ],
    [
      'svgElement',
      svg('<metadata><script/></metadata>'),
      'At line 1, column 51 stands <script>, which would run a program; only an outline may stand there.',
    ],
    [
      'svgTooMany',
      svg('<rect width="1" height="1"/>'.repeat(2001)),
      'At line 1, column 56 041 begins one shape too many; a drawing may have no more than 2 000.',
    ],
    [
      'svgNothing',
      svg('<title>Nothing</title><g/>'),
      'The drawing holds no shape; it may hold path, rect, circle, ellipse, polygon, polyline or g.',
    ],
    [
      'svgAttribute',
      svg('<path d="M0 0H9V9Z" clip-path="none"/>'),
      'At line 1, column 61 <path> has clip-path, which is not known here and may change the outline; leave it out.',
    ],
    [
      'svgAttribute',
      svg('<circle r="5" transform-origin="5 5"/>'),
      'At line 1, column 55 <circle> has transform-origin, which is not known here and may change the outline; leave it out.',
    ],
    [
      'svgEvent',
      svg(`${square}\n<g\n  onload="go()"/>`),
      'At line 3, column 3 <g> has onload, which would run a program; only an outline may stand there.',
    ],
    [
      'svgReference',
      svg('<path d="M0 0H9V9Z" fill="url(#g)"/>'),
      'At line 1, column 61 <path> has fill "url(#g)", which points to something elsewhere; all of an outline may stand only in its own shape.',
    ],
    [
      'svgReference',
      svg('<g style="fill: URL( http://example.org/x.svg#g )"/>'),
      'At line 1, column 44 <g> has style "fill: URL( http://example.org/x.svg#g )", which points to something elsewhere; all of an outline may stand only in its own shape.',
    ],
    [
      'svgReference',
      svg('<g xlink:href="#a"/>', ' xmlns:xlink="http://www.w3.org/1999/xlink"'),
      'At line 1, column 87 <g> has href "#a", which points to something elsewhere; all of an outline may stand only in its own shape.',
    ],
    [
      'svgReference',
      svg(square, ' xml:base="http://example.org/"'),
      'At line 1, column 41 <svg> has xml:base "http://example.org/", which points to something elsewhere; all of an outline may stand only in its own shape.',
    ],
    [
      'svgStyle',
      svg('<circle r="5" style="fill: red; d: none"/>'),
      'At line 1, column 55 <circle> has the style d, which is not known here and may change the outline; only colours and the look of lines may stand there.',
    ],
    [
      'svgStyle',
      svg('<circle r="5" style="red"/>'),
      'At line 1, column 55 <circle> has the style red, which is not known here and may change the outline; only colours and the look of lines may stand there.',
    ],
    [
      'svgTransform',
      svg('<g transform="rotate(45deg)"/>'),
      'At line 1, column 44 <g> has the transform "rotate(45deg)"; it may hold matrix, translate, scale, rotate, skewX and skewY with plain numbers, such as translate(10 20) rotate(45).',
    ],
    [
      'svgSize',
      svg(square, ' width="100%"'),
      'At line 1, column 41 the drawing has the width "100%"; it may hold a number with in, mm, cm, pt, pc, px or no unit, such as 50mm.',
    ],
    [
      'svgSize',
      svg(square, ' height="0"'),
      'At line 1, column 41 the drawing has the height "0"; it may hold a number with in, mm, cm, pt, pc, px or no unit, such as 50mm.',
    ],
    [
      'svgViewBox',
      svg(square, ' viewBox="0 0 50"'),
      'At line 1, column 41 the drawing has the viewBox "0 0 50"; it may hold four numbers, of which the last two are greater than zero, such as 0 0 50 70.',
    ],
    [
      'svgNumber',
      svg('<circle cx="50%" cy="2" r="1"/>'),
      'At line 1, column 49 <circle> has cx "50%"; it may hold a plain number, without per cent or a unit.',
    ],
    [
      'svgNumber',
      svg('<rect width="5mm" height="2"/>'),
      'At line 1, column 47 <rect> has width "5mm"; it may hold a plain number, without per cent or a unit.',
    ],
    [
      'svgNegative',
      svg('<circle r="-1"/>'),
      'At line 1, column 49 <circle> has r "-1"; it may hold only a number of zero or more.',
    ],
    [
      'svgPoints',
      svg('<polygon points="0,0 5,5 9"/>'),
      'At line 1, column 50 <polygon> has the points "0,0 5,5 9"; it may hold three places or more, each two numbers, such as 0,0 20,0 10,15.',
    ],
    [
      'svgPath',
      svg('<path d="M0 0\nL5 5\nL9,x"/>'),
      'At line 3, column 4 stands a <path> that is no outline. At character 14 of the path stands x; a letter there may be only one of M L H V C S Q T A Z, small or capital.',
    ],
    [
      'svgPath',
      svg('<path d="M0 0L5 5L9 0" fill="none" stroke="black"/>'),
      'At line 1, column 50 stands a <path> that is no outline. The line that begins at character 1 of the path, M0 0L5 5L9 0, is open; it may only come back to where it began, or end with Z.',
    ],
    [
      'svgOpen',
      svg('<line x2="9"/>'),
      'At line 1, column 41 <line> draws an open line; only a line that comes back to where it began is an outline.',
    ],
    [
      'svgOpen',
      svg('<polyline points="0,0 5,5 9,0"/>'),
      'At line 1, column 41 <polyline> draws an open line; only a line that comes back to where it began is an outline.',
    ],
    [
      'svgFlat',
      svg('<rect width="5"/>'),
      'At line 1, column 41 <rect> has no breadth or no height; an outline must have both.',
    ],
    [
      'svgAway',
      svg(`<g transform="scale(1 0)">${square}</g>`),
      'At line 1, column 67 <path> is pressed flat, or put out of all measure, by the transforms round it; an outline must have breadth and height.',
    ],
    [
      'svgHidden',
      svg(`<g style="display:none">${square}</g>`),
      'At line 1, column 65 <path> is not shown (display: none); take it out, or show it if it belongs to the outline.',
    ],
    [
      'svgHidden',
      svg('<circle r="5" visibility="hidden"/>'),
      'At line 1, column 41 <circle> is not shown (visibility: hidden); take it out, or show it if it belongs to the outline.',
    ],
    [
      'svgLineOnly',
      svg('<circle r="5" fill="none" stroke="black"/>'),
      'At line 1, column 41 <circle> is drawn as a line without a filling (fill: none); fill it if its inside is paper, or take it out.',
    ],
    [
      'svgFilledHole',
      svg('<path d="M0 0H30V30H0ZM10 10H20V20H10Z"/>'),
      'At line 1, column 41 <path> has lines inside its own that are filled over, but would be cut; fill it by the even-odd rule (fill-rule: evenodd) if they are holes, or take them out.',
    ],
    [
      'svgOverlap',
      svg('<circle r="5"/>\n<circle cx="6" r="5"/>'),
      'At line 2, column 1 <circle> lies partly on the <circle> at line 1, column 41; join the two into one outline, for every line is cut.',
    ],
    [
      'svgOverlap',
      svg(`${square}\n${square}`),
      'At line 2, column 1 <path> lies partly on the <path> at line 1, column 41; join the two into one outline, for every line is cut.',
    ],
    [
      'svgMore',
      svg('<use/>'.repeat(101)),
      'The drawing has more problems than the 100 named here; put these right first.',
    ],
  ];

  it.each(cases.map((each, index) => [`${each[0]} ${index}`, ...each] as const))(
    '%s',
    (_, code, text, says) => {
      expect(refused(text)).toContainEqual({ code, says });
    },
  );

  it('every kind that there is, and many', () => {
    expect([...new Set(cases.map(([code]) => code))].sort()).toEqual([...svgProblemCodes()].sort());
    expect(cases.length).toBeGreaterThan(50);
  });

  it('all that is wrong at once, each with its place', () => {
    const text = svg('\n<use/>\n<circle r="x"/>\n<path d="M0 0Z"/>\n<g onclick=""/>\n');
    expect(refused(text).map(({ says }) => says.slice(0, 19))).toEqual([
      'At line 2, column 1',
      'At line 3, column 9',
      'At line 4, column 1',
      'At line 5, column 4',
    ]);
  });

  it('whatever stands in it, or takes it: nothing throws', () => {
    const piece = fc.constantFrom(
      ...[
        '<g>',
        '</g>',
        '<path d="',
        '"/>',
        'M0 0H9V9Z',
        '<svg>',
        '&amp;',
        '&',
        '<!--',
        '-->',
        '<![CDATA[',
        ']]>',
      ],
      ...[
        '<rect width="3" height="',
        'transform="',
        'scale(2)',
        '>',
        '<',
        'x',
        '\u0000',
        '\ufffd',
        '💚',
        '<?a ?>',
      ],
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), fc.boolean(), (pieces, whole) => {
        const inside = pieces.join('');
        const read = readSvgFile(whole ? svg(inside) : inside);
        if (!('problems' in read)) return expect(readPath(read.outline).ok).toBe(true) ?? true;
        expect(read.problems.length).toBeGreaterThan(0);
        for (const problem of read.problems) expect(svgProblemSentence(problem)).toMatch(/\.$/);
        return true;
      }),
      { numRuns: 2000 },
    );
  });
});

describe('readSvgFile takes', () => {
  it.each([
    ['a rectangle', '<rect x="5" y="6" width="10" height="20"/>', 200],
    ['a rounded one', '<rect width="20" height="10" rx="2"/>', 200 - (4 - Math.PI) * 4],
    ['one rounded by ellipses', '<rect width="20" height="10" rx="4" ry="2"/>', 200 - (4 - Math.PI) * 8],
    ['one rounded by more than it has', '<rect width="20" height="10" rx="50"/>', Math.PI * 10 * 5],
    ['a circle', '<circle cx="1" cy="2" r="10"/>', Math.PI * 100],
    ['an ellipse', '<ellipse rx="10" ry="4px"/>', Math.PI * 40],
    ['a polygon', '<polygon points="0,0 10,0 10-5"/>', 25],
    ['a closed polyline', '<polyline points="0 0, 10 0, 10 5, 0 0"/>', 25],
    ['a path', '<path d="m0 0h10v10h-10z"/>', 100],
    ['a path that comes back without Z', '<path d="M0 0H10V10L0 0M20 0h5v5L20 0"/>', 50 + 12.5],
    ['a hole by the even-odd rule', '<path fill-rule="evenodd" d="M0 0H9V9H0ZM3 3H6V6H3Z"/>', 72],
    ['a hole by its direction', '<path d="M0 0H9V9H0ZM3 3V6H6V3Z"/>', 72],
    [
      'a shape in a shape as a hole',
      '<rect width="9" height="9"/><circle cx="4.5" cy="4.5" r="2"/>',
      81 - 4 * Math.PI,
    ],
    ['shapes that only touch', '<rect width="5" height="5"/><rect x="5" width="5" height="5"/>', 50],
    ['shapes in groups', '<g><g><rect width="5" height="5"/></g></g>', 25],
    ['what is enlarged', '<rect width="5" height="5" transform="scale(2, 3)"/>', 150],
    ['what is turned', '<rect width="5" height="5" transform="rotate(30) translate(4,5)"/>', 25],
    ['a circle that is pressed', '<circle r="10" transform="matrix(1 0 0 .5 3 4)"/>', Math.PI * 50],
    ['what is slanted', '<g transform="skewX(30)"><rect width="5" height="5"/></g>', 25],
    ['what is mirrored', '<g transform="scale(-1 1)"><path d="M0 0H9V9H0ZM3 3V6H6V3Z"/></g>', 72],
    [
      'a colour, a look, a name',
      '<path id="a" class="b" d="M0 0H5V5H0Z" fill="#fa0" stroke="none" opacity=".5" style="stroke-width: 2; fill: red"/>',
      25,
    ],
    [
      'what is filled although its group is not',
      '<g fill="none"><rect width="5" height="5" fill="red"/></g>',
      25,
    ],
    [
      'what is shown in a group that is not',
      '<g visibility="hidden"><rect width="5" height="5" visibility="visible"/></g>',
      25,
    ],
    ['what a style fills', '<rect width="5" height="5" fill="none" style="fill: black"/>', 25],
    [
      'titles, descriptions, remarks',
      '<title>A & B</title><desc>x</desc><!-- y --><defs/><rect width="5" height="5"/>'.replace('&', '&amp;'),
      25,
    ],
    [
      'what other languages say',
      '<o:a xmlns:o="http://example.org/o"><o:b>text</o:b></o:a><rect xmlns:o="http://example.org/o" o:c="d" width="5" height="5"/>',
      25,
    ],
  ])('%s', (_, inside, area) => {
    expect(areaIn(taken(svg(inside))) / area).toBeCloseTo(1, 3);
  });

  it('a byte order mark, an XML declaration, other ends of lines', () => {
    expect(taken(`\ufeff<?xml version="1.0" encoding="UTF-8"?>\r\n${svg(`\r\n${square}\r`)}`).outline).toBe(
      'M0 0H10V10H0Z',
    );
  });

  it('transforms as their matrices have it, the innermost first', () => {
    const number = fc.integer({ min: -40, max: 40 }).filter((value) => value !== 0);
    const step = fc.oneof(
      fc
        .tuple(number, number)
        .map(([x, y]) => ({ text: `translate(${x} ${y})`, matrix: [1, 0, 0, 1, x, y] })),
      fc.tuple(number, number).map(([x, y]) => ({ text: `scale(${x},${y})`, matrix: [x, 0, 0, y, 0, 0] })),
      number.map((angle) => {
        const [sin, cos] = [Math.sin((angle * Math.PI) / 180), Math.cos((angle * Math.PI) / 180)];
        return { text: `rotate( ${angle} )`, matrix: [cos, sin, -sin, cos, 0, 0] };
      }),
      number.map((angle) => ({
        text: `skewY(${angle})`,
        matrix: [1, Math.tan((angle * Math.PI) / 180), 0, 1, 0, 0],
      })),
    );
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 4 }), fc.boolean(), (steps, nested) => {
        const shape = '<path d="M0 0L10 0L0 10Z"';
        const text = nested
          ? `${steps.map((one) => `<g transform="${one.text}">`).join('')}${shape}/>${'</g>'.repeat(steps.length)}`
          : `${shape} transform="${steps.map((one) => one.text).join(' ')}"/>`;
        const corners = [
          [0, 0],
          [10, 0],
          [0, 10],
        ].map((corner) =>
          steps.reduceRight(
            ([x, y], { matrix }) => [
              matrix[0]! * x! + matrix[2]! * y! + matrix[4]!,
              matrix[1]! * x! + matrix[3]! * y! + matrix[5]!,
            ],
            corner,
          ),
        );
        const path = pathIn(taken(svg(text)).outline);
        const [contour] = path.contours;
        const found = [contour!.from, ...contour!.segments.map(({ to }) => to)].slice(0, 3);
        const scale = Math.max(path.bounds.width, path.bounds.height);
        for (const [index, { x, y }] of found.entries()) {
          expect(Math.abs(x - corners[index]![0]!) / scale).toBeLessThan(1e-4);
          expect(Math.abs(y - corners[index]![1]!) / scale).toBeLessThan(1e-4);
        }
      }),
    );
  });
});

describe('the size of a drawing', () => {
  const rect = '<rect x="10" y="10" width="50" height="25"/>';
  const inTicks = (inside: string, attributes: string) => {
    const { size } = taken(svg(inside, attributes));
    return size === null ? null : [size.width, size.height, size.units];
  };

  it.each([
    // 100 units are 50 mm: 50 units are 25 mm.
    [' width="50mm" height="50mm" viewBox="0 0 100 100"', [40_000, 20_000, 'mm']],
    [' width="5cm" height="5cm" viewBox="0 0 100 100"', [40_000, 20_000, 'mm']],
    [' width="2in" height="2in" viewBox="0 0 100 100"', [40_640, 20_320, 'in']],
    [' width="144pt" height="144pt" viewBox="0 0 100 100"', [40_640, 20_320, 'in']],
    [' width="12pc" viewBox="0 0 100 100"', [40_640, 20_320, 'in']],
    // A pixel is 1/96 in.
    [' width="96px" height="96px" viewBox="0 0 96 96"', [21_167, 10_583, 'in']],
    // Without a view, a unit is a pixel whatever the size is said in.
    [' width="50mm" height="50mm"', [21_167, 10_583, 'mm']],
    // The view is kept in form: it is as large as fits, or presses when that is said.
    [' width="50mm" height="20mm" viewBox="0 0 100 100"', [16_000, 8_000, 'mm']],
    [
      ' width="50mm" height="20mm" viewBox="0 0 100 100" preserveAspectRatio="xMidYMid slice"',
      [40_000, 20_000, 'mm'],
    ],
    [' width="50mm" height="20mm" viewBox="0 0 100 100" preserveAspectRatio="none"', [40_000, 8_000, 'mm']],
    // Numbers without units are the document's own, and name no size.
    [' width="50" height="50" viewBox="0 0 100 100"', null],
    [' viewBox="0 0 100 100"', null],
    ['', null],
    // Larger than anything that is cut.
    [' width="900000mm" viewBox="0 0 100 100"', null],
  ])('%s', (attributes, size) => {
    expect(inTicks(rect, attributes)).toEqual(size);
  });

  it('is that of what is drawn, transforms done', () => {
    const text = `<g transform="scale(.5)">${rect}</g>`;
    expect(inTicks(text, ' width="100mm" viewBox="0 0 100 100"')).toEqual([
      millimetres(25),
      millimetres(12.5),
      'mm',
    ]);
  });
});

it('what was found is read again as the same outline, at the same size', () => {
  const inside = '<path d="M45 0C80 30 90 80 45 130C0 80 10 30 45 0Z"/><circle cx="45" cy="60" r="8"/>';
  const found = taken(svg(inside, ' width="90mm" viewBox="0 0 90 140"'));
  const size = found.size!;
  const again = taken(
    svg(`<path d="${found.outline}" fill-rule="evenodd"/>`, ` width="90mm" viewBox="0 0 90 140"`),
  );
  expect(again.outline).toBe(found.outline);
  expect(again.size).toEqual(size);
  // Written as a layout file has it, the size is the very same length.
  for (const length of [size.width, size.height]) {
    const reading = readLength(writtenLength(length, 'mm', false), 'in');
    expect(reading.ok && reading.length).toBe(length);
  }
  const whole = areaOf(regionOf(pathOutline(pathIn(found.outline), { left: zero, top: zero, ...size })));
  const disc = Math.PI * millimetres(8) ** 2;
  const leaf = areaIn(taken(svg(inside.replace(/<circle.*/, ''), ''))) * ticksPerMillimetre ** 2;
  expect(whole / (leaf - disc)).toBeCloseTo(1, 3);
});

it('a part of a layout file takes the fields as they are printed', () => {
  const found = taken(svg('<circle cx="45" cy="60" r="8"/>', ' width="90mm" viewBox="0 0 90 140"'));
  const text = (length: Length) => writtenLength(length, 'mm', false);
  const read = readLayoutFile(
    plainLayout({
      'parts[0].shape': 'outline',
      'parts[0].outline': found.outline,
      'parts[0].size': [text(found.size!.width), text(found.size!.height)],
      'parts[0].inset': undefined,
      'parts[0].torn': undefined,
    }),
  );
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  const { shape, extent } = read.layout.parts[0]!;
  expect(extent).toEqual({ by: 'size', width: millimetres(16), height: millimetres(16) });
  expect(shape).toEqual({ kind: 'outline', path: pathIn(found.outline) });
});
