export { type FoldKind, foldKinds, grainFor, openedSize, type Score, scoresOf } from './fold.ts';
export { grammageOf, type PoundKind, poundKinds, poundsOf } from './grammage.ts';
export {
  type Mailpiece,
  type PostClass,
  type Posted,
  type PostFault,
  type PostSizes,
  type PostTable,
  postedAs,
  postFaults,
} from './post.ts';
export { postTables } from './postTables.ts';
