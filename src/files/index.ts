export type { FileProblem } from './fileProblem.ts';
export { longestFile } from './fileText.ts';
export { layoutVersion, readLayoutFile, type SavedLayout, writeLayoutFile } from './layoutFile.ts';
