export { describeSteps, effortOf, type StepDescription } from './description.ts';
export { smallestUseful, worthKeeping } from './leftover.ts';
export { type Portion, type Sitting, sittings } from './sittings.ts';
export { canSquare, type Squaring, squaredSize } from './squaring.ts';
export { type Effort, type Leftover, passesOn, type Step, strokesOf } from './step.ts';
export { type SheetToCut, stepsFor, type Trimming, type TrimmingOptions } from './steps.ts';
export {
  cutLimitsOf,
  type Reach,
  type Setting,
  settable,
  settingOf,
  type Trimmer,
  wideEnough,
} from './trimmer.ts';
