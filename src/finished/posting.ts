import type { Arrangement, Envelope, Layout, Part } from '../layout/index.ts';
import {
  type EnvelopeSize,
  envelopeSizes,
  type Mailpiece,
  type PostClass,
  type Posted,
  type PostTable,
  postedAs,
} from '../making/index.ts';
import { inches, type Length, lengthOfTicks, millimetres, type Size, sum, times } from '../measure/index.ts';
import { type Closed, closedCards } from './closed.ts';
import {
  envelopeFit,
  envelopeNeeded,
  largestCard,
  type Sides,
  sidesOf,
  smallestEnvelope,
} from './envelope.ts';
import { thicknessOf } from './thickness.ts';
import { envelopeWeight, usualEnvelope, withItem } from './weight.ts';

/** How a set goes by one post. */
export interface Posting {
  readonly table: PostTable;
  /** The envelope it goes in. */
  readonly envelope: PostedEnvelope;
  readonly piece: Mailpiece;
  readonly posted: Posted;
  /** Ids of the parts that may be stiff. */
  readonly rigid: readonly string[];
  /** Changes of one thing each after which a smaller class takes it, the slightest first. */
  readonly changes: readonly PostChange[];
}

/** An envelope that a set is posted in. */
export interface PostedEnvelope extends Sides {
  /** Empty where it has none. */
  readonly name: string;
  /** `said`: the layout says so; `known`: the smallest usual one that the card fits; `needed`: none does, so one to measure. */
  readonly from: 'said' | 'known' | 'needed';
  readonly thickness: Length;
  readonly thicknessEstimated: boolean;
}

/** A change of one thing that brings a set into a smaller class. */
export type PostChange = { readonly as: PostClass } & (
  | { readonly kind: 'thinnerFoam'; readonly foam: Length }
  | { readonly kind: 'flatPart'; readonly part: string }
  | { readonly kind: 'withoutFoam' }
  | { readonly kind: 'withoutPart'; readonly part: string }
  | { readonly kind: 'lighterEnvelope'; readonly gsm: number }
  | { readonly kind: 'otherEnvelope'; readonly envelope: EnvelopeSize }
  | { readonly kind: 'smallerCard'; readonly card: Sides; readonly envelope: EnvelopeSize }
);

/** Something that is bought and so thick may not bend (common practice, no source). */
const stiffFrom: Length = millimetres(1);
/** The thinnest foam tape that is usually sold, and the lightest paper of envelopes for cards (common practice, no source). */
const thinFoam = { in: inches(1, 32), mm: millimetres(1) } as const;
const lightEnvelope = 80;
/** Raised parts are tried one by one up to so many; more would make a person wait. */
const mostTried = 12;

/**
 * The class in which a post takes the cards of a set in their envelopes, what keeps them from the smaller ones, and which
 * changes of one thing would do, each found by working the card out again.
 *
 * Without an envelope in the layout it is the smallest usual one. The piece is as thick as the thickest card and as heavy
 * as the heaviest. Sizes and limits only, no prices; the local post office decides.
 */
export function postingOf(
  layout: Layout,
  arrangement: Arrangement,
  table: PostTable,
  closed: Closed = closedCards(layout, arrangement),
): Posting {
  const envelope = envelopeOf(layout, closed);
  const sent = sentIn(layout, closed, envelope);
  const posted = postedAs(sent.piece, table);
  return {
    table,
    envelope,
    ...sent,
    posted,
    changes: changesOf(layout, arrangement, { table, closed, envelope, at: posted.not.length }),
  };
}

interface Tried {
  readonly table: PostTable;
  readonly closed: Closed;
  readonly envelope: PostedEnvelope;
  /** The class by its place in the table; beyond its end where none takes it. */
  readonly at: number;
}

function envelopeOf(layout: Layout, { section }: Closed): PostedEnvelope {
  const said = layout.envelope;
  if (said !== null)
    return { name: said.name, from: 'said', ...sidesOf(said.size), ...thicknessOfEnvelope(said) };
  const known = smallestEnvelope(section, layout.units);
  return known === null
    ? { name: '', from: 'needed', ...envelopeNeeded(section, layout.units), ...thicknessOfEnvelope(null) }
    : {
        name: known.name,
        from: 'known',
        length: known.length,
        height: known.height,
        ...thicknessOfEnvelope(null),
      };
}

/** Front and back together. */
function thicknessOfEnvelope(
  said: Pick<Envelope, 'gsm' | 'thickness'> | null,
): Pick<PostedEnvelope, 'thickness' | 'thicknessEstimated'> {
  if (said !== null && said.thickness !== null)
    return { thickness: said.thickness, thicknessEstimated: false };
  const paper = thicknessOf({ thickness: null, gsm: said?.gsm ?? usualEnvelope, kind: null });
  return { thickness: times(paper.length, 2), thicknessEstimated: true };
}

function sentIn(
  layout: Layout,
  { section, weight }: Closed,
  envelope: PostedEnvelope,
  own: Pick<Envelope, 'gsm' | 'grams'> | null = layout.envelope,
): Pick<Posting, 'piece' | 'rigid'> {
  const size: Size = { width: envelope.length, height: envelope.height };
  const rigid = stiffParts(layout);
  const sealed = withItem(weight, envelopeWeight({ size, gsm: own?.gsm ?? null, grams: own?.grams ?? null }));
  return {
    rigid,
    piece: {
      length: envelope.length,
      height: envelope.height,
      thickness: sum(section.thickest.thickness, envelope.thickness),
      grams: sealed.grams,
      isUneven: section.evenness.isUneven,
      isRigid: rigid.length > 0,
    },
  };
}

