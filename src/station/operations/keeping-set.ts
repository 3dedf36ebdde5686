/** `keeping.set`: chooses the folder for backups and how many stay, or that there are none any more. */
import { z } from 'zod';
import { decideSetKeeping } from '../../domain/decide/keeping.ts';
import { keepingSchema } from '../../domain/keeping.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { markBackupFolder } from '../keeping/backup-folder.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

const path = z.string().trim().min(1).max(1000);

export const keepingSet = defineOperation({
  name: 'keeping.set',
  summary: 'Chooses the folder for backups and how many stay.',
  kind: 'command',
  access: ['administrator'],
  input: z.object({
    /** Absent: no backup is made by itself any more; those that were made stay. */
    keeping: keepingSchema.extend({ backupFolder: path, checkpointFolder: path.optional() }).optional(),
  }),
  output: z.object({}),
  run: async (context, { keeping }) => {
    const station = await context.ledger.read(stationIn);
    if (isRefusal(station)) return station;
    for (const field of ['backupFolder', 'checkpointFolder'] as const) {
      const folder = keeping?.[field];
      if (folder === undefined) continue;
      const fault = await markBackupFolder(folder, context.folder, station.name, field);
      if (fault !== undefined) return fault;
    }
    const result = await record(context, async () => decideSetKeeping(keeping));
    return isRefusal(result) ? result : {};
  },
});
