import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  emptyFrontier,
  type Frontier,
  frontierBytes,
  frontierFrom,
  leafHash,
  rootHash,
  withLeaf,
} from '../../src/ledger/merkle.ts';

/**
 * MTH as RFC 6962 section 2.1 writes it: MTH({}) = SHA-256(); MTH({d(0)}) = SHA-256(0x00 || d(0)); for n > 1, with k the
 * largest power of two smaller than n, MTH(D[n]) = SHA-256(0x01 || MTH(D[0:k]) || MTH(D[k:n])).
 */
const mth = (entries: readonly Uint8Array[]): Buffer => {
  const sha256 = (...parts: readonly Uint8Array[]) =>
    createHash('sha256').update(Buffer.concat(parts)).digest();
  if (entries.length === 0) return sha256();
  if (entries.length === 1) return sha256(Uint8Array.of(0), entries[0]!);
  let k = 1;
  while (k * 2 < entries.length) k *= 2;
  return sha256(Uint8Array.of(1), mth(entries.slice(0, k)), mth(entries.slice(k)));
};

const grown = (entries: readonly Uint8Array[]): Frontier =>
  entries.reduce<Frontier>((frontier, entry) => withLeaf(frontier, leafHash(entry)), emptyFrontier);

describe('the Merkle tree', () => {
  it('has the published roots of the reference trees of zero to eight leaves', () => {
    // Leaf inputs and roots: test data of the Certificate Transparency reference implementation
    // (github.com/transparency-dev/merkle, testonly/constants.go).
    const inputs = [
      '',
      '00',
      '10',
      '2021',
      '3031',
      '40414243',
      '5051525354555657',
      '606162636465666768696a6b6c6d6e6f',
    ];
    const roots = [
      'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
      '6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d',
      'fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125',
      'aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77',
      'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7',
      '4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4',
      '76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef',
      'ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c',
      '5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328',
    ];
    const leaves = inputs.map((hex) => Buffer.from(hex, 'hex'));
    expect(roots.map((_, size) => rootHash(grown(leaves.slice(0, size))).toString('hex'))).toEqual(roots);
  });

  it('grows leaf by leaf to the root that the recursive definition gives, at every size up to 300', () => {
    const leaves = Array.from({ length: 300 }, (_, index) => Buffer.from(`entry ${index}`));
    let frontier: Frontier = emptyFrontier;
    for (const [index, leaf] of leaves.entries()) {
      frontier = withLeaf(frontier, leafHash(leaf));
      expect(rootHash(frontier)).toEqual(mth(leaves.slice(0, index + 1)));
    }
  });

  it('goes on from its stored bytes as if it had never been stored', () => {
    fc.assert(
      fc.property(
        fc.array(fc.uint8Array({ maxLength: 40 }), { maxLength: 70 }),
        fc.nat(70),
        (leaves, cut) => {
          const first = grown(leaves.slice(0, cut));
          const stored = frontierFrom(first.size, frontierBytes(first));
          const rest = leaves.slice(cut).reduce((tree, leaf) => withLeaf(tree, leafHash(leaf)), stored!);
          expect(rootHash(rest)).toEqual(mth(leaves));
        },
      ),
    );
  });

  it('keeps one root for each binary digit 1 of its size', () => {
    // 1,000 = 0b1111101000: six ones.
    expect(grown(Array.from({ length: 1000 }, () => Buffer.of(7))).roots).toHaveLength(6);
  });

  it('does not take bytes for a tree of another size', () => {
    const frontier = grown([Buffer.of(1), Buffer.of(2), Buffer.of(3)]);
    expect(frontierFrom(4, frontierBytes(frontier))).toBeUndefined();
    expect(frontierFrom(3, frontierBytes(frontier).subarray(1))).toBeUndefined();
  });
});
