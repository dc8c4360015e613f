import type { Layout } from '../layout/index.ts';
import type { Size } from '../measure/index.ts';
import type { SizeRecord } from '../replay/index.ts';
import type { LeftoverUses, OtherKind } from './leftoverUses.ts';

/** What leftovers can still give as `plan --json` writes it; lengths in ticks, sizes width then height. */
export interface LeftoverUsesRecord {
  readonly extras: readonly {
    readonly name: string;
    readonly size: SizeRecord;
    readonly margin: number;
    readonly found: number;
    readonly wanted: number | null;
    readonly atMost: number;
  }[];
  readonly used: readonly {
    readonly leftover: string;
    readonly paper: string;
    readonly size: SizeRecord;
    /** `turns`: quarter turns to the right; `left` and `top` are of the box as it lies. */
    readonly places: readonly {
      readonly extra: number;
      readonly left: number;
      readonly top: number;
      readonly turns: number;
    }[];
    readonly rests: readonly { readonly left: number; readonly top: number; readonly size: SizeRecord }[];
  }[];
  readonly kept: readonly { readonly leftover: string; readonly paper: string; readonly size: SizeRecord }[];
  readonly others: readonly {
    readonly what: OtherKind;
    readonly part: string | null;
    readonly size: SizeRecord;
    readonly counts: Readonly<Record<string, number>>;
    readonly total: number;
  }[];
}

/** The uses as a record. */
export function leftoverUsesRecord(
  { used, kept, extras, others }: LeftoverUses,
  layout: Layout,
): LeftoverUsesRecord {
  return {
    extras: extras.map((found, index) => {
      const { name, size, margin } = layout.extras![index]!;
      return { name, size: sizeRecord(size), margin, ...found };
    }),
    used: used.map(({ id, paper, size, places, rests }) => ({
      leftover: id,
      paper,
      size: sizeRecord(size),
      places,
      rests: rests.map(({ left, top, ...rest }) => ({ left, top, size: sizeRecord(rest) })),
    })),
    kept: kept.map(({ id, paper, size }) => ({ leftover: id, paper, size: sizeRecord(size) })),
    others: others.map(({ what, part, size, counts, total }) => ({
      what,
      part,
      size: sizeRecord(size),
      counts: Object.fromEntries(counts),
      total,
    })),
  };
}

function sizeRecord({ width, height }: Size): SizeRecord {
  return [width, height];
}
