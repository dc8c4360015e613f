export type {
  Fill,
  GroupMark,
  Hatch,
  LineMark,
  Mark,
  PathMark,
  PathStep,
  Point,
  Role,
  Stroke,
  TextMark,
} from './mark.ts';
export type { Booklet, Page } from './page.ts';
export type { Typeface } from './typeface.ts';
