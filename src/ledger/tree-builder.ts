/** The Merkle tree of a long record, leaf by leaf, as fast as hashing goes: hashes are lower-case hex here. */
import { hash } from 'node:crypto';
import { hashLength } from './merkle.ts';

const node = Buffer.alloc(1 + 2 * hashLength, 0x01);

/** SHA-256(0x00 ‖ the text in UTF-8): the leaf hash of canonical JSON. */
export const leafHashOfText = (text: string): string => hash('sha256', `\0${text}`, 'hex');

const nodeHashHex = (left: string, right: string): string => {
  node.write(left, 1, 'hex');
  node.write(right, 1 + hashLength, 'hex');
  return hash('sha256', node, 'hex');
};

export class TreeBuilder {
  /** The roots of the perfect subtrees that the tree is made of, the largest first. */
  readonly #roots: string[] = [];
  #size = 0;

  get size(): number {
    return this.#size;
  }

  get frontierHex(): string {
    return this.#roots.join('');
  }

  /** Adds the roots of the perfect subtrees of 2, 4, 8, … leaves that end with the new leaf to `completed`. */
  add(leaf: string, completed: string[]): void {
    let root = leaf;
    for (let digits = this.#size; digits % 2 === 1; digits = Math.floor(digits / 2)) {
      root = nodeHashHex(this.#roots.pop() ?? '', root);
      completed.push(root);
    }
    this.#roots.push(root);
    this.#size += 1;
  }

  rootHash(): string {
    const [smallest, ...larger] = this.#roots.toReversed();
    return smallest === undefined
      ? hash('sha256', '', 'hex')
      : larger.reduce((right, left) => nodeHashHex(left, right), smallest);
  }
}
