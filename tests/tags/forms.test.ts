import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, describe, expect, test } from 'vitest';
import { millimetres } from '../../src/domain/brand.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import type { PrintableTag } from '../../src/domain/tag-content.ts';
import { writeTagText } from '../../src/domain/tag-text.ts';
import type { TagForm } from '../../src/tags/form.ts';
import type { Hole } from '../../src/tags/hole.ts';
import { type LayoutOptions, layOutTag } from '../../src/tags/lay-out-tag.ts';
import { type RenderedTag, renderTag, type TagOptions } from '../../src/tags/render-tag.ts';
import {
  type Box,
  type DotDensity,
  dotDensities,
  type Layout,
  type Primitive,
  quietBoxOf,
  symbolsOf,
  textsOf,
} from '../../src/typesetting/primitive.ts';
import { requireTool, runTool } from '../support/debian-tools.ts';
import { benchId, binLabel, idLabel, quarantineTag, statusTag } from './sample-tags.ts';
import { bottom, expectSound, inside, marksOfOne, right } from './sound-layout.ts';

const folder = mkdtempSync(join(tmpdir(), 'forms-'));
afterAll(() => rmSync(folder, { recursive: true }));

const stock = (widthMm: number, heightMm: number) => ({
  widthMm: millimetres(widthMm),
  heightMm: millimetres(heightMm),
});

const rendered = async (content: PrintableTag, options: TagOptions): Promise<RenderedTag> => {
  const tag = await renderTag(content, options);
  if (isRefusal(tag)) throw new Error(JSON.stringify(tag));
  return tag;
};

const layoutOf = (
  content: PrintableTag,
  size: { widthMm: number; heightMm: number },
  options: LayoutOptions,
  dpi: DotDensity = 300,
): Layout => {
  const laid = layOutTag(content, size, dpi, options);
  if (!laid.fits) throw new Error(`does not fit: ${laid.missing}`);
  return laid.layout;
};

/** The mark of the fold is the last one, and the only one that may lie across it. */
const withoutFold = (layout: Layout): Layout => ({ ...layout, primitives: layout.primitives.slice(0, -1) });

const boxesOf = (layout: Layout): readonly Box[] =>
  layout.primitives.flatMap((mark: Primitive) => [
    ...(mark.kind === 'rectangle' ? [mark] : []),
    ...marksOfOne(mark).map(({ box }) => box),
  ]);

const dotsOf = async (png: Uint8Array) => {
  const { data, info } = await sharp(png).greyscale().raw().toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, at: (x: number, y: number) => data[y * info.width + x] };
};

/** Dark dots in a box of the stock. */
const darkIn = async (tag: RenderedTag, box: Box): Promise<number> => {
  const dots = await dotsOf(tag.png);
  const perMm = tag.dpi / 25.4;
  let dark = 0;
  for (let y = Math.ceil(box.yMm * perMm); y < Math.min(dots.height, bottom(box) * perMm); y += 1) {
    for (let x = Math.ceil(box.xMm * perMm); x < Math.min(dots.width, right(box) * perMm); x += 1)
      if (dots.at(x, y) !== 255) dark += 1;
  }
  return dark;
};

const readByZbar = (tag: RenderedTag): readonly string[] => {
  const path = join(folder, 'tag.png');
  writeFileSync(path, tag.png);
  const args = ['-q', '--raw', '-Sdisable', '-Scode128.enable', '-Sqrcode.enable', path];
  return runTool('zbarimg', args).trim().split('\n').sort();
};

