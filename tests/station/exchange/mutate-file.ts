/** Damages files of lists at random, the same in every run: bytes, texts, cells, and the XML inside a workbook. */
import type { SeededRandom } from '../../support/seeded-random.ts';

const nasty = [
  '"',
  '""',
  ',',
  ';',
  '\t',
  '\r',
  '\n',
  '\u0000',
  '\ufeff',
  '\ud800',
  '=1+1',
  "'",
  '<',
  '&',
  '&#x0;',
  '&#55296;',
  ']]>',
  '<!DOCTYPE x>',
  '1e308',
  '-1',
  '99999999999999999999',
  'NaN',
  '31/31/9999',
  '0/0/0',
  '6\' 99"',
  '½',
  '\u202e',
  '💥',
  '__proto__',
  'constructor',
  'XFD1048576',
] as const;

/** One to eight blows, each a change, a loss, a repetition, or a nasty text put in. */
export const mutated = (bytes: Buffer, random: SeededRandom): Buffer => {
  let damaged = Buffer.from(bytes);
  for (let blows = random.whole(1, 8); blows > 0; blows -= 1) {
    const at = random.whole(0, Math.max(0, damaged.length - 1));
    const length = random.whole(1, 12);
    const [before, after] = [damaged.subarray(0, at), damaged.subarray(at)];
    switch (random.whole(0, 6)) {
      case 0:
        if (damaged.length > 0) damaged[at] = random.whole(0, 255);
        break;
      case 1:
        damaged = Buffer.concat([before, after.subarray(length)]);
        break;
      case 2:
        damaged = Buffer.concat([before, after.subarray(0, length), after]);
        break;
      case 3:
        damaged = Buffer.concat([before, Buffer.from(random.pick(nasty)), after]);
        break;
      case 4:
        damaged = Buffer.concat([before, Buffer.from(random.pick(nasty)), after.subarray(length)]);
        break;
      case 5:
        damaged = Buffer.from(before);
        break;
      default: {
        const other = random.whole(0, Math.max(0, damaged.length - 1));
        damaged = Buffer.concat([before, damaged.subarray(other, other + length * 8), after]);
      }
    }
  }
  return damaged;
};

const encodings = [
  (text: string) => Buffer.from(text),
  (text: string) => Buffer.from(`\ufeff${text}`),
  (text: string) => Buffer.from(text, 'utf16le'),
  (text: string) => Buffer.from(`\ufeff${text}`, 'utf16le').swap16(),
  (text: string) => Buffer.from(text, 'latin1'),
];

/** In any encoding, with any of the three delimiters. */
export const encoded = (text: string, random: SeededRandom): Buffer =>
  random.pick(encodings)(text.replaceAll(',', random.pick([',', ';', '\t'])));

/** XML whose elements and attributes stay, with a few of its values changed. */
export const withOtherValues = (xml: Buffer, random: SeededRandom): Buffer =>
  Buffer.from(
    xml.toString('utf8').replace(/>([^<>]+)</g, (whole, value: string) => {
      if (random.next() > 0.04) return whole;
      const text =
        random.next() < 0.5 ? random.pick(nasty) : mutated(Buffer.from(value), random).toString('latin1');
      const safe = text.replace(/\p{Cc}/gu, '').toWellFormed();
      return `>${safe.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}<`;
    }),
  );
