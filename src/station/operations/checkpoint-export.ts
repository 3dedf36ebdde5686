/** `checkpoint.export`: writes a checkpoint over everything that is recorded to a place outside the record. */
import { z } from 'zod';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { noteKeyText } from '../../ledger/signed-note.ts';
import { stationKeys } from '../kept-checkpoint.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { writeCheckpointTo } from '../write-checkpoint.ts';

export const checkpointExport = defineOperation({
  name: 'checkpoint.export',
  summary: 'Writes a checkpoint over everything that is recorded to a file or a folder.',
  kind: 'command',
  access: everyRole,
  input: z.object({
    /** Absolute: a folder, in which the station has one file, or a file. */
    path: z.string().trim().min(1).max(1000),
  }),
  output: z.object({
    path: z.string(),
    /** How many events it covers. */
    size: z.int(),
    /** How many the one covered that was there before; everything that it covers is still in the record. */
    before: z.int().optional(),
    /** The public key that vouches for it, to be written down beside it. */
    key: z.string(),
  }),
  run: async ({ ledger }, { path }) => {
    const written = await writeCheckpointTo(ledger, path);
    if (isRefusal(written)) return written;
    const key = (await ledger.read(stationKeys)).at(-1);
    return key === undefined ? refusal('checkpoint-none') : { ...written, key: noteKeyText(key) };
  },
});
