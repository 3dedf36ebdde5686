/** Attacks by what a request carries: too much, too slow, too deep, of no form, or two requests in the coat of one. */
import { connect } from 'node:net';
import { afterEach, describe, expect, test } from 'vitest';
import { bodyLimit } from '../../src/host/web-host.ts';
import {
  ask,
  callHeaders,
  enter,
  exchange,
  expectNothing,
  expectRefusal,
  hostOfFile,
  post,
  startHost,
  status,
} from './started-host.ts';

const host = hostOfFile();

/** The head of a call that our page could make, but for these headers. */
const head = async (headers: Readonly<Record<string, string>>): Promise<string> => {
  const all = {
    host: `127.0.0.1:${host.current.port}`,
    ...callHeaders(host.current, await enter(host.current)),
    ...headers,
  };
  const lines = Object.entries(all).map(([name, value]) => `${name}: ${value}`);
  return `POST /call HTTP/1.1\r\n${lines.join('\r\n')}\r\n\r\n`;
};

/** Whatever was done before, the host answers its own page. */
afterEach(async () => {
  expect((await post(host.current, callHeaders(host.current, await enter(host.current)))).status).toBe(200);
});

describe('a body that is too large', () => {
  test('is refused as soon as it is announced', async () => {
    for (const size of [String(bodyLimit + 1), '9'.repeat(15)])
      expect(await exchange(host.current.port, await head({ 'content-length': size }))).toMatch(
        /^HTTP\/1\.1 413 [\s\S]*body-too-large/,
      );
  });

  test('is cut off where it grows without being announced, and what came before is not kept', async () => {
    const before = process.memoryUsage().rss;
    const chunk = Buffer.alloc(1_000_000, 0x20);
    const answer = await exchange(host.current.port, await head({ 'transfer-encoding': 'chunked' }), {
      whenOpen: (socket) => {
        const write = (left: number): void => {
          if (left === 0 || socket.destroyed) return;
          socket.write(`${chunk.length.toString(16)}\r\n`);
          socket.write(chunk);
          socket.write('\r\n', () => write(left - 1));
        };
        write(2 * (bodyLimit / chunk.length));
      },
    });
    expect(answer === '' || answer.startsWith('HTTP/1.1 413')).toBe(true);
    expect(process.memoryUsage().rss - before).toBeLessThan(6 * bodyLimit);
  });
});

describe('a body that is no call', () => {
  test.each([
    ['', 'nothing'],
    ['{', 'half of an object'],
    ['[]', 'a list'],
    ['"call"', 'a text'],
    ['null', 'nothing at all'],
    ['{"operation":7,"input":{},"language":"en"}', 'a number for a name'],
    ['{"operation":"station.status","input":{},"language":"xx"}', 'an unknown language'],
    [`{"operation":"${'x'.repeat(101)}","input":{}}`, 'a name without end'],
    ['{"operation":"station.status","input":{}}{}', 'one and a half'],
    ['\ufeff{"operation":"station.status"}', 'a mark of byte order'],
    ["{'operation':'station.status'}", 'another language than JSON'],
    ['{"operation":"station.status","input":NaN}', 'no number'],
    ['['.repeat(200_000), 'brackets without end'],
    [`${'['.repeat(100_000)}${']'.repeat(100_000)}`, 'a list in a list, 100,000 deep'],
    [`${'{"a":'.repeat(100_000)}1${'}'.repeat(100_000)}`, 'an object in an object, 100,000 deep'],
  ])('is refused with a sentence: %#', async (body) => {
    const headers = callHeaders(host.current, await enter(host.current));
    expectRefusal(await post(host.current, headers, body), { status: 400, code: 'body-malformed' });
  });

  test('is refused where a call carries it 100,000 levels deep as its input', async () => {
    const headers = callHeaders(host.current, await enter(host.current));
    for (const [open, close] of [
      ['[', ']'],
      ['{"a":', '}'],
    ] as const) {
      const deep = `${open.repeat(100_000)}1${close.repeat(100_000)}`;
      for (const operation of ['station.status', 'scan.interpret', 'record.amend', 'no.such']) {
        const body = `{"operation":"${operation}","input":${deep},"language":"en"}`;
        const answer = await post(host.current, headers, body);
        expect(answer.body).not.toContain('"ok":true');
        expect(JSON.parse(answer.body).error.code, operation).not.toBe('internal-error');
      }
    }
  });

  test('is refused where it is compressed, or text of another encoding', async () => {
    const headers = callHeaders(host.current, await enter(host.current));
    const utf16 = Buffer.from(status, 'utf16le').toString('latin1');
    for (const body of [utf16, '\u001f\u008b\u0008\u0000\u0000\u0000\u0000\u0000'])
      expectRefusal(await post(host.current, { ...headers, 'content-encoding': 'gzip' }, body), {
        status: 400,
        code: 'body-malformed',
      });
  });

  test('changes no prototype, wherever `__proto__` stands in it', async () => {
    const headers = callHeaders(host.current, await enter(host.current));
    const poison = '{"polluted":true}';
    for (const key of ['__proto__', 'constructor":{"prototype'])
      for (const body of [
        `{"${key}":${poison}${key.includes(':') ? '}' : ''},"operation":"station.status","input":{}}`,
        `{"operation":"station.status","input":{"${key}":${poison}${key.includes(':') ? '}' : ''}}}`,
      ])
        await post(host.current, headers, body);
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  });
});

