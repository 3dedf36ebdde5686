/** Where the files that tags are made with lie on the disk: typefaces and the decoder. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

const require = createRequire(import.meta.url);

/** The bytes of a typeface of `assets/fonts`. */
export const readFontFile = (name: string): Uint8Array =>
  readFileSync(fileURLToPath(new URL(`../../assets/fonts/${name}`, import.meta.url)));

/** The bytes of the symbol decoder, from the installed package: nothing is fetched from the network. */
export const readDecoderBinary = (): ArrayBuffer =>
  Uint8Array.from(readFileSync(require.resolve('zxing-wasm/reader/zxing_reader.wasm'))).buffer;
