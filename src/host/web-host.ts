/** The loopback host: the contract and the page for browsers on this PC, and for nobody else. */
import type { IncomingMessage, ServerResponse } from 'node:http';
import { type Language, languages } from '../domain/message.ts';
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import type { Station } from '../station/station.ts';
import { type CallRequest, callRequestSchema, carrierError } from './call-request.ts';
import type { Doorway } from './doorway.ts';
import {
  checkHost,
  checkJson,
  checkMethod,
  checkOrigin,
  cookieOf,
  HttpRefusal,
  readBody,
  targetOf,
} from './http-request.ts';
import { type Patience, Presence, usualPatience } from './presence.ts';
import type { RendererFiles } from './renderer-files.ts';
import { headersOfOnlyPage, newNonce, securityHeaders } from './security-headers.ts';
import { languageOfLocale, wordsIn } from './words.ts';

/** A picture of 20 MB, the largest input of the contract, is 28 MB as base64. */
export const bodyLimit = 30_000_000;

export interface WebHostOptions {
  /** Calls wait until it is open. */
  readonly station: Station | Promise<Station | Refusal>;
  readonly files: RendererFiles;
  /** Closed with the host. */
  readonly door: Doorway;
  readonly limits?: Partial<HostLimits> | undefined;
}

/** What nobody may take more of. Browsers on this PC need a fraction of it; common practice, no source. */
export interface HostLimits {
  /** Windows; of one more the one that was not heard of for the longest time ends. */
  readonly sessions: number;
  readonly patience: Patience;
}

export const usualLimits: HostLimits = { sessions: 16, patience: usualPatience };

export interface WebHost {
  /** Resolves when the last window is gone, or when none has come for hours. */
  readonly deserted: Promise<void>;
  /** Answers nobody any more; the station stays open. */
  close(): Promise<void>;
}

export const startWebHost = (options: WebHostOptions): WebHost => {
  const { station, files, door } = options;
  const { keyring, port } = door;
  const limits = { ...usualLimits, ...options.limits };
  const presence = new Presence(limits.patience, () => performance.now());
  const cookieName = `srl-bench-${port}`;

  const endSession = (session: string): void => {
    keyring.end(session);
    presence.forget(session);
    void Promise.resolve(station).then((opened) => {
      if (!isRefusal(opened)) opened.endSession(session);
    });
  };

  const headersFor = (session: string, headers: Readonly<Record<string, string>>) =>
    keyring.isAlone(session) ? headersOfOnlyPage(headers) : headers;

  const enter = (request: IncomingMessage, response: ServerResponse, url: URL): void => {
    checkMethod(request, 'GET');
    const session = keyring.exchange(url.searchParams.get('key') ?? '');
    if (session === undefined) throw new HttpRefusal(403, 'key-refused');
    const name = keyring.sessionOf(session) ?? '';
    presence.heard(name);
    if (presence.count > limits.sessions) endSession(presence.quietest ?? '');
    response.writeHead(303, {
      ...headersFor(name, securityHeaders(newNonce())),
      location: '/',
      'set-cookie': `${cookieName}=${session}; HttpOnly; SameSite=Strict; Path=/`,
    });
    response.end();
  };

  const call = async (request: IncomingMessage, response: ServerResponse, session: string): Promise<void> => {
    const { operation, input, language } = await readCall(request);
    const opened = await station;
    if (isRefusal(opened)) throw new HttpRefusal(503, 'not-open');
    const result = await opened.call({ session, from: 'browser', operation, input, language });
    send(response, 200, 'application/json; charset=utf-8', JSON.stringify(result));
  };

  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    checkHost(request, port);
    const url = targetOf(request, port);
    if (url.pathname === '/enter') return enter(request, response, url);
    const isTold = url.pathname === '/here' || url.pathname === '/leave';
    if (url.pathname === '/call' || isTold) {
      checkMethod(request, 'POST');
      checkOrigin(request);
    } else checkMethod(request, 'GET', 'HEAD');
    const session = keyring.sessionOf(cookieOf(request, cookieName));
    if (session === undefined) throw new HttpRefusal(403, 'not-entered');
    if (url.pathname === '/leave') presence.left(session);
    else presence.heard(session);
    if (isTold) return send(response, 200, 'text/plain; charset=utf-8', '');
    if (url.pathname === '/call') return call(request, response, session);
    const file = files.at(url.pathname);
    if (file === undefined) throw new HttpRefusal(404, 'not-found');
    response.writeHead(200, { ...headersFor(session, file.headers), 'content-length': file.body.length });
    response.end(request.method === 'HEAD' ? undefined : file.body);
  };

  door.answerWith((request, response) => {
    answer(request, response).catch((error: unknown) => refuse(request, response, error));
  });
  let onDeserted = (): void => undefined;
  const deserted = new Promise<void>((resolve) => {
    onDeserted = resolve;
  });
  const looking = setInterval(
    () => {
      for (const session of presence.gone()) endSession(session);
      if (presence.isDeserted) onDeserted();
    },
    Math.min(lookMs, limits.patience.afterLeavingMs),
  );
  looking.unref();
  return {
    deserted,
    close: async () => {
      clearInterval(looking);
      await door.close();
    },
  };
};

const lookMs = 5_000;

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
