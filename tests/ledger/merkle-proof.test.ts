import { CoMETRE } from '@transmute/rfc9162';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyFrontier, leafHash, rootHash, withLeaf } from '../../src/ledger/merkle.ts';
import {
  consistencySpans,
  inclusionSpans,
  isConsistent,
  perfectSubtreesOf,
  rootFromInclusion,
  type Span,
  spanHash,
} from '../../src/ledger/merkle-proof.ts';
import { rootByPath, rootsBySubproof } from './proof-by-definition.ts';

/** A tree by its leaves alone: what a ledger reads out of its table is computed anew here. */
const treeOf = (leaves: readonly Buffer[]) => {
  const rootOf = (from: number, to: number) =>
    rootHash(leaves.slice(from, to).reduce(withLeaf, emptyFrontier));
  const hashOf = (span: Span) =>
    spanHash(
      perfectSubtreesOf(span).map(({ level, position }) =>
        rootOf(position * 2 ** level, (position + 1) * 2 ** level),
      ),
    );
  return {
    root: (size: number) => rootOf(0, size),
    inclusion: (index: number, size: number) => inclusionSpans(index, size).map(hashOf),
    consistency: (earlier: number, size: number) => consistencySpans(earlier, size).map(hashOf),
  };
};
const hex = (hashes: readonly Buffer[]) => hashes.map((hash) => hash.toString('hex'));

/** The reference tree of Certificate Transparency: github.com/transparency-dev/merkle, testonly/constants.go. */
const reference = [
  '',
  '00',
  '10',
  '2021',
  '3031',
  '40414243',
  '5051525354555657',
  '606162636465666768696a6b6c6d6e6f',
];
const referenceTree = treeOf(reference.map((entry) => leafHash(Buffer.from(entry, 'hex'))));

const sizes = fc.integer({ min: 1, max: 200 });
const leaves = Array.from({ length: 200 }, (_, index) => leafHash(Buffer.from(`entry ${index}`)));
const tree = treeOf(leaves);

describe('inclusion proofs', () => {
  // Published for the reference tree: google/certificate-transparency, cpp/merkletree/merkle_tree_test.cc (also
  // transparency-dev/merkle, proof/verify_test.go), where leaves are counted from 1.
  it.each([
    [0, 1, []],
    [
      0,
      8,
      [
        '96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7',
        '5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e',
        '6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4',
      ],
    ],
    [
      5,
      8,
      [
        'bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b',
        'ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0',
        'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7',
      ],
    ],
    [2, 3, ['fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125']],
    [
      1,
      5,
      [
        '6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d',
        '5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e',
        'bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b',
      ],
    ],
  ])('of leaf %i of %i is the published one', (index, size, published) => {
    expect(hex(referenceTree.inclusion(index, size))).toEqual(published);
  });

  it('of every leaf of every tree up to 70 lead to its root, by our verifier, by the definition, and by an independent library', async () => {
    for (let size = 1; size <= 70; size += 1) {
      const root = tree.root(size);
      for (let index = 0; index < size; index += 1) {
        const leaf = leaves[index]!;
        const path = tree.inclusion(index, size);
        expect(rootFromInclusion(index, size, leaf, path)).toEqual(root);
        expect(rootByPath(index, size, leaf, path)).toEqual(root);
      }
      const index = (size * 7) % size;
      const proof = {
        log_id: '',
        tree_size: size,
        leaf_index: index,
        inclusion_path: tree.inclusion(index, size),
      };
      const theirs = await CoMETRE.RFC9162_SHA256.verify_inclusion_proof(leaves[index]!, proof);
      expect(Buffer.from(theirs)).toEqual(root);
    }
  });

  it('lead nowhere, or to another root, once anything about them is changed', () => {
    fc.assert(
      fc.property(sizes, fc.nat(), fc.nat(), fc.nat(255), (size, pick, at, change) => {
        const index = pick % size;
        const leaf = leaves[index]!;
        const path = tree.inclusion(index, size);
        const bytes = Buffer.concat([leaf, ...path]);
        bytes[at % bytes.length]! ^= change === 0 ? 1 : change;
        const hashes = Array.from({ length: path.length + 1 }, (_, n) => bytes.subarray(n * 32, n * 32 + 32));
        const root = tree.root(size);
        expect(rootFromInclusion(index, size, hashes[0]!, hashes.slice(1))).not.toEqual(root);
        expect(rootFromInclusion(index, size, leaf, [...path, leaf])).toBeUndefined();
        if (path.length > 0) expect(rootFromInclusion(index, size, leaf, path.slice(1))).toBeUndefined();
        if (index > 0) expect(rootFromInclusion(index - 1, size, leaf, path)).not.toEqual(root);
      }),
    );
  });

  it('of a leaf that the tree does not have are none', () => {
    expect(() => inclusionSpans(5, 5)).toThrow(RangeError);
    expect(() => inclusionSpans(-1, 5)).toThrow(RangeError);
    expect(rootFromInclusion(5, 5, leaves[5]!, [])).toBeUndefined();
    expect(rootFromInclusion(0, 0, leaves[0]!, [])).toBeUndefined();
  });

  it('take no more hashes than a tree of a million leaves is high', () => {
    // 2^20 = 1,048,576: a path of 20.
    expect(inclusionSpans(123_456, 2 ** 20)).toHaveLength(20);
    expect(inclusionSpans(999_999, 1_000_000).flatMap(perfectSubtreesOf).length).toBeLessThanOrEqual(20);
  });
});

