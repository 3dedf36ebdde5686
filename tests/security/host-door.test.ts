/** Attacks on the door of the loopback host: who asks, under which name, from which page, and with which secret. */
import { connect } from 'node:net';
import { describe, expect, test } from 'vitest';
import {
  ask,
  callHeaders,
  enter,
  entryPath,
  exchange,
  expectNothing,
  expectRefusal,
  hostOfFile,
  post,
  readAnswer,
  startHost,
  status,
} from './started-host.ts';

const host = hostOfFile();

describe('a page of another origin', () => {
  test.each([
    ['another site', 'http://rebound.example'],
    ['another port of this PC', 'http://127.0.0.1:1'],
    ['another scheme', 'https://127.0.0.1'],
    ['a sandboxed frame', 'null'],
    ['a file', 'file://'],
    ['an extension', 'chrome-extension://abcdefghijklmnop'],
    ['a name that begins like ours', 'http://127.0.0.1.rebound.example'],
  ])('calls nothing although the cookie is right: %s', async (_whose, origin) => {
    const headers = { ...callHeaders(host.current, await enter(host.current)), origin };
    expectRefusal(await post(host.current, headers), { status: 403, code: 'origin-refused' });
  });

  test('calls nothing without an origin, with two of them, or with one that the browser calls foreign', async () => {
    const headers = callHeaders(host.current, await enter(host.current));
    const refused = { status: 403, code: 'origin-refused' };
    expectRefusal(await post(host.current, { ...headers, origin: undefined }), refused);
    expectRefusal(await post(host.current, { ...headers, Origin: 'http://rebound.example' }), refused);
    for (const site of ['cross-site', 'same-site', 'none'])
      expectRefusal(await post(host.current, { ...headers, 'sec-fetch-site': site }), refused);
  });

  test.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data', '', 'text/json'])(
    'sends no form and no simple request: “%s”',
    async (contentType) => {
      const headers = {
        ...callHeaders(host.current, await enter(host.current)),
        'content-type': contentType,
      };
      expectRefusal(await post(host.current, headers), { status: 415, code: 'content-type-refused' });
    },
  );

  test('is given no leave by a preflight', async () => {
    const answer = await ask(host.current, {
      method: 'OPTIONS',
      path: '/call',
      headers: {
        origin: 'http://rebound.example',
        'access-control-request-method': 'POST',
        'access-control-request-headers': 'content-type',
        'access-control-request-private-network': 'true',
      },
    });
    expectRefusal(answer, { status: 405, code: 'method-refused' });
    expect(Object.keys(answer.headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
  });

  test('is given no websocket and no tunnel', async () => {
    const { port } = host.current;
    const cookie = await enter(host.current);
    const upgrade = {
      cookie,
      origin: 'http://rebound.example',
      connection: 'Upgrade',
      upgrade: 'websocket',
      'sec-websocket-version': '13',
      'sec-websocket-key': 'dGhlIHNhbXBsZSBub25jZQ==',
    };
    for (const path of ['/call', '/enter', '/socket']) {
      const { status: code } = await ask(host.current, { path, headers: upgrade });
      expect(code, path).toBeGreaterThanOrEqual(400);
    }
    expectNothing(
      await exchange(port, `CONNECT 127.0.0.1:${port} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n\r\n`),
    );
  });

  test('learns nothing from a picture, a script or a frame of ours: every answer forbids it', async () => {
    const cookie = await enter(host.current);
    for (const path of ['/', '/assets/page.js', '/nothing']) {
      const { headers } = await ask(host.current, { path, headers: { cookie } });
      expect(headers).toMatchObject({
        'cross-origin-resource-policy': 'same-origin',
        'cross-origin-opener-policy': 'same-origin',
        'x-frame-options': 'DENY',
        'x-content-type-options': 'nosniff',
        'referrer-policy': 'no-referrer',
        // A file of the product, the same on every PC; nothing of the record is ever kept by a browser.
        'cache-control': path.startsWith('/assets/') ? 'private, max-age=31536000, immutable' : 'no-store',
      });
      expect(headers['content-security-policy']).toContain("frame-ancestors 'none'");
      expect(headers).not.toHaveProperty('server');
      expect(headers).not.toHaveProperty('x-powered-by');
    }
    const { headers } = await post(host.current, callHeaders(host.current, cookie));
    expect(headers['cache-control']).toBe('no-store');
  });
});

describe('DNS rebinding', () => {
  test.each([
    'rebound.example',
    'rebound.example:80',
    '127.0.0.1',
    '127.0.0.1:1',
    '[::1]',
    '0.0.0.0',
    '127.1',
    '2130706433',
    'localhost.rebound.example',
    '127.0.0.1:PORT.rebound.example',
    'user@127.0.0.1:PORT',
    '127.0.0.1:PORT, rebound.example',
    '',
  ])('under the host name “%s” is refused', async (name) => {
    const { port } = host.current;
    const asked = name.replace('PORT', String(port));
    const headers = {
      ...callHeaders(host.current, await enter(host.current)),
      host: asked,
      origin: `http://${asked}`,
    };
    const answer = await post(host.current, headers);
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.body).not.toContain('"ok":true');
  });

  test('with two names, or with none, is refused, whichever comes first', async () => {
    const { port } = host.current;
    const own = `Host: 127.0.0.1:${port}`;
    const foreign = 'Host: rebound.example';
    for (const lines of [[own, foreign], [foreign, own], [own, own], []])
      expectNothing(await exchange(port, `${['GET / HTTP/1.1', ...lines].join('\r\n')}\r\n\r\n`));
  });

  test('by a whole address in the request line is refused, whatever `Host` says', async () => {
    const cookie = await enter(host.current);
    for (const path of [
      'http://rebound.example/',
      `http://127.0.0.1:${host.current.port}/`,
      '//rebound.example/',
    ])
      expectRefusal(await ask(host.current, { path, headers: { cookie } }), {
        status: 400,
        code: 'body-malformed',
      });
  });

  test('has no other address of this PC to point to', async () => {
    if (process.platform !== 'linux') return;
    const { port } = host.current;
    await expect(
      new Promise((resolve, reject) => {
        const socket = connect(port, '127.0.0.2', () => resolve('connected'));
        socket.once('error', reject);
      }),
    ).rejects.toThrow('ECONNREFUSED');
  });
});

