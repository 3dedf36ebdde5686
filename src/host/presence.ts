/** Which windows are still there: a session ends when its window said that it closes, or was not heard of for long. */

export interface Patience {
  /** After a window said that it closes: time to load itself anew, or for another one of its session to be heard of. */
  readonly afterLeavingMs: number;
  /** Without a word: a browser that was killed, or that put a hidden window to sleep. */
  readonly unheardMs: number;
}

/**
 * Browsers let a hidden page act once a minute at the least (Chromium's throttling of timers, from memory); so a minute and a
 * half. Four hours without a word are common practice, no source.
 */
export const usualPatience: Patience = { afterLeavingMs: 90_000, unheardMs: 4 * 3_600_000 };

const lateMs = 1_000;

interface Seen {
  readonly heardMs: number;
  readonly leftMs: number | undefined;
}

export class Presence {
  readonly #patience: Patience;
  readonly #elapsedMs: () => number;
  readonly #seen = new Map<string, Seen>();
  #desertedSinceMs: number;
  #lastLeft = false;

  constructor(patience: Patience, elapsedMs: () => number) {
    this.#patience = patience;
    this.#elapsedMs = elapsedMs;
    this.#desertedSinceMs = elapsedMs();
  }

  /** What a window asked for just before it closed may come just after it said so. */
  heard(session: string): void {
    const heardMs = this.#elapsedMs();
    const leftMs = this.#seen.get(session)?.leftMs;
    const isLate = leftMs !== undefined && heardMs - leftMs < lateMs;
    this.#seen.set(session, { heardMs, leftMs: isLate ? leftMs : undefined });
  }

  /** The window said that it closes. */
  left(session: string): void {
    const seen = this.#seen.get(session);
    if (seen !== undefined) this.#seen.set(session, { ...seen, leftMs: this.#elapsedMs() });
  }

  /** The session that was not heard of for the longest time. */
  get quietest(): string | undefined {
    return [...this.#seen].toSorted(([, one], [, other]) => one.heardMs - other.heardMs)[0]?.[0];
  }

  get count(): number {
    return this.#seen.size;
  }

  forget(session: string): void {
    this.#lastLeft = this.#seen.get(session)?.leftMs !== undefined;
    this.#seen.delete(session);
    if (this.#seen.size === 0) this.#desertedSinceMs = this.#elapsedMs();
  }

  /** Sessions whose window is gone. */
  gone(): readonly string[] {
    const now = this.#elapsedMs();
    return [...this.#seen]
      .filter(([, { heardMs, leftMs }]) =>
        leftMs === undefined
          ? now - heardMs >= this.#patience.unheardMs
          : now - leftMs >= this.#patience.afterLeavingMs,
      )
      .map(([session]) => session);
  }

  /** True once the last window is gone, or where none ever came for as long as one may be silent. */
  get isDeserted(): boolean {
    if (this.#seen.size > 0) return false;
    return this.#lastLeft || this.#elapsedMs() - this.#desertedSinceMs >= this.#patience.unheardMs;
  }
}
