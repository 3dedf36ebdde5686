/** Ends the program safely: what was begun is answered first, and from then on nothing is begun. */
import { app } from 'electron';
import type { Words } from '../src/host/words.ts';
import type { Station } from '../src/station/station.ts';
import type { Begun } from '../src/station/under-way.ts';
import { askInBox } from './box.ts';
import type { Carrier } from './carrier.ts';
import { kioskKey } from './kiosk.ts';
import type { ShellWindow, ShellWindows } from './windows.ts';

export interface EndingOptions {
  readonly station: Pick<Station, 'underWay' | 'whenIdle' | 'close'>;
  readonly carrier: Carrier;
  readonly windows: ShellWindows;
  /** In the language of the window in front. */
  readonly words: () => Words;
  /** Puts away what is not of the station. */
  readonly beforeClose: () => Promise<void>;
  readonly patience?: Partial<Patience>;
}

export interface Patience {
  /** How long the program waits for what was begun before a person may choose. */
  readonly ofPersonMs: number;
  /** How long it waits when the system ends; systems end a program that takes much longer (common practice, no source). */
  readonly ofSystemMs: number;
  /** How long the station may take to close after that. */
  readonly ofStationMs: number;
}

const usual: Patience = { ofPersonMs: 60_000, ofSystemMs: 4_000, ofStationMs: 20_000 };

const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

export class Ending {
  readonly #options: EndingOptions;
  readonly #patience: Patience;
  #stage: 'open' | 'waiting' | 'over' = 'open';

  constructor(options: EndingOptions) {
    this.#options = options;
    this.#patience = { ...usual, ...options.patience };
  }

  /** To be called before the first window. */
  watch(): void {
    app.on('before-quit', (event) => {
      if (this.#stage === 'over') return;
      event.preventDefault();
      void this.ask();
    });
    app.on('window-all-closed', () => void this.ask());
    for (const signal of signals) process.on(signal, this.#onSignal);
    this.#options.windows.onOpen((shown) => this.#watchWindow(shown));
  }

  /** A person wants to end the program. */
  async ask(): Promise<void> {
    if (this.#stage !== 'open') return;
    const { windows, carrier, words } = this.#options;
    if (windows.all.some(({ isKiosk }) => isKiosk)) return this.#tellOfKiosk();
    if (this.#isIdle) return this.#end();
    this.#stage = 'waiting';
    carrier.take('questions');
    const ends = await this.#untilIdleOrAnswered(words());
    if (ends) return this.#end();
    this.#stage = 'open';
    carrier.take('all');
  }

  /** The system ends, and nobody is asked. */
  async atOnce(): Promise<void> {
    if (this.#stage === 'over') return;
    this.#options.carrier.take('questions');
    await this.#idleWithin(this.#patience.ofSystemMs);
    await this.#end();
  }

  get #isIdle(): boolean {
    return this.#options.station.underWay().length === 0;
  }

  readonly #onSignal = (): void => void this.atOnce();

  #watchWindow(shown: ShellWindow): void {
    const { window } = shown;
    const { windows } = this.#options;
    window.on('close', (event) => {
      if (this.#stage === 'over' || (windows.all.length > 1 && !shown.isKiosk)) return;
      if (this.#isIdle && this.#stage === 'open' && !shown.isKiosk) return;
      event.preventDefault();
      void this.ask();
    });
    window.on('query-session-end', (event) => {
      if (!this.#isIdle) event.preventDefault();
      void this.atOnce();
    });
    window.on('session-end', () => void this.atOnce());
  }

  async #tellOfKiosk(): Promise<void> {
    const words = this.#options.words();
    await askInBox(this.#options.windows, {
      type: 'info',
      message: words('kiosk-stays'),
      detail: words('kiosk-leave', { key: kioskKey }),
      answers: [{ answer: 'read', label: words('box-ok') }],
      otherwise: 'read',
    });
  }

  /** True where the program is to end. */
  async #untilIdleOrAnswered(words: Words): Promise<boolean> {
    const { station } = this.#options;
    let isLate = false;
    for (;;) {
      const away = new AbortController();
      const begun = station.underWay();
      const answer: 'idle' | 'late' | 'wait' | 'stay' | 'end' = await Promise.race([
        station.whenIdle().then(() => 'idle' as const),
        ...(isLate ? [] : [pause(this.#patience.ofPersonMs, away.signal).then(() => 'late' as const)]),
        this.#askWhetherToWait(words, begun, isLate, away.signal),
      ]);
      away.abort();
      if (answer === 'stay') return false;
      if (answer === 'idle' || answer === 'end') return true;
      isLate = answer === 'late';
    }
  }

  #askWhetherToWait(
    words: Words,
    begun: readonly Begun[],
    isLate: boolean,
    signal: AbortSignal,
  ): Promise<'wait' | 'stay' | 'end'> {
    const what = begun.map((kind) => words(`begun-${kind}`)).join('\n');
    const stay = { answer: 'stay', label: words('end-stay') } as const;
    return askInBox<'wait' | 'stay' | 'end'>(this.#options.windows, {
      type: isLate ? 'warning' : 'info',
      message: words(isLate ? 'end-late' : 'end-waits'),
      detail: `${what}\n\n${words(isLate ? 'end-late-detail' : 'end-waits-detail')}`,
      answers: isLate
        ? [{ answer: 'wait', label: words('end-wait') }, stay, { answer: 'end', label: words('end-anyway') }]
        : [stay],
      otherwise: isLate ? 'wait' : 'stay',
      signal,
    });
  }

  async #idleWithin(ms: number): Promise<void> {
    const over = new AbortController();
    await Promise.race([this.#options.station.whenIdle(), pause(ms, over.signal)]);
    over.abort();
  }

  /** Whatever was recorded is on the disk already; what hangs does not keep the program from ending. */
  async #end(): Promise<void> {
    if (this.#stage === 'over') return;
    this.#stage = 'over';
    const { carrier, station, beforeClose } = this.#options;
    carrier.take('none');
    for (const signal of signals) process.off(signal, this.#onSignal);
    const over = new AbortController();
    const closed = Promise.allSettled([beforeClose(), station.close()]);
    await Promise.race([closed, pause(this.#patience.ofStationMs, over.signal)]);
    over.abort();
    app.exit(0);
  }
}

/** Never rejects: it ends early where the signal says so. */
const pause = (ms: number, signal: AbortSignal): Promise<void> =>
  new Promise((resolve) => {
    const timer = setTimeout(resolve, ms);
    signal.addEventListener('abort', () => {
      clearTimeout(timer);
      resolve();
    });
  });
