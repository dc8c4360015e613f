/** A rectangle that is wanted: width, height, how many, whether it may be turned. */
export interface Wanted {
  readonly width: number;
  readonly height: number;
  readonly need: number;
  readonly turns: boolean;
}

/** The least work by going through everything that can be done: settings, then passes, then quarter turns. */
export interface LeastWork {
  readonly settings: number;
  readonly passes: number;
  readonly turns: number;
}

interface Thing {
  readonly width: number;
  readonly height: number;
  /** How it was made: nothing for a sheet; capital where it was measured off, small where it remained. */
  readonly made: '' | 'W' | 'w' | 'H' | 'h';
}

/**
 * The least work that gives all that is wanted from sheets of one size, found by trying every cut on the table one
 * after another (E. W. Dijkstra's shortest path over what may lie on the table). `null`: it cannot be given with as
 * little work as `most`.
 *
 * Only sides of what is wanted are measured off; what is measured off becomes a piece or is cut across into pieces.
 * Knows nothing of trees, patterns or steps. For a handful of pieces only.
 */
export function leastWork(
  sheet: { readonly width: number; readonly height: number },
  sheets: number,
  wanted: readonly Wanted[],
  most: LeastWork,
): LeastWork | null {
  const mostCost = most.settings * 1e6 + most.passes * 1e3 + most.turns;
  const sides = [...new Set(wanted.flatMap(({ width, height }) => [width, height]))];
  const isPiece = ({ width, height }: Thing, piece: Wanted) =>
    (width === piece.width && height === piece.height) ||
    (piece.turns && width === piece.height && height === piece.width);
  const holdsPiece = ({ width, height }: Thing) =>
    wanted.some(
      (piece) =>
        (piece.width <= width && piece.height <= height) ||
        (piece.turns && piece.height <= width && piece.width <= height),
    );
  const keyOf = (table: readonly Thing[], set: number) =>
    `${table
      .map(({ width, height, made }) => `${width}x${height}${made}`)
      .sort()
      .join(' ')};${set}`;
  const isDone = (table: readonly Thing[]): boolean => {
    // Whatever was measured off is a piece, and each piece is counted for one kind: few kinds, so all ways are tried.
    const assign = (index: number, left: readonly number[]): boolean => {
      const thing = table[index];
      if (thing === undefined) return left.every((count) => count <= 0);
      const kinds = wanted.flatMap((piece, kind) => (isPiece(thing, piece) ? [kind] : []));
      const waste = thing.made === '' || thing.made === 'w' || thing.made === 'h';
      if (kinds.length === 0) return waste && assign(index + 1, left);
      return kinds.some((kind) => assign(index + 1, left.with(kind, left[kind]! - 1)));
    };
    return assign(
      0,
      wanted.map((piece) => piece.need),
    );
  };

  const start: readonly Thing[] = Array.from({ length: sheets }, () => ({ ...sheet, made: '' as const }));
  const open = new Map<number, { table: readonly Thing[]; set: number }[]>([[0, [{ table: start, set: 0 }]]]);
  const reached = new Map<string, number>();
  for (;;) {
    const least = Math.min(...open.keys());
    if (!Number.isFinite(least)) return null;
    const states = open.get(least)!;
    open.delete(least);
    for (const { table, set } of states) {
      if ((reached.get(keyOf(table, set)) ?? least) < least) continue;
      if (isDone(table)) {
        return {
          settings: Math.floor(least / 1e6),
          passes: Math.floor((least % 1e6) / 1e3),
          turns: least % 1e3,
        };
      }
      for (const [index, thing] of table.entries()) {
        for (const along of ['width', 'height'] as const) {
          const letter = along === 'width' ? 'W' : 'H';
          if (thing.made === letter) continue;
          for (const side of sides) {
            if (side >= thing[along]) continue;
            const turned = thing.made !== '' && thing.made.toUpperCase() !== letter;
            const cost = least + (side === set ? 0 : 1e6) + 1e3 + (turned ? 1 : 0);
            const measured: Thing = { ...thing, [along]: side, made: letter };
            const remains: Thing = {
              ...thing,
              [along]: thing[along] - side,
              made: letter === 'W' ? 'w' : 'h',
            };
            if (cost > mostCost || !holdsPiece(measured)) continue;
            // What remains and is of no use may be forgotten.
            const after = [...table.toSpliced(index, 1), measured, ...(holdsPiece(remains) ? [remains] : [])];
            const key = keyOf(after, side);
            if ((reached.get(key) ?? Number.POSITIVE_INFINITY) <= cost) continue;
            reached.set(key, cost);
            const at = open.get(cost);
            if (at === undefined) open.set(cost, [{ table: after, set: side }]);
            else at.push({ table: after, set: side });
          }
        }
      }
    }
  }
}
