import type { Layout } from '../layout/index.ts';
import type { Plan } from '../planning/index.ts';

/** What of a guide is exact, what is proved, what is estimated, and what only the maker can measure. */
export function exactnessSentences(layout: Layout, plan: Plan): readonly string[] {
  const outcomes = [...plan.papers.values()];
  const all = outcomes.every(({ proved }) => proved);
  const torn = layout.parts.some((part) => Object.values(part.torn).some((depth) => depth > 0));
  return [
    'Exact: every size, border and setting. The plan was followed cut by cut on imaginary sheets, by other rules than those that made it, before it was printed.',
    all
      ? 'Proved: for every paper no plan with cuts from edge to edge takes less than this one.'
      : 'Proved: only where it says so. Elsewhere the plan says how much any other would still take.',
    `Estimated: thicknesses that nobody measured, and how high foam stands${torn ? '; also how far a torn edge wanders' : ''}.`,
    'Yours to measure: the true size of your sheets, and how truly your trimmer cuts. Cut one piece and check it before you cut them all.',
  ];
}