describe('the secret', () => {
  test.each(['/enter', '/enter?key=', '/enter?key=AAAA', `/enter?key=${'A'.repeat(43)}`, '/enter?key[]=x'])(
    'that is missing or wrong lets nobody in: %s',
    async (path) => {
      expectRefusal(await ask(host.current, { path }), { status: 403, code: 'key-refused' });
    },
  );

  test('that was used lets nobody in again, not even at the same moment', async () => {
    const path = entryPath(host.current);
    const answers = await Promise.all(Array.from({ length: 8 }, () => ask(host.current, { path })));
    expect(answers.map((answer) => answer.status).sort()).toEqual([303, ...Array(7).fill(403)]);
    expectRefusal(await ask(host.current, { path }), { status: 403, code: 'key-refused' });
  });

  test('becomes a cookie that scripts and other sites cannot use', async () => {
    const { headers } = await ask(host.current, { path: entryPath(host.current) });
    expect(headers['set-cookie']).toMatch(
      new RegExp(`^srl-bench-${host.current.port}=[\\w-]{43}; HttpOnly; SameSite=Strict; Path=/$`),
    );
    expect(headers.location).toBe('/');
  });

  test('is needed for every file and every call', async () => {
    for (const path of ['/', '/assets/page.js', '/index.html', '/nothing'])
      expectRefusal(await ask(host.current, { path }), { status: 403, code: 'not-entered' });
    const { cookie: _cookie, ...headers } = callHeaders(host.current, '');
    expectRefusal(await post(host.current, headers), { status: 403, code: 'not-entered' });
  });

  test('cannot be made up, and the key of the address is no cookie', async () => {
    const key = new URL(host.current.door.newAddress()).searchParams.get('key') ?? '';
    for (const secret of ['', 'x', 'A'.repeat(43), key, 'window-1', '__proto__', 'undefined']) {
      const headers = callHeaders(host.current, `srl-bench-${host.current.port}=${secret}`);
      expectRefusal(await post(host.current, headers), { status: 403, code: 'not-entered' });
    }
  });

  test('of another start, or of the host on another port, opens nothing here', async () => {
    const other = await startHost();
    const cookie = await enter(other);
    const secret = cookie.split('=')[1] ?? '';
    expect((await post(other, callHeaders(other, cookie))).status).toBe(200);
    await other.close();
    for (const stolen of [cookie, `srl-bench-${host.current.port}=${secret}`])
      expectRefusal(await post(host.current, callHeaders(host.current, stolen)), {
        status: 403,
        code: 'not-entered',
      });
  });

  test('of one window signs nobody in at another', async () => {
    const [bench, desk] = [await enter(host.current), await enter(host.current)];
    const call = async (cookie: string, operation: string, input: unknown) => {
      const body = JSON.stringify({ operation, input, language: 'en' });
      return JSON.parse((await post(host.current, callHeaders(host.current, cookie), body)).body);
    };
    const administrator = { name: 'Ines Calder', badge: 'BADGE-0001', pin: '730915' };
    const station = { name: 'Test room', timeZone: 'Europe/Madrid', lengthUnit: 'm', administrator };
    expect((await call(bench, 'station.setup', station)).ok).toBe(true);
    expect((await call(bench, 'person.list', {})).ok).toBe(true);
    expect((await call(desk, 'person.list', {})).error.code).toBe('sign-in-needed');
  });

  test('is good for nothing once its window is gone, or sixteen newer ones have come', async () => {
    const patience = { afterLeavingMs: 50, unheardMs: 60_000 };
    const small = await startHost({ patience, sessions: 2 });
    const [first, second, third] = [await enter(small), await enter(small), await enter(small)];
    const statusOf = async (cookie = ''): Promise<number> =>
      (await post(small, callHeaders(small, cookie))).status;
    expect([await statusOf(first), await statusOf(second), await statusOf(third)]).toEqual([403, 200, 200]);
    const leave = {
      method: 'POST',
      path: '/leave',
      headers: { cookie: third, origin: small.door.origin },
      body: '',
    };
    expect((await ask(small, leave)).status).toBe(200);
    await expect.poll(() => statusOf(third), { timeout: 5_000 }).toBe(403);
    expect(await statusOf(second)).toBe(200);
    await small.close();
  });

  test('counts under the name localhost, which is this PC too', async () => {
    const name = `localhost:${host.current.port}`;
    const headers = callHeaders(host.current, await enter(host.current));
    expect((await post(host.current, { ...headers, host: name, origin: `http://${name}` })).status).toBe(200);
  });
});

test('the host that every attack is made on answers our own page', async () => {
  const answer = await post(host.current, callHeaders(host.current, await enter(host.current)), status);
  expect(readAnswer(`HTTP/1.1 ${answer.status}\r\n\r\n`).status).toBe(200);
  expect(JSON.parse(answer.body)).toMatchObject({ ok: true });
});
