/** The loopback host, attacked over a raw connection, for `fetch` does not let anybody lie about `Host` and `Origin`. */

import { rm } from 'node:fs/promises';
import { request } from 'node:http';
import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { isRefusal } from '../../src/domain/refusal.ts';
import { bodyLimit, startWebHost, type WebHost } from '../../src/host/web-host.ts';
import { openStation, type Station } from '../../src/station/station.ts';
import { smallPage, temporaryFolder } from './small-page.ts';

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

let folder: string;
let station: Station;
let host: WebHost;
let port: number;

beforeAll(async () => {
  folder = await temporaryFolder();
  const opened = await openStation({ folder });
  if (isRefusal(opened)) throw new Error(opened.code);
  station = opened;
  host = await startWebHost({ station, files: await smallPage(), port: 0 });
  port = Number(new URL(host.origin).port);
});

afterAll(async () => {
  await host.close();
  await station.close();
  await rm(folder, { recursive: true });
});

const ask = (
  path: string,
  {
    method = 'GET',
    headers = {},
    body,
  }: { method?: string; headers?: Record<string, string>; body?: string } = {},
): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, path, method, headers, agent: false }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          body: Buffer.concat(chunks).toString(),
        }),
      );
    });
    asked.on('error', reject);
    asked.end(body);
  });

const enter = async (): Promise<string> => {
  const entry = await ask(new URL(host.newAddress()).href.slice(host.origin.length));
  return String(entry.headers['set-cookie']).split(';')[0] ?? '';
};

const callHeaders = (cookie: string) => ({ cookie, origin: host.origin, 'content-type': 'application/json' });
const status = JSON.stringify({ operation: 'station.status', input: {}, language: 'en' });
const call = async (cookie: string, operation: string, input: unknown, language = 'en') => {
  const body = JSON.stringify({ operation, input, language });
  const answer = await ask('/call', { method: 'POST', headers: callHeaders(cookie), body });
  return JSON.parse(answer.body);
};

/** What every refusal must look like: a sentence, and nothing of the inside of the program. */
const expectRefusal = (answer: Answer, expected: { status: number; code: string }): void => {
  expect(answer.status).toBe(expected.status);
  const { ok, error } = JSON.parse(answer.body);
  expect(ok).toBe(false);
  expect(error.code).toBe(expected.code);
  expect(error.sentence).toMatch(/^[A-Z].*\.$/);
  expect(answer.body).not.toMatch(/node_modules|\.ts:|\bat .*\(/);
};

describe('coming in', () => {
  test('an address is exchanged for a cookie that scripts and other sites cannot use, and leads to the page', async () => {
    const onUsed = vi.fn();
    const entry = await ask(host.newAddress(onUsed).slice(host.origin.length));
    expect(entry.status).toBe(303);
    expect(entry.headers.location).toBe('/');
    expect(String(entry.headers['set-cookie'])).toMatch(
      new RegExp(`^srl-bench-${port}=[\\w-]{43}; HttpOnly; SameSite=Strict; Path=/$`),
    );
    expect(onUsed).toHaveBeenCalledOnce();
  });

  test('an address lets nobody in a second time', async () => {
    const path = host.newAddress().slice(host.origin.length);
    expect((await ask(path)).status).toBe(303);
    expectRefusal(await ask(path), { status: 403, code: 'key-refused' });
  });

  test.each(['/enter', '/enter?key=', '/enter?key=AAAA', `/enter?key=${'A'.repeat(43)}`])(
    'a missing or wrong key is refused: %s',
    async (path) => {
      expectRefusal(await ask(path), { status: 403, code: 'key-refused' });
    },
  );

  test.each(['/', '/assets/page.js', '/index.html'])(
    'without a session nothing is shown: %s',
    async (path) => {
      expectRefusal(await ask(path), { status: 403, code: 'not-entered' });
    },
  );

  test('a made-up session and the key itself are no session', async () => {
    const key = new URL(host.newAddress()).searchParams.get('key') ?? '';
    for (const secret of ['', 'x', 'A'.repeat(43), key]) {
      const headers = callHeaders(`srl-bench-${port}=${secret}`);
      const answer = await ask('/call', { method: 'POST', headers, body: status });
      expectRefusal(answer, { status: 403, code: 'not-entered' });
    }
  });

  test('a browser is shown the refusal as text, in its language', async () => {
    const headers = { accept: 'text/html,*/*', 'accept-language': 'fr, es-MX;q=0.9' };
    const answer = await ask('/', { headers });
    expect(answer.headers['content-type']).toBe('text/plain; charset=utf-8');
    expect(answer.body).toContain('Abra la dirección');
  });
});

describe('the page', () => {
  test('is served with a policy that allows its own files only, with a nonce that is never the same', async () => {
    const cookie = await enter();
    const [first, second] = [
      await ask('/', { headers: { cookie } }),
      await ask('/', { headers: { cookie } }),
    ];
    const policy = String(first.headers['content-security-policy']);
    expect(first.status).toBe(200);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("worker-src 'self'");
    expect(policy).not.toContain('unsafe');
    expect(first.headers['x-content-type-options']).toBe('nosniff');
    expect(first.headers['referrer-policy']).toBe('no-referrer');
    const nonce = /'nonce-([^']+)'/.exec(policy)?.[1] ?? '';
    expect(nonce).toHaveLength(24);
    expect(first.body).toContain(`<meta property="csp-nonce" nonce="${nonce}">`);
    expect(second.body).not.toContain(nonce);
  });

  test('its files are served with their kind', async () => {
    const answer = await ask('/assets/page.js', { headers: { cookie: await enter() } });
    expect(answer.status).toBe(200);
    expect(answer.headers['content-type']).toBe('text/javascript; charset=utf-8');
  });

  test('a script may compile WebAssembly where it runs as a worker, and make no code of text there either', async () => {
    const answer = await ask('/assets/page.js', { headers: { cookie: await enter() } });
    const policy = String(answer.headers['content-security-policy']);
    expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval';");
    expect(policy.replace('wasm-unsafe-eval', '')).not.toContain('unsafe');
  });

  test('no spelling of a path leads out of the folder of the page', async () => {
    const cookie = await enter();
    const steps = [
      '..',
      '%2e%2e',
      '.%2e',
      '%2E%2E',
      '....',
      '..%00',
      '..;',
      '%252e%252e',
      '%c0%ae%c0%ae',
      '\uFF0E\uFF0E',
    ];
    const separators = ['/', '%2f', '\\', '%5c', '//', '%252f'];
    const spellings = steps.flatMap((step) =>
      separators.map(
        (separator) => `/assets${separator}${`${step}${separator}`.repeat(6)}etc${separator}passwd`,
      ),
    );
    for (const path of [
      ...spellings,
      '//etc/passwd',
      '/./assets',
      '/assets',
      '/assets/',
      '/assets/notes.unknown',
    ]) {
      const answer = await ask(encodeURI(path).replaceAll('%25', '%'), { headers: { cookie } });
      expect.soft(answer.status, path).toBeGreaterThanOrEqual(400);
      expect.soft(answer.body, path).not.toContain('root:');
    }
  });
});

