import fc from 'fast-check';
import { foldKinds, opensEitherWay } from '../../making/index.ts';
import { type Length, lengthOfTicks } from '../../measure/index.ts';
import type { Anchor, Layout, Part } from '../layout.ts';
import { awayFrom, layoutOf, type PlaceSketch, part } from './build.ts';

/**
 * Random layouts on bases of every fold: piles with insets, fills, neighbours, torn edges, circles and several pieces of a part.
 *
 * Many of them cannot be worked out in part. With `coarse` every length is a whole multiple of 1024 ticks, so
 * that no odd tick arises in up to ten layers; with `overFixed` both ends and the size may be given.
 */
export function randomLayout({
  coarse,
  overFixed,
}: {
  coarse: boolean;
  overFixed: boolean;
}): fc.Arbitrary<Layout> {
  const step = coarse ? 1024 : 1;
  const length = (least: number, most: number): fc.Arbitrary<Length> =>
    fc
      .integer({ min: Math.ceil(least / step), max: Math.floor(most / step) })
      .map((count) => lengthOfTicks(count * step));
  const size = length(2_048, 240_000);
  const distance = fc.oneof(
    { weight: 6, arbitrary: length(0, 30_000) },
    { weight: 1, arbitrary: length(-8_192, 0) },
  );
  const torn = fc.oneof(
    { weight: 4, arbitrary: length(0, 0) },
    { weight: 1, arbitrary: length(1_024, 20_480) },
  );

  /** What one part draws; numbers of earlier parts are taken modulo how many there are. */
  const draft = fc.record({
    on: fc.oneof(fc.constantFrom('base', 'base', 'inside', 'back'), fc.nat(9), fc.nat(9)),
    extent: fc.constantFrom('size', 'size', 'size', 'inset', 'diameter'),
    size: fc.tuple(size, size),
    fills: fc.tuple(fc.boolean(), fc.boolean()),
    inset: length(1_024, 12_288),
    torn: fc.tuple(torn, torn, torn, torn),
    places: fc.array(
      fc.array(fc.record({ kind: fc.nat(3), distance, neighbour: fc.nat(9) }), {
        minLength: 4,
        maxLength: 4,
      }),
      { minLength: 1, maxLength: 3 },
    ),
  });

  return fc
    .record({
      base: fc.tuple(length(120_000, 250_000), length(120_000, 250_000)),
      fold: fc.constantFrom(...foldKinds.filter((kind) => kind !== 'none')),
      opens: fc.constantFrom('sideways' as const, 'upwards' as const),
      drafts: fc.array(draft, { maxLength: 8 }),
    })
    .map(({ base, fold, opens, drafts }) => {
      const parts: Part[] = [];
      drafts.forEach((draft, index) => {
        const earlier = (number: number) => (index === 0 ? null : parts[number % index]!);
        const on = typeof draft.on === 'string' ? draft.on : (earlier(draft.on)?.id ?? 'base');
        const parent = parts.find(({ id }) => id === on);
        const isCircle =
          draft.extent === 'diameter' || (draft.extent === 'inset' && parent?.shape.kind === 'circle');
        const anchor = ({
          kind,
          distance: away,
          neighbour,
        }: {
          kind: number;
          distance: Length;
          neighbour: number;
        }): Anchor | null => {
          if (kind <= 1) return null;
          const beside = earlier(neighbour);
          return kind === 2 || beside === null ? { from: 'edge', distance: away } : awayFrom(beside.id, away);
        };
        const fills = draft.extent === 'size' ? draft.fills : [false, false];
        const places = draft.places.map((ends): PlaceSketch => {
          const [left, right, top, bottom] = ends.map(anchor);
          const both = (start: Anchor | null | undefined, fill: boolean | undefined) =>
            overFixed || fill === true || !start;
          return {
            ...(left ? { left } : {}),
            ...(right && both(left, fills[0]) ? { right } : {}),
            ...(top ? { top } : {}),
            ...(bottom && both(top, fills[1]) ? { bottom } : {}),
          };
        });
        const [tornLeft, tornRight, tornTop, tornBottom] = draft.torn;
        parts.push(
          part(`p${index}`, {
            on,
            shape: isCircle ? 'circle' : 'rectangle',
            ...(draft.extent === 'size'
              ? { size: [fills[0] ? null : draft.size[0], fills[1] ? null : draft.size[1]] }
              : {}),
            ...(draft.extent === 'inset' ? { inset: draft.inset } : {}),
            ...(draft.extent === 'diameter' ? { diameter: draft.size[0] } : {}),
            ...(isCircle
              ? {}
              : { torn: { left: tornLeft, right: tornRight, top: tornTop, bottom: tornBottom } }),
            place: places,
          }),
        );
      });
      return layoutOf({ base, fold, ...(opensEitherWay(fold) ? { opens } : {}), parts });
    });
}
