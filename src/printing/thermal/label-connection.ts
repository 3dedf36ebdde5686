/** A TCP connection to a label printer: bytes go out, and a status comes back where the printer gives one. */
import { connect, type Socket } from 'node:net';
import { type HostStatus, readHostStatus } from './host-status.ts';
import { hostStatusRequest } from './label-language.ts';

const connectMs = 5_000;

/** A printer that answers does so at once; one that does not say how it is stays silent. Common practice, no source. */
export const statusMs = 2_000;

export class LabelConnection {
  readonly #socket: Socket;
  #received = '';
  #closed = false;
  #waiting: (() => void) | undefined;

  private constructor(socket: Socket) {
    this.#socket = socket;
    socket.setEncoding('latin1');
    socket.on('data', (text: string) => {
      this.#received += text;
      this.#waiting?.();
    });
    socket.on('error', () => undefined);
    socket.on('close', () => {
      this.#closed = true;
      this.#waiting?.();
    });
  }

  /** Undefined where nobody answers. */
  static open(host: string, port: number): Promise<LabelConnection | undefined> {
    return new Promise((resolve) => {
      const socket = connect({ host, port });
      socket.setTimeout(connectMs, () => {
        socket.destroy();
        resolve(undefined);
      });
      socket.once('error', () => resolve(undefined));
      socket.once('connect', () => {
        socket.setTimeout(0);
        resolve(new LabelConnection(socket));
      });
    });
  }

  get closed(): boolean {
    return this.#closed;
  }

  /**
   * False where the printer did not take everything: it went away, or its buffer is full and it reads no more before the
   * time is over or the signal comes; the connection is then cut.
   */
  send(text: string, timeoutMs: number, signal?: AbortSignal): Promise<boolean> {
    return new Promise((resolve) => {
      const cut = () => this.#socket.destroy();
      const timer = setTimeout(cut, timeoutMs);
      const finish = (sent: boolean) => {
        clearTimeout(timer);
        signal?.removeEventListener('abort', cut);
        this.#socket.off('close', gone);
        resolve(sent);
      };
      const gone = () => finish(false);
      if (this.#closed) {
        finish(false);
        return;
      }
      this.#socket.once('close', gone);
      signal?.addEventListener('abort', cut);
      this.#socket.write(text, 'latin1', (error) => finish(!error && !this.#socket.destroyed));
    });
  }

  /** Undefined where the printer stays silent or went away. */
  async status(timeoutMs: number): Promise<HostStatus | undefined> {
    this.#received = '';
    if (!(await this.send(hostStatusRequest, timeoutMs))) return undefined;
    return new Promise((resolve) => {
      const finish = (status: HostStatus | undefined) => {
        clearTimeout(timer);
        this.#waiting = undefined;
        resolve(status);
      };
      const timer = setTimeout(() => finish(undefined), timeoutMs);
      this.#waiting = () => {
        const status = readHostStatus(this.#received);
        if (status !== undefined || this.#closed) finish(status);
      };
      this.#waiting();
    });
  }

  /** Lets what was sent arrive, and closes. */
  close(): void {
    this.#socket.end();
  }
}
