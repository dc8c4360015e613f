export { changedFile, type FileChanges } from './changedFile.ts';
export type { FileProblem } from './fileProblem.ts';
export { longestFile } from './fileText.ts';
export { type Json, type JsonObject, valueAt } from './json.ts';
export { layoutVersion, readLayoutFile, type SavedLayout, writeLayoutFile } from './layoutFile.ts';
export { layoutSchemaText } from './layoutSchema.ts';

export type { Path } from './path.ts';

export { type PlanFile, planVersion, readPlanFile } from './planFile.ts';

export { type StarterOptions, starterLayout } from './starterLayout.ts';
export { readTrimmerFile, trimmerVersion } from './trimmerFile.ts';
