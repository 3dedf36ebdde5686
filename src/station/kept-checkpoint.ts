/** A checkpoint that somebody kept outside the record, and whether the station of the record signed it. */
import { type Refusal, refusal } from '../domain/refusal.ts';
import { originOf, readCheckpoint, type SignedCheckpoint } from '../ledger/checkpoint.ts';
import { noteKeyOf } from '../ledger/checkpoint-key.ts';
import type { Ledger, LedgerReader } from '../ledger/ledger.ts';
import { judgeNote, type NoteKey } from '../ledger/signed-note.ts';

/** The keys with which the station of the record has signed, the one in use last. */
export const stationKeys = async (reader: LedgerReader): Promise<readonly NoteKey[]> => {
  const station = await reader.station();
  const { stationId, checkpointKeys = [] } = station ?? { stationId: '' };
  return checkpointKeys.map((publicKey) => noteKeyOf(stationId, publicKey));
};

/**
 * Refuses with `checkpoint-malformed`, `checkpoint-of-other-station` or `checkpoint-signature-wrong`. A record without a
 * station says nothing about whose a checkpoint is, and so takes none.
 */
export const keptCheckpoint = async (ledger: Ledger, text: string): Promise<SignedCheckpoint | Refusal> => {
  const checkpoint = readCheckpoint(text);
  if (checkpoint === undefined) return refusal('checkpoint-malformed', {}, 'checkpoint');
  const { origin } = checkpoint;
  return ledger.read(async (reader) => {
    const station = await reader.station();
    if (station === undefined || originOf(station.stationId) !== origin)
      return refusal('checkpoint-of-other-station', { origin }, 'checkpoint');
    const judgements = (await stationKeys(reader)).map((key) => judgeNote(checkpoint.note, key));
    return judgements.includes('good') && !judgements.includes('bad')
      ? checkpoint
      : refusal('checkpoint-signature-wrong', {}, 'checkpoint');
  });
};
