/**
 * A second implementation of the two proofs, for the tests alone, from the recursive definitions PATH and SUBPROOF of RFC 9162
 * sections 2.1.3.1 and 2.1.4.1 (RFC 6962 sections 2.1.1 and 2.1.2): a verifier that walks the definition from the root down.
 */
import { createHash } from 'node:crypto';

export const node = (left: Uint8Array, right: Uint8Array): Buffer =>
  createHash('sha256').update(Buffer.of(1)).update(left).update(right).digest();

export const leafOf = (entry: Uint8Array): Buffer =>
  createHash('sha256').update(Buffer.of(0)).update(entry).digest();

/** k of the definitions: the largest power of two smaller than n. */
const splitOf = (n: number): number => 2 ** Math.ceil(Math.log2(n) - 1);

/** The root that PATH(m, D[n]) leads to. The last hash of the path belongs to the subtree beside the one with the leaf. */
export const rootByPath = (m: number, n: number, leaf: Buffer, path: readonly Buffer[]): Buffer => {
  if (n === 1) {
    if (path.length > 0) throw new Error('The path is too long.');
    return leaf;
  }
  const beside = path.at(-1);
  if (beside === undefined) throw new Error('The path is too short.');
  const k = splitOf(n);
  return m < k
    ? node(rootByPath(m, k, leaf, path.slice(0, -1)), beside)
    : node(beside, rootByPath(m - k, n - k, leaf, path.slice(0, -1)));
};

/** The roots of D[m] and of D[n] that SUBPROOF(m, D[n], b) leads to. `known` is MTH(D[m]), which the proof leaves out where b is true. */
export const rootsBySubproof = (
  m: number,
  n: number,
  known: Buffer,
  path: readonly Buffer[],
  b = true,
): { readonly earlier: Buffer; readonly later: Buffer } => {
  if (m === n) {
    const [root = known] = path;
    if (path.length !== (b ? 0 : 1)) throw new Error('The proof has not the length that its sizes ask for.');
    return { earlier: root, later: root };
  }
  const beside = path.at(-1);
  if (beside === undefined) throw new Error('The proof is too short.');
  const k = splitOf(n);
  if (m <= k) {
    const { earlier, later } = rootsBySubproof(m, k, known, path.slice(0, -1), b);
    return { earlier, later: node(later, beside) };
  }
  const { earlier, later } = rootsBySubproof(m - k, n - k, known, path.slice(0, -1), false);
  return { earlier: node(beside, earlier), later: node(beside, later) };
};
