/** Inclusion and consistency proofs over the Merkle tree: RFC 6962 sections 2.1.1 and 2.1.2, RFC 9162 sections 2.1.3 and 2.1.4. */
import { hashLength, nodeHash, rootHash } from './merkle.ts';

/** The subtree over the leaves `from` to `to` − 1, counted from 0. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** A subtree of 2^`level` leaves, the first of which is number `position` × 2^`level`; level 0 is a leaf. */
export interface PerfectSubtree {
  readonly level: number;
  readonly position: number;
}

/** The subtrees whose hashes are the inclusion path of a leaf, from its sibling to the child of the root. */
export const inclusionSpans = (index: number, size: number): readonly Span[] => {
  if (!(Number.isSafeInteger(index) && index >= 0 && index < size))
    throw new RangeError(`A tree of ${size} leaves has no leaf ${index}.`);
  return pathSpans(index, { from: 0, to: size });
};

/** PATH(m, D[n]) of RFC 9162 section 2.1.3.1. */
const pathSpans = (index: number, { from, to }: Span): readonly Span[] => {
  if (to - from === 1) return [];
  const middle = from + splitOf(to - from);
  return index < middle
    ? [...pathSpans(index, { from, to: middle }), { from: middle, to }]
    : [...pathSpans(index, { from: middle, to }), { from, to: middle }];
};

/** The subtrees whose hashes show that the tree of `size` leaves grew out of the tree of its first `earlier` leaves. */
export const consistencySpans = (earlier: number, size: number): readonly Span[] => {
  if (!(Number.isSafeInteger(earlier) && earlier >= 1 && earlier <= size))
    throw new RangeError(`A tree of ${size} leaves has no earlier tree of ${earlier}.`);
  return subproofSpans(earlier, { from: 0, to: size }, true);
};

/** SUBPROOF(m, D[n], b) of RFC 9162 section 2.1.4.1; `known` says that the verifier has the hash of this subtree already. */
const subproofSpans = (earlier: number, { from, to }: Span, known: boolean): readonly Span[] => {
  if (earlier === to) return known ? [] : [{ from, to }];
  const middle = from + splitOf(to - from);
  return earlier <= middle
    ? [...subproofSpans(earlier, { from, to: middle }, known), { from: middle, to }]
    : [...subproofSpans(earlier, { from: middle, to }, false), { from, to: middle }];
};

/** The largest power of two that is smaller than `count`, which is at least 2. */
const splitOf = (count: number): number => {
  let split = 1;
  while (split * 2 < count) split *= 2;
  return split;
};

/** The perfect subtrees that a span of a proof is made of, the largest first. */
export const perfectSubtreesOf = ({ from, to }: Span): readonly PerfectSubtree[] => {
  const subtrees: PerfectSubtree[] = [];
  for (let start = from; start < to; ) {
    let level = 0;
    while (2 ** (level + 1) <= to - start) level += 1;
    subtrees.push({ level, position: start / 2 ** level });
    start += 2 ** level;
  }
  return subtrees;
};

/** The hash of a span from the hashes of its perfect subtrees, the largest first. */
export const spanHash = (roots: readonly Buffer[]): Buffer => rootHash({ size: roots.length, roots });

/** The root that an inclusion path leads to from the hash of a leaf; `undefined` where it has not the length of such a path. */
export const rootFromInclusion = (
  index: number,
  size: number,
  leaf: Buffer,
  path: readonly Buffer[],
): Buffer | undefined => {
  if (!isLeafOf(index, size) || !path.every(isHash)) return undefined;
  let [node, last, root] = [index, size - 1, leaf];
  for (const hash of path) {
    if (last === 0) return undefined;
    if (isOdd(node) || node === last) {
      root = nodeHash(hash, root);
      while (!isOdd(node) && node !== 0) [node, last] = [half(node), half(last)];
    } else {
      root = nodeHash(root, hash);
    }
    [node, last] = [half(node), half(last)];
  }
  return last === 0 ? root : undefined;
};

/** True where the path shows that the tree with the second root begins with all leaves of the tree with the first. */
export const isConsistent = (
  earlier: { readonly size: number; readonly rootHash: Buffer },
  later: { readonly size: number; readonly rootHash: Buffer },
  path: readonly Buffer[],
): boolean => {
  if (!path.every(isHash) || earlier.size > later.size) return false;
  if (earlier.size === later.size) return path.length === 0 && earlier.rootHash.equals(later.rootHash);
  if (earlier.size === 0) return path.length === 0;
  const hashes = isPowerOfTwo(earlier.size) ? [earlier.rootHash, ...path] : path;
  const [start, ...rest] = hashes;
  if (start === undefined) return false;
  let [node, last] = [earlier.size - 1, later.size - 1];
  while (isOdd(node)) [node, last] = [half(node), half(last)];
  let [first, second] = [start, start];
  for (const hash of rest) {
    if (last === 0) return false;
    if (isOdd(node) || node === last) {
      first = nodeHash(hash, first);
      second = nodeHash(hash, second);
      while (!isOdd(node) && node !== 0) [node, last] = [half(node), half(last)];
    } else {
      second = nodeHash(second, hash);
    }
    [node, last] = [half(node), half(last)];
  }
  return last === 0 && first.equals(earlier.rootHash) && second.equals(later.rootHash);
};

const isHash = (bytes: Buffer): boolean => bytes.length === hashLength;
const isLeafOf = (index: number, size: number): boolean =>
  Number.isSafeInteger(index) && Number.isSafeInteger(size) && index >= 0 && index < size;
const isOdd = (value: number): boolean => value % 2 === 1;
const half = (value: number): number => Math.floor(value / 2);
const isPowerOfTwo = (value: number): boolean => Number.isInteger(Math.log2(value));
