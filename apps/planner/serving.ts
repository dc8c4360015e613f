import { highsSolver, type LinearSolver } from '../../src/cutting/index.ts';
import { assemblyOf, checkFinished, docketOf, holdingOf } from '../../src/finished/index.ts';
import { kitReport } from '../../src/kits/index.ts';
import {
  checkSet,
  cliffsOf,
  enoughFor,
  leftoverUses,
  type PlanningProgress,
  planSet,
  quickSet,
  recast,
  recutSet,
  type SetToPlan,
  settledBy,
  sparesOf,
  stakesOf,
  suitedSet,
  usualMarks,
} from '../../src/planning/index.ts';
import {
  type Answer,
  messagesVersion,
  type Question,
  type QuestionName,
  type Questions,
  type Request,
} from './messages.ts';

/** The end of the line that a worker holds. */
export interface Port {
  post(answer: Answer): void;
  onRequest(heard: (request: Request) => void): void;
}

/** Answers whatever is asked through the port, for as long as the worker lives. */
export function serve(port: Port): void {
  port.onRequest((request) => void answer(request, port));
  port.post({ kind: 'ready', version: messagesVersion });
}

async function answer(request: Request, port: Port): Promise<void> {
  const { id } = request;
  try {
    if (request.kind === 'first') {
      port.post({ kind: 'first', id, plan: quickSet(request.set) });
      return;
    }
    solver ??= openSolver();
    const given = {
      solver: await solver,
      onProgress: (progress: PlanningProgress) => port.post({ kind: 'progress', id, progress }),
    };
    if (request.kind === 'plan')
      port.post({ kind: 'planned', id, answer: planSet({ ...request.set, ...given }) });
    else port.post({ kind: 'told', id, told: tell(request.question, given) });
  } catch (problem) {
    port.post({ kind: 'failed', id, message: problem instanceof Error ? problem.message : String(problem) });
  }
}

function tell<Name extends QuestionName>(
  question: Question<Name>,
  given: Pick<SetToPlan, 'solver' | 'onProgress'>,
): Questions[Name]['tells'] {
  const { name } = question;
  return tellers[name]({ ...question.set, ...given }, question);
}

const tellers: {
  readonly [Name in QuestionName]: (
    set: SetToPlan,
    asks: Questions[Name]['asks'],
  ) => Questions[Name]['tells'];
} = {
  check: (set, { answer: found }) => checkSet(set, found),
  assembly: ({ layout, arrangement }) => ({
    assembly: assemblyOf(layout, arrangement),
    holding: holdingOf(layout, arrangement),
  }),
  docket: ({ layout, arrangement, trimmer }, { by }) => {
    const asks = { ...by, marks: trimmer?.marks ?? usualMarks(layout) };
    return {
      docket: docketOf(layout, arrangement, asks),
      problems: checkFinished(layout, arrangement, asks),
    };
  },
  enough: (set) => {
    const enough = enoughFor(set);
    return { enough, cliffs: cliffsOf(set, enough) };
  },
  leftovers: (set, { plan }) => leftoverUses(settledBy(set, plan.dealt), plan),
  kit: ({ trimmer, solver, onProgress, prefer }, { kit }) =>
    kitReport(kit, {
      trimmer,
      solver,
      ...(onProgress === undefined ? {} : { onProgress }),
      ...(prefer === undefined ? {} : { prefer }),
    }),
  recast: (set, { wishes }) => recast(set, wishes),
  recut: (set, { table }) => recutSet(set, table),
  spares: (set, { plan }) => sparesOf(set, plan),
  stakes: (set, { plan, onTable }) => stakesOf(set, { plan, onTable }),
  suit: (set, { cards }) => suitedSet(set, cards),
};

/** Loaded when the first proof begins, so that no first answer waits for it. */
let solver: Promise<LinearSolver> | undefined;

async function openSolver(): Promise<LinearSolver> {
  const { default: load } = await import('highs');
  return highsSolver(await load());
}
