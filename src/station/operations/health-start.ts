/** `health.start`: begins to look the station over: its PC, its record, and what it works with. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';

export const healthStart = defineOperation({
  name: 'health.start',
  summary: 'Begins to look the station over: its PC, its record, and what it works with.',
  kind: 'query',
  access: 'anyone',
  input: z.object({}),
  /** Ask `health.status` until the job has ended. */
  output: z.object({ job: z.int().positive() }),
  run: async (context) => ({
    job: context.healthJobs.start(async (control) => {
      const { examine } = await import('../health/examine.ts');
      return examine(context, control);
    }),
  }),
});
