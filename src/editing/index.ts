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
export {
  type Done,
  type History,
  opened,
  replayed,
  type Step,
  stepped,
  type Track,
} from './history.ts';