describe('a wrap-around tag', () => {
  test.each([
    ['below', stock(100, 110), { xMm: 0, yMm: 50, widthMm: 100, heightMm: 60 }],
    ['right', stock(160, 50), { xMm: 100, yMm: 0, widthMm: 60, heightMm: 50 }],
  ] as const)('leaves its clear tail blank: %s', async (tailAt, size, tail) => {
    const form: TagForm = { shape: 'wrap', tailAt, tailMm: 60 };
    const tag = await rendered(statusTag(['en', 'es']), { stock: size, form });
    expect([tag.widthMm, tag.heightMm]).toEqual([size.widthMm, size.heightMm]);
    expect(await darkIn(tag, tail)).toBe(0);
    const printed = { xMm: 0, yMm: 0, widthMm: 100, heightMm: 50 };
    expect(await darkIn(tag, printed)).toBeGreaterThan(10_000);
  });

  test('is refused with the stock that takes print and tail', async () => {
    const form: TagForm = { shape: 'wrap', tailAt: 'below', tailMm: 60 };
    const refused = await renderTag(statusTag(['en', 'es']), { stock: stock(100, 75), form });
    if (!isRefusal(refused)) throw new Error('was rendered');
    const { widthMm, heightMm } = refused.values;
    expect(Number(heightMm)).toBeGreaterThan(75);
    await rendered(statusTag(['en', 'es']), { stock: stock(Number(widthMm), Number(heightMm)), form });
  });
});

const flags: [string, PrintableTag, { widthMm: number; heightMm: number }, TagForm][] = [
  [
    'level, status',
    statusTag(['en', 'es']),
    { widthMm: 100, heightMm: 108 },
    { shape: 'flag', fold: 'level', sides: 'both', clearMm: 8 },
  ],
  [
    'upright, status',
    statusTag(['en']),
    { widthMm: 168, heightMm: 40 },
    { shape: 'flag', fold: 'upright', sides: 'both', clearMm: 8 },
  ],
  [
    'level, quarantine',
    quarantineTag(['es'], 2),
    { widthMm: 100, heightMm: 260 },
    { shape: 'flag', fold: 'level', sides: 'both', clearMm: 10 },
  ],
  [
    'upright, bin',
    binLabel(['en', 'es']),
    { widthMm: 130, heightMm: 40 },
    { shape: 'flag', fold: 'upright', sides: 'both', clearMm: 6 },
  ],
];

describe('a flag with a fold', () => {
  describe.each(dotDensities)('at %i dots per inch', (dpi) => {
    test.each(flags)(
      'has nothing across the fold or in the clear band but the mark of the fold: %s',
      (_name, content, size, form) => {
        if (form.shape !== 'flag') throw new Error('not a flag');
        const layout = layoutOf(content, size, { form }, dpi);
        expectSound(withoutFold(layout));
        const across = form.fold === 'level' ? size.heightMm : size.widthMm;
        for (const box of boxesOf(withoutFold(layout))) {
          const [from, to] = form.fold === 'level' ? [box.yMm, bottom(box)] : [box.xMm, right(box)];
          const clear =
            to <= (across - form.clearMm) / 2 + 1e-6 || from >= (across + form.clearMm) / 2 - 1e-6;
          expect(clear).toBe(true);
        }
        const last = layout.primitives.at(-1);
        if (last?.kind !== 'path') throw new Error('no mark of the fold');
        expect(form.fold === 'level' ? last.yMm : last.xMm).toBeCloseTo(across / 2, 9);
      },
    );
  });

  test('says everything twice, the second time upside down where the fold is level', () => {
    const [, content, size, form] = flags[0]!;
    const texts = textsOf(layoutOf(content, size, { form }));
    const upright = texts.filter(({ turned }) => turned !== true).map(({ text }) => text);
    const turned = texts.filter((text) => text.turned === true);
    expect(turned.map(({ text }) => text)).toEqual(upright);
    expect(turned.every(({ baselineMm }) => baselineMm < 50)).toBe(true);
  });

  test.runIf(requireTool('zbarimg'))('is read back on both sides, by both decoders', async () => {
    for (const [name, content, size, form] of flags.slice(0, 3)) {
      if (content.kind !== 'status' && content.kind !== 'quarantine') throw new Error(name);
      const tag = await rendered(content, { stock: stock(size.widthMm, size.heightMm), form });
      const once = [benchId, writeTagText(content)];
      expect(tag.symbols.map(({ text }) => text).sort()).toEqual([...once, ...once].sort());
      expect(new Set(readByZbar(tag))).toEqual(new Set(once));
    }
  });

  test('looks the same from behind once it is folded: the upper half is the lower one turned', async () => {
    const [, content] = flags[0]!;
    const form: TagForm = { shape: 'flag', fold: 'level', sides: 'both', clearMm: 8 };
    // The whole stock is 1200 × 1350 dots, so that a half turn puts dots on dots: 25.4 mm are 300 dots.
    const size = stock(101.6, 25.4 * 4 + 12.7);
    const tag = await rendered(content, { stock: size, form: { ...form, clearMm: 12.7 } });
    const dots = await dotsOf(tag.png);
    let differing = 0;
    for (let y = 0; y < 600; y += 1) {
      for (let x = 0; x < dots.width; x += 1) {
        const above = dots.at(x, y)! < 128;
        const below = dots.at(dots.width - 1 - x, dots.height - 1 - y)! < 128;
        if (above !== below) differing += 1;
      }
    }
    // Rounding at the edges of letters alone.
    expect(differing).toBeLessThan(0.001 * 600 * dots.width);
  });

  test('leaves the other side blank where one side is asked for', async () => {
    const form: TagForm = { shape: 'flag', fold: 'level', sides: 'one', clearMm: 8 };
    const tag = await rendered(statusTag(['en']), { stock: stock(100, 108), form });
    expect(await darkIn(tag, { xMm: 0, yMm: 0, widthMm: 100, heightMm: 53.5 })).toBe(0);
    expect(tag.symbols).toHaveLength(2);
  });
});

