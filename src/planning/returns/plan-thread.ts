/** The thread that makes a return plan: the solver holds its thread until it ends, and so it has one of its own. */
import { parentPort, workerData } from 'node:worker_threads';
import { highsOnDemand } from './highs-loader.ts';
import { planReturns } from './plan-returns.ts';
import type { FromPlanThread, PlanOrder } from './plan-thread-words.ts';
import { planWhatCanBe } from './plan-what-can-be.ts';
import { priceLimitOf } from './price-limit.ts';
import { loadSolver } from './solver.ts';

/** The solver, the plan, and each price limit is a step. */
const make = async (
  { input, limitsOf, whatCanBe }: PlanOrder,
  tell: (word: FromPlanThread) => void,
): Promise<void> => {
  const of = limitsOf.length + 2;
  tell({ kind: 'progress', done: 0, of });
  const solve = await loadSolver(highsOnDemand);
  tell({ kind: 'progress', done: 1, of });
  const made = whatCanBe ? planWhatCanBe(input, solve) : { plan: planReturns(input, solve), input };
  tell({ kind: 'progress', done: 2, of });
  const limits = limitsOf.map((id, index) => {
    const limit = priceLimitOf(made.input, id, solve);
    tell({ kind: 'progress', done: index + 3, of });
    return { id, limit };
  });
  tell({ kind: 'done', answer: { plan: made.plan, limits } });
};

const port = parentPort;
if (port !== null) {
  make(workerData as PlanOrder, (word) => port.postMessage(word)).catch((error: unknown) =>
    port.postMessage({
      kind: 'failed',
      why: error instanceof Error ? error.message : String(error),
    } satisfies FromPlanThread),
  );
}
