/** `print.cancel`: takes a print job back where the printer still holds it. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation, everyRole } from '../operation.ts';

export const printCancel = defineOperation({
  name: 'print.cancel',
  summary: 'Takes a print job back.',
  kind: 'command',
  access: everyRole,
  input: z.object({ job: z.int().positive() }),
  output: z.object({}),
  run: async ({ printJobs }, { job }) =>
    printJobs.cancel(job) ? {} : refusal('print-job-not-known', { job }, 'job'),
});
