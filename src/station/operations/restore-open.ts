/** `restore.open`: opens a backup, proves it, and holds it against the record that is here; nothing is changed by it. */
import { isAbsolute, join } from 'node:path';
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { restoreDenial } from '../keeping/may-restore.ts';
import { defineOperation } from '../operation.ts';

export const restoreOpen = defineOperation({
  name: 'restore.open',
  summary: 'Opens a backup, proves it, and compares it with the record that is here.',
  kind: 'command',
  access: 'anyone',
  input: z.object({
    /** Absolute, or the name of a file in the folder for backups. */
    file: z.string().trim().min(1).max(1000),
  }),
  /** Ask `restore.status` until the job has ended. */
  output: z.object({ job: z.int().positive() }),
  run: async (context, { file }) => {
    const denied = await restoreDenial(context);
    if (denied !== undefined) return denied;
    const { keeper, ledger, folder: dataFolder } = context;
    const station = await ledger.read((reader) => reader.station());
    const folder = station?.keeping?.backupFolder;
    if (!isAbsolute(file) && folder === undefined) return refusal('backup-not-readable', { file }, 'file');
    const path = isAbsolute(file) ? file : join(folder ?? '', file);
    return { job: keeper.startRestore({ ledger, dataFolder, file: path }) };
  },
});
