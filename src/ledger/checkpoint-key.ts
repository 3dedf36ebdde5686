/** The Ed25519 key (RFC 8032) with which a station signs its checkpoints; kept beside the record and never exported. */
import { createPrivateKey, createPublicKey, generateKeyPairSync, type KeyObject } from 'node:crypto';
import { type Checkpoint, checkpointText, originOf } from './checkpoint.ts';
import type { Ledger } from './ledger.ts';
import { type NoteKey, signNote } from './signed-note.ts';
import { LedgerDamaged } from './storage-refusal.ts';

/** Under this name the secret is kept: base64 of the private key in PKCS #8 (RFC 5958, RFC 8410), DER. */
export const checkpointSecretName = 'checkpoint key';

export interface CheckpointKey {
  readonly privateKey: KeyObject;
  /** Base64 of its 32 bytes, as the record says it. */
  readonly publicKey: string;
}

export const newCheckpointSecret = (): string =>
  generateKeyPairSync('ed25519').privateKey.export({ type: 'pkcs8', format: 'der' }).toString('base64');

/** Throws `LedgerDamaged` where the secret is no such key. */
export const checkpointKeyFrom = (secret: string): CheckpointKey => {
  try {
    const privateKey = createPrivateKey({ key: Buffer.from(secret, 'base64'), format: 'der', type: 'pkcs8' });
    const { x } = createPublicKey(privateKey).export({ format: 'jwk' });
    if (privateKey.asymmetricKeyType !== 'ed25519' || x === undefined) throw new TypeError('not Ed25519');
    return { privateKey, publicKey: Buffer.from(x, 'base64url').toString('base64') };
  } catch (cause) {
    throw new LedgerDamaged('The key of the checkpoints cannot be read.', { cause });
  }
};

/** The key of a ledger, which is made and kept when it is first asked for. */
export const checkpointKeyOf = async (ledger: Ledger): Promise<CheckpointKey> => {
  const known = await ledger.read((reader) => reader.secret(checkpointSecretName));
  if (known !== undefined) return checkpointKeyFrom(known);
  await ledger.writeAside((writer) => writer.keepSecret(checkpointSecretName, newCheckpointSecret()));
  return checkpointKeyOf(ledger);
};

/** The signing key of a station by a public key that the record says is the station's. */
export const noteKeyOf = (stationId: string, publicKey: string): NoteKey => ({
  name: originOf(stationId),
  publicKey: Buffer.from(publicKey, 'base64'),
});

export const signCheckpoint = (
  stationId: string,
  { privateKey, publicKey }: CheckpointKey,
  head: Omit<Checkpoint, 'origin'>,
): string => {
  const key = noteKeyOf(stationId, publicKey);
  return signNote(checkpointText({ origin: key.name, ...head }), key, privateKey);
};
