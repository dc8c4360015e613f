import type { Layout, Part } from '../layout/index.ts';
import { showLengthWithUnit } from '../measure/index.ts';
import { listed } from './count.ts';
import type { Showing } from './showing.ts';

/**
 * How to tear, a sentence each: which way to pull to show or hide the core, and what makes a tear even. Common practice
 * that several hobby pages agree on; no source with measurements was found, so it ends in trying it on a scrap.
 */
export function tearingAdvice(): readonly string[] {
  return [
    'Hold the part with its print facing you. Pull the strip that comes off toward you, and it takes print from the part: the core shows along the edge that you keep. Push the strip away from you, and the core stays on the strip.',
    'For an even tear hold the part down with a ruler, or with the template, and tear against its edge. A slow tear comes out more ragged than a quick one, and a tear runs straighter along the grain than across it.',
    'For a soft edge draw the line with a damp brush first and pull the paper apart there.',
    'Usual practice, not measured: try it on a scrap of the same paper first.',
  ];
}

/** How broad the core shows along the torn edges of a part; empty where nobody said. */
export function coreSentence(
  { name, papers, tear }: Part,
  layout: Layout,
  { units, glyphs }: Showing,
): string {
  if (tear === null || tear.core === null) return '';
  const core = showLengthWithUnit(tear.core, units, glyphs);
  const cores = new Set(papers.flatMap((id) => layout.papers.get(id)?.core ?? []));
  const whose = cores.size === 0 ? '' : ` of ${listed(papers.map((id) => layout.papers.get(id)!.name))}`;
  return `Pulled toward you, the torn edges of ${name} show the core${whose}, about ${core} broad; pushed away, none of it.`;
}
