/** The symbols in a picture, whatever they are and wherever they lie. */

import sharp from 'sharp';
import {
  prepareZXingModule,
  type ReadInputBarcodeFormat,
  type ReadResult,
  readBarcodes,
} from 'zxing-wasm/reader';
import { type Refusal, refusal } from '../../domain/refusal.ts';
import type { Symbology } from '../../typesetting/symbol.ts';
import { readDecoderBinary } from '../asset-files.ts';

export interface ReadSymbol {
  /** `Code 128`, `QR Code`, `Data Matrix`; other symbologies under the name that the decoder gives them. */
  readonly symbology: string;
  readonly text: string;
}

/** Far above any photograph of a tag; a file that claims more is refused before it takes the memory. */
const mostPixels = 100_000_000;

/** Scales at which the picture is looked at, one after the other, until a symbol is found. */
const scales = [1, 0.5, 2, 0.25] as const;
const mostScaledPixels = 40_000_000;

/** What tags and makers' labels carry. Weaker symbologies are left out: they are found where there are none. */
const formats: ReadInputBarcodeFormat[] = [
  'Code128',
  'QRCode',
  'DataMatrix',
  'Code39',
  'Code93',
  'EAN13',
  'EAN8',
  'UPCA',
  'ITF',
  'PDF417',
  'Aztec',
];

const names: Record<string, string> = {
  Code128: 'Code 128',
  QRCode: 'QR Code',
  DataMatrix: 'Data Matrix',
};

let prepared = false;
const prepareDecoder = (): void => {
  if (prepared) return;
  prepareZXingModule({ overrides: { wasmBinary: readDecoderBinary() } });
  prepared = true;
};

/** From the bytes of a PNG or JPEG file. An empty list where there is no symbol; a refusal where there is no picture. */
export const readSymbols = async (image: Uint8Array): Promise<readonly ReadSymbol[] | Refusal> => {
  const size = await sizeOf(image);
  if (size === undefined) return refusal('image-unreadable');
  for (const scale of scales) {
    const width = Math.round(size.width * scale);
    const height = Math.round(size.height * scale);
    if (Math.min(width, height) < 20 || width * height > mostScaledPixels * (scale === 1 ? 3 : 1)) continue;
    const picture = await pixelsOf(image, width, height);
    if (picture === undefined) return refusal('image-unreadable');
    const found = await decode(picture);
    if (found.length > 0) return found;
  }
  return [];
};

const open = (image: Uint8Array) => sharp(image, { limitInputPixels: mostPixels, failOn: 'error' });

const sizeOf = async (image: Uint8Array): Promise<{ width: number; height: number } | undefined> => {
  try {
    const { autoOrient, format } = await open(image).metadata();
    if (!['png', 'jpeg', 'webp'].includes(format)) return undefined;
    return autoOrient.width * autoOrient.height > mostPixels ? undefined : autoOrient;
  } catch {
    return undefined;
  }
};

/** Red, green, blue and alpha of each dot, row by row. */
export interface Pixels {
  readonly data: Uint8ClampedArray<ArrayBuffer>;
  readonly width: number;
  readonly height: number;
  readonly colorSpace: 'srgb';
}

const pixelsOf = async (image: Uint8Array, width: number, height: number): Promise<Pixels | undefined> => {
  try {
    const { data, info } = await open(image)
      .autoOrient()
      .flatten({ background: '#fff' })
      .resize(width, height, { fit: 'fill', kernel: 'cubic' })
      .toColourspace('srgb')
      .ensureAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    return {
      data: Uint8ClampedArray.from(data),
      width: info.width,
      height: info.height,
      colorSpace: 'srgb',
    };
  } catch {
    return undefined;
  }
};

/** The one symbology that is looked for, in a picture of clean dots in which it lies level: no restoring, no turning. */
export const readPlain = async (picture: Pixels, symbology: Symbology): Promise<readonly ReadSymbol[]> => {
  prepareDecoder();
  const results = await readBarcodes(picture, {
    formats: [plainFormats[symbology]],
    textMode: 'Plain',
    maxNumberOfSymbols: 2,
    tryRotate: false,
    tryInvert: false,
    tryDownscale: false,
  });
  return validResults(results);
};

const plainFormats: Record<Symbology, ReadInputBarcodeFormat> = {
  'Code 128': 'Code128',
  'QR Code': 'QRCode',
  'Data Matrix': 'DataMatrix',
};

const decode = async (picture: Pixels): Promise<readonly ReadSymbol[]> => {
  prepareDecoder();
  const results = await readBarcodes(picture, {
    formats,
    textMode: 'Plain',
    maxNumberOfSymbols: 0,
  });
  return validResults(results);
};

const validResults = (results: readonly ReadResult[]): readonly ReadSymbol[] =>
  results
    .filter((result) => result.isValid && result.text !== '')
    .map((result) => ({
      symbology: names[result.format] ?? result.format,
      text: result.text,
    }));
