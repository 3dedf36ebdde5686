/** Who may come in: keys that open the door once, and the sessions of the windows that came in with one. */
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

const secretBytes = 32;
const newSecret = (): string => randomBytes(secretBytes).toString('base64url');

/** Digests have one length, so that they can be compared in constant time whatever was sent. */
const digestOf = (secret: string): Buffer => createHash('sha256').update(secret).digest();

/** Every one is compared, so that the time does not tell which. */
const fitting = <Kept extends { readonly digest: Buffer }>(
  kept: readonly Kept[],
  secret: string,
): Kept | undefined => {
  const digest = digestOf(secret);
  return kept.reduce<Kept | undefined>(
    (found, each) => (timingSafeEqual(each.digest, digest) ? each : found),
    undefined,
  );
};

/** What is known of a key beside itself. */
export interface KeyUse {
  /** Told when the key was used. */
  readonly onUsed?: () => void;
  /** The key is for a browser that has no page but ours. */
  readonly isAlone?: boolean;
}

interface Key extends KeyUse {
  readonly digest: Buffer;
}

interface KnownSession {
  readonly digest: Buffer;
  readonly name: string;
  readonly isAlone: boolean;
}

export class Keyring {
  #keys: readonly Key[] = [];
  #sessions: readonly KnownSession[] = [];
  #last = 0;

  /** A key that is good for one entry: who reads it later, in a history or a list of processes, has nothing. */
  cutKey(use: KeyUse = {}): string {
    const key = newSecret();
    this.#keys = [...this.#keys, { digest: digestOf(key), ...use }];
    return key;
  }

  /** Takes a key in and gives the secret of a new session; `undefined` where the key fits nothing or was used. */
  exchange(secret: string): string | undefined {
    const key = fitting(this.#keys, secret);
    if (key === undefined) return undefined;
    this.#keys = this.#keys.filter((each) => each !== key);
    const session = newSecret();
    this.#last += 1;
    const name = `window-${this.#last}`;
    const { isAlone = false } = key;
    this.#sessions = [...this.#sessions, { digest: digestOf(session), name, isAlone }];
    key.onUsed?.();
    return session;
  }

  /** The name of the session that the secret belongs to, which is not itself a secret. */
  sessionOf(secret: string | undefined): string | undefined {
    return secret === undefined ? undefined : fitting(this.#sessions, secret)?.name;
  }

  /** Whether the key of that session was for a browser that has no page but ours. */
  isAlone(name: string): boolean {
    return this.#sessions.some((each) => each.name === name && each.isAlone);
  }

  /** The secret of that session is good for nothing any more. */
  end(name: string): void {
    this.#sessions = this.#sessions.filter((each) => each.name !== name);
  }
}
