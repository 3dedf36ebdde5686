/** The launcher as one bundle: starts only where it is as new as what it was made of. */
import { isFresh, launcherBundle } from './build.ts';
import { productFolder } from './product-folder.ts';

/** False where it did not start, for it is older than its modules. */
export const launchIfFresh = async (): Promise<boolean> => {
  if (!(await isFresh(launcherBundle, productFolder))) return false;
  await import('./launch.ts');
  return true;
};
