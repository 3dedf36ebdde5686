/** Where the typefaces lie on the disk. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The bytes of a typeface of `assets/fonts`. */
export const readFontFile = (name: string): Uint8Array =>
  readFileSync(fileURLToPath(new URL(`../../assets/fonts/${name}`, import.meta.url)));
