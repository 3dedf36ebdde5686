/** Who may come in: keys that open the door once, and the sessions of the windows that came in with one. */
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

const secretBytes = 32;
const newSecret = (): string => randomBytes(secretBytes).toString('base64url');

/** Digests have one length, so that they can be compared in constant time whatever was sent. */
const digestOf = (secret: string): Buffer => createHash('sha256').update(secret).digest();

const indexOf = (kept: readonly Buffer[], secret: string): number => {
  const digest = digestOf(secret);
  return kept.reduce((found, each, index) => (timingSafeEqual(each, digest) ? index : found), -1);
};

interface Key {
  readonly digest: Buffer;
  readonly onUsed: (() => void) | undefined;
}

export class Keyring {
  #keys: readonly Key[] = [];
  #sessions: readonly Buffer[] = [];

  /** A key that is good for one entry: who reads it later, in a history or a list of processes, has nothing. */
  cutKey(onUsed?: () => void): string {
    const key = newSecret();
    this.#keys = [...this.#keys, { digest: digestOf(key), onUsed }];
    return key;
  }

  /** Takes a key in and gives the secret of a new session; `undefined` where the key fits nothing or was used. */
  exchange(secret: string): string | undefined {
    const digests = this.#keys.map(({ digest }) => digest);
    const key = this.#keys[indexOf(digests, secret)];
    if (key === undefined) return undefined;
    this.#keys = this.#keys.filter((each) => each !== key);
    const session = newSecret();
    this.#sessions = [...this.#sessions, digestOf(session)];
    key.onUsed?.();
    return session;
  }

  /** The name of the session that the secret belongs to, which is not itself a secret. */
  sessionOf(secret: string | undefined): string | undefined {
    if (secret === undefined) return undefined;
    const index = indexOf(this.#sessions, secret);
    return index < 0 ? undefined : `window-${index + 1}`;
  }
}
