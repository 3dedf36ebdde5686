/** `report.make`: makes a report of the record, as a file that is whole or not there. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';
import { reportRequestSchema } from '../reports/report-request.ts';

export const reportMake = defineOperation({
  name: 'report.make',
  summary: 'Makes a report: of an inspection, of a device, of the register, of what is due, of a return.',
  kind: 'query',
  access: ['attendant', 'inspector', 'administrator'],
  input: reportRequestSchema,
  /** Ask `report.status` until the job has ended. */
  output: z.object({ job: z.int().positive() }),
  run: async (context, request) => ({
    job: context.reportJobs.start(async (control) => {
      const { makeReport } = await import('../reports/make-report.ts');
      return makeReport(context, request, control);
    }),
  }),
});
