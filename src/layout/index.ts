export type {
  Adhere,
  Anchor,
  Base,
  Dealt,
  Extent,
  Face,
  Layout,
  Part,
  Place,
  Span,
  Turn,
} from './layout.ts';
