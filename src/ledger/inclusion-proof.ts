/** The proof that an event is in a record, as text that can be checked offline (c2sp.org/tlog-proof). */
import { readCheckpoint, type SignedCheckpoint } from './checkpoint.ts';
import { hashLength, leafHash } from './merkle.ts';
import { rootFromInclusion } from './merkle-proof.ts';
import { bytesOfBase64 } from './signed-note.ts';

export interface InclusionProof {
  /** Of the event, counted from 0: one less than its number. */
  readonly index: number;
  /** From the sibling of the leaf to the child of the root. */
  readonly path: readonly Buffer[];
  /** The signed note. */
  readonly checkpoint: string;
}

export interface ReadInclusionProof extends Omit<InclusionProof, 'checkpoint'> {
  readonly checkpoint: SignedCheckpoint;
}

const format = 'c2sp.org/tlog-proof@v1';

export const proofText = ({ index, path, checkpoint }: InclusionProof): string =>
  [format, `index ${index}`, ...path.map((hash) => hash.toString('base64')), '', checkpoint].join('\n');

/** `undefined` where the text is no proof. Extra data is passed over, for nothing vouches for it. */
export const readProof = (text: string): ReadInclusionProof | undefined => {
  const end = text.indexOf('\n\n');
  const [first, ...lines] = text.slice(0, Math.max(end, 0)).split('\n');
  const [indexLine, ...hashes] = lines[0]?.startsWith('extra ') ? lines.slice(1) : lines;
  const [, index] = /^index (0|[1-9][0-9]{0,14})$/.exec(indexLine ?? '') ?? [];
  const path = hashes.map(bytesOfBase64).filter((hash): hash is Buffer => hash?.length === hashLength);
  const checkpoint = readCheckpoint(text.slice(end + 2));
  if (first !== format || index === undefined || path.length !== hashes.length || checkpoint === undefined)
    return undefined;
  return { index: Number(index), path, checkpoint };
};

/** True where these bytes are the event at that place of the checkpoint's tree. Whose checkpoint it is, is another question. */
export const proves = ({ index, path, checkpoint }: ReadInclusionProof, bytes: Uint8Array): boolean =>
  rootFromInclusion(index, checkpoint.size, leafHash(bytes), path)?.equals(checkpoint.rootHash) ?? false;
