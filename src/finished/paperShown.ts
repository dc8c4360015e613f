import {
  type Arrangement,
  type Dealt,
  type Face,
  isFolded,
  type Layout,
  ownSideIn,
  paperOfCard,
} from '../layout/index.ts';
import { showsSideOfFront } from '../making/index.ts';
import { areaOf, intersection } from '../shape/index.ts';
import { type Shown, shownOn } from './shown.ts';

/** How much of a side of a paper is seen on all the cards of the set together, in square ticks. */
export interface PaperShown {
  /** The id of the paper; `null`: of what is bought. */
  readonly paper: string | null;
  readonly side: 'front' | 'back';
  /** With nothing over it. */
  readonly open: number;
  /** Only through what lies over it. */
  readonly veiled: number;
}

/**
 * How much of each paper the cards of the set show, in the order they are met from the base up; of the base, on the
 * front, the inside and the back, the side that lies there.
 *
 * Cards on which the same parts are seen through are alike in this, and are worked out once.
 */
export function paperShown(layout: Layout, arrangement: Arrangement): readonly PaperShown[] {
  const found = new Map<
    string,
    { paper: string | null; side: 'front' | 'back'; open: number; veiled: number }
  >();
  const alike = new Map<string, readonly Area[]>();
  const dealt = new Map<string, Dealt>([
    ['base', layout.base],
    ...layout.parts.map((part) => [part.id, part] as const),
  ]);
  for (let card = 0; card < layout.cards; card += 1) {
    const key = [...dealt.values()]
      .map((one) => (layout.papers.get(paperOfCard(one, card) ?? '')?.seeThrough === true ? 't' : 'o'))
      .join('');
    let shown = alike.get(key);
    if (shown === undefined) {
      shown = shownOn(layout, arrangement, card).flatMap((one) => areasOf(one, arrangement));
      alike.set(key, shown);
    }
    for (const one of shown) {
      const of = dealt.get(one.part)!;
      const paper = paperOfCard(of, card);
      const own = one.part === 'base' ? sideOfBase(layout, one.face) : of.side;
      const side = one.turned ? otherSide[own] : own;
      const name = `${paper} ${side}`;
      const total = found.get(name) ?? { paper, side, open: 0, veiled: 0 };
      total.open += one.open;
      total.veiled += one.veiled;
      found.set(name, total);
    }
  }
  return [...found.values()];
}

/** How much of a piece is seen on one card, in square ticks. */
interface Area extends Pick<Shown, 'part' | 'face'> {
  /** Whether it is what a folded strip shows of the other side of its paper. */
  readonly turned: boolean;
  readonly open: number;
  readonly veiled: number;
}

function areasOf({ part, piece, face, open, veiled }: Shown, arrangement: Arrangement): readonly Area[] {
  const arranged = arrangement.parts.find((one) => one.part.id === part);
  const box = arranged?.pieces[piece]?.box ?? null;
  const all = { part, face, turned: false, open: areaOf(open), veiled: areaOf(veiled) };
  if (arranged === undefined || box === null || !isFolded(arranged.part.shape)) return [all];
  const own = ownSideIn(arranged.part.shape, box);
  const shown = { open: areaOf(intersection(open, own)), veiled: areaOf(intersection(veiled, own)) };
  return [
    { ...all, ...shown },
    { ...all, turned: true, open: all.open - shown.open, veiled: all.veiled - shown.veiled },
  ];
}

const otherSide = { front: 'back', back: 'front' } as const;

/** Which side of its paper the base shows on a face. */
export function sideOfBase({ base }: Layout, face: Face): 'front' | 'back' {
  return (base.side === 'front') === showsSideOfFront(base.fold, face) ? 'front' : 'back';
}
