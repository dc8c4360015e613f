import type { AdhesiveSaid, Layout } from '../layout/index.ts';
import {
  type AdhesiveKind,
  type AdhesiveUse,
  adhesivesFor,
  type UsualAdhesive,
  usualAdhesives,
} from '../making/index.ts';
import { type Length, zero } from '../measure/index.ts';

/** An adhesive as it is used for a set: what its maker said of it, and for the rest what is usual. */
export interface Adhesive {
  readonly kind: AdhesiveKind;
  readonly form: UsualAdhesive['form'];
  /** Of a tape or a line of glue, or across a spot or a square. */
  readonly width: Length;
  /** Zero where it is too thin to count. */
  readonly thickness: Length;
  /** Whether somebody said how thick it is. */
  readonly thicknessSaid: boolean;
  /** How far from the edges of a part it stays. */
  readonly inset: Length;
  /** How far any point of a part may lie from the nearest of it. */
  readonly span: Length;
  /** How much is on a roll, and how many are in a pack; `null`: not known, or it does not come so. */
  readonly roll: Length | null;
  readonly pack: number | null;
  /** Minutes until the work can be taken up and turned over, and until it holds for good. */
  readonly handle: number;
  readonly dry: number;
  /** Whether somebody said how long it takes. */
  readonly minutesSaid: boolean;
  /** Whether it is seen through paper that is seen through. */
  readonly shows: boolean;
}

/** What the set uses for that: as its layout says, else the usual of its kind in the round lengths of its units. */
export function adhesiveFor(
  { adhesives, units }: Pick<Layout, 'adhesives' | 'units'>,
  use: AdhesiveUse,
): Adhesive {
  const said: Partial<AdhesiveSaid> = adhesives?.[use] ?? {};
  const kind = said.kind ?? adhesivesFor[use][0];
  const usual: UsualAdhesive = usualAdhesives[kind];
  return {
    kind,
    form: usual.form,
    width: said.width ?? usual.width[units],
    thickness: said.thickness ?? usual.thickness?.[units] ?? zero,
    thicknessSaid: typeof said.thickness === 'number',
    inset: said.inset ?? usual.inset[units],
    span: said.span ?? usual.span[units],
    roll: said.roll ?? usual.roll?.[units] ?? null,
    pack: said.pack ?? null,
    handle: said.handle ?? usual.handle,
    dry: Math.max(said.dry ?? usual.dry, said.handle ?? usual.handle),
    minutesSaid: typeof said.handle === 'number' && typeof said.dry === 'number',
    shows: said.shows ?? usual.shows,
  };
}
