/** The port of the loopback host and the keys to it: a browser can be sent there before there is anything behind it. */
import { createServer, type RequestListener, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Keyring, type KeyUse } from './keyring.ts';

/** What no connection may take more of. Browsers on this PC need a fraction of it; common practice, no source. */
export interface DoorLimits {
  /** From the first byte of a request to the end of its head. */
  readonly headMs: number;
  /** From the first byte of a request to the end of its body: 28 MB within this PC take well under a second. */
  readonly requestMs: number;
  /** For which a connection may stand still. */
  readonly silentMs: number;
  readonly connections: number;
}

const usualLimits: DoorLimits = {
  headMs: 10_000,
  requestMs: 60_000,
  silentMs: 120_000,
  connections: 128,
};

export interface Doorway {
  readonly port: number;
  /** `http://127.0.0.1:PORT`. */
  readonly origin: string;
  readonly keyring: Keyring;
  /** An address that lets one window in, once. */
  newAddress(use?: KeyUse): string;
  /** What has come by then has waited for it. */
  answerWith(answer: RequestListener): void;
  /** Answers nobody any more. */
  close(): Promise<void>;
}

/** Any free port where it is 0. Throws as `listen` does, with `EADDRINUSE` or `EACCES`, where it cannot be had. */
export const openDoorway = async (port: number, given: Partial<DoorLimits> = {}): Promise<Doorway> => {
  const limits = { ...usualLimits, ...given };
  const server = createServer({
    maxHeaderSize: 16_384,
    headersTimeout: limits.headMs,
    requestTimeout: limits.requestMs,
    connectionsCheckingInterval: Math.min(limits.headMs, 5_000),
  });
  server.maxConnections = limits.connections;
  server.maxHeadersCount = 100;
  server.setTimeout(limits.silentMs);
  let answerWith = (_answer: RequestListener): void => undefined;
  const answering = new Promise<RequestListener>((resolve) => {
    answerWith = resolve;
  });
  server.on('request', async (request, response) => (await answering)(request, response));
  await listen(server, port);
  const taken = (server.address() as AddressInfo).port;
  const origin = `http://127.0.0.1:${taken}`;
  const keyring = new Keyring();
  return {
    port: taken,
    origin,
    keyring,
    newAddress: (use) => `${origin}/enter?key=${keyring.cutKey(use)}`,
    answerWith,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
};

const listen = (server: Server, port: number): Promise<void> =>
  new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve();
    });
  });
