import type { Arrangement } from './arrange.ts';
import { checkLayout } from './check.ts';
import type { Layout } from './layout.ts';
import type { LayoutProblem } from './layoutProblem.ts';
import { type LayoutSum, sumsOf } from './sums.ts';
import { unseen } from './unseen.ts';

/** A layout and where everything in it lies. */
export interface Drawn {
  readonly layout: Layout;
  readonly arrangement: Arrangement;
}

/** What is worse about a layout than about another: ids of the parts (or faces) concerned. */
export interface Worse {
  /** Rows whose borders or gaps were even and no longer are. */
  readonly uneven: ReadonlySet<string>;
  /** New problems of `checkLayout`; not looked for where rows are uneven. */
  readonly wrong: ReadonlySet<string>;
}

/**
 * What is worse in a layout with other lengths than in the one it was drawn as. Both empty: every border and gap that
 * was even still is, and nothing is wrong that was not wrong before.
 *
 * A row is even when its two outer borders are alike, and when its gaps are.
 */
export function worseningFrom(before: Drawn): (after: Drawn) => Worse {
  const known = new Set(checkLayout(before.layout, before.arrangement).map(problemKey));
  const rows = sumsOf(before.arrangement).map((row) => ({ key: rowKey(row), even: evennessOf(row) }));
  return (after) => {
    const uneven = new Set<string>();
    const now = new Map(sumsOf(after.arrangement).map((row) => [rowKey(row), row]));
    for (const { key, even } of rows) {
      const row = now.get(key);
      if (row === undefined) continue;
      const { borders, gaps } = evennessOf(row);
      if ((borders || !even.borders) && (gaps || !even.gaps)) continue;
      uneven.add(row.on);
      for (const term of row.terms) if (term.kind === 'size') uneven.add(term.part);
    }
    const wrong = new Set<string>();
    if (uneven.size > 0) return { uneven, wrong };
    for (const problem of checkLayout(after.layout, after.arrangement)) {
      if (known.has(problemKey(problem))) continue;
      for (const id of partsOf(problem, after.layout)) wrong.add(id);
    }
    return { uneven, wrong };
  };
}

function problemKey({ code, where, names, numbers }: LayoutProblem): string {
  return JSON.stringify([code, where, names, Object.keys(numbers)]);
}

function* partsOf({ part, names }: LayoutProblem, layout: Layout): Generator<string> {
  if (part !== undefined) yield part;
  const said = new Set(Object.values(names));
  for (const { id, name } of layout.parts) if (said.has(name)) yield id;
}

/** The same for a row of the same parts on the same thing. */
export function rowKey({ on, onPiece, axis, terms }: LayoutSum): string {
  const parts = terms.flatMap((term) => (term.kind === 'size' ? [term.part] : []));
  return JSON.stringify([on, onPiece, axis, parts]);
}

function evennessOf({ terms }: LayoutSum): { readonly borders: boolean; readonly gaps: boolean } {
  const gaps = terms.flatMap(({ kind, length }) => (kind === 'gap' ? [length] : []));
  return {
    borders: Math.abs(terms[0]!.length - terms.at(-1)!.length) <= unseen,
    gaps: Math.max(...gaps) - Math.min(...gaps) <= unseen || gaps.length === 0,
  };
}
