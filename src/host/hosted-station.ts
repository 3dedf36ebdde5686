/** A station with its page on the loopback host: what a browser window and `serve` stand on. */
import { join } from 'node:path';
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import { openStation } from '../station/station.ts';
import { buildIfStale, rendererBundle } from './build.ts';
import { faultLog } from './fault-log.ts';
import { keepDaily } from './keep-daily.ts';
import { productFolder } from './product-folder.ts';
import { type RendererFiles, readRendererFiles } from './renderer-files.ts';
import { surroundingsOf } from './surroundings.ts';
import { startWebHost, type WebHost } from './web-host.ts';

/** Why there is no host, as the key of its sentence. */
export interface HostProblem {
  readonly problem: 'page-not-built' | 'port-taken';
}

export interface HostedStation {
  readonly origin: string;
  /** An address that lets one window in, once. */
  newAddress(): string;
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

/** The page, built anew where it is stale; `undefined` where that fails, for an old page may not fit this station. */
export const builtPage = async (): Promise<RendererFiles | undefined> => {
  try {
    await buildIfStale(rendererBundle, productFolder);
  } catch {
    return undefined;
  }
  return readRendererFiles(join(productFolder, 'dist', 'renderer'));
};

/** Builds the page where it is stale. */
export const openHostedStation = async (
  options: HostedStationOptions,
): Promise<HostedStation | HostProblem | Refusal> => {
  const { folder, port } = options;
  const files = await builtPage();
  if (files === undefined) return { problem: 'page-not-built' };
  const station = await openStation({
    folder,
    productFolder,
    onFault: faultLog(folder),
    surroundings: surroundingsOf('browser', folder),
  });
  if (isRefusal(station)) return station;
  try {
    const host: WebHost = await startWebHost({ station, files, port });
    const stopKeeping = keepDaily(station, folder);
    const tellAddresses: HostedStation['tellAddresses'] = (tell) =>
      tell(host.newAddress(() => tellAddresses(tell)));
    return {
      origin: host.origin,
      newAddress: () => host.newAddress(),
      tellAddresses,
      deserted: host.deserted,
      close: async () => {
        stopKeeping();
        await host.close();
        await station.close();
      },
    };
  } catch {
    await station.close();
    return { problem: 'port-taken' };
  }
};
