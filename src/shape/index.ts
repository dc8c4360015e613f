export { squareInches, squareMillimetres } from './area.ts';
export { type BannerEnd, bannerOutline } from './banner.ts';
export { breadthOf, clearOf, narrowed, widened } from './breadth.ts';
export { difference, intersection, union } from './combining.ts';
export { covers, touches } from './covering.ts';
export { regionOf, woundRegionOf } from './flattened.ts';
export { islandsOf } from './islands.ts';
export { nearestBetween } from './nearest.ts';
export {
  movedTo,
  type Nested,
  type NestPlace,
  type NestRequest,
  nested,
  type QuarterTurns,
  turnedRegion,
  withMargin,
} from './nesting.ts';
export { type Contour, type Outline, rectangleOutline, type Segment, straightOutline } from './outline.ts';
export { type OutlineStep, outlineSteps } from './outlineSteps.ts';
export {
  type PathFault,
  type PathReading,
  type PathRefusal,
  type PathShape,
  pathLimits,
  pathSize,
  readPath,
} from './path.ts';
export { pathOutline } from './pathOutline.ts';
export type { Point } from './point.ts';
export { areaOf, boundsOf, boxRegion, isEmpty, nothing, type Region } from './region.ts';
export { evenOddRegion } from './ringsRegion.ts';
export { ovalOutline, roundedOutline } from './rounded.ts';
export { isTransform, transformedPath } from './transformedPath.ts';