describe('request smuggling', () => {
  const second = 'GET /assets/page.js HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n';

  test.each([
    ['a length and chunks', { 'content-length': '4', 'transfer-encoding': 'chunked' }, `0\r\n\r\n${second}`],
    ['two lengths', { 'content-length': '2', 'Content-Length': '40' }, `{}${second}`],
    ['a list of lengths', { 'content-length': '2, 40' }, `{}${second}`],
    ['a length with a sign', { 'content-length': '+2' }, `{}${second}`],
    ['a length in hexadecimal', { 'content-length': '0x2' }, `{}${second}`],
    ['a length below nothing', { 'content-length': '-1' }, second],
    [
      'chunks by another name',
      { 'transfer-encoding': 'xchunked', 'content-length': '4' },
      `0\r\n\r\n${second}`,
    ],
    ['chunks twice', { 'transfer-encoding': 'chunked, identity' }, `0\r\n\r\n${second}`],
    [
      'a space before the colon',
      { 'transfer-encoding ': 'chunked', 'content-length': '4' },
      `0\r\n\r\n${second}`,
    ],
    ['a tab in the value', { 'transfer-encoding': '\tchunked\u000b' }, `0\r\n\r\n${second}`],
    [
      'a line that goes on',
      { 'x-a': 'b\r\n transfer-encoding: chunked', 'content-length': '4' },
      `0\r\n\r\n${second}`,
    ],
    [
      'a bare line feed',
      { 'x-a': 'b\ntransfer-encoding: chunked', 'content-length': '4' },
      `0\r\n\r\n${second}`,
    ],
    ['a size of a chunk without end', { 'transfer-encoding': 'chunked' }, `${'f'.repeat(30)}\r\n`],
    ['a size of a chunk with a sign', { 'transfer-encoding': 'chunked' }, `-1\r\n\r\n${second}`],
  ])('by %s gives nobody an answer that they have no right to', async (_how, headers, body) => {
    const answered = await exchange(host.current.port, `${await head(headers)}${body}`, { patienceMs: 800 });
    expect(answered).not.toContain('small page');
    expect(answered).not.toContain('"ok":true');
  });

  test.each([
    ['no version', 'GET /\r\n\r\n'],
    ['an old version', 'GET / HTTP/0.9\r\n\r\n'],
    ['a version to come', 'PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n'],
    ['a method that is none', 'G\u0000T / HTTP/1.1\r\n\r\n'],
    ['the hello of TLS', '\u0016\u0003\u0001\u0000\u00a5\u0001\u0000\u0000\u00a1\u0003\u0003'],
    ['a header without a name', 'GET / HTTP/1.1\r\n: x\r\n\r\n'],
    ['a header with a NUL', 'GET / HTTP/1.1\r\nHost: 127.0.0.1\u0000\r\n\r\n'],
    ['headers without end', `GET / HTTP/1.1\r\n${'x-a: b\r\n'.repeat(20_000)}`],
    ['one header without end', `GET / HTTP/1.1\r\nx-a: ${'b'.repeat(100_000)}`],
    ['an address without end', `GET /${'a'.repeat(100_000)} HTTP/1.1\r\n\r\n`],
  ])('by %s is answered with nothing', async (_how, text) => {
    expectNothing(await exchange(host.current.port, Buffer.from(text, 'latin1'), { patienceMs: 800 }));
  });
});

describe('a slow client', () => {
  const limits = { headMs: 300, requestMs: 600, silentMs: 1_500, connections: 6 };

  test('that sends its head byte by byte, or its body, is hung up on', async () => {
    const small = await startHost(limits);
    const cookie = await enter(small);
    const lines = Object.entries({ host: `127.0.0.1:${small.port}`, ...callHeaders(small, cookie) });
    const whole = `POST /call HTTP/1.1\r\n${lines.map(([name, value]) => `${name}: ${value}`).join('\r\n')}`;
    for (const text of [whole, `${whole}\r\ncontent-length: 1000\r\n\r\n{`]) {
      const began = performance.now();
      const answer = await exchange(small.port, text, {
        patienceMs: 10_000,
        whenOpen: (socket) => {
          const drip = setInterval(() => {
            if (socket.destroyed) clearInterval(drip);
            else socket.write('x');
          }, 100);
        },
      });
      expect(performance.now() - began).toBeLessThan(5_000);
      expect(answer).not.toContain('"ok":true');
    }
    await small.close();
  });

  test('that says nothing at all is hung up on, and one of too many is turned away while the others are answered', async () => {
    const small = await startHost(limits);
    const cookie = await enter(small);
    const silent = Array.from({ length: 12 }, () => connect(small.port, '127.0.0.1'));
    const closed = silent.map(
      (socket) =>
        new Promise<void>((resolve) => {
          socket.on('error', () => undefined);
          socket.once('close', () => resolve());
          socket.resume();
        }),
    );
    await Promise.all(closed);
    expect((await ask(small, { headers: { cookie } })).status).toBe(200);
    await small.close();
  });
});
