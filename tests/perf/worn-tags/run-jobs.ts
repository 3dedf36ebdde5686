/** Shares jobs among one process for each core and says how far they are. */
import { type ChildProcess, fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import type { Job, JobResult } from './job.ts';

/** In no particular order. Rejects where a process ends before its work. */
export const runJobs = async (jobs: readonly Job[]): Promise<readonly JobResult[]> => {
  const queue = jobs.values();
  const results: JobResult[] = [];
  const started = performance.now();
  const workers = Array.from({ length: Math.min(availableParallelism(), jobs.length) }, () =>
    fork(fileURLToPath(new URL('./worker.ts', import.meta.url))),
  );
  try {
    await Promise.all(
      workers.map((worker) =>
        serve(worker, queue, (result) => {
          results.push(result);
          report(results.length, jobs.length, performance.now() - started, result.job);
        }),
      ),
    );
  } finally {
    for (const worker of workers) worker.kill();
  }
  return results;
};

const serve = (
  worker: ChildProcess,
  queue: Iterator<Job>,
  take: (result: JobResult) => void,
): Promise<void> =>
  new Promise((resolve, reject) => {
    const hand = (): void => {
      const { done, value } = queue.next();
      if (done === true) resolve();
      else worker.send(value);
    };
    worker.on('message', (result: JobResult) => {
      take(result);
      hand();
    });
    worker.on('error', reject);
    worker.on('exit', (code) => reject(new Error(`A worker of the benchmark ended with ${code}.`)));
    hand();
  });

const report = (done: number, total: number, ms: number, { series, level }: Job): void => {
  if (done % 10 !== 0 && done !== total) return;
  const minutesLeft = ((ms / done) * (total - done)) / 60_000;
  const line = `${done} of ${total} pictures (${series}, ${level}), about ${Math.ceil(minutesLeft)} min to go`;
  process.stderr.write(process.stderr.isTTY ? `\r${line}\u001b[K${done === total ? '\n' : ''}` : `${line}\n`);
};
