/** `ledger.verify`: recomputes every hash and every projection of the record, reads every kept picture, and names whatever differs. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';
import { checkPictures, pictureFaultSchema, pictureNoteSchema } from '../picture-faults.ts';

const treeHead = z.object({ size: z.number().int(), rootHash: z.string() });

export const ledgerVerify = defineOperation({
  name: 'ledger.verify',
  summary: 'Proves the record: every hash, every projection against it, and every kept picture.',
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
        pictureFaultSchema,
      ]),
    ),
    /** What is worth knowing and no fault. */
    notes: z.array(pictureNoteSchema),
  }),
  run: async ({ ledger, evidence }) => {
    const { sound, head, faults } = await ledger.verify();
    const pictures = await checkPictures(ledger, evidence).catch((error: unknown) => {
      if (sound) throw error;
      return { faults: [], notes: [] };
    });
    return {
      sound: sound && pictures.faults.length === 0,
      head,
      faults: [...faults, ...pictures.faults],
      notes: pictures.notes,
    };
  },
});
