/** Reads picture files in a thread of their own: within a budget of time, and stopped as soon as nobody wants the answer. */
import { Worker } from 'node:worker_threads';
import type { BenchId } from '../../domain/brand.ts';
import type { Refusal } from '../../domain/refusal.ts';
import { pictureThread } from '../asset-files.ts';
import {
  answerAt,
  type FromThread,
  type PictureReading,
  saysNo,
  saysYes,
  stopAt,
  type ToThread,
} from './picture-thread-words.ts';

export type { PictureReading } from './picture-thread-words.ts';

export interface ReadPictureOptions {
  readonly isRegistered?: (benchId: BenchId) => Promise<boolean>;
  /** Of the reading itself; 5,000 where it is absent. */
  readonly budgetMs?: number;
  /** Stops the reading; the promise is then rejected with the signal's reason. */
  readonly signal?: AbortSignal;
}

const stillBudgetMs = 5000;
/** What a thread may take beyond the budget, for starting, for opening the file and for the step that it is in. */
const graceMs = 20_000;
/** A thread that has had nothing to read for so long is ended. */
const idleMs = 30_000;

let thread: Worker | undefined;
let idle: NodeJS.Timeout | undefined;
let turn: Promise<unknown> = Promise.resolve();

/** From the bytes of a PNG, JPEG or WebP file; a refusal where it is none. One after the other, in the order of the calls. */
export const readPicture = (
  image: Uint8Array,
  options: ReadPictureOptions = {},
): Promise<PictureReading | Refusal> => {
  const reading = turn.then(() => {
    options.signal?.throwIfAborted();
    return readInThread(image, options);
  });
  turn = reading.catch(() => undefined);
  return reading;
};

const startedThread = (): Worker => {
  clearTimeout(idle);
  if (thread !== undefined) return thread;
  const { program, loader } = pictureThread();
  const start = `import(${JSON.stringify(loader)}).then(({ register }) => { register(); return import(${JSON.stringify(program)}); });`;
  const started = new Worker(start, { eval: true, execArgv: [] });
  started.once('exit', () => {
    if (thread === started) thread = undefined;
  });
  thread = started;
  return started;
};

const endThread = (): void => {
  void thread?.terminate();
  thread = undefined;
};

const readInThread = (
  image: Uint8Array,
  { isRegistered, budgetMs = stillBudgetMs, signal }: ReadPictureOptions,
): Promise<PictureReading | Refusal> =>
  new Promise((resolve, reject) => {
    const worker = startedThread();
    worker.ref();
    const flags = new SharedArrayBuffer(8);
    const shared = new Int32Array(flags);
    const overdue = setTimeout(() => {
      endThread();
      settle(() => reject(new Error('The reading of a picture did not end.')));
    }, budgetMs + graceMs);

    const settle = (outcome: () => void): void => {
      clearTimeout(overdue);
      worker.off('message', onMessage).off('error', onError).off('exit', onExit);
      signal?.removeEventListener('abort', onAbort);
      worker.unref();
      idle = setTimeout(endThread, idleMs).unref();
      outcome();
    };
    const answer = (registered: boolean): void => {
      Atomics.store(shared, answerAt, registered ? saysYes : saysNo);
      Atomics.notify(shared, answerAt);
    };
    const onMessage = (word: FromThread): void => {
      switch (word.kind) {
        case 'is registered?':
          isRegistered?.(word.benchId).then(answer, () => answer(false));
          return;
        case 'done':
          settle(() => (signal?.aborted === true ? reject(signal.reason) : resolve(word.result)));
          return;
        case 'failed':
          settle(() => reject(new Error(word.why)));
      }
    };
    const onError = (error: unknown): void => settle(() => reject(error));
    const onExit = (): void => settle(() => reject(new Error('The thread that reads pictures ended.')));
    const onAbort = (): void => void Atomics.store(shared, stopAt, 1);

    worker.on('message', onMessage).on('error', onError).on('exit', onExit);
    signal?.addEventListener('abort', onAbort);
    const job: ToThread = { image, budgetMs, knowsRegister: isRegistered !== undefined, flags };
    worker.postMessage(job);
  });
