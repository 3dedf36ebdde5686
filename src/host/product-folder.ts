/** Where the product lies on the disk: the folder with `assets`, `demo-data` and `dist`. */
import { fileURLToPath } from 'node:url';

/** The same two steps up from the source file and from its bundle, `dist/electron/main.js`. */
export const productFolder = fileURLToPath(new URL('../..', import.meta.url));
