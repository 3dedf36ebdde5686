/** The loopback host: the contract and the page for browsers on this PC, and for nobody else. */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type Language, languages } from '../domain/message.ts';
import type { Station } from '../station/station.ts';
import { type CallRequest, callRequestSchema, carrierError } from './call-request.ts';
import {
  checkHost,
  checkJson,
  checkMethod,
  checkOrigin,
  cookieOf,
  HttpRefusal,
  readBody,
} from './http-request.ts';
import { Keyring } from './keyring.ts';
import type { RendererFiles } from './renderer-files.ts';
import { newNonce, securityHeaders } from './security-headers.ts';
import { languageOfLocale, wordsIn } from './words.ts';

/** A picture of 20 MB, the largest input of the contract, is 28 MB as base64. */
export const bodyLimit = 30_000_000;

export interface WebHostOptions {
  readonly station: Station;
  readonly files: RendererFiles;
  /** The port to take; any free one where it is 0. */
  readonly port: number;
}

export interface WebHost {
  /** `http://127.0.0.1:PORT`. */
  readonly origin: string;
  /** An address that lets one window in, once; `onUsed` is told when it did. */
  newAddress(onUsed?: () => void): string;
  /** Answers nobody any more; the station stays open. */
  close(): Promise<void>;
}

/** Throws as `listen` does, with `EADDRINUSE` or `EACCES`, where the port cannot be had. */
export const startWebHost = async ({ station, files, port }: WebHostOptions): Promise<WebHost> => {
  const keyring = new Keyring();
  const server = createServer({ maxHeaderSize: 16_384 });
  await listen(server, port);
  const taken = (server.address() as AddressInfo).port;
  const cookieName = `srl-bench-${taken}`;

  const enter = (request: IncomingMessage, response: ServerResponse, url: URL): void => {
    checkMethod(request, 'GET');
    const session = keyring.exchange(url.searchParams.get('key') ?? '');
    if (session === undefined) throw new HttpRefusal(403, 'key-refused');
    response.writeHead(303, {
      ...securityHeaders(newNonce()),
      location: '/',
      'set-cookie': `${cookieName}=${session}; HttpOnly; SameSite=Strict; Path=/`,
    });
    response.end();
  };

  const call = async (request: IncomingMessage, response: ServerResponse, session: string): Promise<void> => {
    const { operation, input, language } = await readCall(request);
    const result = await station.call({ session, operation, input, language });
    send(response, 200, 'application/json; charset=utf-8', JSON.stringify(result));
  };

  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    checkHost(request, taken);
    const url = new URL(request.url ?? '/', `http://127.0.0.1:${taken}`);
    if (url.pathname === '/enter') return enter(request, response, url);
    if (url.pathname === '/call') {
      checkMethod(request, 'POST');
      checkOrigin(request);
    } else checkMethod(request, 'GET', 'HEAD');
    const session = keyring.sessionOf(cookieOf(request, cookieName));
    if (session === undefined) throw new HttpRefusal(403, 'not-entered');
    if (url.pathname === '/call') return call(request, response, session);
    const file = files.at(url.pathname);
    if (file === undefined) throw new HttpRefusal(404, 'not-found');
    response.writeHead(200, { ...file.headers, 'content-length': file.body.length });
    response.end(request.method === 'HEAD' ? undefined : file.body);
  };

  server.on('request', (request, response) => {
    answer(request, response).catch((error: unknown) => refuse(request, response, error));
  });
  const origin = `http://127.0.0.1:${taken}`;
  return {
    origin,
    newAddress: (onUsed) => `${origin}/enter?key=${keyring.cutKey(onUsed)}`,
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

const readCall = async (request: IncomingMessage): Promise<CallRequest> => {
  checkJson(request);
  const read = callRequestSchema.safeParse(parseJson(await readBody(request, bodyLimit)));
  if (!read.success) throw new HttpRefusal(400, 'body-malformed');
  return read.data;
};

const parseJson = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    throw new HttpRefusal(400, 'body-malformed');
  }
};

/** A window is shown a sentence, a caller gets it as JSON; neither learns how the program looks inside. */
const refuse = (request: IncomingMessage, response: ServerResponse, error: unknown): void => {
  if (response.headersSent || response.destroyed) return void response.destroy();
  const refused = error instanceof HttpRefusal ? error : new HttpRefusal(400, 'body-malformed');
  const sentence = wordsIn(languageAsked(request))(refused.code);
  for (const [name, value] of Object.entries(refused.headers)) response.setHeader(name, value);
  if (request.headers.accept?.includes('text/html')) {
    send(response, refused.status, 'text/plain; charset=utf-8', `${sentence}\n`);
  } else {
    const body = JSON.stringify(carrierError(refused.code, sentence));
    send(response, refused.status, 'application/json; charset=utf-8', body);
  }
};

const languageAsked = (request: IncomingMessage): Language => {
  const asked = (request.headers['accept-language'] ?? '').split(',').map((part) => part.trim().slice(0, 2));
  return languageOfLocale(asked.find((tag) => languages.some((language) => language === tag)) ?? 'en');
};

const send = (response: ServerResponse, status: number, contentType: string, body: string): void => {
  response.writeHead(status, {
    ...securityHeaders(newNonce()),
    'content-type': contentType,
    'content-length': Buffer.byteLength(body),
  });
  response.end(body);
};
