import { createContext, memo, type ReactNode, type SVGProps, useContext, useId, useMemo } from 'react';
import {
  black,
  type GroupMark,
  grey,
  type Hatch,
  hatchMarks,
  type LineMark,
  type Mark,
  svgNumber as number,
  type Page,
  type PathMark,
  type PathStep,
  pathData,
  type Role,
  rectangle,
  rubric,
  type Stroke,
  type TextMark,
} from '../../../src/drawing/index.ts';

/**
 * What a drawing lies on: the ground of the page, where lines and words take the page's ink, dark or light, and only
 * what lies on drawn paper stays as it is drawn; or `paper`, where everything does.
 */
export type Lying = 'page' | 'paper';

/** A drawn page or picture, as wide as it is given room; `says` is what it shows, for those who listen. */
export function Drawing({
  page,
  says,
  on = 'page',
  className = 'drawing',
}: {
  readonly page: Page;
  readonly says: string;
  readonly on?: Lying;
  readonly className?: string;
}): ReactNode {
  const isRead = useMemo(() => hasRoles(page.marks), [page]);
  return (
    <svg
      className={className}
      viewBox={`0 0 ${number(page.widthPt)} ${number(page.heightPt)}`}
      role={isRead ? 'group' : 'img'}
      aria-label={says}
      fill="none"
      strokeMiterlimit={10}
      xmlSpace="preserve"
    >
      <Marks marks={page.marks} on={on} />
    </svg>
  );
}

/**
 * Marks within a picture of one's own, whose unit is a point, so that each can be made something to take up. The
 * picture has `fill="none"`, and `strokeMiterlimit` 10 as `svgOf` has.
 */
export const Marks = memo(function Marks({
  marks,
  on = 'page',
}: {
  readonly marks: readonly Mark[];
  readonly on?: Lying;
}): ReactNode {
  return (
    <LyingContext value={on}>
      <Inner marks={marks} />
    </LyingContext>
  );
});

const LyingContext = createContext<Lying>('page');

function Inner({ marks }: { readonly marks: readonly Mark[] }): ReactNode {
  return marks.map((mark, index) => {
    const Kind = drawnAs[mark.kind] as (props: { readonly mark: Mark }) => ReactNode;
    // A mark has no name but its place.
    // biome-ignore lint/suspicious/noArrayIndexKey: see above
    return <Kind key={index} mark={mark} />;
  });
}

const drawnAs = {
  line: Line,
  path: Path,
  text: Text,
  group: Group,
} as const satisfies Record<Mark['kind'], unknown>;

function Line({ mark: { from, to, stroke } }: { readonly mark: LineMark }): ReactNode {
  const on = useContext(LyingContext);
  return (
    <line
      x1={number(from.xPt)}
      y1={number(from.yPt)}
      x2={number(to.xPt)}
      y2={number(to.yPt)}
      {...strokeProps(stroke, on)}
    />
  );
}

function Path({ mark }: { readonly mark: PathMark }): ReactNode {
  const { path, fill, stroke } = mark;
  const on = useContext(LyingContext);
  const data = useMemo(() => pathData(path), [path]);
  const hatched = fill !== undefined && 'hatch' in fill ? hatchedAs(path, data, fill.hatch) : null;
  if (hatched !== null) {
    return (
      <g>
        {hatched.map((inner, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: ground, lines and dots, in that order
          <PlainPath key={index} {...inner} on="paper" />
        ))}
        {stroke === undefined ? null : (
          <PlainPath mark={{ kind: 'path', path, stroke }} data={data} on="paper" />
        )}
      </g>
    );
  }
  // What is filled is paper, with its outline; but a filled shape of ink is ink.
  const isPaper = fill !== undefined && 'colour' in fill && fill.colour !== black;
  return <PlainPath mark={mark} data={data} on={isPaper ? 'paper' : on} />;
}

interface DataMark {
  readonly mark: PathMark;
  readonly data: string;
}

/**
 * What a hatched path is drawn as. A hatch is work; every change of a layout makes anew the marks of what did not
 * change, the cards of a set wear the same papers, and a screen that is turned back to shows what it did: so they are
 * kept, and told apart by what they say.
 */
