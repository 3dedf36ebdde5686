/** The Merkle tree hash of RFC 6962 section 2.1, grown leaf by leaf from the roots of its perfect subtrees. */
import { hash } from 'node:crypto';

/** Bytes of every hash here: SHA-256. */
export const hashLength = 32;

/**
 * A tree by the roots of the perfect subtrees it is made of, the largest first: one for each binary digit 1 of `size`.
 * It holds at most log₂(size) + 1 hashes and is all that is needed to append.
 */
export interface Frontier {
  readonly size: number;
  readonly roots: readonly Buffer[];
}

export const emptyFrontier: Frontier = { size: 0, roots: [] };

const leafPrefix = Buffer.of(0x00);
const nodePrefix = Buffer.of(0x01);

/** SHA-256(0x00 ‖ entry). */
export const leafHash = (entry: Uint8Array): Buffer =>
  hash('sha256', Buffer.concat([leafPrefix, entry]), 'buffer');

/** SHA-256(0x01 ‖ left ‖ right). */
export const nodeHash = (left: Uint8Array, right: Uint8Array): Buffer =>
  hash('sha256', Buffer.concat([nodePrefix, left, right]), 'buffer');

/** The tree with one more leaf, whose hash is given; O(log size), one new hash on average. */
export const withLeaf = (frontier: Frontier, leaf: Buffer): Frontier => addLeaf(frontier, leaf).frontier;

/**
 * The same, with the hashes of the perfect subtrees of 2, 4, 8, … leaves that end with the new leaf: one for each time that
 * the new size can be halved.
 */
export const addLeaf = (
  { size, roots }: Frontier,
  leaf: Buffer,
): { readonly frontier: Frontier; readonly completed: readonly Buffer[] } => {
  const kept = [...roots];
  const completed: Buffer[] = [];
  let root = leaf;
  for (let digits = size; digits % 2 === 1; digits = Math.floor(digits / 2)) {
    const left = kept.pop();
    if (left === undefined)
      throw new RangeError(`A tree of ${size} leaves has more perfect subtrees than given.`);
    root = nodeHash(left, root);
    completed.push(root);
  }
  return { frontier: { size: size + 1, roots: [...kept, root] }, completed };
};

/** The tree hash; that of the empty tree is SHA-256 of nothing. */
export const rootHash = ({ roots }: Frontier): Buffer => {
  const [smallest, ...larger] = roots.toReversed();
  return smallest === undefined
    ? hash('sha256', '', 'buffer')
    : larger.reduce((right, left) => nodeHash(left, right), smallest);
};

/** The roots one after the other, as they are stored. */
export const frontierBytes = ({ roots }: Frontier): Buffer => Buffer.concat(roots);

/** `undefined` where the bytes are not as many roots as a tree of this size has. */
export const frontierFrom = (size: number, bytes: Buffer): Frontier | undefined => {
  const count = [...size.toString(2)].filter((digit) => digit === '1').length;
  if (bytes.length !== count * hashLength) return undefined;
  const roots = Array.from({ length: count }, (_, index) =>
    bytes.subarray(index * hashLength, (index + 1) * hashLength),
  );
  return { size, roots };
};
