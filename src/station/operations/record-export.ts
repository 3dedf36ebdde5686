/** `record.export`: writes everything that the station knows into a folder, with a description of every column. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';

export const recordExport = defineOperation({
  name: 'record.export',
  summary: 'Writes everything that the station knows into a folder.',
  kind: 'query',
  access: ['inspector', 'administrator'],
  input: z.object({
    /** Absolute, and empty or not there yet; a new folder in the data folder's `exports` where it is absent. */
    folder: z.string().trim().min(1).max(1000).optional(),
  }),
  /** Ask `export.status` until the job has ended. */
  output: z.object({ job: z.int().positive() }),
  run: async (context, { folder }) => ({
    job: context.exportJobs.start(async (control) => {
      const { exportRecord } = await import('../exchange/export-record.ts');
      return exportRecord(context, folder, control);
    }),
  }),
});