describe('a call', () => {
  test('reaches the station and brings its answer back', async () => {
    expect(await call(await enter(), 'station.status', {})).toEqual({ ok: true, output: { state: 'empty' } });
  });

  test('to an unknown operation is answered with a sentence in the language of the window', async () => {
    const answer = await call(await enter(), 'station.explode', {}, 'es');
    expect(answer.error.code).toBe('operation-unknown');
    expect(answer.error.sentence).toContain('No');
  });

  test.each(['GET', 'PUT', 'DELETE', 'OPTIONS', 'HEAD'])('by %s is refused', async (method) => {
    const answer = await ask('/call', { method, headers: callHeaders(await enter()) });
    expect(answer.status).toBe(405);
    expect(answer.headers.allow).toBe('POST');
  });

  test.each([
    ['another site', 'http://rebound.example'],
    ['another port of this PC', 'http://127.0.0.1:1'],
    ['another scheme', 'https://127.0.0.1'],
    ['a sandboxed frame', 'null'],
  ])('from the page of %s is refused although the cookie is right', async (_whose, origin) => {
    const answer = await ask('/call', {
      method: 'POST',
      headers: { ...callHeaders(await enter()), origin },
      body: status,
    });
    expectRefusal(answer, { status: 403, code: 'origin-refused' });
  });

  test('without an origin, or with one that the browser calls foreign, is refused', async () => {
    const cookie = await enter();
    const { origin, ...without } = callHeaders(cookie);
    expectRefusal(await ask('/call', { method: 'POST', headers: without, body: status }), {
      status: 403,
      code: 'origin-refused',
    });
    const headers = { ...without, origin, 'sec-fetch-site': 'cross-site' };
    expectRefusal(await ask('/call', { method: 'POST', headers, body: status }), {
      status: 403,
      code: 'origin-refused',
    });
  });

  test.each(['rebound.example', 'rebound.example:80', '127.0.0.1', '127.0.0.1:1', '[::1]', '0.0.0.0', ''])(
    'under the host name “%s” is refused, as DNS rebinding would send it',
    async (name) => {
      const headers = { ...callHeaders(await enter()), host: name, origin: `http://${name}` };
      const answer = await ask('/call', { method: 'POST', headers, body: status });
      expect(answer.status).toBeGreaterThanOrEqual(400);
      expect(answer.body).not.toContain('"ok":true');
    },
  );

  test('under localhost is answered, for that is this PC too', async () => {
    const cookie = await enter();
    const headers = { ...callHeaders(cookie), host: `localhost:${port}`, origin: `http://localhost:${port}` };
    expect((await ask('/call', { method: 'POST', headers, body: status })).status).toBe(200);
  });

  test.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data', ''])(
    'as “%s”, which a form of another site could send, is refused',
    async (contentType) => {
      const headers = { ...callHeaders(await enter()), 'content-type': contentType };
      const answer = await ask('/call', { method: 'POST', headers, body: status });
      expectRefusal(answer, { status: 415, code: 'content-type-refused' });
    },
  );

  test.each([
    ['', 'nothing'],
    ['{', 'half of an object'],
    ['[]', 'a list'],
    ['"call"', 'a text'],
    ['{"operation":7,"input":{},"language":"en"}', 'a number for a name'],
    ['{"operation":"station.status","input":{},"language":"xx"}', 'an unknown language'],
    [`{"operation":"${'x'.repeat(101)}","input":{}}`, 'a name without end'],
    ['['.repeat(200_000), 'brackets without end'],
  ])('that is malformed is refused: %#', async (body) => {
    const answer = await ask('/call', { method: 'POST', headers: callHeaders(await enter()), body });
    expectRefusal(answer, { status: 400, code: 'body-malformed' });
  });

  test('that announces too large a body is refused before it is read', async () => {
    const headers = { ...callHeaders(await enter()), 'content-length': String(bodyLimit + 1) };
    const answer = await new Promise<string>((resolve, reject) => {
      const socket = connect(port, '127.0.0.1', () => {
        const lines = Object.entries({ host: `127.0.0.1:${port}`, ...headers }).map(
          ([name, value]) => `${name}: ${value}`,
        );
        socket.write(`POST /call HTTP/1.1\r\n${lines.join('\r\n')}\r\n\r\n`);
      });
      socket.once('data', (data) => resolve(data.toString()));
      socket.once('error', reject);
    });
    expect(answer).toMatch(/^HTTP\/1\.1 413 /);
    expect(answer).toContain('body-too-large');
  });

  test('whose body grows past the limit without announcing it is cut off', async () => {
    const cookie = await enter();
    const answer = await new Promise<string>((resolve) => {
      const headers = { ...callHeaders(cookie), 'transfer-encoding': 'chunked' };
      const asked = request({
        host: '127.0.0.1',
        port,
        path: '/call',
        method: 'POST',
        headers,
        agent: false,
      });
      asked.on('response', (response) => resolve(String(response.statusCode)));
      asked.on('error', (error) => resolve(error.message));
      const chunk = Buffer.alloc(1_000_000, 0x20);
      const write = (left: number): void => {
        if (left === 0) asked.end();
        else asked.write(chunk, () => write(left - 1));
      };
      write(bodyLimit / 1_000_000 + 3);
    });
    expect(answer).toMatch(/413|ECONNRESET|EPIPE|hang up/);
  });

  test('with a poisoned prototype changes nothing', async () => {
    const body =
      '{"operation":"station.status","input":{"__proto__":{"polluted":true}},"__proto__":{"polluted":true}}';
    await ask('/call', { method: 'POST', headers: callHeaders(await enter()), body });
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  });
});

describe('sessions', () => {
  test('each window has its own: who signs in at one is not signed in at the other', async () => {
    const [bench, desk] = [await enter(), await enter()];
    const administrator = { name: 'Ines Calder', badge: 'BADGE-0001', pin: '730915' };
    const made = await call(bench, 'station.setup', {
      name: 'Test room',
      timeZone: 'Europe/Madrid',
      lengthUnit: 'm',
      administrator,
    });
    expect(made.ok).toBe(true);
    expect((await call(bench, 'person.list', {})).ok).toBe(true);
    expect((await call(desk, 'person.list', {})).error.code).toBe('sign-in-needed');
  });

  test.runIf(process.platform === 'linux')('at no other address of this PC does anybody answer', async () => {
    await expect(
      new Promise((resolve, reject) => {
        const socket = connect(port, '127.0.0.2', () => resolve('connected'));
        socket.once('error', reject);
      }),
    ).rejects.toThrow('ECONNREFUSED');
  });
});
