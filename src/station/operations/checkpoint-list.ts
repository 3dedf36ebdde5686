/** `checkpoint.list`: the latest checkpoints of the record, and the public key that vouches for them. */
import { z } from 'zod';
import { noteKeyText } from '../../ledger/signed-note.ts';
import { stationKeys } from '../kept-checkpoint.ts';
import { defineOperation } from '../operation.ts';

export const checkpointList = defineOperation({
  name: 'checkpoint.list',
  summary: 'The latest checkpoints of the record, newest first, and the public key that vouches for them.',
  kind: 'query',
  access: 'anyone',
  input: z.object({ limit: z.int().min(1).max(1000).default(20) }),
  output: z.object({
    /** How many events are recorded. */
    recorded: z.int(),
    /** `name+key ID+base64`, as signed notes have it; absent where there is no station. */
    key: z.string().optional(),
    checkpoints: z.array(
      z.object({
        /** How many events it covers, from the first on. */
        size: z.int(),
        /** When the last of them was recorded. */
        at: z.string(),
        note: z.string(),
      }),
    ),
  }),
  run: async ({ ledger }, { limit }) => {
    const key = (await ledger.read(stationKeys)).at(-1);
    return {
      recorded: (await ledger.head()).size,
      ...(key === undefined ? {} : { key: noteKeyText(key) }),
      checkpoints: [...(await ledger.checkpoints(limit))],
    };
  },
});