describe('consistency proofs', () => {
  // Published for the reference tree, in the same files.
  it.each([
    [1, 1, []],
    [
      1,
      8,
      [
        '96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7',
        '5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e',
        '6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4',
      ],
    ],
    [
      6,
      8,
      [
        '0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a',
        'ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0',
        'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7',
      ],
    ],
    [
      2,
      5,
      [
        '5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e',
        'bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b',
      ],
    ],
    [
      6,
      7,
      [
        '0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a',
        'b08693ec2e721597130641e8211e7eedccb4c26413963eee6c1e2ed16ffb1a5f',
        'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7',
      ],
    ],
  ])('of %i to %i leaves is the published one', (earlier, size, published) => {
    expect(hex(referenceTree.consistency(earlier, size))).toEqual(published);
  });

  it('between all trees up to 40 hold, by our verifier, by the definition, and by an independent library', async () => {
    for (let size = 1; size <= 40; size += 1) {
      for (let earlier = 1; earlier <= size; earlier += 1) {
        const path = tree.consistency(earlier, size);
        const [first, second] = [tree.root(earlier), tree.root(size)];
        expect(isConsistent({ size: earlier, rootHash: first }, { size, rootHash: second }, path)).toBe(true);
        expect(rootsBySubproof(earlier, size, first, path)).toEqual({ earlier: first, later: second });
        if (earlier === size) continue;
        // The library leaves out step 2 of RFC 9162 section 2.1.4.2 and wants the first root in the path instead.
        const whole = Number.isInteger(Math.log2(earlier)) ? [first, ...path] : [...path];
        const proof = { log_id: '', tree_size_1: earlier, tree_size_2: size, consistency_path: whole };
        expect(await CoMETRE.RFC9162_SHA256.verify_consistency_proof(first, second, proof)).toBe(true);
      }
    }
  });

  it('hold no more once a root, a hash or the length is changed', () => {
    fc.assert(
      fc.property(sizes, fc.nat(), fc.nat(), (size, pick, at) => {
        const earlier = 1 + (pick % size);
        const path = tree.consistency(earlier, size);
        const bytes = Buffer.concat([tree.root(earlier), tree.root(size), ...path]);
        bytes[at % bytes.length]! ^= 0x40;
        const hashes = Array.from({ length: path.length + 2 }, (_, n) => bytes.subarray(n * 32, n * 32 + 32));
        const judged = (first: Buffer, second: Buffer, hashesGiven: readonly Buffer[]) =>
          isConsistent({ size: earlier, rootHash: first }, { size, rootHash: second }, hashesGiven);
        expect(judged(hashes[0]!, hashes[1]!, hashes.slice(2))).toBe(false);
        expect(judged(tree.root(earlier), tree.root(size), [...path, leaves[0]!])).toBe(false);
        if (path.length > 0)
          expect(judged(tree.root(earlier), tree.root(size), path.slice(0, -1))).toBe(false);
      }),
    );
  });

  it('show nothing of a tree that is larger than the later one', () => {
    expect(() => consistencySpans(6, 5)).toThrow(RangeError);
    const [larger, smaller] = [6, 5].map((size) => ({ size, rootHash: tree.root(size) }));
    expect(isConsistent(larger!, smaller!, [])).toBe(false);
  });

  it('from nothing hold without a hash', () => {
    const empty = { size: 0, rootHash: rootHash(emptyFrontier) };
    expect(isConsistent(empty, { size: 5, rootHash: tree.root(5) }, [])).toBe(true);
  });
});
