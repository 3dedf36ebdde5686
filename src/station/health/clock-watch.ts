/** Watches the clock of the PC against the time that really passes, for as long as the station is open. */
import type { Instant } from '../../domain/brand.ts';
import type { ClockJump } from '../../domain/health/judge-clock.ts';

interface Look {
  readonly wallMs: number;
  readonly passedMs: number;
}

export class ClockWatch {
  readonly #now: () => Instant;
  readonly #passedMs: () => number;
  #last: Look;
  #back: ClockJump | undefined;
  #ahead: ClockJump | undefined;

  /** `passedMs` goes on evenly, whatever the clock is set to. */
  constructor(now: () => Instant, passedMs: () => number = () => performance.now()) {
    this.#now = now;
    this.#passedMs = passedMs;
    this.#last = this.#see();
  }

  /** Called as often as may be; two moves between two looks are one. */
  look(): void {
    const before = this.#last;
    const seen = this.#see();
    this.#last = seen;
    const byMs = seen.wallMs - before.wallMs - (seen.passedMs - before.passedMs);
    const jump = { byMs, at: new Date(seen.wallMs).toISOString() };
    if (byMs < (this.#back?.byMs ?? 0)) this.#back = jump;
    if (byMs > (this.#ahead?.byMs ?? 0)) this.#ahead = jump;
  }

  /** The farthest back and the farthest ahead. */
  get jumps(): readonly ClockJump[] {
    return [this.#back, this.#ahead].filter((jump) => jump !== undefined);
  }

  #see(): Look {
    return { wallMs: Date.parse(this.#now()), passedMs: this.#passedMs() };
  }
}