function hatchedAs(path: readonly PathStep[], data: string, hatch: Hatch): readonly DataMark[] {
  const key = `${JSON.stringify(hatch)} ${data}`;
  let marks = hatches.get(key);
  if (marks === undefined) {
    marks = hatchMarks(path, hatch).map((mark) => ({ mark, data: pathData(mark.path) }));
    if (hatches.size >= mostHatches) hatches.delete(hatches.keys().next().value!);
  } else hatches.delete(key);
  // The last that was asked for stands last, so that the first is the one that was not wanted for longest.
  hatches.set(key, marks);
  return marks;
}

const hatches = new Map<string, readonly DataMark[]>();
/** Some screens full of pictures, a few megabytes. */
const mostHatches = 500;

function PlainPath({ mark: { fill, stroke }, data, on }: DataMark & { readonly on: Lying }): ReactNode {
  const filled = fill !== undefined && 'colour' in fill ? inkProps(fill.colour, 'fill', on) : {};
  return <path d={data} {...filled} {...(stroke === undefined ? {} : strokeProps(stroke, on))} />;
}

function Text({ mark }: { readonly mark: TextMark }): ReactNode {
  const { at, text, sizePt, weight, colour, anchor, turnDegrees = 0 } = mark;
  const on = useContext(LyingContext);
  return (
    <text
      x={number(at.xPt)}
      y={number(at.yPt)}
      fontSize={number(sizePt)}
      {...(weight === 'semibold' ? { fontWeight: 600 } : {})}
      {...(anchor === 'start' ? {} : { textAnchor: anchor })}
      {...inkProps(colour, 'fill', on)}
      {...(turnDegrees === 0
        ? {}
        : { transform: `rotate(${number(turnDegrees)} ${number(at.xPt)} ${number(at.yPt)})` })}
    >
      {anchor === 'start' ? text : text.trimEnd()}
    </text>
  );
}

function Group({ mark }: { readonly mark: GroupMark }): ReactNode {
  const { marks, role, says, heads, move, clip } = mark;
  const id = useId();
  const aria = role === 'headerCell' && heads === 'row' ? { role: 'rowheader' } : role && ariaRoles[role];
  return (
    <g
      {...aria}
      aria-label={says}
      transform={move === undefined ? undefined : `translate(${number(move.xPt)} ${number(move.yPt)})`}
      clipPath={clip === undefined ? undefined : `url(#${id})`}
    >
      {clip === undefined ? null : (
        <clipPath id={id}>
          <path d={pathData(rectangle(clip))} />
        </clipPath>
      )}
      <Inner marks={marks} />
    </g>
  );
}

/** ARIA 1.2 roles of the reading structure, as `svgOf` writes them. */
const ariaRoles: Readonly<Record<Role, Pick<SVGProps<SVGGElement>, 'role' | 'aria-level'>>> = {
  title: { role: 'heading', 'aria-level': 1 },
  heading: { role: 'heading', 'aria-level': 2 },
  subheading: { role: 'heading', 'aria-level': 3 },
  paragraph: { role: 'paragraph' },
  list: { role: 'list' },
  listItem: { role: 'listitem' },
  label: { role: 'presentation' },
  figure: { role: 'img' },
  table: { role: 'table' },
  row: { role: 'row' },
  headerCell: { role: 'columnheader' },
  cell: { role: 'cell' },
};

function strokeProps(
  { colour, widthPt, dashPt, cap }: Stroke,
  on: Lying,
): SVGProps<SVGPathElement & SVGLineElement> {
  return {
    ...inkProps(colour, 'stroke', on),
    strokeWidth: number(widthPt),
    ...(dashPt === undefined ? {} : { strokeDasharray: dashPt.map(number).join(' ') }),
    ...(cap === undefined ? {} : { strokeLinecap: cap }),
  };
}

/** The guide's three inks as the page has them where they lie on its ground. */
function inkProps(colour: string, what: 'fill' | 'stroke', on: Lying): SVGProps<never> {
  if (on === 'paper') return { [what]: colour };
  switch (colour) {
    case black:
      return { [what]: 'currentColor' };
    case grey:
      return { [what]: 'var(--soft-ink, currentColor)' };
    case rubric:
      return { [what]: 'var(--rubric, currentColor)' };
    default:
      return { [what]: colour };
  }
}

function hasRoles(marks: readonly Mark[]): boolean {
  return marks.some((mark) => mark.kind === 'group' && (mark.role !== undefined || hasRoles(mark.marks)));
}
