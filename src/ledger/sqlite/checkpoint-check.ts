/** Holds checkpoints against the events under them: their form, their signature, and the root of the tree that they sign. */
import { type KeyObject, sign, verify } from 'node:crypto';
import { promisify } from 'node:util';
import type { DomainEvent } from '../../domain/event.ts';
import { checkpointText, readCheckpoint } from '../checkpoint.ts';
import { checkpointKeyFrom, checkpointSecretName, noteKeyOf } from '../checkpoint-key.ts';
import type { LedgerFault } from '../ledger.ts';
import { SignatureScalar } from '../signature-scalar.ts';
import { bytesOfBase64, keyIdOf, type NoteKey, publicKeyObject, signatureLead } from '../signed-note.ts';
import type { LedgerDatabase } from './schema.ts';

const signInBackground = promisify(sign);
const verifyInBackground = promisify(verify);

/** As a damaged file may deliver it. */
export interface CheckpointRow {
  readonly size: number;
  readonly note: string | Buffer | number | null;
}

interface KnownKey extends NoteKey {
  readonly keyId: Buffer;
  readonly object: KeyObject;
  /** Where the station still has the private key. */
  readonly own: OwnKey | undefined;
}

interface OwnKey {
  readonly privateKey: KeyObject;
  readonly scalar: SignatureScalar;
  /** What stands between the text of a note and the signature. */
  readonly lead: string;
}

/**
 * As the events come by, it learns the station and its keys from them; a key signs only what comes after it was made. Where the
 * station still has its key, a signature is made again and compared, for Ed25519 gives one signature for a text (RFC 8032
 * section 5.1.6), and to make it takes less than half the time of verifying it; only another one is verified.
 */
export class CheckpointCheck {
  readonly #found: (fault: LedgerFault) => void;
  readonly #recorded: LedgerDatabase;
  readonly #makesWhole: boolean;
  readonly #keys: KnownKey[] = [];
  #stationId = '';
  #begun: Promise<void>[] = [];
  #before: readonly Promise<void>[] = [];

  /**
   * `recorded` is the file under test, where the secret of the station may be. Signatures by that key are made again whole
   * (`makesWhole`), or only the half of each that nobody else could make.
   */
  constructor(found: (fault: LedgerFault) => void, recorded: LedgerDatabase, makesWhole: boolean) {
    this.#found = found;
    this.#recorded = recorded;
    this.#makesWhole = makesWhole;
  }

  async learn(event: DomainEvent): Promise<void> {
    if (event.type === 'station.created') this.#stationId = event.stationId;
    if (event.type !== 'station.key-made') return;
    const key = noteKeyOf(this.#stationId, event.publicKey);
    this.#keys.push({
      ...key,
      keyId: keyIdOf(key),
      object: publicKeyObject(key.publicKey),
      own: await this.#ownKey(key, event.publicKey),
    });
  }

  async #ownKey(key: NoteKey, publicKey: string): Promise<OwnKey | undefined> {
    const row = await this.#recorded
      .selectFrom('secret')
      .select('value')
      .where('name', '=', checkpointSecretName)
      .executeTakeFirst();
    try {
      const kept = row && checkpointKeyFrom(row.value);
      if (kept?.publicKey !== publicKey) return undefined;
      const { privateKey } = kept;
      return { privateKey, scalar: new SignatureScalar(privateKey), lead: signatureLead(key) };
    } catch {
      return undefined;
    }
  }

  /** `rootHash` (hex) is that of the tree over the first `size` events; absent where they are known to be changed. */
  check({ size, note }: CheckpointRow, rootHash: string | undefined): void {
    const judging = typeof note === 'string' ? this.#judge(size, note, rootHash) : false;
    if (judging === true) return;
    const judged = Promise.resolve(judging).then((isGood) => {
      if (!isGood) this.#found({ kind: 'checkpoint differs', size });
    });
    // What goes wrong is for `settle` to throw, which comes later or, where the reading ends before, not at all.
    judged.catch(() => undefined);
    this.#begun.push(judged);
  }

  /** Waits for what was begun before the last time, so that it does not pile up and nobody waits for the latest. */
  async settle(): Promise<void> {
    await Promise.all(this.#before);
    this.#before = this.#begun;
    this.#begun = [];
  }

  /** True where the note is good; at once where no whole signature has to be made or verified for it. */
  #judge(size: number, note: string, rootHash: string | undefined): boolean | Promise<boolean> {
    const key = this.#keys.at(-1);
    if (key?.own !== undefined && rootHash !== undefined) {
      const text = checkpointText({ origin: key.name, size, rootHash: Buffer.from(rootHash, 'hex') });
      const signature = signatureBy(key, key.own, text, note);
      if (signature !== undefined) return this.#isSigned(key, text, signature);
    }
    const checkpoint = readCheckpoint(note);
    const [signature, ...others] = checkpoint?.note.signatures ?? [];
    if (checkpoint === undefined || signature === undefined || others.length > 0 || checkpoint.size !== size)
      return false;
    if (rootHash !== undefined && checkpoint.rootHash.toString('hex') !== rootHash) return false;
    const by = this.#keys.findLast(
      ({ name, keyId }) => name === checkpoint.origin && signature.keyId.equals(keyId),
    );
    if (by === undefined || signature.name !== by.name) return false;
    return this.#isSigned(by, checkpoint.note.text, signature.signature);
  }

  #isSigned({ own, object }: KnownKey, text: string, signature: Buffer): boolean | Promise<boolean> {
    const bytes = Buffer.from(text);
    const verified = () => verifyInBackground(null, bytes, object, signature);
    if (own === undefined) return verified();
    if (!this.#makesWhole) return own.scalar.agrees(bytes, signature) || verified();
    return signInBackground(null, bytes, own.privateKey).then((made) => made.equals(signature) || verified());
  }
}

/** The signature of a note that has, to the letter, this text and one signature by this key; else `undefined`. */
const signatureBy = (key: KnownKey, { lead }: OwnKey, text: string, note: string): Buffer | undefined => {
  const start = text.length + lead.length;
  if (!note.startsWith(text) || !note.startsWith(lead, text.length) || !note.endsWith('\n')) return undefined;
  const bytes = bytesOfBase64(note.slice(start, -1));
  const { length } = key.keyId;
  return bytes?.subarray(0, length).equals(key.keyId) ? bytes.subarray(length) : undefined;
};
