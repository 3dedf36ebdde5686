/** Hooks of the module loader that tell of every package that is imported, by its name. */
import type { InitializeHook, ResolveHook } from 'node:module';
import type { MessagePort } from 'node:worker_threads';

let port: MessagePort | undefined;

export const initialize: InitializeHook<{ readonly port: MessagePort }> = (data) => {
  port = data.port;
};

const packageName = /^(?:@[^/]+\/)?[^/@.:][^/:]*/;

export const resolve: ResolveHook = (specifier, context, nextResolve) => {
  if (!specifier.includes(':')) {
    const name = packageName.exec(specifier)?.[0];
    if (name !== undefined) port?.postMessage(name);
  }
  return nextResolve(specifier, context);
};
