import type { Layout } from '../layout/index.ts';

/** What people call a part of the layout; `base` for the bases. */
export function partName(layout: Layout, id: string): string {
  return layout.parts.find((part) => part.id === id)?.name ?? id;
}
