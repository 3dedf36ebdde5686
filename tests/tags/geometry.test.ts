import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { commandSymbols } from '../../src/domain/command-symbol.ts';
import type { Language } from '../../src/domain/message.ts';
import type { TagContent } from '../../src/domain/tag-content.ts';
import { layOutPage } from '../../src/tags/command-sheet.ts';
import { defaultStock, layOutTag } from '../../src/tags/lay-out-tag.ts';
import { toPng } from '../../src/tags/png.ts';
import {
  type DotDensity,
  dotDensities,
  type Layout,
  symbolsOf,
  type Text,
  textsOf,
} from '../../src/typesetting/primitive.ts';
import { idLabel, longStatusTag, quarantineTag, statusTag } from './sample-tags.ts';
import { expectSound } from './sound-layout.ts';

const languageChoices: Language[][] = [['en'], ['es'], ['en', 'es'], ['es', 'en']];

const cases: [string, TagContent, { widthMm: number; heightMm: number }][] = languageChoices.flatMap(
  (languages) => {
    const named = languages.join('+');
    return [
      [`status ${named}`, statusTag(languages), defaultStock.status],
      [`status, long words, ${named}`, longStatusTag(languages), defaultStock.status],
      [`status on 75×50, ${named}`, statusTag(languages), { widthMm: 75, heightMm: 50 }],
      [`quarantine, 1 reason, ${named}`, quarantineTag(languages, 1), defaultStock.quarantine],
      [`quarantine, 3 reasons, ${named}`, quarantineTag(languages, 3), defaultStock.quarantine],
      [`quarantine, 6 reasons, ${named}`, quarantineTag(languages, 6), defaultStock.quarantine],
      [`quarantine, 3 reasons on A6, ${named}`, quarantineTag(languages, 3), { widthMm: 105, heightMm: 148 }],
      [
        `quarantine, 12 reasons on A5, ${named}`,
        quarantineTag(languages, 12),
        { widthMm: 148, heightMm: 210 },
      ],
    ];
  },
);
cases.push(['quarantine, 12 reasons, en', quarantineTag(['en'], 12), defaultStock.quarantine]);
cases.push(['quarantine, 12 reasons, es', quarantineTag(['es'], 12), defaultStock.quarantine]);
cases.push(['ID label', idLabel, defaultStock.id]);

const layoutOf = (
  content: TagContent,
  stock: { widthMm: number; heightMm: number },
  dpi: DotDensity,
): Layout => {
  const laidOut = layOutTag(content, stock, dpi);
  if (!laidOut.fits) throw new Error(`does not fit: ${laidOut.missing}`);
  return laidOut.layout;
};

describe.each(dotDensities)('at %i dots per inch', (dpi) => {
  test.each(cases)('nothing of the tag overlaps or leaves the stock: %s', (_name, content, stock) => {
    expectSound(layoutOf(content, stock, dpi));
  });
});

test.each([
  ['A4', { widthMm: 210, heightMm: 297 }],
  ['Letter', { widthMm: 215.9, heightMm: 279.4 }],
])('nothing of the command sheet overlaps or leaves the paper: %s', (_name, paper) => {
  for (let first = 0; first < commandSymbols.length; first += 20) {
    const page = layOutPage(commandSymbols.slice(first, first + 20), paper);
    if ('refused' in page) throw new Error(page.code);
    expectSound(page);
  }
});

/** `light` is 0 for a black dot and 255 for a white one. */
const rasterOf = async (layout: Layout) => {
  const { data, info } = await sharp(await toPng(layout))
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return {
    width: info.width,
    height: info.height,
    light: (x: number, y: number): number => data[y * info.width + x] ?? -1,
  };
};

const rasterCases: [string, TagContent, { widthMm: number; heightMm: number }][] = [
  ['status', statusTag(['en', 'es']), defaultStock.status],
  ['quarantine', quarantineTag(['en', 'es'], 3), defaultStock.quarantine],
  ['ID label', idLabel, defaultStock.id],
];

/** Modules of white that each standard asks for: ISO/IEC 15417, ISO/IEC 18004, ISO/IEC 16022. */
const quietModules = {
  'Code 128': { beside: 10, above: 0 },
  'QR Code': { beside: 4, above: 4 },
  'Data Matrix': { beside: 1, above: 1 },
};

describe.each(dotDensities)('the raster at %i dots per inch', (dpi) => {
  test.each(rasterCases)(
    'is white in every quiet zone, and pure black and white inside the symbols: %s',
    async (_name, content, stock) => {
      const layout = layoutOf(content, stock, dpi);
      const raster = await rasterOf(layout);
      expect(raster.width).toBe(Math.round((stock.widthMm / 25.4) * dpi));
      for (const symbol of symbolsOf(layout)) {
        const { beside, above } = quietModules[symbol.symbology];
        const wide = symbol.modules.columns * symbol.moduleWidthDots;
        const high = symbol.modules.rows * symbol.moduleHeightDots;
        const quietX = beside * symbol.moduleWidthDots;
        const quietY = above * symbol.moduleHeightDots;
        const shades = new Set<number>();
        const quiet = new Set<number>();
        for (let y = -quietY; y < high + quietY; y += 1) {
          for (let x = -quietX; x < wide + quietX; x += 1) {
            const within = x >= 0 && y >= 0 && x < wide && y < high;
            (within ? shades : quiet).add(raster.light(symbol.leftDots + x, symbol.topDots + y));
          }
        }
        expect([...quiet]).toEqual([255]);
        expect([...shades].sort()).toEqual([0, 255]);
      }
    },
  );

  test.each(rasterCases)(
    'has modules of whole dots, no narrower than the stated minimum: %s',
    async (_name, content, stock) => {
      const layout = layoutOf(content, stock, dpi);
      const raster = await rasterOf(layout);
      for (const symbol of symbolsOf(layout)) {
        const y = symbol.topDots + Math.floor(symbol.moduleHeightDots / 2);
        const wide = symbol.modules.columns * symbol.moduleWidthDots;
        const changes = [0];
        for (let x = 1; x < wide; x += 1) {
          if (raster.light(symbol.leftDots + x, y) !== raster.light(symbol.leftDots + x - 1, y))
            changes.push(x);
        }
        expect(changes.filter((x) => x % symbol.moduleWidthDots !== 0)).toEqual([]);
        // Common practice, no source: 0.25 mm (10 mil) for bars and 0.33 mm (13 mil) for matrices, by hand-held scanner.
        const least = symbol.symbology === 'Code 128' ? 0.25 : 0.33;
        expect((symbol.moduleWidthDots * 25.4) / dpi).toBeGreaterThanOrEqual(least);
      }
    },
  );
});

