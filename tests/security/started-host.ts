/** A started loopback host over a real station, and raw connections to it, on which anything can be said of `Host` and `Origin`. */
import { rm } from 'node:fs/promises';
import { connect, type Socket } from 'node:net';
import { afterAll, beforeAll, expect } from 'vitest';
import { isRefusal } from '../../src/domain/refusal.ts';
import { type DoorLimits, type Doorway, openDoorway } from '../../src/host/doorway.ts';
import { type HostLimits, startWebHost, type WebHost } from '../../src/host/web-host.ts';
import { openStation, type Station } from '../../src/station/station.ts';
import { smallPage, temporaryFolder } from '../host/small-page.ts';

export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string;
}

export interface StartedHost {
  readonly host: WebHost;
  readonly door: Doorway;
  readonly station: Station;
  readonly port: number;
  close(): Promise<void>;
}

export const startHost = async (limits?: Partial<DoorLimits & HostLimits>): Promise<StartedHost> => {
  const folder = await temporaryFolder();
  const station = await openStation({ folder });
  if (isRefusal(station)) throw new Error(station.code);
  const door = await openDoorway(0, limits);
  const host = startWebHost({ station, files: await smallPage(), door, limits });
  return {
    host,
    door,
    station,
    port: door.port,
    close: async () => {
      await host.close();
      await station.close();
      await rm(folder, { recursive: true });
    },
  };
};

/** One for all tests of a file. */
export const hostOfFile = (limits?: Partial<DoorLimits & HostLimits>): { readonly current: StartedHost } => {
  let started: StartedHost;
  beforeAll(async () => {
    started = await startHost(limits);
  });
  afterAll(() => started.close());
  return {
    get current() {
      return started;
    },
  };
};

/** Sends these bytes as they are, and gives all that comes back until the host hangs up or says no more for a while. */
export const exchange = (
  port: number,
  text: string | Buffer,
  { patienceMs = 5_000, whenOpen }: { patienceMs?: number; whenOpen?: (socket: Socket) => void } = {},
): Promise<string> =>
  new Promise((resolve) => {
    const chunks: Buffer[] = [];
    const socket = connect(port, '127.0.0.1', () => {
      socket.write(text);
      whenOpen?.(socket);
    });
    const end = (): void => {
      socket.destroy();
      resolve(Buffer.concat(chunks).toString('utf8'));
    };
    socket.setTimeout(patienceMs, end);
    socket.on('data', (chunk) => chunks.push(chunk));
    socket.on('end', end);
    socket.on('error', end);
    socket.on('close', end);
  });

export const readAnswer = (text: string): Answer => {
  const [head = '', ...rest] = text.split('\r\n\r\n');
  const [first = '', ...lines] = head.split('\r\n');
  const headers = Object.fromEntries(
    lines.map((line) => {
      const colon = line.indexOf(':');
      return [line.slice(0, colon).toLowerCase(), line.slice(colon + 1).trim()];
    }),
  );
  return { status: Number(first.split(' ')[1] ?? 0), headers, body: rest.join('\r\n\r\n') };
};

export interface Asked {
  readonly method?: string;
  /** Goes into the request line as it is. */
  readonly path?: string;
  /** `undefined` leaves a header out that is there otherwise. */
  readonly headers?: Readonly<Record<string, string | undefined>>;
  readonly body?: string;
}

/** One request on a connection of its own; `Host` is right where it is not given. */
export const ask = async (
  { port }: { readonly port: number },
  { method = 'GET', path = '/', headers = {}, body }: Asked,
): Promise<Answer> => {
  const all: Record<string, string | undefined> = {
    host: `127.0.0.1:${port}`,
    connection: 'close',
    ...(body === undefined ? {} : { 'content-length': String(Buffer.byteLength(body)) }),
    ...headers,
  };
  const lines = Object.entries(all).flatMap(([name, value]) =>
    value === undefined ? [] : [`${name}: ${value}`],
  );
  return readAnswer(
    await exchange(port, `${method} ${path} HTTP/1.1\r\n${lines.join('\r\n')}\r\n\r\n${body ?? ''}`),
  );
};

export const entryPath = ({ door }: StartedHost): string => door.newAddress().slice(door.origin.length);

/** The cookie of a window that came in. */
export const enter = async (started: StartedHost): Promise<string> => {
  const { headers } = await ask(started, { path: entryPath(started) });
  return headers['set-cookie']?.split(';')[0] ?? '';
};

export const status = JSON.stringify({ operation: 'station.status', input: {}, language: 'en' });

/** What our own page sends with a call. */
export const callHeaders = ({ door }: StartedHost, cookie: string): Readonly<Record<string, string>> => ({
  cookie,
  origin: door.origin,
  'content-type': 'application/json',
});

export const post = async (
  started: StartedHost,
  headers: Readonly<Record<string, string | undefined>>,
  body = status,
): Promise<Answer> => ask(started, { method: 'POST', path: '/call', headers, body });

/** A place in our code, or what the runtime writes of it. */
const insides = /node_modules|\.ts:\d|\.js:\d|\bat .*\(|Error:/;

/** What every refusal must look like: a sentence, nothing of the inside of the program, and no answer of the station. */
export const expectRefusal = (answer: Answer, expected: { status: number; code: string }): void => {
  expect(answer.status).toBe(expected.status);
  const { ok, error } = JSON.parse(answer.body);
  expect(ok).toBe(false);
  expect(error.code).toBe(expected.code);
  expect(error.sentence).toMatch(/^[A-Z].*\.$/);
  expect(answer.body).not.toMatch(insides);
  expect(answer.headers).not.toHaveProperty('access-control-allow-origin');
};

/** For what Node itself refuses before the host sees it. */
export const expectNothing = (text: string): void => {
  expect(text).not.toContain('"ok":true');
  expect(text).not.toContain('root:');
  expect(text).not.toMatch(insides);
  expect(text).not.toMatch(/^HTTP\/1\.1 [123]/);
};
