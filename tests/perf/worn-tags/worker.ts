/** A process that takes jobs from the benchmark and answers them one by one, so that every core has work. */
import { type Job, runJob } from './job.ts';

process.on('message', async (job: Job) => {
  process.send?.(await runJob(job));
});
process.on('disconnect', () => process.exit(0));
