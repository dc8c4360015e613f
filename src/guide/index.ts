export { type AssemblyPlate, assemblyPlates, type PlateRequest } from './assemblyPlate.ts';
export {
  type CuttingMatter,
  type CuttingPicture,
  cuttingPictures,
} from './cuttingPictures.ts';
export { type DrawnFace, drawnFace, type FacePiece, type FaceRequest } from './face.ts';
export { frontDrawing } from './frontDrawing.ts';
export { type GuideRequest, guideOf } from './guide.ts';
export { type Hand, trimmerFor } from './handed.ts';
export { type KitGuideRequest, kitGuideOf } from './kitGuide.ts';
export { hatchOf, letterFor, type Manner } from './matter.ts';
export {
  type PileDrawing,
  type PileDrawingRequest,
  type PileLayer,
  type PileTag,
  pileDrawing,
} from './pileDrawing.ts';
export { ribbonDrawing } from './ribbonDrawing.ts';
export { timeChart } from './timeChart.ts';
