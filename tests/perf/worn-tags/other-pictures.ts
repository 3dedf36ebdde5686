/** Pictures in which a reader of our tags must find none: other barcodes, other tags, and textured nothing. */
import bwipjs from 'bwip-js/node';
import sharp from 'sharp';
import { parseBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import { toPng } from '../../../src/tags/png.ts';
import type { Picture } from '../../../src/tags/read/picture.ts';
import type { Text } from '../../../src/typesetting/primitive.ts';
import { noiseField } from './field.ts';
import { fleet, statusTagOf } from './fleet.ts';
import { type Random, randomOf } from './random.ts';
import { cleanDotsPerMm } from './wear.ts';
import { cleanPicture, greyPicture } from './worn-tag.ts';

const alphabet = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const digits = '0123456789';
const printableCharacters = Array.from({ length: 95 }, (_, index) => String.fromCharCode(32 + index)).join(
  '',
);

const textOf = (length: number, characters: string, random: Random): string =>
  Array.from({ length }, () => characters.charAt(random.whole(0, characters.length - 1))).join('');

/** Ten characters of our alphabet whose check symbols are wrong. */
const noBenchId = (random: Random): string => {
  const text = textOf(10, alphabet, random);
  return parseBenchId(text).kind === 'exact' ? noBenchId(random) : text;
};

type Make = (random: Random) => Promise<Picture>;

/** A white label of 100×50 mm with one symbol of another maker in its middle, and its text under it. */
const barcode =
  (encoder: string, text: (random: Random) => string): Make =>
  async (random) => {
    const linear = !['qrcode', 'datamatrix'].includes(encoder);
    const symbol = await bwipjs.toBuffer({
      bcid: encoder,
      text: text(random),
      scale: linear ? random.whole(3, 5) : random.whole(6, 9),
      includetext: linear,
      ...(linear ? { height: 15 } : {}),
    });
    return labelWith(symbol);
  };

const labelWidth = Math.round(100 * cleanDotsPerMm);
const labelHeight = Math.round(50 * cleanDotsPerMm);

const labelWith = async (symbol: Buffer): Promise<Picture> => {
  const fitted = await sharp(symbol)
    .resize({
      width: labelWidth - 120,
      height: labelHeight - 80,
      fit: 'inside',
      withoutEnlargement: true,
      kernel: 'nearest',
    })
    .toBuffer();
  return greyPicture(
    await sharp({ create: { width: labelWidth, height: labelHeight, channels: 3, background: '#fff' } })
      .composite([{ input: fitted, gravity: 'centre' }])
      .png()
      .toBuffer(),
  );
};

/** A whole tag like ours, printed, symbols and all, under ten characters that are no bench ID. */
const imitation: Make = (random) => {
  const device = fleet[random.whole(0, fleet.length - 1)] as BenchId;
  return cleanPicture({ ...statusTagOf(device), benchId: noBenchId(random) as BenchId });
};

const binLabel: Make = (random) =>
  cleanPicture({
    kind: 'bin',
    code: textOf(random.whole(3, 10), 'ABCDEFGHJKMNPQRSTVWXYZ0123456789', random),
    place: { en: 'Red cage, bay 2', es: 'Jaula roja, puesto 2' },
    station: 'Harrow Point depot',
    languages: ['en', 'es'],
  });

/** Lines of words and of ten-character codes in the typeface of our tags. */
const writing: Make = async (random) => {
  const primitives = Array.from({ length: random.whole(3, 7) }, (_, line): Text => {
    const code = noBenchId(random);
    return {
      kind: 'text',
      text: random.chance(0.4) ? `${code.slice(0, 5)}-${code.slice(5)}` : textOf(14, `${alphabet}  `, random),
      role: 'detail',
      weight: random.chance(0.5) ? 'bold' : 'regular',
      colour: 'black',
      xMm: 5,
      baselineMm: 8 + 6.5 * line,
      sizeMm: random.between(4, 8),
    };
  });
  return greyPicture(await toPng({ widthMm: 100, heightMm: 50, dotsPerInch: 300, primitives }, 'two levels'));
};

const drawn = (lightAt: (x: number, y: number) => number): Picture => ({
  width: labelWidth,
  height: labelHeight,
  luminance: Uint8Array.from({ length: labelWidth * labelHeight }, (_, index) =>
    Math.min(255, Math.max(0, Math.round(255 * lightAt(index % labelWidth, Math.floor(index / labelWidth))))),
  ),
});

const noise: Make = async (random) => {
  const { values } = noiseField(labelWidth, labelHeight, random.between(2, 60), random.whole(1, 4), random);
  const contrast = random.between(1, 6);
  return drawn((x, y) => 0.5 + contrast * ((values[y * labelWidth + x] ?? 0.5) - 0.5));
};

/** Bars of random widths from 0.25 to 3 mm, like a barcode of no symbology. */
const stripes: Make = async (random) => {
  const dark = new Uint8Array(labelWidth * 2);
  let [at, ink] = [0, 0];
  const widest = random.between(0.6, 3);
  while (at < dark.length) {
    const end = at + Math.max(1, Math.round(random.between(0.25, widest) * cleanDotsPerMm));
    dark.fill(ink, at, end);
    [at, ink] = [end, 1 - ink];
  }
  const lean = random.between(-0.3, 0.3);
  return drawn((x, y) =>
    (dark[Math.round(x + labelWidth / 2 + lean * (y - labelHeight / 2))] ?? 0) === 1 ? 0.05 : 0.95,
  );
};

/** Wire rope across the picture: bright strands that lie askew over a round rope. */
const cable: Make = async (random) => {
  const across = random.between(4, 12) * cleanDotsPerMm;
  const lay = random.between(1.2, 4) * cleanDotsPerMm;
  const wire = lay / random.whole(5, 8);
  const lean = random.between(0.3, 0.9);
  const grain = noiseField(labelWidth, labelHeight, 3, 1, random).values;
  return drawn((x, y) => {
    const round = Math.sin((Math.PI * (y % across)) / across);
    const strand = 0.5 + 0.5 * Math.sin((2 * Math.PI * (x + lean * y)) / lay);
    const wires = 0.5 + 0.5 * Math.sin((2 * Math.PI * (x - lean * y)) / wire);
    return round * (0.3 + 0.5 * strand + 0.2 * wires) * (0.7 + 0.4 * (grain[y * labelWidth + x] ?? 0));
  });
};

const otherPictures = {
  'EAN-13': barcode('ean13', (random) => textOf(12, digits, random)),
  'Code 39': barcode('code39', (random) => textOf(random.whole(6, 12), alphabet, random)),
  ITF: barcode('interleaved2of5', (random) => textOf(2 * random.whole(4, 8), digits, random)),
  'Code 128': barcode('code128', (random) => textOf(random.whole(4, 16), printableCharacters, random)),
  'Code 128 of ten characters': barcode('code128', noBenchId),
  'QR Code': barcode(
    'qrcode',
    (random) => `https://norvane.example/${textOf(random.whole(5, 40), alphabet, random)}`,
  ),
  'Data Matrix': barcode('datamatrix', (random) => textOf(random.whole(4, 24), alphabet, random)),
  'imitated tag': imitation,
  'bin label': binLabel,
  writing,
  noise,
  stripes,
  cable,
} as const satisfies Record<string, Make>;

export type OtherPicture = keyof typeof otherPictures;
export const otherPictureKinds = Object.keys(otherPictures) as readonly OtherPicture[];

/** Clean, on 100×50 mm at 300 dots per inch; the kinds take turns. */
export const otherPicture = (index: number): Promise<Picture> =>
  otherPictures[kindOfOther(index)](randomOf(index, 'other picture'));

export const kindOfOther = (index: number): OtherPicture =>
  otherPictureKinds[index % otherPictureKinds.length] as OtherPicture;
