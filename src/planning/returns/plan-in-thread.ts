/** Makes a return plan in a thread of its own, which can be ended at any moment. */
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { FromPlanThread, PlanAnswer, PlanOrder } from './plan-thread-words.ts';

const program = new URL('../../../src/planning/returns/plan-thread.ts', import.meta.url).href;
const packageOfLoader = pathToFileURL(createRequire(import.meta.url).resolve('tsx/package.json'));
/** Loads TypeScript in the thread. */
const loader = new URL('dist/esm/api/index.mjs', packageOfLoader).href;

export interface PlanControl {
  /** Ends the work; the promise is then rejected with the signal's reason. */
  readonly signal?: AbortSignal | undefined;
  /** Told how many of the steps are done. */
  readonly onProgress?: ((progress: { readonly done: number; readonly of: number }) => void) | undefined;
}

export const planInThread = (
  order: PlanOrder,
  { signal, onProgress }: PlanControl = {},
): Promise<PlanAnswer> =>
  new Promise((resolve, reject) => {
    if (signal?.aborted) {
      reject(signal.reason);
      return;
    }
    const start = `import(${JSON.stringify(loader)}).then(({ register }) => { register(); return import(${JSON.stringify(program)}); });`;
    const thread = new Worker(start, { eval: true, execArgv: [], workerData: order });
    const settle = (how: () => void): void => {
      signal?.removeEventListener('abort', onAbort);
      void thread.terminate();
      how();
    };
    const onAbort = (): void => settle(() => reject(signal?.reason));
    signal?.addEventListener('abort', onAbort, { once: true });
    thread.on('message', (word: FromPlanThread) => {
      switch (word.kind) {
        case 'progress':
          onProgress?.({ done: word.done, of: word.of });
          return;
        case 'done':
          settle(() => resolve(word.answer));
          return;
        case 'failed':
          settle(() => reject(new Error(word.why)));
      }
    });
    thread.once('error', (error) => settle(() => reject(error)));
  });
