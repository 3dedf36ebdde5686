/** `ledger.verify`: recomputes every hash and every projection of the record and names whatever differs. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';

const treeHead = z.object({ size: z.number().int(), rootHash: z.string() });

export const ledgerVerify = defineOperation({
  name: 'ledger.verify',
  summary: 'Proves the record: every hash, and every projection against it.',
  kind: 'query',
  access: 'anyone',
  input: z.object({}),
  output: z.object({
    sound: z.boolean(),
    head: treeHead,
    faults: z.array(
      z.discriminatedUnion('kind', [
        z.object({ kind: z.literal('event changed'), seq: z.number().int() }),
        z.object({ kind: z.literal('event missing'), seq: z.number().int() }),
        z.object({ kind: z.literal('tree head does not match'), stored: treeHead, computed: treeHead }),
        z.object({ kind: z.literal('projection differs'), table: z.string(), key: z.string() }),
        z.object({ kind: z.literal('database damaged'), detail: z.string() }),
      ]),
    ),
  }),
  run: async ({ ledger }) => {
    const { sound, head, faults } = await ledger.verify();
    return { sound, head, faults: [...faults] };
  },
});
