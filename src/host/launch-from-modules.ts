/** The launcher from its modules, which first leave the bundle that `npm start` runs from then on. */
import { buildIfStale, launcherBundle } from './build.ts';
import { productFolder } from './product-folder.ts';

// Where no bundle can be made or kept, the modules start all the same.
await buildIfStale(launcherBundle, productFolder).catch(() => undefined);
await import('./launch.ts');
