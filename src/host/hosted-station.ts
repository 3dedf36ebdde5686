/** A station with its page on the loopback host: what a browser window and `serve` stand on. */
import { join } from 'node:path';
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import { buildIfStale, rendererBundle } from './build.ts';
import { productFolder } from './product-folder.ts';
import { type RendererFiles, readRendererFiles } from './renderer-files.ts';
import { startWebHost, type WebHost } from './web-host.ts';

/** Why there is no host, as the key of its sentence. */
export interface HostProblem {
  readonly problem: 'page-not-built' | 'port-taken';
}

export interface HostedStation {
  readonly origin: string;
  readonly newAddress: NewAddress;
  /** Tells such an address, and when it was used the next one, so that there is always one to use. */
  tellAddresses(tell: (address: string) => void): void;
  /** Resolves when the last window is gone, or when none has come for hours. */
  readonly deserted: Promise<void>;
  close(): Promise<void>;
}

export interface HostedStationOptions {
  readonly folder: string;
  /** Any free port where it is 0. */
  readonly port: number;
}

/** An address that lets one window in, once; `onUsed` is told when it did. */
export type NewAddress = WebHost['newAddress'];

/** Called once the port is taken; the station is opened when it has resolved. */
export type OnListening = (newAddress: NewAddress) => Promise<void>;

/** The page, built anew where it is stale; `undefined` where that fails, for an old page may not fit this station. */
export const builtPage = async (): Promise<RendererFiles | undefined> => {
  try {
    await buildIfStale(rendererBundle, productFolder);
  } catch {
    return undefined;
  }
  return readRendererFiles(join(productFolder, 'dist', 'renderer'));
};

/**
 * Builds the page where it is stale, takes the port, then opens the station. `onListening` comes in between, for a browser takes
 * longer to start than a station to open; what it asks the station for waits until then.
 */
export const openHostedStation = async (
  { folder, port }: HostedStationOptions,
  onListening: OnListening = async () => undefined,
): Promise<HostedStation | HostProblem | Refusal> => {
  const files = await builtPage();
  if (files === undefined) return { problem: 'page-not-built' };
  let beginToOpen = (): void => undefined;
  const opening = new Promise<void>((resolve) => {
    beginToOpen = resolve;
  }).then(async () => {
    const { openBrowserStation } = await import('./browser-station.ts');
    return openBrowserStation(folder);
  });
  const host = await startWebHost({ station: opening, files, port }).catch(() => undefined);
  if (host === undefined) return { problem: 'port-taken' };
  await onListening(host.newAddress);
  beginToOpen();
  const station = await opening;
  if (isRefusal(station)) {
    await host.close();
    return station;
  }
  const tellAddresses: HostedStation['tellAddresses'] = (tell) =>
    tell(host.newAddress(() => tellAddresses(tell)));
  return {
    origin: host.origin,
    newAddress: host.newAddress,
    tellAddresses,
    deserted: host.deserted,
    close: async () => {
      await host.close();
      await station.close();
    },
  };
};
