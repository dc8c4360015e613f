export { type FoldKind, foldKinds, grainFor, openedSize, type Score, scoresOf } from './fold.ts';
