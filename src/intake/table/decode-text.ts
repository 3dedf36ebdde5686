/** The text of a file whose encoding nobody says: UTF-8, UTF-16 in either order, or Windows-1252. */
import { type Refusal, refusal } from '../../domain/refusal.ts';

export type TextEncoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

export interface DecodedText {
  readonly text: string;
  readonly encoding: TextEncoding;
}

/**
 * A byte order mark decides; without one the zero bytes of Latin text in UTF-16 do. What is valid UTF-8 is UTF-8, for other
 * text hardly ever is by chance; the rest is Windows-1252. Sources: WHATWG Encoding Standard (decoders, byte order marks),
 * RFC 3629 (validity of UTF-8).
 */
export const decodeText = (bytes: Uint8Array): DecodedText | Refusal => {
  const encoding = encodingOf(bytes);
  const text =
    decoded(bytes, encoding) ?? (encoding === 'utf-8' ? decoded(bytes, 'windows-1252') : undefined);
  if (text === undefined || !isText(text)) return refusal('table-not-text', {}, 'contentBase64');
  const isFallback = encoding === 'utf-8' && decoded(bytes, 'utf-8') === undefined;
  return { text, encoding: isFallback ? 'windows-1252' : encoding };
};

const encodingOf = (bytes: Uint8Array): TextEncoding => {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  return utf16ByZeros(bytes) ?? 'utf-8';
};

const sampledBytes = 8192;

/** Of Latin text in UTF-16 nearly every second byte is zero; 40 of 100 on one side and 5 on the other leave no doubt. */
const utf16ByZeros = (bytes: Uint8Array): TextEncoding | undefined => {
  const pairs = Math.floor(Math.min(bytes.length, sampledBytes) / 2);
  if (pairs < 4 || bytes.length % 2 !== 0) return undefined;
  let even = 0;
  let odd = 0;
  for (let pair = 0; pair < pairs; pair += 1) {
    if (bytes[2 * pair] === 0) even += 1;
    if (bytes[2 * pair + 1] === 0) odd += 1;
  }
  if (odd > 0.4 * pairs && even < 0.05 * pairs) return 'utf-16le';
  return even > 0.4 * pairs && odd < 0.05 * pairs ? 'utf-16be' : undefined;
};

const decoded = (bytes: Uint8Array, encoding: TextEncoding): string | undefined => {
  if (encoding === 'windows-1252') return decodeWindows1252(bytes);
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
};

/** Of the bytes 80 to 9F, in order; a space where there is none (WHATWG Encoding Standard, index windows-1252). */
const windowsSigns = '€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ ž Ÿ';

/** By hand, for the decoder of some versions of Node takes Windows-1252 for ISO 8859-1. */
const decodeWindows1252 = (bytes: Uint8Array): string =>
  Buffer.from(bytes)
    .toString('latin1')
    .replace(/[\x80-\x9f]/g, (character) => {
      const sign = windowsSigns.charAt(character.charCodeAt(0) - 0x80);
      return sign === ' ' ? character : sign;
    });

/** Control characters that no text file holds: it is a file of another kind. */
const isText = (text: string): boolean => {
  for (let index = 0; index < text.length; index += 1) {
    const unit = text.charCodeAt(index);
    const isControl = (unit < 32 && unit !== 9 && unit !== 10 && unit !== 13) || unit === 127;
    if (isControl || (unit >= 128 && unit < 160)) return false;
  }
  return true;
};
