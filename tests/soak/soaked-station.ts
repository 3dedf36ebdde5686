/** The process of a station that is soaked, as the test holds it. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { productFolder } from '../../src/host/product-folder.ts';
import type { Held, SoakAnswer, SoakOrder, SoakQuestion } from './soak-station.ts';

export class SoakedStation {
  readonly #child: ChildProcess;

  private constructor(child: ChildProcess) {
    this.#child = child;
  }

  static async open(order: SoakOrder): Promise<SoakedStation> {
    const program = fileURLToPath(new URL('soak-station.ts', import.meta.url));
    const child = spawn(process.execPath, ['--expose-gc', '--import', 'tsx', program], {
      cwd: productFolder,
      stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    });
    const station = new SoakedStation(child);
    const ready = station.#next();
    child.send(order);
    await ready;
    return station;
  }

  async newAddress(): Promise<string> {
    const answer = await this.#ask('address');
    if (!('address' in answer)) throw new Error('The station gave no address.');
    return answer.address;
  }

  async held(): Promise<Held> {
    const answer = await this.#ask('held');
    if (!('held' in answer)) throw new Error('The station did not say what it holds.');
    return answer.held;
  }

  /** Its faults, and how the process ended once everything was closed: nothing that is left keeps it alive. */
  async end(): Promise<{ readonly faults: readonly string[]; readonly code: number | null }> {
    const ended = once(this.#child, 'exit');
    const answer = await this.#ask('end');
    const [code] = (await ended) as [number | null];
    return { faults: 'faults' in answer ? answer.faults : ['The station did not end.'], code };
  }

  kill(): void {
    this.#child.kill('SIGKILL');
  }

  /** One question at a time. */
  #turn: Promise<unknown> = Promise.resolve();

  #ask(question: SoakQuestion): Promise<SoakAnswer> {
    const answered = this.#turn.then(() => {
      const next = this.#next();
      this.#child.send(question);
      return next;
    });
    this.#turn = answered.catch(() => undefined);
    return answered;
  }

  #next(): Promise<SoakAnswer> {
    return new Promise((resolve, reject) => {
      const onExit = (): void => reject(new Error('The station ended.'));
      this.#child.once('exit', onExit);
      this.#child.once('message', (answer: SoakAnswer) => {
        this.#child.off('exit', onExit);
        resolve(answer);
      });
    });
  }
}
