/** `ledger.prove`: the proof that one event, or the signature of one inspection, is in the record, to be checked without it. */
import { z } from 'zod';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { keptCheckpoint } from '../kept-checkpoint.ts';
import { defineOperation, everyRole } from '../operation.ts';

const number = z.int().positive();

export const ledgerProve = defineOperation({
  name: 'ledger.prove',
  summary: 'Proves that one event, or the signature of one inspection, is in the record.',
  kind: 'query',
  access: everyRole,
  input: z.object({
    what: z.discriminatedUnion('kind', [
      z.object({ kind: z.literal('event'), seq: number }),
      z.object({ kind: z.literal('inspection'), inspection: number }),
    ]),
    /** A checkpoint that was kept elsewhere, to prove it against; the first that covers it where absent. */
    checkpoint: z.string().max(20_000).optional(),
  }),
  output: z.object({
    seq: number,
    /** The event in canonical JSON: the exact bytes that are proved. */
    record: z.string(),
    /** In the form of c2sp.org/tlog-proof. */
    proof: z.string(),
  }),
  run: async ({ ledger }, { what, checkpoint }) => {
    const kept = checkpoint === undefined ? undefined : await keptCheckpoint(ledger, checkpoint);
    if (isRefusal(kept)) return kept;
    const seq = await ledger.read((reader) => numberOf(reader, what));
    if (isRefusal(seq)) return seq;
    const proof = await ledger.prove(seq, checkpoint);
    if (isRefusal(proof)) return proof;
    const record = await ledger.read((reader) => reader.eventText(seq));
    return record === undefined ? refusal('event-unknown', { seq }, 'what') : { seq, record, proof };
  },
});

type What = { kind: 'event'; seq: number } | { kind: 'inspection'; inspection: number };

const numberOf = async (reader: LedgerReader, what: What) => {
  if (what.kind === 'event') return what.seq;
  const { inspection } = what;
  const signature = await reader.signatureOf(inspection);
  if (signature !== undefined) return signature.seq;
  const known = await reader.inspection(inspection);
  return refusal(
    known === undefined ? 'inspection-unknown' : 'inspection-not-signed',
    { inspection },
    'what',
  );
};
