/** GS1 symbols that bwip-js made and zxing-cpp read: what comes out of the symbol is what went in, in either text form. */
import bwipjs from 'bwip-js/node';
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { prepareZXingModule, type ReaderOptions, readBarcodes } from 'zxing-wasm/reader';
import { readScan } from '../../src/intake/read-scan.ts';
import { readDecoderBinary } from '../../src/tags/asset-files.ts';

const symbologies = [
  ['gs1-128', ']C1'],
  ['gs1datamatrix', ']d2'],
  ['gs1qrcode', ']Q3'],
  ['databarexpandedstacked', ']e0'],
] as const;

/** GTINs of the examples of GS1; every other value is invented. */
const elementStrings = [
  '(01)09506000134352(21)S-77/A',
  '(01)09506000134352(11)260200(10)LOT.7(21)12345',
  '(10)LOT7(01)09506000134352(240)PN_9(17)310131(21)Z1',
  '(8003)06291041500213SER9',
  '(8004)6291041ASSET-7',
  '(01)09506000134352(3102)001750(21)X1(91)ANY',
];

beforeAll(() => {
  prepareZXingModule({ overrides: { wasmBinary: readDecoderBinary() } });
});

const decoded = async (png: Buffer, textMode: NonNullable<ReaderOptions['textMode']>) => {
  const framed = await sharp(png)
    .flatten({ background: '#fff' })
    .extend({ top: 40, bottom: 40, left: 60, right: 60, background: '#fff' })
    .png()
    .toBuffer();
  const [result] = await readBarcodes(framed, { textMode, tryHarder: true });
  if (result === undefined) throw new Error('zxing-cpp read nothing.');
  return result;
};

const codeOf = (text: string) => {
  const scan = readScan(text, 2026);
  return scan.kind === 'marking data' ? scan.code : JSON.stringify(scan);
};

describe.each(symbologies)('%s', (bcid, symbologyId) => {
  test.each(elementStrings)('carries %s', async (text) => {
    const png = await bwipjs.toBuffer({ bcid, text, scale: 3 });
    const plain = await decoded(png, 'Plain');
    expect(plain.symbologyIdentifier).toBe(symbologyId);
    const elements = (code: string) => code.split(/(?=\()/).sort();
    const canonical = codeOf(`${plain.symbologyIdentifier}${plain.text}`);
    expect(elements(canonical)).toEqual(elements(text));
    expect(codeOf((await decoded(png, 'HRI')).text)).toBe(canonical);
  });
});

describe('a Data Matrix with macro 06', () => {
  test('carries a message of ISO/IEC 15434', async () => {
    const png = await bwipjs.toBuffer({
      bcid: 'datamatrix',
      text: '[)>^03006^029SW10^0291PA-1^030^004',
      parse: true,
      scale: 3,
    });
    const { text, symbologyIdentifier } = await decoded(png, 'Plain');
    expect(codeOf(`${symbologyIdentifier}${text}`)).toBe('[1P]A-1[S]W10');
  });
});
