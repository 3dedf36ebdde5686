/** A window of the browser on this PC, sent to the door of a station. */
import { join } from 'node:path';
import { type AppWindow, openAppWindow } from './app-window.ts';
import { findBrowser } from './browser.ts';
import { rendererBundle, wasBuilt } from './build.ts';
import { dataFolder, windowFolder } from './data-folder.ts';
import { hasDisplay } from './display.ts';
import type { Doorway } from './doorway.ts';
import { findElectron } from './electron-runtime.ts';
import type { LaunchOptions } from './launch-options.ts';
import { openOwnDoor } from './own-door.ts';
import { productFolder } from './product-folder.ts';

export interface BrowserWindow extends AppWindow {
  readonly browser: string;
}

export const openBrowserWindow = async (
  browser: string,
  door: Doorway,
  folder: string,
): Promise<BrowserWindow> => {
  const address = door.newAddress({ isAlone: true });
  const window = await openAppWindow(browser, address, join(windowFolder(folder), 'browser'));
  return { ...window, browser };
};

export interface EarlyWindow {
  readonly door: Doorway;
  readonly window: BrowserWindow;
}

/**
 * A browser takes longer to start than a station to open. So where there will be a window in a browser, it is opened before
 * anything that the station is made of is loaded. `undefined` where that is not sure yet.
 */
export const openEarlyWindow = async (
  options: LaunchOptions | undefined,
): Promise<EarlyWindow | undefined> => {
  if (options === undefined || options.help || !showsWindow(options)) return undefined;
  if (!(await wasBuilt(rendererBundle, productFolder))) return undefined;
  if ((await findElectron(productFolder)) !== undefined) return undefined;
  const browser = await findBrowser();
  if (browser === undefined) return undefined;
  const { folder } = dataFolder(options.data, process.env);
  const door = await openOwnDoor(folder, options.port);
  if (door === undefined) return undefined;
  try {
    return { door, window: await openBrowserWindow(browser, door, folder) };
  } catch {
    await door.close();
    return undefined;
  }
};

export const showsWindow = (options: LaunchOptions): boolean =>
  hasDisplay(process.platform, process.env) && !options['headless-check'];
