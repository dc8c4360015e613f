import type { Layout } from '../layout/index.ts';
import { partName } from './partName.ts';

/** A task of a set in two words or three, by its id: `Cut Ivory cardstock`, `Ready Torn panel`. */
export function shortTask(id: string, layout: Layout): string {
  const [kind, of = ''] = id.split(' ');
  switch (kind) {
    case 'cut':
      return `Cut ${layout.papers.get(of)?.name ?? of}`;
    case 'score':
      return 'Score and fold';
    case 'ready':
      return `Make ready ${partName(layout, of)}`;
    case 'lay':
      return `Put on ${partName(layout, of)}`;
    default:
      return 'Into envelopes';
  }
}

/** The same within a sentence. */
export function taskWords(id: string, layout: Layout): string {
  const [kind, of = ''] = id.split(' ');
  switch (kind) {
    case 'cut':
      return `cutting ${layout.papers.get(of)?.name ?? of}`;
    case 'score':
      return 'scoring and folding';
    case 'ready':
      return `making ${partName(layout, of)} ready`;
    case 'lay':
      return `putting ${partName(layout, of)} on`;
    default:
      return 'putting cards into envelopes';
  }
}
