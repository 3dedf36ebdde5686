/** The loopback host as its own page knows it. What others try on it is in `tests/security`. */
import { describe, expect, test, vi } from 'vitest';
import { ask, callHeaders, enter, hostOfFile, post, startHost } from '../security/started-host.ts';

const host = hostOfFile();

const call = async (operation: string, input: unknown, language = 'en') => {
  const headers = callHeaders(host.current, await enter(host.current));
  return JSON.parse((await post(host.current, headers, JSON.stringify({ operation, input, language }))).body);
};

describe('coming in', () => {
  test('tells whoever gave the address that it was used, and leads to the page', async () => {
    const onUsed = vi.fn();
    const path = host.current.door.newAddress({ onUsed }).slice(host.current.door.origin.length);
    const entry = await ask(host.current, { path });
    expect(entry.status).toBe(303);
    expect(entry.headers.location).toBe('/');
    expect(onUsed).toHaveBeenCalledOnce();
  });

  test('is refused to a browser as text, in its language', async () => {
    const headers = { accept: 'text/html,*/*', 'accept-language': 'fr, es-MX;q=0.9' };
    const answer = await ask(host.current, { headers });
    expect(answer.headers['content-type']).toBe('text/plain; charset=utf-8');
    expect(answer.body).toContain('Abra la dirección');
  });
});

describe('a window of a browser that has no other page', () => {
  test('is parted from none, and everything else is forbidden to it as to any', async () => {
    const { door } = host.current;
    const path = door.newAddress({ isAlone: true }).slice(door.origin.length);
    const entry = await ask(host.current, { path });
    const cookie = entry.headers['set-cookie']?.split(';')[0] ?? '';
    const alone = await ask(host.current, { headers: { cookie } });
    const usual = await ask(host.current, { headers: { cookie: await enter(host.current) } });
    expect(entry.headers).not.toHaveProperty('cross-origin-opener-policy');
    expect(alone.status).toBe(200);
    const named = ({ headers }: typeof alone) => Object.keys(headers).filter((name) => name !== 'date');
    expect(named(usual)).toContain('cross-origin-opener-policy');
    expect(named(alone)).toEqual(named(usual).filter((name) => name !== 'cross-origin-opener-policy'));
    expect(entry.headers['set-cookie']).toContain('SameSite=Strict');
  });
});

describe('the page', () => {
  test('is served with a policy that allows its own files only, with a nonce that is never the same', async () => {
    const cookie = await enter(host.current);
    const [first, second] = [
      await ask(host.current, { headers: { cookie } }),
      await ask(host.current, { headers: { cookie } }),
    ];
    const policy = String(first.headers['content-security-policy']);
    expect(first.status).toBe(200);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("worker-src 'self'");
    expect(policy).not.toContain('unsafe');
    const nonce = /'nonce-([^']+)'/.exec(policy)?.[1] ?? '';
    expect(nonce).toHaveLength(24);
    expect(first.body).toContain(`<meta property="csp-nonce" nonce="${nonce}">`);
    expect(second.body).not.toContain(nonce);
  });

  test('has its files served with their kind, and no script makes code of text where it runs as a worker', async () => {
    const headers = { cookie: await enter(host.current) };
    const answer = await ask(host.current, { path: '/assets/page.js', headers });
    expect(answer.status).toBe(200);
    expect(answer.headers['content-type']).toBe('text/javascript; charset=utf-8');
    const policy = String(answer.headers['content-security-policy']);
    expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval';");
    expect(policy.replace('wasm-unsafe-eval', '')).not.toContain('unsafe');
  });

  test('is allowed the camera of the PC and nothing else of it', async () => {
    const { headers } = await ask(host.current, { headers: { cookie: await enter(host.current) } });
    const allowed = headers['permissions-policy']?.split(', ').filter((each) => !each.endsWith('=()'));
    expect(allowed).toEqual(['camera=(self)']);
  });
});

describe('a call', () => {
  test('reaches the station and brings its answer back', async () => {
    expect(await call('station.status', {})).toEqual({ ok: true, output: { state: 'empty' } });
  });

  test('to an unknown operation is answered with a sentence in the language of the window', async () => {
    const answer = await call('station.explode', {}, 'es');
    expect(answer.error.code).toBe('operation-unknown');
    expect(answer.error.sentence).toContain('No');
  });

  test.each(['GET', 'PUT', 'DELETE', 'OPTIONS', 'HEAD'])('by %s is refused', async (method) => {
    const headers = callHeaders(host.current, await enter(host.current));
    const answer = await ask(host.current, { method, path: '/call', headers });
    expect(answer.status).toBe(405);
    expect(answer.headers.allow).toBe('POST');
  });
});

describe('the last window', () => {
  const patience = { afterLeavingMs: 50, unheardMs: 60_000 };
  const leave = async (started: Awaited<ReturnType<typeof startHost>>, cookie: string): Promise<number> => {
    const headers = { cookie, origin: started.door.origin };
    return (await ask(started, { method: 'POST', path: '/leave', headers, body: '' })).status;
  };

  test('leaves a host that may end, and not while another is there', async () => {
    const small = await startHost({ patience });
    const ended = vi.fn();
    void small.host.deserted.then(ended);
    const [first, second] = [await enter(small), await enter(small)];
    expect(await leave(small, first)).toBe(200);
    await new Promise((resolve) => setTimeout(resolve, 400));
    expect(ended).not.toHaveBeenCalled();
    expect(await leave(small, second)).toBe(200);
    await vi.waitFor(() => expect(ended).toHaveBeenCalledOnce(), { timeout: 5_000 });
    await small.close();
  });

  test('that never came leaves a host that may end too', async () => {
    const small = await startHost({ patience: { afterLeavingMs: 50, unheardMs: 200 } });
    await small.host.deserted;
    await small.close();
  });
});
