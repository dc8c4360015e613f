import type { Part } from '../layout/index.ts';
import type { Edge } from '../measure/index.ts';

/** Whether its ends go round what it lies on. */
export function isWrapped({ tuck }: Pick<Part, 'tuck'>): boolean {
  return (Object.keys(tuck) as Edge[]).some((edge) => tuck[edge] > 0);
}
