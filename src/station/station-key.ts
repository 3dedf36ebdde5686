/** The key of a station's checkpoints: made once, its public part in the record, and a checkpoint at each opening. */
import type { DomainEvent } from '../domain/event.ts';
import type { Station } from '../domain/evolve.ts';
import { isRefusal } from '../domain/refusal.ts';
import { checkpointKeyOf } from '../ledger/checkpoint-key.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { StorageFault } from '../ledger/storage-refusal.ts';
import type { OperationContext } from './operation.ts';

/** The event that says the public key of a ledger; its private key is on the disk beside the record when this returns. */
export const keyMade = async (ledger: Ledger): Promise<DomainEvent> => ({
  type: 'station.key-made',
  publicKey: (await checkpointKeyOf(ledger)).publicKey,
});

/**
 * Makes the key of a station that has none yet, and signs what no checkpoint covers. What the storage refuses is left to the
 * operations that meet it: a record that cannot be signed can still be looked at and verified.
 */
export const keepKey = async (ledger: Ledger, occasion: OperationContext['occasion']): Promise<void> => {
  try {
    const station = await ledger.read((reader) => reader.station());
    if (station === undefined) return;
    const made = await keyMade(ledger);
    if (!isKeyOf(station, made)) {
      const recorded = await ledger.append(occasion(station), async () => [made]);
      if (isRefusal(recorded)) return;
    }
    await ledger.checkpoint();
  } catch (error) {
    if (!(error instanceof StorageFault)) throw error;
  }
};

const isKeyOf = ({ checkpointKeys }: Station, made: DomainEvent): boolean =>
  made.type === 'station.key-made' && checkpointKeys?.at(-1) === made.publicKey;
