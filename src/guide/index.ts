export { frontDrawing } from './frontDrawing.ts';
export { type GuideRequest, guideOf } from './guide.ts';
