import type { Layout, SumChange } from '../layout/index.ts';
import { type Axis, type Edge, type Length, showLength, showLengthWithUnit } from '../measure/index.ts';
import type { LengthChange } from '../planning/index.ts';
import { capital, listed } from './count.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';

/** A length that becomes another: `Upper panel 2 15/16 in high instead of 3`, `the gap at Lower panel 5/16 in instead of 1/4`. */
export function changeWords(change: LengthChange, layout: Layout, showing: Showing): string {
  const name = change.part === 'base' ? 'the card' : partName(layout, change.part);
  const { to, before } = shownChange(change, showing);
  return (wordsOfNames[change.name] ?? placed)({ name, to, before, edge: change.name });
}

interface Told {
  readonly name: string;
  readonly to: string;
  readonly before: string;
  readonly edge: string;
}

const placed = ({ name, to, before, edge }: Told) => `${name} ${to} from the ${edge} instead of ${before}`;

const wordsOfNames: Readonly<Record<string, (told: Told) => string>> = {
  width: ({ name, to, before }) => `${name} ${to} wide instead of ${before}`,
  height: ({ name, to, before }) => `${name} ${to} high instead of ${before}`,
  diameter: ({ name, to, before }) => `${name} ${to} across instead of ${before}`,
  inset: ({ name, to, before }) => `${name} inset ${to} instead of ${before}`,
  gap: ({ name, to, before }) => `the gap at ${name} ${to} instead of ${before}`,
};

/** Whether a length is a border or gap: what becomes of those is told by `effectSentences`. */
export function isBorder(name: string): boolean {
  return name === 'gap' || name === 'left' || name === 'right' || name === 'top' || name === 'bottom';
}

/**
 * What becomes of borders, gaps and seen sizes, a sentence each: `The border round Lining becomes 3/16 in instead of
 * 1/8.`; last, that nothing else changes. Sizes that `said` names already are not named again.
 */
export function effectSentences(
  effect: readonly SumChange[],
  said: readonly LengthChange[],
  layout: Layout,
  showing: Showing,
): readonly string[] {
  const named = new Set(said.map(({ part, name }) => `${part} ${name}`));
  const sizes = new Map<string, string[]>();
  const borders = new Map<string, { readonly words: string; readonly by: string; readonly edges: Edge[] }>();
  const gaps = new Set<string>();
  for (const change of effect) {
    const { kind, axis, between } = change;
    const { to, before } = shownChange(change, showing);
    const [first, second] = between;
    if (kind === 'size') {
      if (named.has(`${first} ${axis}`) || named.has(`${first} diameter`)) continue;
      const ways = sizes.get(first!) ?? [];
      sizes.set(first!, [...ways, `${to} ${axis === 'width' ? 'wide' : 'high'} instead of ${before}`]);
    } else if (kind === 'gap') {
      gaps.add(
        `The gap between ${nameOf(first, layout)} and ${nameOf(second, layout)} becomes ${to} instead of ${before}.`,
      );
    } else {
      const edge = edgesOf[axis][first === null ? 0 : 1];
      const part = nameOf(first ?? second, layout);
      const by = `becomes ${to} instead of ${before}.`;
      const border = borders.get(`${part} ${by}`) ?? { words: part, by, edges: [] };
      if (!border.edges.includes(edge)) border.edges.push(edge);
      borders.set(`${part} ${by}`, border);
    }
  }
  const seen = [...sizes].map(([part, ways]) => `${capital(nameOf(part, layout))} shows ${listed(ways)}.`);
  const around = [...borders.values()].map(({ words, by, edges }) => {
    return edges.length === 4
      ? `The border round ${words} ${by}`
      : `The border ${sideWords(edges)} ${words} ${by}`;
  });
  const all = [...seen, ...around, ...gaps];
  return [
    ...all,
    all.length === 0 ? 'Borders and gaps stay as they are.' : 'All other borders and gaps stay as they are.',
  ];
}

const edgesOf = { width: ['left', 'right'], height: ['top', 'bottom'] } as const satisfies Record<
  Axis,
  readonly [Edge, Edge]
>;

/** `left and right of`, `above and below`. */
function sideWords(edges: readonly Edge[]): string {
  const words = { left: 'left of', right: 'right of', top: 'above', bottom: 'below' } as const;
  const [one, other] = edges;
  if (edges.length === 2 && one === 'left' && other === 'right') return 'left and right of';
  return listed(edges.map((edge) => words[edge]));
}

function nameOf(part: string | null, layout: Layout): string {
  return part === null ? 'the edge' : partName(layout, part);
}

function shownChange(
  { from, to }: { readonly from: Length; readonly to: Length },
  { units, glyphs }: Showing,
): { readonly to: string; readonly before: string } {
  return { to: showLengthWithUnit(to, units, glyphs), before: showLength(from, units, glyphs) };
}