/** Height of the first letter's stem, counted in light or dark dots up from the baseline. */
const stemHeightMm = async (layout: Layout, text: Text): Promise<number> => {
  const raster = await rasterOf(layout);
  const dots = layout.dotsPerInch / 25.4;
  const x = Math.round((text.xMm + 0.12 * text.sizeMm) * dots);
  const baseline = Math.round(text.baselineMm * dots);
  let count = 0;
  while (raster.light(x, baseline - 2 - count) > 128) count += 1;
  return (count + 2) / dots;
};

describe('the letters of a quarantine tag', () => {
  const choices: [string, Language[], number][] = [
    ['one language, one reason', ['en'], 1],
    ['one language, twelve reasons', ['es'], 12],
    ['two languages, six reasons', ['en', 'es'], 6],
  ];
  test.each(choices)('are as high as the rule asks from 5 ft: %s', async (_name, languages, count) => {
    const layout = layoutOf(quarantineTag(languages, count), defaultStock.quarantine, 600);
    const signalWords = textsOf(layout).filter(({ role }) => role === 'signal word');
    const messages = textsOf(layout).filter(({ role }) => role === 'major message');
    expect(signalWords).toHaveLength(languages.length);
    expect(messages).toHaveLength(languages.length);
    // ANSI Z535.2 §9.2.3: 1/150 of the viewing distance for the signal word, 1/300 for other words; 29 CFR
    // 1910.145(f)(4)(ii): 5 ft. One dot at 600 dpi is 0.042 mm.
    for (const word of signalWords)
      expect(await stemHeightMm(layout, word)).toBeGreaterThanOrEqual(0.4 * 25.4 - 0.043);
    for (const word of messages)
      expect(await stemHeightMm(layout, word)).toBeGreaterThanOrEqual(0.2 * 25.4 - 0.043);
  });

  test.each(cases)(
    'and of any other tag are never smaller than the legible minimum: %s',
    (_name, content, stock) => {
      // Regulation (EU) 1169/2011 article 13(2), from memory: x-height of at least 1.2 mm. The `x` of the typeface is 0.496
      // em high (OS/2 table of the font).
      for (const text of textsOf(layoutOf(content, stock, 300))) {
        expect(text.sizeMm * 0.496, text.text).toBeGreaterThanOrEqual(1.2 - 1e-9);
      }
    },
  );

  test('stay legible where a printer has one colour: white letters on a ground that prints black', async () => {
    const layout = layoutOf(quarantineTag(['en'], 1), defaultStock.quarantine, 300);
    const panel = layout.primitives.find(
      (primitive) => primitive.kind === 'rectangle' && primitive.colour === 'red',
    );
    if (panel?.kind !== 'rectangle') throw new Error('no red panel');
    const { data } = await sharp(await toPng(layout))
      .greyscale()
      .threshold(128)
      .raw()
      .toBuffer({ resolveWithObject: true });
    const y = Math.round(((panel.yMm + 1.5) / 25.4) * 300);
    const x = Math.round(((panel.xMm + panel.widthMm / 2) / 25.4) * 300);
    expect(data[y * Math.round((100 / 25.4) * 300) + x]).toBe(0);
  });
});

describe('the status tag', () => {
  test('gives its largest letters to the bench ID and the due month', () => {
    const texts = textsOf(layoutOf(statusTag(['en', 'es']), defaultStock.status, 300));
    const sizeOf = (role: Text['role']): number =>
      Math.max(...texts.filter((text) => text.role === role).map(({ sizeMm }) => sizeMm));
    const others = texts
      .filter(({ role }) => role !== 'bench ID' && role !== 'due month')
      .map(({ sizeMm }) => sizeMm);
    expect(sizeOf('due month')).toBeGreaterThan(1.8 * Math.max(...others));
    expect(sizeOf('bench ID')).toBeGreaterThan(1.8 * Math.max(...others));
  });

  test('says everything that it must say', () => {
    const words = textsOf(layoutOf(statusTag(['en', 'es']), defaultStock.status, 300)).map(
      ({ text }) => text,
    );
    expect(words).toEqual(
      expect.arrayContaining([
        'K7M3X-43SXJ',
        'NOV 2027',
        '24 NOV 2027',
        '24 NOV 2026',
        'R. Ibarra',
        'Tag / Etiqueta 4',
        'Northfell CR-15 · 15.24 m',
        'Serial / Serie NF-204417',
        'Does not replace the manufacturer’s marking.',
        'No sustituye el marcado del fabricante.',
        'Harrow Point depot',
      ]),
    );
  });
});
