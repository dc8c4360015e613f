import type { Arrangement } from '../arrange.ts';
import type { Anchor, Layout } from '../layout.ts';

/**
 * What a layout asks for and an arrangement does not give, in words; empty when it gives all of it.
 *
 * It knows only what the layout file means and measures the finished boxes: distances between edges, sizes,
 * insets, middles. How they came about it does not know, and it shares no code with `arrange`.
 */
export function brokenConstraints(layout: Layout, arrangement: Arrangement): string[] {
  const broken: string[] = [];
  const expect = (holds: boolean, what: string) => {
    if (!holds) broken.push(what);
  };
  const indexOf = new Map(layout.parts.map((part, index) => [part.id, index]));

  layout.parts.forEach((part, index) => {
    const arranged = arrangement.parts[index]!;
    const parentIndex = indexOf.get(part.on);
    const parent = parentIndex === undefined ? null : arrangement.parts[parentIndex]!;
    const isBlamed = arrangement.problems.some((problem) => problem.part === part.id);
    expect(arranged.part === part, `${part.id} keeps its place in the pile`);
    expect(
      arranged.face === (parent === null ? part.on : parent.face),
      `${part.id} lies on the face below it`,
    );
    expect((arranged.cut === null) === (arranged.seen === null), `${part.id} has both sizes or none`);

    for (const axis of [
      { size: 'width', at: 'left', span: 'across', start: 'left', end: 'right' },
      { size: 'height', at: 'top', span: 'down', start: 'top', end: 'bottom' },
    ] as const) {
      const says = (what: string) => `${part.id}, ${axis.size}: ${what}`;
      const parentSeen = parent === null ? layout.base.size[axis.size] : (parent.seen?.[axis.size] ?? null);

      if (arranged.cut !== null && arranged.seen !== null) {
        const [cut, seen] = [arranged.cut[axis.size], arranged.seen[axis.size]];
        expect(cut > 0 && seen > 0, says('sizes are positive'));
        expect(cut - part.torn[axis.start] - part.torn[axis.end] === seen, says('cut less torn is seen'));
        if (part.extent.by === 'size' && part.extent[axis.size] !== null) {
          expect(cut === part.extent[axis.size], says('the size given is cut'));
        }
        if (part.extent.by === 'diameter') expect(cut === part.extent.diameter, says('the diameter is cut'));
        if (part.extent.by === 'inset') {
          expect(
            parentSeen !== null && parentSeen - seen === 2 * part.extent.inset,
            says('inset both sides'),
          );
        }
      }

      const fills = part.extent.by === 'size' && part.extent[axis.size] === null;
      part.places.forEach((place, pieceIndex) => {
        const { box, under, borders } = arranged.pieces[pieceIndex]!;
        const below = parent === null ? null : parent.pieces[pieceIndex % parent.pieces.length]!.box;
        if (parent === null) {
          expect(
            under !== null && under.left === 0 && under.top === 0 && under.width === layout.base.size.width,
            says('lies on the card'),
          );
        } else expect(JSON.stringify(under) === JSON.stringify(below), says('lies on the piece below it'));
        if (box === null || under === null || borders === null) return;

        const start = box[axis.at] - under[axis.at];
        const end = under[axis.at] + under[axis.size] - box[axis.at] - box[axis.size];
        expect(box[axis.size] === arranged.seen?.[axis.size], says('the box has the seen size'));
        expect(borders[axis.start] === start && borders[axis.end] === end, says('borders are what is seen'));

        const { start: before, end: after } = place[axis.span];
        const distance = (anchor: Anchor, side: 'start' | 'end'): number | null => {
          if (anchor.from === 'edge') return anchor.distance;
          const neighbour = arrangement.parts[indexOf.get(anchor.part)!]!;
          const near = neighbour.pieces
            .filter((_, other) => neighbour.pieces.length !== part.places.length || other === pieceIndex)
            .map(({ box: other }) => other);
          if (near.some((other) => other === null)) return null;
          const reached = near.map((other) =>
            side === 'start'
              ? other![axis.at] + other![axis.size] - under[axis.at]
              : under[axis.at] + under[axis.size] - other![axis.at],
          );
          return Math.max(...reached) + anchor.gap;
        };
        // A neighbour whose other axis is unknown has no box to measure to.
        const stands = (anchor: Anchor, side: 'start' | 'end', found: number, slack = 0): boolean => {
          const wanted = distance(anchor, side);
          return wanted === null || Math.abs(wanted - found) <= slack;
        };
        // A few ticks of reading: rooms that differ by them get pieces of one size, over-fixed ends agree.
        const reading = 4 * (layout.parts.length + 1);
        const slack = fills && part.places.length > 1 ? reading : 0;
        if (before !== null) expect(stands(before, 'start', start), says('the start stands where it should'));
        else if (fills) expect(Math.abs(start) <= slack, says('a filled start reaches the edge'));
        if (after === null) {
          if (fills) expect(Math.abs(end) <= slack, says('a filled end reaches the edge'));
        } else if (before === null || fills) {
          expect(stands(after, 'end', end, slack), says('the end stands where it should'));
        } else if (!isBlamed) {
          expect(stands(after, 'end', end, reading), says('over-fixed ends agree'));
        }
        if (before === null && after === null && !fills) {
          expect(end - start === 0 || end - start === 1, says('centred'));
        }
      });
    }

    // What is not known has a reason: its own problem, or something unknown that it hangs on.
    const hangsOn = [
      part.on,
      ...part.places.flatMap(({ across, down }) =>
        [across.start, across.end, down.start, down.end].flatMap((anchor) =>
          anchor?.from === 'part' ? [anchor.part] : [],
        ),
      ),
    ].flatMap((id) => {
      const other = indexOf.get(id);
      return other === undefined ? [] : [arrangement.parts[other]!];
    });
    const isIncomplete = arranged.cut === null || arranged.pieces.some(({ box }) => box === null);
    const hasReason = isBlamed || hangsOn.some(({ pieces }) => pieces.some(({ box }) => box === null));
    expect(!isIncomplete || hasReason, `${part.id} is unknown without a reason`);
  });
  return broken;
}
