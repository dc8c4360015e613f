import {
  type Arrangement,
  arrange,
  checkLayout,
  type Drawn,
  dimensionsOf,
  type Layout,
  type LayoutProblem,
  type LayoutSum,
  rowKey,
  sumsOf,
  unseen,
  withLengths,
} from '../layout/index.ts';
import { type Length, lengthOfTicks, roundTo, type Size } from '../measure/index.ts';

/** What comes of a layout whose lengths are converted one by one. */
export interface Conversion {
  readonly layout: Layout;
  readonly arrangement: Arrangement;
  /** Rows that were even and no longer are. */
  readonly uneven: readonly LayoutSum[];
  /** Rows that frame what they lie on, with a border or gap between marks. */
  readonly betweenMarks: readonly LayoutSum[];
  /** What was not wrong before. */
  readonly problems: readonly LayoutProblem[];
}

/**
 * The layout converted and nothing more: every length by itself to the nearest mark, in proportion to the base where
 * another is asked for. It is there to show what that does to borders and sums.
 */
export function converted(
  before: Drawn,
  {
    base,
    marks,
    asked,
  }: {
    readonly base: Size | null;
    readonly marks: Length;
    /** What else is to be otherwise. */
    readonly asked: Pick<Layout, 'units' | 'papers' | 'cards'>;
  },
): Conversion {
  const old = before.layout.base.size;
  const lengths = new Map<string, Length>();
  for (const { path, part, kind, axis, length } of dimensionsOf(before.layout)) {
    const along = axis === 'both' ? 'width' : axis;
    const scaled =
      base === null
        ? length
        : part === 'base'
          ? base[along]
          : lengthOfTicks(Math.round((length * base[along]) / old[along]));
    const nearest = base !== null && part === 'base' ? scaled : roundTo(scaled, marks, 'nearest');
    // A size of nothing cannot be drawn.
    lengths.set(path, kind === 'size' && nearest <= 0 ? marks : nearest);
  }
  const { units, papers, cards } = asked;
  const layout = withLengths({ ...before.layout, units, papers, cards }, lengths);
  const arrangement = arrange(layout);
  const known = new Set(
    checkLayout(before.layout, before.arrangement).map(({ code, where }) => `${code} ${where}`),
  );
  const rows = new Map(sumsOf(arrangement).map((row) => [rowKey(row), row]));
  const pairs = sumsOf(before.arrangement).flatMap((row) => {
    const now = rows.get(rowKey(row));
    return now === undefined ? [] : [{ row, now }];
  });
  return {
    layout,
    arrangement,
    uneven: pairs.filter(({ row, now }) => isEven(row) && !isEven(now)).map(({ now }) => now),
    betweenMarks: pairs.filter(({ row, now }) => frames(row) && !onMarks(now, marks)).map(({ now }) => now),
    problems: checkLayout(layout, arrangement).filter(({ code, where }) => !known.has(`${code} ${where}`)),
  };
}

function isEven({ terms }: LayoutSum): boolean {
  const gaps = terms.flatMap(({ kind, length }) => (kind === 'gap' ? [length] : []));
  const alike = gaps.every((gap) => Math.abs(gap - gaps[0]!) <= unseen);
  return Math.abs(terms[0]!.length - terms.at(-1)!.length) <= unseen && alike;
}

function frames({ terms, total }: LayoutSum): boolean {
  return (terms[0]!.length + terms.at(-1)!.length) * 4 <= total;
}

function onMarks({ terms }: LayoutSum, marks: Length): boolean {
  return terms.every(({ kind, length }) => kind === 'size' || length % marks === 0);
}
