export {
  type Axis,
  type Box,
  bordersOf,
  bottomOf,
  type Edge,
  quarterTurned,
  rightOf,
  type Size,
  type Units,
} from './box.ts';
export {
  goesInto,
  halves,
  inches,
  inchesOf,
  type Length,
  lengthOfTicks,
  millimetres,
  millimetresOf,
  minus,
  pointsOf,
  sum,
  ticksPerInch,
  ticksPerMillimetre,
  times,
  zero,
} from './length.ts';
export { type Marking, type MarkingId, type MarkReading, readMark, usualMarkings } from './marking.ts';
export { type LengthFault, type LengthReading, type LengthRefusal, readLength } from './reading.ts';
export { roundTo } from './rounding.ts';
export { type LongerMarks, lineSpacings, placeOnRuler, type RulerPlace } from './rulerPlace.ts';
export { type Glyphs, showLength, showLengthWithUnit, showOnMarking, showSize } from './showing.ts';
export { readSize, type SizeReading } from './sizeReading.ts';
