import { useEffect, useRef, useState } from 'react';
import type { Question, QuestionName, Questions } from '../../planner/messages.ts';
import { useWorld } from '../world.ts';

/** How far the answer to a question has come that is asked when the person wants it. */
export type Asking<Name extends QuestionName> =
  | { readonly stage: 'none' }
  | { readonly stage: 'asking' }
  | { readonly stage: 'told'; readonly question: Question<Name>; readonly told: Questions[Name]['tells'] }
  | { readonly stage: 'failed'; readonly message: string };

/** Asks the planner when `ask` is called; the question before is given up then, and all when the screen is left. */
export function useAsking<Name extends QuestionName>(): readonly [
  Asking<Name>,
  (question: Question<Name>) => void,
] {
  const { planner } = useWorld();
  const [asking, setAsking] = useState<Asking<Name>>({ stage: 'none' });
  const control = useRef<AbortController | null>(null);
  useEffect(() => () => control.current?.abort(), []);
  const ask = (question: Question<Name>) => {
    control.current?.abort();
    control.current = new AbortController();
    const { signal } = control.current;
    setAsking({ stage: 'asking' });
    planner.ask(question, { signal }).then(
      (told) => {
        if (!signal.aborted) setAsking({ stage: 'told', question, told });
      },
      (problem: unknown) => {
        if (signal.aborted) return;
        setAsking({ stage: 'failed', message: problem instanceof Error ? problem.message : String(problem) });
      },
    );
  };
  return [asking, ask];
}
