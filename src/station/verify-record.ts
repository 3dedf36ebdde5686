/** Verifies the record, all of it, and what is kept beside it. */
import { z } from 'zod';
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import type { VerifyOptions } from '../ledger/ledger.ts';
import { keptCheckpoint } from './kept-checkpoint.ts';
import type { OperationContext } from './operation.ts';
import { checkPictures, pictureFaultSchema, pictureNoteSchema } from './picture-faults.ts';
import type { WorkControl } from './work-jobs.ts';

const extent = z.enum(['events', 'everything']);
const whole = z.int();
const treeHead = z.object({ size: whole, rootHash: z.string() });

export const verificationSchema = z.object({
  extent,
  sound: z.boolean(),
  head: treeHead,
  /** How many of its own checkpoints were held against the events. */
  checkpoints: whole,
  /** How many events a checkpoint that was kept elsewhere covers; absent where none was given. */
  keptSize: whole.optional(),
  faults: z.array(
    z.discriminatedUnion('kind', [
      z.object({ kind: z.literal('event changed'), seq: whole }),
      z.object({ kind: z.literal('event missing'), seq: whole }),
      z.object({ kind: z.literal('subtree differs'), lastSeq: whole, events: whole }),
      z.object({ kind: z.literal('checkpoint differs'), size: whole }),
      z.object({ kind: z.literal('record lost events'), covered: whole, recorded: whole }),
      z.object({ kind: z.literal('record rewritten'), covered: whole }),
      z.object({ kind: z.literal('tree head does not match'), stored: treeHead, computed: treeHead }),
      z.object({ kind: z.literal('projection differs'), table: z.string(), key: z.string() }),
      z.object({ kind: z.literal('database damaged'), detail: z.string() }),
      pictureFaultSchema,
    ]),
  ),
  /** What is worth knowing and no fault. */
  notes: z.array(pictureNoteSchema),
});
export type RecordVerification = z.infer<typeof verificationSchema>;

export const verifyInput = z.object({
  /**
   * `events` looks at the record alone: every event, hash and checkpoint, in seconds. What the screens read and the kept
   * pictures are looked at only with `everything`.
   */
  extent: extent.default('everything'),
  /** The text of a checkpoint that was kept elsewhere: everything that it covers must still be there, as it was. */
  checkpoint: z.string().max(20_000).optional(),
});

/** What a verification needs of the station; a verification of everything is noted with its moment. */
type Verifying = Pick<OperationContext, 'ledger' | 'evidence' | 'notes' | 'now'>;

/** Refuses a checkpoint that is none of the station's. Throws the signal's reason where it was ended. */
export const verifyRecord = async (
  { ledger, evidence, notes, now }: Verifying,
  { checkpoint, extent }: z.infer<typeof verifyInput>,
  options: Pick<VerifyOptions, 'signal' | 'onProgress'> = {},
): Promise<RecordVerification | Refusal> => {
  const kept = checkpoint === undefined ? undefined : await keptCheckpoint(ledger, checkpoint);
  if (isRefusal(kept)) return kept;
  const { sound, head, checkpoints, faults } = await ledger.verify({ ...options, kept, extent });
  const pictures =
    extent === 'events'
      ? { faults: [], notes: [] }
      : await checkPictures(ledger, evidence).catch((error: unknown) => {
          if (sound) throw error;
          return { faults: [], notes: [] };
        });
  options.signal?.throwIfAborted();
  const isSound = sound && pictures.faults.length === 0;
  if (extent === 'everything') await notes.noteVerified({ at: now(), isSound, events: head.size });
  return {
    extent,
    sound: isSound,
    head,
    checkpoints,
    ...(kept === undefined ? {} : { keptSize: kept.size }),
    faults: [...faults, ...pictures.faults],
    notes: [...pictures.notes],
  };
};

/** The same as a long work, which can be canceled. */
export const verifyInJob = async (
  context: Verifying,
  input: z.infer<typeof verifyInput>,
  control: WorkControl,
): Promise<RecordVerification | Refusal> => {
  const { signal } = control;
  const onProgress: WorkControl['onProgress'] = (progress) => control.onProgress(progress);
  try {
    return await verifyRecord(context, input, { signal, onProgress });
  } catch (error) {
    if (signal.aborted) return refusal('verify-canceled');
    throw error;
  }
};
