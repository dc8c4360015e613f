/** A condition that every plan fulfils: the sum of `weights[k]` over its sheets is at least `need`. */
export interface SheetCondition {
  readonly weights: readonly number[];
  readonly need: number;
}

export interface CountsRequest {
  /** What is to be least: the sum of these over the sheets used. Whole numbers, not negative. */
  readonly objective: readonly number[];
  readonly most: readonly number[];
  readonly conditions: readonly SheetCondition[];
  /** Counts that are known not to do, nor any that are nowhere more. */
  readonly refuted: readonly (readonly number[])[];
  /** The sum of `costs` must not exceed `limit`. */
  readonly budget: { readonly costs: readonly number[]; readonly limit: number } | null;
  readonly nodes: number;
}

export type SheetCounts =
  | { readonly kind: 'counts'; readonly counts: readonly number[] }
  /** Nothing fulfils the conditions. */
  | { readonly kind: 'none' }
  /** Too many to look at. */
  | { readonly kind: 'unknown' };

/** How many sheets of each kind a plan needs at the least, as far as the conditions tell: by branch and bound. */
export function leastSheetCounts(request: CountsRequest): SheetCounts {
  const { objective, most, conditions, refuted, budget } = request;
  const kinds = objective.length;
  // Branch first on what gives most for its cost, so that good counts come early.
  const order = objective
    .map((_, kind) => kind)
    .sort((a, b) => objective[a]! * weightOf(b) - objective[b]! * weightOf(a) || a - b);
  function weightOf(kind: number): number {
    return conditions.reduce((sum, { weights, need }) => sum + (need > 0 ? weights[kind]! / need : 0), 1e-9);
  }
  /** By condition and depth: the least cost of one unit of weight from the kinds still to be chosen. */
  const rates = conditions.map(({ weights }) => {
    const rate = new Array<number>(kinds + 1).fill(Number.POSITIVE_INFINITY);
    for (let depth = kinds - 1; depth >= 0; depth--) {
      const kind = order[depth]!;
      const own = weights[kind]! > 0 && most[kind]! > 0 ? objective[kind]! / weights[kind]! : Infinity;
      rate[depth] = Math.min(rate[depth + 1]!, own);
    }
    return rate;
  });
  const counts = new Array<number>(kinds).fill(0);
  let best: number[] | null = null;
  let bestSum = Number.POSITIVE_INFINITY;
  let nodes = request.nodes;

  const visit = (depth: number, sum: number, spent: number, missing: readonly number[]): void => {
    if (nodes-- <= 0) return;
    for (let c = 0; c < conditions.length; c++) {
      if (missing[c]! <= 0) continue;
      // A hair less, since the rate is a rounded quotient.
      if (sum + missing[c]! * rates[c]![depth]! * (1 - 1e-12) >= bestSum) return;
    }
    if (sum >= bestSum) return;
    if (depth === kinds) {
      if (missing.some((value) => value > 0)) return;
      if (refuted.some((no) => no.every((count, kind) => counts[kind]! <= count))) return;
      best = [...counts];
      bestSum = sum;
      return;
    }
    const kind = order[depth]!;
    const affordable =
      budget === null || budget.costs[kind] === 0
        ? Number.POSITIVE_INFINITY
        : Math.floor((budget.limit - spent) / budget.costs[kind]!);
    const highest = Math.min(most[kind]!, affordable);
    if (highest < 0) return;
    // The last kind has just as many as are needed; others at most as many as leave nothing to the rest.
    let enough = 0;
    conditions.forEach(({ weights }, c) => {
      if (missing[c]! <= 0) return;
      enough = Math.max(enough, weights[kind]! > 0 ? Math.ceil(missing[c]! / weights[kind]!) : Infinity);
    });
    for (const no of refuted) {
      const within = order.slice(0, depth).every((other) => counts[other]! <= no[other]!);
      if (within) enough = Math.max(enough, no[kind]! + 1);
    }
    const from = Math.min(highest, enough);
    const to = depth === kinds - 1 ? from : 0;
    for (let count = from; count >= to; count--) {
      counts[kind] = count;
      visit(
        depth + 1,
        sum + count * objective[kind]!,
        spent + (budget === null ? 0 : count * budget.costs[kind]!),
        missing.map((value, c) => value - count * conditions[c]!.weights[kind]!),
      );
    }
    counts[kind] = 0;
  };
  visit(
    0,
    0,
    0,
    conditions.map(({ need }) => need),
  );
  if (nodes <= 0) return { kind: 'unknown' };
  return best === null ? { kind: 'none' } : { kind: 'counts', counts: best };
}