/** What is bought and thick may not bend. */
function stiffParts(layout: Layout): readonly string[] {
  return layout.parts
    .filter(({ papers, thickness }) => papers.length === 0 && thickness !== null && thickness >= stiffFrom)
    .map(({ id }) => id);
}

// --- Changes ---

type Change = PostChange extends infer One ? (One extends unknown ? Omit<One, 'as'> : never) : never;

function changesOf(layout: Layout, arrangement: Arrangement, tried: Tried): readonly PostChange[] {
  const { table, envelope, at } = tried;
  if (at === 0) return [];
  const better = (piece: Mailpiece): PostClass | null => {
    const posted = postedAs(piece, table);
    return posted.not.length < at ? posted.as : null;
  };
  const changes: PostChange[] = [];
  const offer = (change: Change, piece: Mailpiece) => {
    const as = better(piece);
    if (as !== null) changes.push({ ...change, as });
  };

  // What the card is made of.
  const ofCard = (changed: Layout): Mailpiece =>
    sentIn(changed, closedCards(changed, arrangement), envelope, layout.envelope).piece;
  const raised = layout.parts.filter(({ adhere }) => adhere === 'raised');
  if (raised.length > 0) {
    const foam = thinFoam[layout.units];
    const thicker = raised.some((part) => (part.foam ?? inches(1)) > foam);
    if (thicker)
      offer({ kind: 'thinnerFoam', foam }, ofCard(withParts(layout, (part) => thinned(part, foam))));
    if (raised.length > 1 && raised.length <= mostTried) {
      for (const { id } of raised) {
        const flat = withParts(layout, (part) => (part.id === id ? { ...part, adhere: 'flat' } : part));
        offer({ kind: 'flatPart', part: id }, ofCard(flat));
      }
    }
    offer({ kind: 'withoutFoam' }, ofCard(withParts(layout, flattened)));
  }
  for (const part of stiffParts(layout)) {
    const without = { ...layout, parts: layout.parts.filter(({ id }) => id !== part) };
    offer({ kind: 'withoutPart', part }, withoutPiece(layout, arrangement, { part, without, envelope }));
  }

  // What it goes in.
  const said = layout.envelope;
  if (said !== null && said.grams === null && (said.gsm === null || said.gsm > lightEnvelope)) {
    const lighter = sentIn(layout, tried.closed, envelope, { gsm: lightEnvelope, grams: null });
    offer({ kind: 'lighterEnvelope', gsm: lightEnvelope }, lighter.piece);
  }
  const { section } = tried.closed;
  for (const other of envelopeSizes[layout.units]) {
    if (envelopeFit(section, { width: other.length, height: other.height }, layout.units).is !== 'fits')
      continue;
    offer({ kind: 'otherEnvelope', envelope: other }, inOther(layout, tried, other));
    if (changes.at(-1)?.kind === 'otherEnvelope') break;
  }

  // The card itself, made no larger in any direction and as little smaller as may be.
  if (changes.length === 0) {
    const now = sidesOf(layout.base.size);
    const smaller = envelopeSizes[layout.units].flatMap((other) => {
      const largest = largestCard(section, other, layout.units);
      if (largest === null) return [];
      const card: Sides = {
        length: lengthOfTicks(Math.min(now.length, largest.length)),
        height: lengthOfTicks(Math.min(now.height, largest.height)),
      };
      return [{ kind: 'smallerCard' as const, card, envelope: other }];
    });
    const area = ({ card }: { readonly card: Sides }) => card.length * card.height;
    for (const change of smaller.toSorted((one, other) => area(other) - area(one))) {
      offer(change, inOther(layout, tried, change.envelope));
      if (changes.length > 0) break;
    }
  }
  return changes;
}

function withParts(layout: Layout, change: (part: Part) => Part): Layout {
  return { ...layout, parts: layout.parts.map(change) };
}

function thinned(part: Part, foam: Length): Part {
  return part.adhere === 'raised' && (part.foam === null || part.foam > foam) ? { ...part, foam } : part;
}

function flattened(part: Part): Part {
  return part.adhere === 'raised' ? { ...part, adhere: 'flat' } : part;
}

/** What lies on it falls as far as it was thick. */
function withoutPiece(
  layout: Layout,
  arrangement: Arrangement,
  {
    part,
    without,
    envelope,
  }: { readonly part: string; readonly without: Layout; readonly envelope: PostedEnvelope },
): Mailpiece {
  const parts = arrangement.parts.filter((one) => one.part.id !== part);
  return sentIn(without, closedCards(without, { ...arrangement, parts }), envelope, layout.envelope).piece;
}

function inOther(layout: Layout, { closed, envelope }: Tried, { length, height }: EnvelopeSize): Mailpiece {
  const own = layout.envelope === null ? null : { gsm: layout.envelope.gsm, grams: null };
  return sentIn(layout, closed, { ...envelope, length, height }, own).piece;
}