const holes: [string, PrintableTag, { widthMm: number; heightMm: number }, Hole, TagForm?][] = [
  [
    'top middle',
    quarantineTag(['en', 'es'], 3),
    { widthMm: 100, heightMm: 165 },
    { xMm: 50, yMm: 7, diameterMm: 6 },
  ],
  [
    'left middle',
    statusTag(['en', 'es']),
    { widthMm: 112, heightMm: 50 },
    { xMm: 6, yMm: 25, diameterMm: 5 },
  ],
  ['top right corner', statusTag(['en']), { widthMm: 100, heightMm: 60 }, { xMm: 95, yMm: 5, diameterMm: 4 }],
  ['right of an ID label', idLabel, { widthMm: 50, heightMm: 25 }, { xMm: 46, yMm: 12.5, diameterMm: 3 }],
  [
    'through both layers of a flag',
    statusTag(['en']),
    { widthMm: 110, heightMm: 128 },
    { xMm: 104, yMm: 90, diameterMm: 5 },
    { shape: 'flag', fold: 'level', sides: 'both', clearMm: 8 },
  ],
];

describe('the hole for the tie', () => {
  test.each(holes)(
    'has no print in it or on the collar around it: %s',
    async (_name, content, size, hole, form) => {
      const options = { hole, ...(form === undefined ? {} : { form }) };
      const layout = layoutOf(content, size, options);
      expectSound(form === undefined ? layout : withoutFold(layout));
      const tag = await rendered(content, { stock: stock(size.widthMm, size.heightMm), ...options });
      const dots = await dotsOf(tag.png);
      const perMm = 300 / 25.4;
      const centres = form === undefined ? [hole.yMm] : [hole.yMm, size.heightMm - hole.yMm];
      for (const centreMm of centres) {
        // 1.5 mm of collar (common practice, no source), less one dot for rounding.
        const radius = (hole.diameterMm / 2 + 1.5) * perMm - 1;
        let dark = 0;
        for (let y = 0; y < dots.height; y += 1) {
          for (let x = 0; x < dots.width; x += 1) {
            const away = Math.hypot(x + 0.5 - hole.xMm * perMm, y + 0.5 - centreMm * perMm);
            if (away < radius && dots.at(x, y) !== 255) dark += 1;
          }
        }
        expect(dark).toBe(0);
      }
    },
  );

  test('changes nothing where it falls in white', () => {
    const size = { widthMm: 100, heightMm: 50 };
    const plain = layoutOf(statusTag(['en']), size, {});
    const hole: Hole = { xMm: 97.4, yMm: 36, diameterMm: 1.5 };
    expect(layoutOf(statusTag(['en']), size, { hole })).toEqual(plain);
  });

  test('refuses the stock where nothing fits beside it', async () => {
    const hole: Hole = { xMm: 50, yMm: 25, diameterMm: 20 };
    const refused = await renderTag(statusTag(['en', 'es']), { stock: stock(100, 50), hole });
    expect(refused).toMatchObject({ refused: true, code: 'tag-does-not-fit' });
  });
});

