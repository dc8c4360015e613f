import type { SavedLayout } from '../files/index.ts';
import type { Arrangement, Layout } from '../layout/index.ts';

/** A layout that is being edited: its file, the layout that is read in it, and where everything lies. */
export interface InHand {
  readonly file: SavedLayout;
  readonly layout: Layout;
  /** `arrange(layout)`. */
  readonly arrangement: Arrangement;
}
