import type { Booklet, Typeface } from '../drawing/index.ts';
import type { KitReport } from '../kits/index.ts';
import type { Units } from '../measure/index.ts';

export interface KitGuideRequest {
  readonly report: KitReport;
  readonly sheetFormat: 'letter' | 'a4';
  readonly units: Units;
  readonly typeface: Typeface;
  readonly bodyPt?: number;
}

export function kitGuideOf(request: KitGuideRequest): Booklet {
  return { title: request.report.kit.title, language: 'en', pages: [] };
}
