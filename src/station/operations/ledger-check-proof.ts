/** `ledger.check-proof`: whether a proof holds: these bytes were an event of that station, under a checkpoint that it signed. */
import { z } from 'zod';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { readCheckpoint, type SignedCheckpoint } from '../../ledger/checkpoint.ts';
import { proves, readProof } from '../../ledger/inclusion-proof.ts';
import { judgeNote, type NoteKey, noteKeyText, readNoteKey } from '../../ledger/signed-note.ts';
import { stationKeys } from '../kept-checkpoint.ts';
import { defineOperation } from '../operation.ts';

export const ledgerCheckProof = defineOperation({
  name: 'ledger.check-proof',
  summary:
    'Checks a proof of an event, with the public key of the station that gave it and a checkpoint that was kept.',
  kind: 'query',
  access: 'anyone',
  input: z.object({
    proof: z.string().max(50_000),
    /** The event as it was given with the proof. */
    record: z.string().max(5_000_000),
    /** A checkpoint that was kept elsewhere: the proof must be against just that one. */
    checkpoint: z.string().max(20_000).optional(),
    /** The public key of the station, as `checkpoint.list` gives it; those of this station where absent. */
    key: z.string().trim().max(1000).optional(),
  }),
  output: z.object({
    /** The number of the event, how many events the checkpoint covers, and whose it is. */
    seq: z.int(),
    size: z.int(),
    origin: z.string(),
    /** The key that signed. */
    key: z.string(),
    /** True where the checkpoint is the one that was kept. */
    isKept: z.boolean(),
  }),
  run: async ({ ledger }, { proof: text, record, checkpoint, key: keyText }) => {
    const proof = readProof(withItsLines(text));
    if (proof === undefined) return refusal('proof-malformed', {}, 'proof');
    const seq = proof.index + 1;
    if (!proves(proof, Buffer.from(record.trimEnd())))
      return refusal('proof-of-other-record', { seq }, 'record');
    const given = keyText === undefined ? undefined : readNoteKey(keyText);
    if (keyText !== undefined && given === undefined) return refusal('key-malformed', {}, 'key');
    const keys = given === undefined ? await ledger.read(stationKeys) : [given];
    const signer = signerOf(proof.checkpoint, keys);
    if (isRefusal(signer)) return signer;
    const differs = checkpoint === undefined ? undefined : keptDiffers(checkpoint, proof.checkpoint);
    if (differs !== undefined) return differs;
    const { size, origin } = proof.checkpoint;
    return { seq, size, origin, key: noteKeyText(signer), isKept: checkpoint !== undefined };
  },
});

const signerOf = ({ note, origin }: SignedCheckpoint, keys: readonly NoteKey[]): NoteKey | Refusal => {
  const judged = keys.map((key) => ({
    key,
    judgement: key.name === origin ? judgeNote(note, key) : 'absent',
  }));
  if (judged.some(({ judgement }) => judgement === 'bad'))
    return refusal('checkpoint-signature-wrong', {}, 'proof');
  return (
    judged.find(({ judgement }) => judgement === 'good')?.key ??
    refusal('proof-of-other-station', { origin }, 'key')
  );
};

const keptDiffers = (text: string, proved: SignedCheckpoint): Refusal | undefined => {
  const kept = readCheckpoint(text);
  if (kept === undefined) return refusal('checkpoint-malformed', {}, 'checkpoint');
  const isSame =
    kept.origin === proved.origin && kept.size === proved.size && kept.rootHash.equals(proved.rootHash);
  if (isSame) return undefined;
  return kept.origin === proved.origin && kept.size === proved.size
    ? refusal('proof-contradicts-checkpoint', { size: kept.size }, 'checkpoint')
    : refusal('proof-of-other-checkpoint', { kept: kept.size, proved: proved.size }, 'checkpoint');
};

/** What reads a symbol on paper, or carries a text by mail, changes how its lines end, and nothing else. */
const withItsLines = (text: string): string => `${text.replaceAll('\r\n', '\n').trimEnd()}\n`;
