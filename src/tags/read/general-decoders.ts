/** The general decoders that are asked first: each reads whole symbols or nothing. Runs in Node and in a browser alike. */
import { scanGrayBuffer, setModuleArgs } from '@undecaf/zbar-wasm';
import jsQR from 'jsqr';
import { prepareZXingModule, type ReadInputBarcodeFormat, readBarcodes } from 'zxing-wasm/reader';
import type { Symbology } from '../../typesetting/symbol.ts';
import type { Picture } from './picture.ts';

export type DecoderName = 'zxing-cpp' | 'zbar' | 'jsqr';

export interface DecodedSymbol {
  readonly decoder: DecoderName;
  readonly symbology: Symbology;
  readonly text: string;
  /** The middle of the symbol, in dots of the picture that was given. */
  readonly x: number;
  readonly y: number;
}

/** The WebAssembly of the decoders, given by whoever knows where the files lie: nothing is fetched. */
export interface DecoderBinaries {
  readonly zxing: ArrayBuffer;
  readonly zbar: ArrayBuffer;
}

let prepared = false;

/** To be called once in each thread, before anything is decoded; without it no decoder finds anything. */
export const prepareDecoders = ({ zxing, zbar }: DecoderBinaries): void => {
  prepared = true;
  prepareZXingModule({ overrides: { wasmBinary: zxing } });
  const zbarModule = { wasmBinary: zbar, locateFile: (name: string) => name };
  setModuleArgs(zbarModule);
};

/** Symbols of the three symbologies that our tags carry, of any content. */
export const decodeWith = (decoder: DecoderName, picture: Picture): Promise<readonly DecodedSymbol[]> => {
  if (!prepared) return Promise.resolve([]);
  switch (decoder) {
    case 'zxing-cpp':
      return byZxing(picture);
    case 'zbar':
      return byZbar(picture);
    case 'jsqr':
      return Promise.resolve(byJsqr(picture));
  }
};

const zxingFormats: ReadInputBarcodeFormat[] = ['Code128', 'QRCode', 'DataMatrix'];
const zxingNames: Readonly<Record<string, Symbology>> = {
  Code128: 'Code 128',
  QRCode: 'QR Code',
  DataMatrix: 'Data Matrix',
};

const byZxing = async (picture: Picture): Promise<readonly DecodedSymbol[]> => {
  const { width, height } = picture;
  const pixels = { data: coloured(picture), width, height, colorSpace: 'srgb' } as const;
  const results = await readBarcodes(pixels, {
    formats: zxingFormats,
    textMode: 'Plain',
    maxNumberOfSymbols: 0,
  });
  return results.flatMap(({ isValid, format, text, position }) => {
    const symbology = zxingNames[format];
    if (!isValid || symbology === undefined) return [];
    const corners = [position.topLeft, position.topRight, position.bottomRight, position.bottomLeft];
    return [{ decoder: 'zxing-cpp', symbology, text, ...middleOf(corners) } as const];
  });
};

/** Names of symbologies as zbar gives them. */
const zbarNames: Readonly<Record<string, Symbology>> = { ZBAR_CODE128: 'Code 128', ZBAR_QRCODE: 'QR Code' };

const byZbar = async ({ width, height, luminance }: Picture): Promise<readonly DecodedSymbol[]> => {
  const symbols = await scanGrayBuffer(luminance.slice().buffer, width, height);
  return symbols.flatMap((symbol) => {
    const symbology = zbarNames[symbol.typeName];
    if (symbology === undefined) return [];
    return [{ decoder: 'zbar', symbology, text: symbol.decode(), ...middleOf(symbol.points) } as const];
  });
};

const byJsqr = (picture: Picture): readonly DecodedSymbol[] => {
  const found = jsQR(coloured(picture), picture.width, picture.height, { inversionAttempts: 'dontInvert' });
  if (found === null || found.data === '') return [];
  const { topLeftCorner, topRightCorner, bottomRightCorner, bottomLeftCorner } = found.location;
  const corners = [topLeftCorner, topRightCorner, bottomRightCorner, bottomLeftCorner];
  return [{ decoder: 'jsqr', symbology: 'QR Code', text: found.data, ...middleOf(corners) }];
};

const coloured = ({ luminance }: Picture): Uint8ClampedArray<ArrayBuffer> => {
  const data = new Uint8ClampedArray(4 * luminance.length);
  const dots = new Uint32Array(data.buffer);
  for (let at = 0; at < luminance.length; at += 1) dots[at] = (luminance[at] ?? 0) * 0x010101 + 0xff000000;
  return data;
};

const middleOf = (points: readonly { readonly x: number; readonly y: number }[]) => ({
  x: points.reduce((sum, { x }) => sum + x, 0) / Math.max(1, points.length),
  y: points.reduce((sum, { y }) => sum + y, 0) / Math.max(1, points.length),
});
