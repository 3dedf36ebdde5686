/** `npm start`: the window where one can be opened at once, then everything else. */
import { openEarlyWindow } from './browser-window.ts';
import { readLaunchOptions } from './launch-options.ts';

const options = readLaunchOptions(process.argv.slice(2));
const early = await openEarlyWindow(options);
const { launch } = await import('./launch-station.ts');
process.exit(await launch(options, early));
