/** How the file of a piece of evidence is called: the hash of its bytes, with the ending of what it is. */

/** A PDF lay under `.jpg` in the folders and backups of earlier versions, and is still found there. */
const endings = ['jpg', 'pdf'] as const;

/** The header and the end that ISO 32000-1 §7.5 asks of every file. */
export const isPdf = (bytes: Uint8Array): boolean => {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return buffer.subarray(0, 1024).includes('%PDF-') && buffer.subarray(-1024).includes('%%EOF');
};

/** Of these bytes, which have this hash. */
export const evidenceFileName = (sha256: string, bytes: Uint8Array): string =>
  `${sha256}.${isPdf(bytes) ? 'pdf' : 'jpg'}`;

/** All names under which a file of that hash may lie. */
export const evidenceFileNames = (sha256: string): readonly string[] =>
  endings.map((ending) => `${sha256}.${ending}`);

/** The hash in a name; `undefined` where it is none of evidence. */
export const hashInFileName = (name: string): string | undefined =>
  /^([0-9a-f]{64})\.(?:jpg|pdf)$/.exec(name)?.[1];
