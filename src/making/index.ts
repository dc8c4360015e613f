export { type FoldKind, foldKinds, openedSize, type Score, scoresOf } from './fold.ts';
