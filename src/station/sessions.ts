/** Who is signed in on each session, since when nobody has touched it, and whether it is locked until a badge is scanned. */

interface SignedIn {
  readonly personId: string;
  /** The latest moment at which somebody did something there, in milliseconds of a clock that only goes forward. */
  readonly attendedMs: number;
  readonly isLocked: boolean;
}

/** A locked session knows who it belongs to and does nothing for them; signing in, whoever it is, ends that. */
export class Sessions {
  readonly #signedIn = new Map<string, SignedIn>();
  readonly #elapsedMs: () => number;

  /** `elapsedMs` must not follow the clock of the PC, which may be set back. */
  constructor(elapsedMs: () => number) {
    this.#elapsedMs = elapsedMs;
  }

  signIn(session: string, personId: string): void {
    this.#signedIn.set(session, { personId, attendedMs: this.#elapsedMs(), isLocked: false });
  }

  signOut(session: string): void {
    this.#signedIn.delete(session);
  }

  signOutAll(): void {
    this.#signedIn.clear();
  }

  /** Somebody is there. It unlocks nothing. */
  attend(session: string): void {
    const known = this.#signedIn.get(session);
    if (known !== undefined) this.#signedIn.set(session, { ...known, attendedMs: this.#elapsedMs() });
  }

  lock(session: string): void {
    const known = this.#signedIn.get(session);
    if (known !== undefined) this.#signedIn.set(session, { ...known, isLocked: true });
  }

  lockAll(): void {
    for (const session of this.#signedIn.keys()) this.lock(session);
  }

  of(session: string): Pick<SignedIn, 'personId' | 'isLocked'> | undefined {
    return this.#signedIn.get(session);
  }

  /** How long nobody has done anything on the session; 0 where nobody is signed in. */
  idleMs(session: string): number {
    const known = this.#signedIn.get(session);
    return known === undefined ? 0 : this.#elapsedMs() - known.attendedMs;
  }
}
