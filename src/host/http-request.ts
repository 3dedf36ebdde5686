/** What a request must look like before it is answered: address, origin, method, kind and size. */
import type { IncomingMessage } from 'node:http';

/** A request that is not answered: the status, and the key of the sentence that says why. */
export class HttpRefusal extends Error {
  override readonly name = 'HttpRefusal';
  readonly status: number;
  readonly code: HttpRefusalCode;
  readonly headers: Readonly<Record<string, string>>;

  constructor(status: number, code: HttpRefusalCode, headers: Readonly<Record<string, string>> = {}) {
    super(code);
    this.status = status;
    this.code = code;
    this.headers = headers;
  }
}

export type HttpRefusalCode =
  | 'host-refused'
  | 'origin-refused'
  | 'method-refused'
  | 'not-entered'
  | 'key-refused'
  | 'not-found'
  | 'not-open'
  | 'content-type-refused'
  | 'body-too-large'
  | 'body-malformed';

/** A name that points to this PC by a trick (DNS rebinding) still sends its own name in `Host`. */
export const checkHost = (request: IncomingMessage, port: number): void => {
  const host = request.headers.host?.toLowerCase();
  if (timesGiven(request, 'host') !== 1) throw new HttpRefusal(403, 'host-refused');
  if (host !== `127.0.0.1:${port}` && host !== `localhost:${port}`)
    throw new HttpRefusal(403, 'host-refused');
};

/** A page of another origin names itself in `Origin`, and in `Sec-Fetch-Site` where the browser knows it. */
export const checkOrigin = (request: IncomingMessage): void => {
  const { host, origin } = request.headers;
  if (timesGiven(request, 'origin') !== 1) throw new HttpRefusal(403, 'origin-refused');
  if (origin !== `http://${host?.toLowerCase()}`) throw new HttpRefusal(403, 'origin-refused');
  const site = request.headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin') throw new HttpRefusal(403, 'origin-refused');
};

/** Of a header that comes twice each reader may take another one; Node takes the first. */
const timesGiven = ({ rawHeaders }: IncomingMessage, name: string): number =>
  rawHeaders.filter((each, index) => index % 2 === 0 && each.toLowerCase() === name).length;

/** The address that is asked for: a path of this host (origin-form, RFC 9112 §3.2.1), and nothing that names another. */
export const targetOf = ({ url = '' }: IncomingMessage, port: number): URL => {
  if (!/^\/(?![/\\])/.test(url)) throw new HttpRefusal(400, 'body-malformed');
  return new URL(url, `http://127.0.0.1:${port}`);
};

export const checkMethod = (request: IncomingMessage, ...allowed: readonly string[]): void => {
  if (allowed.includes(request.method ?? '')) return;
  throw new HttpRefusal(405, 'method-refused', { allow: allowed.join(', ') });
};

/** Only `application/json`, which no form of another page can send. */
export const checkJson = (request: IncomingMessage): void => {
  const [type] = (request.headers['content-type'] ?? '').split(';');
  if (type?.trim().toLowerCase() !== 'application/json') throw new HttpRefusal(415, 'content-type-refused');
};

/** The body as text; refuses more than `limit` bytes as soon as they are announced or have come in. */
export const readBody = async (request: IncomingMessage, limit: number): Promise<string> => {
  const tooLarge = new HttpRefusal(413, 'body-too-large', { connection: 'close' });
  if (Number(request.headers['content-length'] ?? 0) > limit) throw tooLarge;
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    size += chunk.length;
    if (size > limit) throw tooLarge;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks).toString('utf8');
};

/** The value of a cookie; the first where the browser sends several of the name. */
export const cookieOf = (request: IncomingMessage, name: string): string | undefined => {
  const pairs = (request.headers.cookie ?? '').split(';').map((pair) => pair.trim());
  return pairs.find((pair) => pair.startsWith(`${name}=`))?.slice(name.length + 1);
};
