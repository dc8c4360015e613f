export { type ArrangedPart, type Arrangement, arrange, type LaidPiece } from './arrange.ts';
export { beyondAlong, beyondSeen } from './beyond.ts';
export { checkLayout } from './check.ts';
export { type LayoutCode, layoutCodes } from './codes.ts';
export {
  type Dimension,
  type DimensionKind,
  type DimensionName,
  dimensionsOf,
  withLengths,
} from './dimension.ts';
export { foldedBase } from './foldedBase.ts';
export {
  type FoldedStrip,
  foldedStripOf,
  isFolded,
  loopsOf,
  ribbonOf,
  stripOf,
} from './foldedShape.ts';
export { bagsOf, type Kit, type KitInstead, type KitLayout, type KitThing } from './kit.ts';
export type {
  Adhere,
  AdhesiveSaid,
  Anchor,
  Base,
  Bought,
  Dealt,
  DealtInstead,
  DealtRun,
  Envelope,
  Extent,
  Extra,
  Face,
  FoldedShape,
  Layout,
  MakingSaid,
  Part,
  PartMinutes,
  Place,
  Room,
  RoomName,
  Rooms,
  Shape,
  ShapeKind,
  Span,
  Tear,
  Turn,
} from './layout.ts';
export type { LayoutProblem } from './layoutProblem.ts';
export { type LengthWanted, lengthNamed, lengthNames } from './lengthNamed.ts';
export { paperOfCard } from './paperOfCard.ts';
export {
  depthRegionsIn,
  type FacetRegion,
  facetRegionsIn,
  outlineIn,
  ownSideIn,
  regionIn,
} from './pieceShape.ts';
export { type SumChange, sumChanges } from './sumChange.ts';
export { type LayoutSum, type SumTerm, sumsOf } from './sums.ts';
export { turnOf, upOf } from './turn.ts';
export { unseen } from './unseen.ts';
export { roomNames, roomNamesOf, withRoom } from './withRoom.ts';
export { type Drawn, rowKey, type Worse, worseningFrom } from './worsening.ts';
