/** The page's end of the worker that reads pictures: one picture at a time, and an end to it at any moment. */
import type { BenchId } from '../../src/domain/brand.ts';
import type { FromReader, Look, ReaderAnswer, ToReader } from './reader-messages.ts';

interface UnderWay {
  answer(answer: ReaderAnswer | undefined): void;
  onProgress?(used: number): void;
}

export class PictureReader {
  readonly #worker = new Worker(new URL('./read-worker.ts', import.meta.url), { type: 'module' });
  #underWay: UnderWay | undefined;
  #isStopped = false;

  constructor() {
    this.#worker.addEventListener('message', ({ data }: MessageEvent<FromReader>) => {
      if (data.kind === 'progress') this.#underWay?.onProgress?.(data.used);
      else this.#settle(data);
    });
    this.#worker.addEventListener('error', () => this.#settle({ kind: 'failed' }));
  }

  /** Readings of these bench IDs need less evidence. */
  addRegistered(benchIds: readonly BenchId[]): void {
    if (!this.#isStopped) this.#send({ kind: 'register', benchIds });
  }

  /** Takes the picture over. Not to be called again before it is answered; `undefined` once the reader was stopped. */
  read(
    picture: ImageBitmap | Blob,
    look: Look,
    onProgress?: (used: number) => void,
  ): Promise<ReaderAnswer | undefined> {
    if (this.#isStopped) return Promise.resolve(undefined);
    return new Promise((resolve) => {
      this.#underWay = { answer: resolve, ...(onProgress === undefined ? {} : { onProgress }) };
      this.#send({ kind: 'read', picture, look }, picture instanceof ImageBitmap ? [picture] : []);
    });
  }

  /** Ends at once whatever is under way, and the worker with it. */
  stop(): void {
    this.#isStopped = true;
    this.#worker.terminate();
    this.#settle(undefined);
  }

  #send(message: ToReader, transferred: Transferable[] = []): void {
    this.#worker.postMessage(message, transferred);
  }

  #settle(answer: ReaderAnswer | undefined): void {
    const settled = this.#underWay;
    this.#underWay = undefined;
    settled?.answer(answer);
  }
}
