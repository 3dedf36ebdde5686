/** Serves the built page to our windows under a scheme of its own, so that it has an origin and a strict policy. */
import { protocol } from 'electron';
import type { RendererFiles } from '../src/host/renderer-files.ts';
import { pageAddress, pageScheme } from './channel.ts';

/** Must be called before the app is ready. */
export const registerPageScheme = (): void =>
  protocol.registerSchemesAsPrivileged([
    {
      scheme: pageScheme,
      privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true },
    },
  ]);

export const servePage = (files: RendererFiles): void =>
  protocol.handle(pageScheme, ({ method, url }) => {
    const { host, pathname } = new URL(url);
    const file = method === 'GET' && host === new URL(pageAddress).host ? files.at(pathname) : undefined;
    return file === undefined
      ? new Response(null, { status: 404 })
      : new Response(Buffer.from(file.body), { headers: file.headers });
  });
