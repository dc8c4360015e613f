import type { Glyphs, Units } from '../measure/index.ts';

/** How lengths stand in sentences: in which units, and with typed fractions (`5 1/4`) or printed ones (`5¼`). */
export interface Showing {
  readonly units: Units;
  readonly glyphs: Glyphs;
}
