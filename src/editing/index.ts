export { type Change, changed } from './change.ts';
export {
  type Edit,
  paperAdded,
  paperTaken,
  partAdded,
  partMoved,
  partTaken,
  settingOf,
  together,
} from './edit.ts';
export { type Done, edited, type History, opened, redone, undone } from './history.ts';
