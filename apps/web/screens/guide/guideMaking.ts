import { useEffect, useRef, useState } from 'react';
import type { Hand } from '../../../../src/guide/index.ts';
import type { Layout } from '../../../../src/layout/index.ts';
import type { PostTable } from '../../../../src/making/index.ts';
import type { Units } from '../../../../src/measure/index.ts';
import type { Plan } from '../../../../src/planning/index.ts';
import type { Trimmer } from '../../../../src/trimming/index.ts';
import { stemOf } from '../../exchange/fileName.ts';
import { saveFile } from '../../exchange/saveFile.ts';
import { guidePdf, type MadeGuide } from '../../pdf/guidePdf.ts';
import { stakesOfPlan } from '../../state/stakes.ts';
import { useWorld } from '../../world.ts';
import { printFile } from './printFile.ts';

/** How far the making of a guide has come. */
export type Making =
  | { readonly stage: 'none' | 'making' }
  | { readonly stage: 'saved'; readonly file: string; readonly pages: number }
  | { readonly stage: 'printing'; readonly pages: number }
  | { readonly stage: 'failed'; readonly message: string };

/** What a guide is made of, and how. */
export interface WantedGuide {
  readonly of: { readonly layout: Layout; readonly plan: Plan; readonly trimmer: Trimmer | null };
  /** As in `GuideAsked`. */
  readonly hand: Hand | null;
  readonly post: PostTable | null;
  readonly sheetFormat: 'letter' | 'a4';
  readonly units: Units;
  readonly bodyPt: number;
}

/** Makes the guide when it is asked for, to be saved or printed; given up when the screen is left. */
export function useGuideMaking(asked: WantedGuide): {
  readonly making: Making;
  readonly save: () => void;
  readonly print: () => void;
} {
  const { planner, now } = useWorld();
  const [making, setMaking] = useState<Making>({ stage: 'none' });
  const control = useRef<AbortController | null>(null);
  useEffect(() => () => control.current?.abort(), []);

  const make = (then: (made: MadeGuide) => Making) => {
    control.current?.abort();
    control.current = new AbortController();
    const { signal } = control.current;
    setMaking({ stage: 'making' });
    const { of, ...manner } = asked;
    const made = async () => {
      const stakes = await stakesOfPlan(planner, of, signal);
      return guidePdf({ ...of, ...manner, stakes, madeAt: now() }, signal);
    };
    made().then(
      (guide) => {
        if (!signal.aborted) setMaking(then(guide));
      },
      (problem: unknown) => {
        if (signal.aborted) return;
        setMaking({ stage: 'failed', message: problem instanceof Error ? problem.message : String(problem) });
      },
    );
  };

  const file = `${stemOf(asked.of.layout.title)}.guide.pdf`;
  return {
    making,
    save: () =>
      make(({ pdf, pages }) => {
        saveFile(file, pdf, 'application/pdf');
        return { stage: 'saved', file, pages };
      }),
    print: () =>
      make(({ pdf, pages }) => {
        printFile(pdf);
        return { stage: 'printing', pages };
      }),
  };
}
