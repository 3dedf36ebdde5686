/** Where the decoders and the program of the reading thread lie on the disk. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

const require = createRequire(import.meta.url);

/** The bytes of the symbol decoder, from the installed package: nothing is fetched from the network. */
export const readDecoderBinary = (): ArrayBuffer => packageFile('zxing-wasm/reader/zxing_reader.wasm');

/** The bytes of the second decoder, likewise. */
export const readSecondDecoderBinary = (): ArrayBuffer => packageFile('@undecaf/zbar-wasm/dist/zbar.wasm');

const packageFile = (name: string): ArrayBuffer =>
  Uint8Array.from(readFileSync(require.resolve(name))).buffer;

/** The program of the thread that reads pictures, and what loads TypeScript in it. */
export const pictureThread = (): { readonly program: string; readonly loader: string } => ({
  program: new URL('../../src/tags/read/picture-thread.ts', import.meta.url).href,
  loader: new URL('dist/esm/api/index.mjs', pathToFileURL(require.resolve('tsx/package.json'))).href,
});
