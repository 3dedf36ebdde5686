import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { writeTagText } from '../../src/domain/tag-text.ts';
import { readDecoderBinary } from '../../src/tags/asset-files.ts';
import { layOutTag } from '../../src/tags/lay-out-tag.ts';
import { toPng } from '../../src/tags/png.ts';
import { type Layout, type Primitive, symbolsOf } from '../../src/typesetting/primitive.ts';
import { requireTool, runTool } from '../support/debian-tools.ts';
import { type StockCase, stockCases } from './every-stock.ts';

/**
 * Every 13th of the layouts that fit is drawn and decoded, so that kinds, stocks, densities and languages all occur: the
 * same ones on each run. `SRL_BENCH_ALL_TAGS=1` draws and decodes all of them, which takes many minutes.
 */
const every = process.env.SRL_BENCH_ALL_TAGS === '1' ? 1 : 13;

interface Sample extends StockCase {
  readonly layout: Layout;
}

const samples: readonly Sample[] = stockCases
  .flatMap((each) => {
    const laid = layOutTag(each.content, each.stock, each.dpi);
    return laid.fits ? [{ ...each, layout: laid.layout }] : [];
  })
  .filter((_each, index) => index % every === 0);

const folder = mkdtempSync(join(tmpdir(), 'every-stock-'));
afterAll(() => rmSync(folder, { recursive: true }));

beforeAll(() => {
  prepareZXingModule({ overrides: { wasmBinary: readDecoderBinary() } });
});

/** What the tag says in symbols, from its content. */
const expectedTexts = ({ content, layout }: Sample): readonly string[] => {
  const bars = symbolsOf(layout).some(({ symbology }) => symbology === 'Code 128');
  switch (content.kind) {
    case 'id':
      return [content.benchId];
    case 'bin':
      return Array<string>(bars ? 2 : 1).fill(`.${content.code}`);
    default:
      return bars ? [content.benchId, writeTagText(content)] : [writeTagText(content)];
  }
};

const sorted = (texts: readonly string[]): readonly string[] => [...texts].sort();

const readByZxing = async (png: Uint8Array): Promise<readonly string[]> => {
  const found = await readBarcodes(png, { formats: ['Code128', 'QRCode', 'DataMatrix'] });
  return sorted(found.filter(({ isValid }) => isValid).map(({ text }) => text));
};

/** zbar knows no Data Matrix; libdmtx reads those. */
const readByOthers = (png: Uint8Array, layout: Layout): readonly string[] => {
  const path = join(folder, 'tag.png');
  writeFileSync(path, png);
  const kinds = symbolsOf(layout).map(({ symbology }) => symbology);
  const texts: string[] = [];
  if (kinds.includes('Data Matrix')) texts.push(runTool('dmtxread', ['-N1', path]));
  if (kinds.some((kind) => kind !== 'Data Matrix'))
    texts.push(
      ...runTool('zbarimg', ['-q', '--raw', '-Sdisable', '-Scode128.enable', '-Sqrcode.enable', path])
        .trim()
        .split('\n'),
    );
  return sorted(texts);
};

/** `light` is 0 for a black dot and 255 for a white one. */
const dotsOf = async (png: Uint8Array) => {
  const { data, info } = await sharp(png).greyscale().raw().toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height };
};

type Dots = Awaited<ReturnType<typeof dotsOf>>;

const expectWhiteEdge = ({ data, width, height }: Dots, dpi: number): void => {
  // Nothing that is printed comes nearer to the edge than 1 mm: label printers may be that far off (common practice).
  const edge = Math.floor(dpi / 25.4) - 1;
  let dark = 0;
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const inEdge = x < edge || y < edge || x >= width - edge || y >= height - edge;
      if (inEdge && data[y * width + x] !== 255) dark += 1;
    }
  }
  expect(dark).toBe(0);
};

/** Modules of white that each standard asks for: ISO/IEC 15417, ISO/IEC 18004, ISO/IEC 16022. */
const quietModules = {
  'Code 128': { beside: 10, above: 0 },
  'QR Code': { beside: 4, above: 4 },
  'Data Matrix': { beside: 1, above: 1 },
};

