/** The Merkle tree of a long record, leaf by leaf, as fast as hashing goes: hashes are binary strings here, a character a byte. */
import { hash } from 'node:crypto';
import { hashLength } from './merkle.ts';

/** 0x01 and two hashes. */
const node = Buffer.alloc(1 + 2 * hashLength, 0x01);

/** SHA-256 of a leaf: 0x00 and its bytes, which stand in `bytes` like this already. */
export const leafHashOf = (bytes: Buffer): string => hash('sha256', bytes, 'binary');

const nodeHashOf = (left: string, right: string): string => {
  // Faster than writing strings of this length into it.
  for (let at = 0; at < hashLength; at += 1) {
    node[1 + at] = left.charCodeAt(at);
    node[1 + hashLength + at] = right.charCodeAt(at);
  }
  return hash('sha256', node, 'binary');
};

export const hexOf = (binary: string): string => Buffer.from(binary, 'latin1').toString('hex');

export class TreeBuilder {
  /** The roots of the perfect subtrees that the tree is made of, the largest first. */
  readonly #roots: string[] = [];
  #size = 0;

  get size(): number {
    return this.#size;
  }

  /** The roots one after the other, as they are stored. */
  frontierBytes(): Buffer {
    return Buffer.from(this.#roots.join(''), 'latin1');
  }

  /** The roots of the perfect subtrees of 2, 4, 8, … leaves that end with the new leaf, one after the other. */
  add(leaf: string): string {
    let root = leaf;
    let completed = '';
    for (let digits = this.#size; digits % 2 === 1; digits = Math.floor(digits / 2)) {
      root = nodeHashOf(this.#roots.pop() ?? '', root);
      completed += root;
    }
    this.#roots.push(root);
    this.#size += 1;
    return completed;
  }

  /** In hex. */
  rootHash(): string {
    const [smallest, ...larger] = this.#roots.toReversed();
    return smallest === undefined
      ? hash('sha256', '', 'hex')
      : hexOf(larger.reduce((right, left) => nodeHashOf(left, right), smallest));
  }
}
