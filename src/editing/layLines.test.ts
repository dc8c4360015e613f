import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { JsonObject } from '../files/index.ts';
import { type Axis, type Box, inches, type Length, lengthOfTicks } from '../measure/index.ts';
import { laidTo, layLines } from './layLines.ts';
import { inHandOf, randomInHand } from './testing/handmade.ts';

const inch = (count: number, parts = 1) => inches(count, parts);

function card(...parts: readonly JsonObject[]) {
  return inHandOf({
    cardwright: 1,
    units: 'in',
    cards: 4,
    base: { size: ['4', '6'], fold: 'left', paper: null },
    papers: {},
    parts: parts.map((part) => ({ paper: null, ...part })),
  });
}

/** What the last part is laid to across when its box is dragged to this left and top edge, within 1/16 in. */
function laidAt(before: ReturnType<typeof card>, left: Length, top: Length, marks: Length | null = null) {
  const part = before.layout.parts.length - 1;
  const lines = layLines(before, { part, piece: 0 }, marks);
  const { box } = before.arrangement.parts[part]!.pieces[0]!;
  const { across } = laidTo(lines, { ...box!, left, top }, inch(1, 16));
  return across && { ...across.line.to, of: across.line.of, by: across.by, spans: across.line.spans };
}

const tag = { id: 'tag', size: ['1', '1'] };
const off = inch(1, 32);
const near = (at: Length) => lengthOfTicks(at + off);
const back = lengthOfTicks(-off);

