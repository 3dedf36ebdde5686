/** Checkpoints: what a record held at a moment, signed by its station (c2sp.org/tlog-checkpoint). */
import { hashLength } from './merkle.ts';
import { bytesOfBase64, type Note, readNote } from './signed-note.ts';

/** The size and the RFC 6962 root hash of the tree of one record. */
export interface Checkpoint {
  /** Which record: the name under which its station signs. */
  readonly origin: string;
  readonly size: number;
  readonly rootHash: Buffer;
}

export interface SignedCheckpoint extends Checkpoint {
  readonly note: Note;
}

/** The name of a station in its checkpoints; what no name may hold is written as `%` and its code. */
export const originOf = (stationId: string): string => `srl-bench/${encodeURIComponent(stationId)}`;

/** The text that is signed. */
export const checkpointText = ({ origin, size, rootHash }: Checkpoint): string =>
  `${origin}\n${size}\n${rootHash.toString('base64')}\n`;

/** `undefined` where the text is no checkpoint. Whether its signature is right is for `judgeNote` to say. */
export const readCheckpoint = (text: string): SignedCheckpoint | undefined => {
  const note = readNote(text);
  const [origin, size, root] = note?.text.split('\n') ?? [];
  if (note === undefined || !origin || size === undefined || root === undefined) return undefined;
  const rootHash = bytesOfBase64(root);
  if (!/^(0|[1-9][0-9]{0,14})$/.test(size) || rootHash?.length !== hashLength) return undefined;
  return { origin, size: Number(size), rootHash, note };
};