describe('an ink', () => {
  test.each([
    ['status', statusTag(['en', 'es'])],
    ['quarantine', quarantineTag(['en', 'es'], 3)],
    ['bin', binLabel(['en', 'es'])],
    ['ID label', idLabel],
  ] as const)(
    'of one colour gives a raster of exactly two levels, one bit deep: %s',
    async (_name, content) => {
      for (const dpi of dotDensities) {
        const tag = await rendered(content, { ink: 'monochrome', dpi });
        const raw = await sharp(tag.png).raw().toBuffer();
        expect([...new Set(raw)].sort((a, b) => a - b)).toEqual([0, 255]);
        // Bit depth: byte 24 of a PNG, in its IHDR (ISO/IEC 15948 §11.2.2).
        expect(tag.png[24]).toBe(1);
        expect((await sharp(tag.png).metadata()).density).toBe(dpi);
      }
    },
  );

  test('of one colour leaves no red in the PDF either', async () => {
    const layout = layoutOf(quarantineTag(['en'], 1), stock(100, 150), { ink: 'monochrome' });
    const colours = layout.primitives.map((mark) => (mark.kind === 'symbol' ? 'black' : mark.colour));
    expect(new Set(colours)).toEqual(new Set(['black', 'white']));
  });

  test('for a pre-printed header leaves the header blank and the signal word unprinted', async () => {
    const options = { ink: 'pre-printed header', headerMm: 35 } as const;
    const size = stock(100, 150);
    const layout = layoutOf(quarantineTag(['en', 'es'], 3), size, options);
    expectSound(layout);
    const below = { xMm: 0, yMm: 35, widthMm: 100, heightMm: 115 };
    for (const box of boxesOf(layout)) expect(inside(box, below)).toBe(true);
    const words = textsOf(layout).map(({ text }) => text);
    expect(words).not.toContain('DANGER');
    expect(words).not.toContain('PELIGRO');
    expect(words).toContain('DO NOT USE');
    expect(words).toContain('NO USAR');
    const tag = await rendered(quarantineTag(['en', 'es'], 3), { stock: size, ...options });
    expect(await darkIn(tag, { xMm: 0, yMm: 0, widthMm: 100, heightMm: 35 })).toBe(0);
  });

  test('for a pre-printed DANGER header is refused for anything but a quarantine tag', async () => {
    for (const content of [statusTag(['en']), idLabel, binLabel(['en'])])
      expect(await renderTag(content, { ink: 'pre-printed header' })).toMatchObject({
        code: 'input-invalid',
        field: 'ink',
      });
  });
});

test('a symbol turned upside down stays on whole dots, inside its face', () => {
  const [, content, size, form] = flags[0]!;
  for (const symbol of symbolsOf(layoutOf(content, size, { form }, 203))) {
    expect(Number.isInteger(symbol.leftDots) && Number.isInteger(symbol.topDots)).toBe(true);
    expect(inside(quietBoxOf(symbol), { xMm: 0, yMm: 0, ...size })).toBe(true);
  }
});