describe('a piece that is dragged', () => {
  it('is laid to edges and the middle of what it lies on, and to borders as the layout has them', () => {
    const before = card({ id: 'mat', inset: '1/8' }, { on: 'mat', ...tag });
    expect(laidAt(before, near(inch(1, 8)), inch(1))).toMatchObject({
      kind: 'bed edge',
      of: 'start',
      by: back,
    });
    expect(laidAt(before, near(inch(23, 8)), inch(1))).toMatchObject({ kind: 'bed edge', of: 'end' });
    expect(laidAt(before, near(inch(3, 2)), inch(1))).toMatchObject({
      kind: 'bed middle',
      of: 'middle',
      spans: [
        { from: inch(1, 8), to: inch(3, 2) },
        { from: inch(5, 2), to: inch(31, 8) },
      ],
    });
    expect(laidAt(before, near(inch(1, 4)), inch(1))).toMatchObject({
      kind: 'border',
      by: back,
      spans: [{ from: inch(1, 8), to: inch(1, 4) }],
    });
    expect(laidAt(before, near(inch(3, 4)), inch(1))).toBeNull();
  });

  it('is laid to gaps like others, beside what has them', () => {
    const before = card(
      { id: 'one', size: ['1/2', '1'], place: { left: '1/4', top: '0' } },
      { id: 'two', size: ['1/2', '1'], place: { rightOf: 'one', gap: '3/16', top: '0' } },
      { ...tag, size: ['1/2', '1/2'] },
    );
    expect(laidAt(before, near(inch(13, 8)), inch(1, 2))).toMatchObject({ kind: 'gap', part: 'two' });
    expect(laidAt(before, near(inch(13, 8)), inch(4))).toBeNull();
    const apart = card(
      { id: 'one', size: ['1/2', '1'], place: { left: '0', top: '0' } },
      { id: 'two', size: ['1/2', '1'], place: { right: '1/2', top: '0' } },
      { ...tag, size: ['1/2', '1/2'] },
    );
    expect(laidAt(apart, near(inch(3, 2)), inch(1, 2))).toMatchObject({
      kind: 'equal gaps',
      of: 'middle',
      spans: [
        { from: inch(1, 2), to: inch(3, 2) },
        { from: inch(2), to: inch(3) },
      ],
    });
  });

  it('is laid to edges and middles of what else lies on the face, and to marks at last', () => {
    const before = card({ id: 'one', size: ['3/4', '1'], place: { left: '5/8', top: '0' } }, tag);
    expect(laidAt(before, near(inch(11, 8)), inch(4))).toMatchObject({
      kind: 'edge',
      part: 'one',
      of: 'start',
    });
    expect(laidAt(before, near(inch(1, 2)), inch(4))).toMatchObject({ kind: 'middle', part: 'one' });
    expect(laidAt(before, near(inch(7, 4)), inch(4), inch(1, 8))).toMatchObject({
      kind: 'mark',
      by: back,
      spans: [{ from: 0, to: inch(7, 4) }],
    });
    expect(laidAt(before, near(inch(1, 2)), inch(4), inch(1, 32))).toMatchObject({ kind: 'middle' });
  });

  it('is not laid to what moves along with it', () => {
    const before = card(
      tag,
      { id: 'dot', on: 'tag', size: ['1/4', '1/4'], place: { left: '1/16' } },
      { id: 'side', size: ['1/2', '1/2'], place: { rightOf: 'tag', gap: '1/16' } },
    );
    const { lines } = layLines(before, { part: 0, piece: 0 }, null);
    expect(lines.filter(({ to }) => 'part' in to && to.part !== null)).toEqual([]);
  });

  it('is laid to the nearest true place there is, tried tick by tick, on random layouts', () => {
    let laid = 0;
    const reach = 250;
    fc.assert(
      fc.property(
        randomInHand({ coarse: true, overFixed: false }),
        fc.nat(),
        fc.integer({ min: -60_000, max: 60_000 }),
        fc.integer({ min: -60_000, max: 60_000 }),
        (before, any, across, down) => {
          const { parts } = before.arrangement;
          const alone = parts.flatMap(({ pieces }, index) =>
            pieces.length === 1 && pieces[0]!.box ? [index] : [],
          );
          if (alone.length === 0) return;
          const part = alone[any % alone.length]!;
          const own = parts[part]!;
          const { box, under, onPiece } = own.pieces[0]!;
          const dragged = {
            ...box!,
            left: lengthOfTicks(box!.left + across),
            top: lengthOfTicks(box!.top + down),
          };

          // What stays where it is, and which of that is a neighbour.
          const goes = new Set([own.part.id]);
          for (const { part: other } of parts) {
            const names = JSON.stringify([other.on, other.places]);
            if ([...goes].some((id) => names.includes(`"${id}"`))) goes.add(other.id);
          }
          const still = parts.filter((other) => other.face === own.face && !goes.has(other.part.id));
          const boxes = still.flatMap(({ pieces }) => pieces.flatMap((one) => (one.box ? [one.box] : [])));
          const beside = still.flatMap((other) =>
            other.part.on === own.part.on
              ? other.pieces.flatMap((one) => (one.box && one.onPiece === onPiece ? [one.box] : []))
              : [],
          );
          const used = new Set<number>();
          for (const { part: other } of parts) {
            if (other.id === own.part.id) continue;
            if (other.extent.by === 'inset') used.add(other.extent.inset);
            for (const { across: x, down: y } of other.places)
              for (const anchor of [x.start, x.end, y.start, y.end])
                if (anchor) used.add(anchor.from === 'edge' ? anchor.distance : anchor.gap);
          }

          const result = laidTo(layLines(before, { part, piece: 0 }, null), dragged, lengthOfTicks(reach));
          for (const [axis, at, found] of [
            ['width', 'left', result.across],
            ['height', 'top', result.down],
          ] as const) {
            const cross = axis === 'width' ? (['top', 'height'] as const) : (['left', 'width'] as const);
            const size = box![axis];
            const ends = (one: Box): [number, number] => [one[at], one[at] + one[axis]];
            const level = (one: Box) =>
              one[cross[0]] < dragged[cross[0]] + dragged[cross[1]] &&
              dragged[cross[0]] < one[cross[0]] + one[cross[1]];
            const centred = (start: number, [from, to]: [number, number]) => {
              const twice = 2 * start + size - from - to;
              return twice === 0 || twice === -1;
            };
            const isTrue = (start: number): boolean => {
              const own_ = [start, start + size];
              const bed = ends(under!);
              if (centred(start, bed) || own_.some((edge, end) => edge === bed[end])) return true;
              if (used.has(start - bed[0]) && start > bed[0]) return true;
              if (used.has(bed[1] - start - size) && bed[1] > start + size) return true;
              const card_: [number, number] = [0, before.layout.base.size[axis]];
              for (const one of [card_, ...boxes.map(ends)])
                if (centred(start, one) || own_.some((edge) => one.includes(edge))) return true;
              const near_ = beside.filter(level).map(ends);
              return near_.some((one) => {
                const [after, gapBefore] = [start - one[1], one[0] - start - size];
                if ((after > 0 && used.has(after)) || (gapBefore > 0 && used.has(gapBefore))) return true;
                return near_.some((other) => {
                  const gap = other[0] - one[1];
                  if (gap < 0 || one === other) return false;
                  const between = start >= one[1] && start + size <= other[0];
                  if (between && centred(start, [one[1], other[0]])) return true;
                  return gap > 0 && (start - other[1] === gap || one[0] - start - size === gap);
                });
              });
            };
            let nearest = Infinity;
            for (let off_ = -reach; off_ <= reach; off_ += 1)
              if (isTrue(dragged[at] + off_)) nearest = Math.min(nearest, Math.abs(off_));
            expect(found === null ? Infinity : Math.abs(found.by), axis satisfies Axis).toBe(nearest);
            if (found !== null) {
              expect(isTrue(dragged[at] + found.by)).toBe(true);
              laid += 1;
            }
          }
        },
      ),
      { numRuns: 150 },
    );
    expect(laid).toBeGreaterThan(20);
  });
});
