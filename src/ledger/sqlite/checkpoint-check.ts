/** Holds checkpoints against the events under them: their form, their signature, and the root of the tree that they sign. */
import { type KeyObject, sign, verify } from 'node:crypto';
import { promisify } from 'node:util';
import type { DomainEvent } from '../../domain/event.ts';
import { checkpointText, readCheckpoint } from '../checkpoint.ts';
import { checkpointKeyFrom, checkpointSecretName, noteKeyOf } from '../checkpoint-key.ts';
import type { LedgerFault } from '../ledger.ts';
import { keyIdOf, type NoteKey, noteWith, publicKeyObject } from '../signed-note.ts';
import type { LedgerDatabase } from './schema.ts';

const signInBackground = promisify(sign);
const verifyInBackground = promisify(verify);

/** As a damaged file may deliver it. */
export interface CheckpointRow {
  readonly size: number;
  readonly note: unknown;
}

interface KnownKey extends NoteKey {
  readonly keyId: Buffer;
  readonly object: KeyObject;
  /** Where the station still has it. */
  readonly privateKey: KeyObject | undefined;
}

/** As the events come by, it learns the station and its keys from them; a key signs only what comes after it was made. */
export class CheckpointCheck {
  readonly #found: (fault: LedgerFault) => void;
  readonly #recorded: LedgerDatabase;
  readonly #keys: KnownKey[] = [];
  #stationId = '';
  #begun: Promise<void>[] = [];
  #before: readonly Promise<void>[] = [];

  /** `recorded` is the file under test, where the secret of the station may be. */
  constructor(found: (fault: LedgerFault) => void, recorded: LedgerDatabase) {
    this.#found = found;
    this.#recorded = recorded;
  }

  async learn(event: DomainEvent): Promise<void> {
    if (event.type === 'station.created') this.#stationId = event.stationId;
    if (event.type !== 'station.key-made') return;
    const key = noteKeyOf(this.#stationId, event.publicKey);
    this.#keys.push({
      ...key,
      keyId: keyIdOf(key),
      object: publicKeyObject(key.publicKey),
      privateKey: await this.#privateKeyTo(event.publicKey),
    });
  }

  async #privateKeyTo(publicKey: string): Promise<KeyObject | undefined> {
    const row = await this.#recorded
      .selectFrom('secret')
      .select('value')
      .where('name', '=', checkpointSecretName)
      .executeTakeFirst();
    try {
      const key = row && checkpointKeyFrom(row.value);
      return key?.publicKey === publicKey ? key.privateKey : undefined;
    } catch {
      return undefined;
    }
  }

  /** `rootHash` (hex) is that of the tree over the first `size` events; absent where they are known to be changed. */
  check(row: CheckpointRow, rootHash: string | undefined): void {
    const judging = this.#isMadeAgain(row, rootHash).then((same) => same || this.#isGood(row, rootHash));
    this.#begun.push(
      judging.then((isGood) => {
        if (!isGood) this.#found({ kind: 'checkpoint differs', size: row.size });
      }),
    );
  }

  /** Waits for what was begun before the last time, so that it does not pile up and nobody waits for the latest. */
  async settle(): Promise<void> {
    await Promise.all(this.#before);
    this.#before = this.#begun;
    this.#begun = [];
  }

  /**
   * True where the note is, to the letter, the one that the station would sign today. Ed25519 gives one signature for a text
   * (RFC 8032 section 5.1.6), and to make it again takes less than half the time of verifying it.
   */
  async #isMadeAgain({ size, note }: CheckpointRow, rootHash: string | undefined): Promise<boolean> {
    const key = this.#keys.at(-1);
    if (key?.privateKey === undefined || rootHash === undefined || typeof note !== 'string') return false;
    const text = checkpointText({ origin: key.name, size, rootHash: Buffer.from(rootHash, 'hex') });
    if (!note.startsWith(text)) return false;
    const signature = await signInBackground(null, Buffer.from(text), key.privateKey);
    return note === noteWith(text, key, signature);
  }

  async #isGood({ size, note }: CheckpointRow, rootHash: string | undefined): Promise<boolean> {
    const checkpoint = typeof note === 'string' ? readCheckpoint(note) : undefined;
    const [signature, ...others] = checkpoint?.note.signatures ?? [];
    if (checkpoint === undefined || signature === undefined || others.length > 0 || checkpoint.size !== size)
      return false;
    if (rootHash !== undefined && checkpoint.rootHash.toString('hex') !== rootHash) return false;
    const key = this.#keys.findLast(
      ({ name, keyId }) => name === checkpoint.origin && signature.keyId.equals(keyId),
    );
    if (key === undefined || signature.name !== key.name) return false;
    return verifyInBackground(null, Buffer.from(checkpoint.note.text), key.object, signature.signature);
  }
}
