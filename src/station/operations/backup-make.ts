/** `backup.make`: makes a backup of the record and its pictures while the station works. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';

export const backupMake = defineOperation({
  name: 'backup.make',
  summary: 'Makes a backup of the record and its pictures, and proves it.',
  kind: 'command',
  access: ['inspector', 'administrator'],
  input: z.object({
    /** Absolute, and not there yet; in the folder for backups, under a name of its own, where it is absent. */
    file: z.string().trim().min(1).max(1000).optional(),
  }),
  /** Ask `backup.status` until the job has ended. */
  output: z.object({ job: z.int().positive() }),
  run: async ({ keeper, ledger, evidence, folder: dataFolder, occasion, now }, { file }) => {
    const job = keeper.startBackup({ ledger, evidence, dataFolder, occasion, file }, now());
    return isRefusal(job) ? job : { job };
  },
});
