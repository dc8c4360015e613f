import type { Severity } from '../problem/index.ts';

/** What can be wrong with the card once it is made, and how badly. */
export const finishedCodes = {
  /** Nothing of a part is seen: several others lie over it together. Names: by, their ids. */
  vanishes: 'caution',
  /** A part lies on nothing: it hangs beside the card. */
  noJoin: 'error',
  /** A part rests on what is below it by less than glue needs to hold. Numbers: needed. Names: on. */
  thinJoin: 'caution',
  /** So little of something shows beside a part that it looks like a slip. Numbers: breadth. Names: shows, and edge or beside. */
  sliver: 'caution',
  /** Foam or spots have no room behind a part where they are not seen. Numbers: breadth, needed, inset. Names: kind. */
  noRoomToHold: 'caution',
  /** Whatever holds a part is seen through it, for nothing lies over it that hides that. As above, without inset. */
  glueShows: 'caution',
  /** A part on foam or spots reaches out too far over what holds it. Numbers: hangs, span. Names: kind. */
  hangsFar: 'caution',
  /**
   * The parts cannot be put on in the order that the layout names. Names: why1, lower1, upper1, first1, last1 of the rule
   * that stands against it, and of more where only several together do.
   */
  orderRefused: 'error',
  /** There is no order in which the parts can be put on. As above. */
  orderNone: 'error',
  /**
   * Even as deep as it usually goes, a tear leaves a bare spot or a gap. Names: kind, edge, against, shows. Numbers:
   * nominal, usual, least, most, onCard, inSet, cards, wanted.
   */
  tearShows: 'error',
  /** A tear may leave a bare spot or a gap, or come out past what hides it, on more sets than is wanted. As above. */
  tearMayShow: 'caution',
  /** Two edges may meet, or a border vanish, on more sets than is wanted, since a tear wanders. As above. */
  tearMeets: 'caution',
  /**
   * What lies within the base is thicker than its panels there are narrower, so the edge of the front may not lie over it.
   * Numbers: allowance, thickness.
   */
  allowanceTight: 'caution',
  /**
   * The card does not go into the envelope that the layout names. Numbers: card, envelope, spare, thickness (what it takes
   * of the spare), left, length and height of an envelope that does. Names: side (longer or shorter), name, smallest.
   */
  envelopeTooSmall: 'error',
  /** It goes in with less room than is usual. As above. */
  envelopeTight: 'caution',
  /**
   * The post that the layout names takes the cards in none of its classes. Numbers: is1, limit1, is2 …, grams, thickness.
   * Names: post, asOf, why1, why2 … (codes of faults), smallest, change (what would help), changed, becomes.
   */
  notPosted: 'caution',
  /** It does not take them in its smallest class. As above, and the class `as`. */
  postedHigher: 'caution',
  /** There are more stations than tasks, so that some stand empty. Numbers: stations, tasks. */
  stationsEmpty: 'caution',
  /** Where cards lie to dry there is room for so few that it costs time. Numbers: room, later (seconds). */
  roomToDryShort: 'caution',
  /** A pair of hands waits longer for glue than it works. Numbers: idle, work (seconds). */
  longWait: 'caution',
  /** A station waits over its own glue with every card. Numbers: station (from 1), over (seconds). */
  stationWaits: 'caution',
} as const satisfies Record<string, Severity>;

/** Code of a problem of the finished card. */
export type FinishedCode = keyof typeof finishedCodes;
