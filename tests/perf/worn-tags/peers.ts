/** General decoders, each as strong as its options make it, on the same grey pictures as our reader. */
import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { scanGrayBuffer, ZBarConfigType, ZBarScanner, ZBarSymbolType } from '@undecaf/zbar-wasm';
import {
  BarcodeFormat,
  BinaryBitmap,
  DecodeHintType,
  GlobalHistogramBinarizer,
  HybridBinarizer,
  MultiFormatReader,
  RGBLuminanceSource,
} from '@zxing/library';
import jsQR from 'jsqr';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { readDecoderBinary } from '../../../src/tags/asset-files.ts';
import type { Picture } from '../../../src/tags/read/picture.ts';

/** All texts that the decoder finds in the picture. */
type Decoder = (picture: Picture) => Promise<readonly string[]>;

export const peerNames = ['@zxing/library', 'zxing-cpp', 'zbar', 'jsQR', 'libdmtx'] as const;
export type PeerName = (typeof peerNames)[number];

const rgba = ({ luminance }: Picture): Uint8ClampedArray<ArrayBuffer> => {
  const data = new Uint8ClampedArray(luminance.length * 4);
  for (let index = 0; index < luminance.length; index += 1)
    data.fill(luminance[index] ?? 0, 4 * index, 4 * index + 3).fill(255, 4 * index + 3, 4 * index + 4);
  return data;
};

/** Each symbology alone, for it stops at the first symbol, and with both of its binarisers, try-harder on. */
const zxingJs: Decoder = async (picture) => {
  const { width, height, luminance } = picture;
  const source = new RGBLuminanceSource(Uint8ClampedArray.from(luminance), width, height);
  const texts: string[] = [];
  for (const format of [BarcodeFormat.CODE_128, BarcodeFormat.QR_CODE, BarcodeFormat.DATA_MATRIX])
    for (const binarizer of [new HybridBinarizer(source), new GlobalHistogramBinarizer(source)]) {
      const hints = new Map<DecodeHintType, unknown>([
        [DecodeHintType.TRY_HARDER, true],
        [DecodeHintType.POSSIBLE_FORMATS, [format]],
      ]);
      try {
        texts.push(new MultiFormatReader().decode(new BinaryBitmap(binarizer), hints).getText());
      } catch {
        // It throws where it finds nothing.
      }
    }
  return texts;
};

let prepared = false;

const zxingCpp: Decoder = async (picture) => {
  if (!prepared) prepareZXingModule({ overrides: { wasmBinary: readDecoderBinary() } });
  prepared = true;
  const results = await readBarcodes(
    { data: rgba(picture), width: picture.width, height: picture.height, colorSpace: 'srgb' },
    {
      formats: ['Code128', 'QRCode', 'DataMatrix'],
      tryHarder: true,
      tryRotate: true,
      tryInvert: true,
      tryDownscale: true,
      textMode: 'Plain',
      maxNumberOfSymbols: 0,
    },
  );
  return results.filter(({ isValid }) => isValid).map(({ text }) => text);
};

let scanner: Promise<ZBarScanner> | undefined;

/** Every row and every column. */
const openScanner = async (): Promise<ZBarScanner> => {
  const opened = await ZBarScanner.create();
  for (const density of [ZBarConfigType.ZBAR_CFG_X_DENSITY, ZBarConfigType.ZBAR_CFG_Y_DENSITY])
    opened.setConfig(ZBarSymbolType.ZBAR_NONE, density, 1);
  return opened;
};

const zbar: Decoder = async ({ width, height, luminance }) => {
  scanner ??= openScanner();
  const symbols = await scanGrayBuffer(Uint8Array.from(luminance).buffer, width, height, await scanner);
  return symbols.map((symbol) => symbol.decode());
};

const jsQr: Decoder = async (picture) => {
  const found = jsQR(rgba(picture), picture.width, picture.height, { inversionAttempts: 'attemptBoth' });
  return found === null ? [] : [found.data];
};

const run = promisify(execFile);

/** Debian's `dmtxread` for at most two seconds a picture. It reads Data Matrix alone, which only the ID label carries. */
const libdmtx: Decoder = async ({ width, height, luminance }) => {
  const folder = mkdtempSync(join(tmpdir(), 'worn-'));
  try {
    const file = join(folder, 'picture.pgm');
    writeFileSync(file, Buffer.concat([Buffer.from(`P5\n${width} ${height}\n255\n`), luminance]));
    const { stdout } = await run('dmtxread', ['-n', '-m', '2000', file]);
    return stdout.split('\n');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT')
      throw new Error('dmtxread is missing: apt-get install dmtx-utils');
    return [];
  } finally {
    rmSync(folder, { recursive: true });
  }
};

export const peers: Readonly<Record<PeerName, Decoder>> = {
  '@zxing/library': zxingJs,
  'zxing-cpp': zxingCpp,
  zbar,
  jsQR: jsQr,
  libdmtx,
};
