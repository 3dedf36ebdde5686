/** Holds checkpoints against the events under them: their form, their signature, and the root of the tree that they sign. */
import { type KeyObject, verify } from 'node:crypto';
import { promisify } from 'node:util';
import type { DomainEvent } from '../../domain/event.ts';
import { readCheckpoint } from '../checkpoint.ts';
import { noteKeyOf } from '../checkpoint-key.ts';
import type { LedgerFault } from '../ledger.ts';
import { keyIdOf, type NoteKey, publicKeyObject } from '../signed-note.ts';

const verifyInBackground = promisify(verify);

export interface CheckpointRow {
  readonly size: number;
  readonly note: string;
}

interface KnownKey extends NoteKey {
  readonly keyId: Buffer;
  readonly object: KeyObject;
}

/** As the events come by, it learns the station and its keys from them; a key signs only what comes after it was made. */
export class CheckpointCheck {
  readonly #found: (fault: LedgerFault) => void;
  readonly #keys: KnownKey[] = [];
  #stationId = '';
  #signatures: Promise<void>[] = [];

  constructor(found: (fault: LedgerFault) => void) {
    this.#found = found;
  }

  learn(event: DomainEvent): void {
    if (event.type === 'station.created') this.#stationId = event.stationId;
    if (event.type !== 'station.key-made') return;
    const key = noteKeyOf(this.#stationId, event.publicKey);
    this.#keys.push({ ...key, keyId: keyIdOf(key), object: publicKeyObject(key.publicKey) });
  }

  /** `rootHash` (hex) is that of the tree over the first `size` events; absent where they are known to be changed. */
  check({ size, note }: CheckpointRow, rootHash: string | undefined): void {
    const checkpoint = readCheckpoint(note);
    const [signature, ...others] = checkpoint?.note.signatures ?? [];
    const key = this.#keys.findLast(
      ({ name, keyId }) => name === checkpoint?.origin && signature?.keyId.equals(keyId),
    );
    if (
      checkpoint === undefined ||
      signature === undefined ||
      key === undefined ||
      others.length > 0 ||
      signature.name !== key.name ||
      checkpoint.size !== size ||
      (rootHash !== undefined && checkpoint.rootHash.toString('hex') !== rootHash)
    ) {
      this.#found({ kind: 'checkpoint differs', size });
      return;
    }
    this.#signatures.push(
      verifyInBackground(null, Buffer.from(checkpoint.note.text), key.object, signature.signature).then(
        (good) => {
          if (!good) this.#found({ kind: 'checkpoint differs', size });
        },
      ),
    );
  }

  /** Waits for the signatures that were begun, so that they do not pile up. */
  async settle(): Promise<void> {
    const begun = this.#signatures;
    this.#signatures = [];
    await Promise.all(begun);
  }
}
