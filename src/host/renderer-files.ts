/** The built page and its files: the list of everything that may be served, made once at the start. */
import { readdir, readFile } from 'node:fs/promises';
import { extname, join, relative, sep } from 'node:path';
import { newNonce, securityHeaders } from './security-headers.ts';

/** A file as it is served, with every header. */
export interface ServedFile {
  readonly body: Uint8Array;
  readonly headers: Readonly<Record<string, string>>;
}

export interface RendererFiles {
  /** The file at a path of an address, `/` for the page itself; `undefined` for anything that is not on the list. */
  at(path: string): ServedFile | undefined;
}

const contentTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
};

/** `undefined` where the page has not been built. Files whose kind is not known are left out. */
export const readRendererFiles = async (folder: string): Promise<RendererFiles | undefined> => {
  const page = await readFile(join(folder, 'index.html'), 'utf8').catch(() => undefined);
  if (page === undefined) return undefined;
  const files = new Map<string, { body: Uint8Array; contentType: string }>();
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    const contentType = contentTypes[extname(entry.name)];
    if (!entry.isFile() || contentType === undefined || contentType === contentTypes['.html']) continue;
    const path = join(entry.parentPath, entry.name);
    files.set(`/${relative(folder, path).split(sep).join('/')}`, { body: await readFile(path), contentType });
  }
  return {
    at: (path) => {
      const nonce = newNonce();
      if (path === '/') return served(Buffer.from(withNonce(page, nonce)), 'text/html; charset=utf-8', nonce);
      const file = files.get(path);
      return file && served(file.body, file.contentType, nonce);
    },
  };
};

/**
 * The name of every file but the page itself changes with what is in it, so the browser may keep it (RFC 8246), and a script
 * as it compiled it.
 */
const keptForGood = 'private, max-age=31536000, immutable';

/** The policy of a script is heeded only where the script is a worker. */
const served = (body: Uint8Array, contentType: string, nonce: string): ServedFile => ({
  body,
  headers: {
    ...securityHeaders(nonce, contentType === contentTypes['.js'] ? 'worker' : 'page'),
    'content-type': contentType,
    ...(contentType === contentTypes['.html'] ? {} : { 'cache-control': keptForGood }),
  },
});

const withNonce = (page: string, nonce: string): string =>
  page.replace(/<head[^>]*>/i, (head) => `${head}<meta property="csp-nonce" nonce="${nonce}">`);
