/**
 * Signed notes: a text and, after an empty line, signatures over it (c2sp.org/signed-note), here always with Ed25519
 * (RFC 8032).
 */
import { createHash, createPublicKey, type KeyObject, sign, verify } from 'node:crypto';

/** Who signs: a name without spaces and `+`, and the 32 bytes of the public key. */
export interface NoteKey {
  readonly name: string;
  readonly publicKey: Buffer;
}

export interface NoteSignature {
  readonly name: string;
  /** Four bytes that tell keys of one name apart. */
  readonly keyId: Buffer;
  readonly signature: Buffer;
}

export interface Note {
  /** Ends with a line feed, which is signed too. */
  readonly text: string;
  readonly signatures: readonly NoteSignature[];
}

/** The signature type of Ed25519 in c2sp.org/signed-note. */
const ed25519 = Buffer.of(0x01);
const publicKeyLength = 32;
const keyIdLength = 4;
const signatureLength = 64;
/** The specification wants at least 16 to be accepted. */
const mostSignatures = 16;

/** SHA-256(name ‖ line feed ‖ 0x01 ‖ public key), its first four bytes. */
export const keyIdOf = ({ name, publicKey }: NoteKey): Buffer =>
  createHash('sha256')
    .update(`${name}\n`)
    .update(ed25519)
    .update(publicKey)
    .digest()
    .subarray(0, keyIdLength);

/** `text` ends with a line feed; `privateKey` belongs to the public key. */
export const signNote = (text: string, key: NoteKey, privateKey: KeyObject): string =>
  `${text}${signatureLead(key)}${Buffer.concat([keyIdOf(key), sign(null, Buffer.from(text), privateKey)]).toString('base64')}\n`;

/** What stands between the text and the key ID and signature, in base64, where a key signed a note. */
export const signatureLead = ({ name }: NoteKey): string => `\n— ${name} `;

/** `undefined` where the bytes are no signed note. */
export const readNote = (note: string): Note | undefined => {
  const end = note.lastIndexOf('\n\n');
  if (end < 0 || !note.endsWith('\n') || hasControlCharacters(note) || !note.isWellFormed()) return undefined;
  const lines = note.slice(end + 2, -1).split('\n');
  const signatures = lines.map(readSignature).filter((signature) => signature !== undefined);
  if (signatures.length !== lines.length || signatures.length > mostSignatures) return undefined;
  return { text: note.slice(0, end + 1), signatures };
};

/** Those below U+0020, save the line feed. */
const hasControlCharacters = (text: string): boolean =>
  [...text].some((character) => character < ' ' && character !== '\n');

const readSignature = (line: string): NoteSignature | undefined => {
  const [, name, base64] = /^— ([^\s+]+) (\S+)$/u.exec(line) ?? [];
  const bytes = base64 === undefined ? undefined : bytesOfBase64(base64);
  if (name === undefined || bytes === undefined || bytes.length <= keyIdLength) return undefined;
  return { name, keyId: bytes.subarray(0, keyIdLength), signature: bytes.subarray(keyIdLength) };
};

/**
 * `good` where the key signed the text and every signature under its name and ID is right; `bad` where one is not;
 * `absent` where there is none of this key.
 */
export const judgeNote = ({ text, signatures }: Note, key: NoteKey): 'good' | 'bad' | 'absent' => {
  const keyId = keyIdOf(key);
  const own = signatures.filter((each) => each.name === key.name && each.keyId.equals(keyId));
  if (own.length === 0) return 'absent';
  const publicKey = publicKeyObject(key.publicKey);
  return own.every(
    ({ signature }) =>
      signature.length === signatureLength && verify(null, Buffer.from(text), publicKey, signature),
  )
    ? 'good'
    : 'bad';
};

/** Of the 32 bytes of RFC 8032. */
export const publicKeyObject = (bytes: Buffer): KeyObject =>
  createPublicKey({ key: { kty: 'OKP', crv: 'Ed25519', x: bytes.toString('base64url') }, format: 'jwk' });

/** The key as text, as Go's golang.org/x/mod/sumdb/note writes it: `name+keyId+base64(0x01 ‖ public key)`. */
export const noteKeyText = (key: NoteKey): string =>
  [key.name, keyIdOf(key).toString('hex'), Buffer.concat([ed25519, key.publicKey]).toString('base64')].join(
    '+',
  );

/** `undefined` where the text is no Ed25519 key in that form, or its ID does not belong to it. */
export const readNoteKey = (text: string): NoteKey | undefined => {
  const [, name, keyId, base64] = /^([^\s+]+)\+([0-9a-f]{8})\+(\S+)$/u.exec(text) ?? [];
  const bytes = base64 === undefined ? undefined : bytesOfBase64(base64);
  if (name === undefined || bytes?.length !== 1 + publicKeyLength || bytes[0] !== ed25519[0])
    return undefined;
  const key = { name, publicKey: bytes.subarray(1) };
  return keyIdOf(key).toString('hex') === keyId ? key : undefined;
};

/** The bytes of base64 (RFC 4648 section 4) in its one canonical form; `undefined` of anything else. */
export const bytesOfBase64 = (text: string): Buffer | undefined => {
  const bytes = Buffer.from(text, 'base64');
  return bytes.toString('base64') === text ? bytes : undefined;
};
