/** What was begun at a station and has not ended, for whoever must not end the program or let the PC sleep meanwhile. */

/** A command that is not answered yet, or a long work that changes the record, a file or paper. Reports and questions are neither. */
export type Begun = 'command' | 'print' | 'backup' | 'import' | 'notice' | 'restore';

export class UnderWay {
  readonly #works = new Map<Promise<unknown>, Begun>();
  readonly #onChange: (begun: readonly Begun[]) => void;

  /** `onChange` is told each time that the kinds change, none of them included. */
  constructor(onChange: (begun: readonly Begun[]) => void = () => undefined) {
    this.#onChange = onChange;
  }

  /** Each kind once. */
  get kinds(): readonly Begun[] {
    return [...new Set(this.#works.values())];
  }

  /** Remembers a work until it has ended, however it ends. */
  begin(kind: Begun, work: Promise<unknown>): void {
    const before = this.kinds;
    this.#works.set(work, kind);
    this.#tellWhereOther(before);
    const end = (): void => {
      const meanwhile = this.kinds;
      this.#works.delete(work);
      this.#tellWhereOther(meanwhile);
    };
    work.then(end, end);
  }

  /** Resolves as soon as nothing is under way, what was begun meanwhile included. */
  async whenNone(): Promise<void> {
    while (this.#works.size > 0) await Promise.allSettled(this.#works.keys());
  }

  #tellWhereOther(before: readonly Begun[]): void {
    const now = this.kinds;
    if (now.length !== before.length || now.some((kind) => !before.includes(kind))) this.#onChange(now);
  }
}
