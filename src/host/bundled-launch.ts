/** The launcher as one bundle: goes on only where it is as new as what it was made of. */
import { openEarlyWindow } from './browser-window.ts';
import { isFresh, launcherBundle } from './build.ts';
import { readLaunchOptions } from './launch-options.ts';
import { productFolder } from './product-folder.ts';

/**
 * False where it is older than its modules; the browser that was begun by then is ended before it shows anything. To look first
 * would hold up every other start.
 */
export const launchIfFresh = async (): Promise<boolean> => {
  const options = readLaunchOptions(process.argv.slice(2));
  const early = await openEarlyWindow(options);
  if (!(await isFresh(launcherBundle, productFolder))) {
    await early?.window.close();
    await early?.door.close();
    return false;
  }
  const { launch } = await import('./launch-station.ts');
  process.exit(await launch(options, early));
};
