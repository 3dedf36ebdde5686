/** A station with its page on the loopback host: what a browser window and `serve` stand on. */
import { join } from 'node:path';
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import { openBrowserStation } from './browser-station.ts';
import { buildIfStale, rendererBundle } from './build.ts';
import { type Doorway, openDoorway } from './doorway.ts';
import { productFolder } from './product-folder.ts';
import { type RendererFiles, readRendererFiles } from './renderer-files.ts';
import { startWebHost } from './web-host.ts';

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

/** The page, built anew where it is stale; `undefined` where that fails, for an old page may not fit this station. */
export const builtPage = async (): Promise<RendererFiles | undefined> => {
  try {
    await buildIfStale(rendererBundle, productFolder);
  } catch {
    return undefined;
  }
  return readRendererFiles(join(productFolder, 'dist', 'renderer'));
};

export interface HostOptions {
  readonly folder: string;
  readonly files: RendererFiles;
  /** Closed with the host, and where there is none. */
  readonly door: Doorway;
}

/** Lets windows in at once; what they ask the station for waits until it is open. */
export const hostStation = async ({ folder, files, door }: HostOptions): Promise<HostedStation | Refusal> => {
  const opening = openBrowserStation(folder);
  const host = startWebHost({ station: opening, files, door });
  const station = await opening;
  if (isRefusal(station)) {
    await host.close();
    return station;
  }
  const tellAddresses: HostedStation['tellAddresses'] = (tell) =>
    tell(door.newAddress({ onUsed: () => tellAddresses(tell) }));
  return {
    origin: door.origin,
    newAddress: () => door.newAddress(),
    tellAddresses,
    deserted: host.deserted,
    close: async () => {
      await host.close();
      await station.close();
    },
  };
};

export interface HostedStationOptions {
  readonly folder: string;
  /** Any free port where it is 0. */
  readonly port: number;
}

/** Builds the page where it is stale, takes the port and opens the station. */
export const openHostedStation = async ({
  folder,
  port,
}: HostedStationOptions): Promise<HostedStation | HostProblem | Refusal> => {
  const files = await builtPage();
  if (files === undefined) return { problem: 'page-not-built' };
  const door = await openDoorway(port).catch(() => undefined);
  return door === undefined ? { problem: 'port-taken' } : hostStation({ folder, files, door });
};
