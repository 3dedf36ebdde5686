/** A display that nobody sees, for windows that are measured. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';

export interface Display {
  /** As `DISPLAY` names it. */
  readonly name: string;
  close(): Promise<void>;
}

/** Xvfb takes a number that is free. Throws where it is not installed. */
export const openDisplay = async (): Promise<Display> => {
  const server = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1366x768x24', '-nolisten', 'tcp'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  });
  const ended = once(server, 'exit').catch(() => undefined);
  return {
    name: `:${await numberOf(server)}`,
    close: async () => {
      server.kill();
      await ended;
    },
  };
};

const numberOf = (server: ChildProcess): Promise<string> =>
  new Promise((resolve, reject) => {
    server.once('error', () => reject(new Error('Xvfb is not installed (apt install xvfb).')));
    server.once('exit', () => reject(new Error('Xvfb ended at once.')));
    server.stdio[3]?.once('data', (bytes: Buffer) => resolve(bytes.toString().trim()));
  });
