export type { FileProblem } from './fileProblem.ts';
export { longestFile } from './fileText.ts';
export { layoutVersion, readLayoutFile, type SavedLayout, writeLayoutFile } from './layoutFile.ts';
export { layoutSchemaText } from './layoutSchema.ts';
export { type StarterOptions, starterLayout } from './starterLayout.ts';
export { readTrimmerFile, trimmerVersion } from './trimmerFile.ts';
