import type { AdhesiveSaid } from '../../layout/index.ts';

/** Of an adhesive nothing is said but its kind. */
export const nothingSaid: Omit<AdhesiveSaid, 'kind'> = {
  width: null,
  thickness: null,
  inset: null,
  span: null,
  roll: null,
  pack: null,
  handle: null,
  dry: null,
  shows: null,
};