const expectQuietZones = ({ data, width }: Dots, layout: Layout): void => {
  for (const symbol of symbolsOf(layout)) {
    const { beside, above } = quietModules[symbol.symbology];
    const wide = symbol.modules.columns * symbol.moduleWidthDots;
    const high = symbol.modules.rows * symbol.moduleHeightDots;
    const left = symbol.leftDots - beside * symbol.moduleWidthDots;
    const right = symbol.leftDots + wide + beside * symbol.moduleWidthDots;
    const top = symbol.topDots - above * symbol.moduleHeightDots;
    const bottom = symbol.topDots + high + above * symbol.moduleHeightDots;
    let spoiled = 0;
    for (let y = top; y < bottom; y += 1) {
      for (let x = left; x < right; x += 1) {
        const within =
          x >= symbol.leftDots &&
          x < symbol.leftDots + wide &&
          y >= symbol.topDots &&
          y < symbol.topDots + high;
        if (!within && data[y * width + x] !== 255) spoiled += 1;
      }
    }
    expect(spoiled, symbol.symbology).toBe(0);
  }
};

const tools = ['zbarimg', 'dmtxread'].every(requireTool);

describe('the raster of a tag, as a sample of all stocks', () => {
  test('covers every kind, density and choice of language', () => {
    const seen = (pick: (sample: Sample) => string) => new Set(samples.map(pick)).size;
    expect(seen(({ name }) => name.split(',', 2).join())).toBe(8);
    expect(seen(({ dpi }) => String(dpi))).toBe(3);
    expect(seen(({ languages }) => languages.join())).toBe(3);
    expect(seen(({ stock }) => `${stock.widthMm}×${stock.heightMm}`)).toBe(12);
  });

  test.each(samples.map((sample) => [sample.name, sample] as const))(
    'is white at the edge and in the quiet zones, and is read by two decoders: %s',
    async (_name, sample) => {
      const png = await toPng(sample.layout);
      const dots = await dotsOf(png);
      expectWhiteEdge(dots, sample.dpi);
      expectQuietZones(dots, sample.layout);
      expect(await readByZxing(png)).toEqual(sorted(expectedTexts(sample)));
      if (tools) expect(readByOthers(png, sample.layout)).toEqual(sorted(expectedTexts(sample)));
    },
  );
});

/** A mark in black, without the ground that it stands on; `undefined` for the ground itself. */
const inBlackAlone = (mark: Primitive): Primitive | undefined => {
  if (mark.kind === 'rectangle' || (mark.kind === 'path' && mark.strokeUnits === undefined)) return undefined;
  return mark.kind === 'symbol' ? mark : { ...mark, colour: 'black' };
};

/**
 * Two marks overlap where both put ink on a dot. With the marks numbered, any two of them differ in one bit of their
 * numbers: so for each bit, the ones are drawn on one picture and the zeros on another, and no dot may be dark on both.
 */
const dotsInkedTwice = async (layout: Layout): Promise<number> => {
  const marks = layout.primitives.map(inBlackAlone).filter((mark) => mark !== undefined);
  let twice = 0;
  for (let bit = 0; 2 ** bit < marks.length; bit += 1) {
    const [zeros, ones] = await Promise.all(
      [0, 1].map(async (value) => {
        const primitives = marks.filter((_mark, index) => ((index >> bit) & 1) === value);
        return dotsOf(await toPng({ ...layout, primitives }));
      }),
    );
    for (let at = 0; at < zeros!.data.length; at += 1)
      if (zeros!.data[at]! < 128 && ones!.data[at]! < 128) twice += 1;
  }
  return twice;
};

describe('the ink of the marks', () => {
  const inked = samples.filter(({ dpi }) => dpi === 203);

  test.each(inked.map((sample) => [sample.name, sample] as const))(
    'is never on one dot twice: %s',
    async (_name, { layout }) => {
      expect(await dotsInkedTwice(layout)).toBe(0);
    },
  );

  test('is found where two marks do overlap', async () => {
    const [first] = inked;
    const mark = first!.layout.primitives.find(({ kind }) => kind === 'text')!;
    const layout = { ...first!.layout, primitives: [...first!.layout.primitives, mark] };
    expect(await dotsInkedTwice(layout)).toBeGreaterThan(0);
  });
});
