/** Attacks on the files of the loopback host: ways out of the folder of the page, each in the request line as it is written here. */
import { describe, expect, test } from 'vitest';
import { ask, enter, exchange, hostOfFile } from './started-host.ts';

const host = hostOfFile();

const up = (step: string, separator = '/'): string => `/assets${separator}${`${step}${separator}`.repeat(8)}`;

/** Every one would end at `/etc/passwd`, or at a file of the program, for some reader of paths. */
const spellings: readonly string[] = [
  `${up('..')}etc/passwd`,
  `${up('%2e%2e')}etc/passwd`,
  `${up('%2E%2E')}etc/passwd`,
  `${up('.%2e')}etc/passwd`,
  `${up('%2e.')}etc/passwd`,
  `${up('..', '%2f')}etc%2fpasswd`,
  `${up('..', '%2F')}etc%2Fpasswd`,
  `${up('%2e%2e', '%2f')}etc%2fpasswd`,
  `${up('..', '\\')}etc\\passwd`,
  `${up('..', '%5c')}etc%5cpasswd`,
  `${up('%2e%2e', '%5c')}etc%5cpasswd`,
  `${up('..', '//')}etc//passwd`,
  `${up('..', '/./')}etc/passwd`,
  `${up('%252e%252e', '%252f')}etc%252fpasswd`,
  `${up('%25252e%25252e')}etc/passwd`,
  `${up('..%00')}etc/passwd`,
  `${up('..%0d%0a')}etc/passwd`,
  `${up('..;')}etc/passwd`,
  `${up('..;x=1')}etc/passwd`,
  `${up('....')}etc/passwd`,
  `${up('....', '//')}etc/passwd`,
  `${up('%c0%ae%c0%ae')}etc/passwd`,
  `${up('%e0%80%ae%e0%80%ae')}etc/passwd`,
  `${up('..', '%c0%af')}etc%c0%afpasswd`,
  `${up('..', '%c1%9c')}etc%c1%9cpasswd`,
  `${up('%u002e%u002e')}etc/passwd`,
  `${up('..', '%u2215')}etc%u2215passwd`,
  `${up('%ef%bc%8e%ef%bc%8e')}etc/passwd`,
  `${up('..', '%ef%bc%8f')}etc%ef%bc%8fpasswd`,
  `${up('%e2%80%a4%e2%80%a4')}etc/passwd`,
  `${up('%32%65%32%65')}etc/passwd`,
  '/etc/passwd',
  '/%2fetc/passwd',
  '/%2fetc%2fpasswd',
  '/./etc/passwd',
  '/assets/%2e/../../../etc/passwd',
  '/assets/page.js/../../../../etc/passwd',
  '/assets/page.js%00.html',
  '/assets/page.js/',
  '/assets/page.js::$DATA',
  '/assets/PAGE.JS',
  '/assets/',
  '/assets',
  '/index.html',
  '/assets/notes.unknown',
  '/../package.json',
  '/..%2fpackage.json',
  '/%2e%2e%2fsrc/host/keyring.ts',
  '/C:/Windows/win.ini',
  '/C%3a%5cWindows%5cwin.ini',
  '/file:///etc/passwd',
  '/__proto__',
  '/constructor',
  '/toString',
];

/** None of these is a path of this host at all. */
const otherForms: readonly string[] = [
  '//etc/passwd',
  '///etc/passwd',
  '/\\etc\\passwd',
  '\\\\127.0.0.1\\c$\\Windows\\win.ini',
  'file:///etc/passwd',
  '../../etc/passwd',
  '*',
  'etc/passwd',
];

describe('path traversal', () => {
  test('is tried in at least forty spellings', () => {
    expect(new Set([...spellings, ...otherForms]).size).toBeGreaterThanOrEqual(40);
  });

  test('finds nothing, however it is spelled: only what is on the list of the page is there', async () => {
    const cookie = await enter(host.current);
    for (const path of spellings)
      for (const method of ['GET', 'HEAD']) {
        const answer = await ask(host.current, { method, path, headers: { cookie } });
        expect.soft(answer.status, `${method} ${path}`).toBe(404);
        expect.soft(answer.body, path).not.toMatch(/root:|"name"|import |\[fonts\]/);
      }
  });

  test('finds nothing by what is no path at all', async () => {
    const cookie = await enter(host.current);
    for (const path of otherForms) {
      const answer = await ask(host.current, { path, headers: { cookie } });
      expect.soft(answer.status, path).toBe(400);
      expect.soft(answer.body, path).not.toContain('root:');
    }
  });

  test('finds nothing through a query or a fragment', async () => {
    const cookie = await enter(host.current);
    for (const path of [
      '/?file=../../etc/passwd',
      '/assets/page.js?/../../../etc/passwd',
      '/#/../etc/passwd',
    ]) {
      const answer = await ask(host.current, { path, headers: { cookie } });
      expect.soft(answer.body, path).not.toContain('root:');
    }
  });

  test('is not helped by bytes that are no text', async () => {
    const cookie = await enter(host.current);
    const line = Buffer.concat([
      Buffer.from('GET /assets/'),
      Buffer.from([0xc0, 0xae, 0xc0, 0xae, 0x2f, 0x00, 0xff]),
      Buffer.from(
        ` HTTP/1.1\r\nHost: 127.0.0.1:${host.current.port}\r\nCookie: ${cookie}\r\nConnection: close\r\n\r\n`,
      ),
    ]);
    expect(await exchange(host.current.port, line)).toMatch(/^HTTP\/1\.1 4/);
  });
});

test('a folder is never listed', async () => {
  const cookie = await enter(host.current);
  for (const path of ['/assets', '/assets/', '/assets/.', '/.', '/./']) {
    const { body } = await ask(host.current, { path, headers: { cookie } });
    expect(body, path).not.toContain('notes.unknown');
  }
});
