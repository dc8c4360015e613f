export { changedFile, type FileChanges } from './changedFile.ts';
export type { FileProblem } from './fileProblem.ts';
export { longestFile } from './fileText.ts';
export { isList, isObject, type Json, type JsonObject, valueAt } from './json.ts';
export {
  gatheredKit,
  type KitFileProblem,
  kitVersion,
  layoutFilesOf,
  readKitFile,
  readSavedKit,
} from './kitFile.ts';
export { kitSchemaText } from './kitSchema.ts';
export { type SavedKit, writeKitFile } from './kitText.ts';
export {
  layoutVersion,
  readLayoutFile,
  readSavedLayout,
  type SavedLayout,
  writeLayoutFile,
} from './layoutFile.ts';
export { layoutSchemaText } from './layoutSchema.ts';

export { type Path, pathText } from './path.ts';

export { type PlanFile, planVersion, readPlanFile } from './planFile.ts';

export { postVersion, readPostFile, writePostFile } from './postFile.ts';

export { type StarterOptions, starterLayout } from './starterLayout.ts';
export { readSvgFile, type SvgOutline, type SvgProblem } from './svgFile.ts';
export { readTrimmerFile, trimmerVersion } from './trimmerFile.ts';
export { hasUnit, writtenLength } from './writtenLength.ts';
