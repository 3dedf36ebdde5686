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

  /** False where the printer went away before it took everything. */
  send(text: string): Promise<boolean> {
    return new Promise((resolve) => {
      if (this.#closed) {
        resolve(false);
        return;
      }
      const gone = () => resolve(false);
      this.#socket.once('close', gone);
      this.#socket.write(text, 'latin1', (error) => {
        this.#socket.off('close', gone);
        resolve(error === undefined || error === null);
      });
    });
  }

  /** Undefined where the printer stays silent or went away. */
  async status(timeoutMs: number): Promise<HostStatus | undefined> {
    this.#received = '';
    if (!(await this.send(hostStatusRequest))) return undefined;
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
