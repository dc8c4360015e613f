import { ribbonOf } from '../layout/index.ts';
import { type NoRibbon, ribbonMeasures, slantForGap, writtenSlant } from '../making/index.ts';
import type { Length } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { type Edit, settingOf } from './edit.ts';
import type { InHand } from './inHand.ts';

/** The gap between the tails of a folded ribbon as it is now; negative where they lie on one another. */
export function gapOf({ layout }: InHand, at: number): Length {
  return ribbonMeasures(ribbonAt(layout, at)).gap;
}

/** A folded ribbon with another gap between its tails: its slant follows, and rises or falls as it did; or why it cannot. */
export function gapSet({ file, layout }: InHand, at: number, gap: Length): Edit | NoRibbon {
  const ribbon = ribbonAt(layout, at);
  const found = slantForGap(ribbon, gap);
  if ('cannot' in found) return found;
  const slant = writtenSlant(found.slant) * (ribbon.slant < 0 ? -1 : 1);
  return settingOf(file, ['parts', at, 'slant'], slant);
}

function ribbonAt({ parts }: InHand['layout'], at: number) {
  const { shape } = parts[at]!;
  assert(shape.kind === 'ribbon', 'A gap between tails is a ribbon’s', { at });
  return ribbonOf(shape);
}
