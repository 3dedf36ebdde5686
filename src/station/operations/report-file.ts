/** `report.file`: the bytes of a report that was made, for a window that cannot open files of the station. */
import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { storageRefusal } from '../../ledger/storage-refusal.ts';
import { defineOperation } from '../operation.ts';

export const reportFile = defineOperation({
  name: 'report.file',
  summary: 'The bytes of a report that was made.',
  kind: 'query',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({ job: z.int().positive() }),
  output: z.object({ fileName: z.string(), contentBase64: z.string() }),
  run: async ({ reportJobs }, { job }) => {
    const status = reportJobs.stateOf(job);
    if (status?.state !== 'done') return refusal('report-job-not-known', { job }, 'job');
    const { path, fileName } = status.outcome;
    try {
      return { fileName, contentBase64: (await readFile(path)).toString('base64') };
    } catch (error) {
      return storageRefusal(error, path);
    }
  },
});
