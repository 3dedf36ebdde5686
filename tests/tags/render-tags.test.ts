import { describe, expect, test } from 'vitest';
import { millimetres } from '../../src/domain/brand.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import { layOutTag } from '../../src/tags/lay-out-tag.ts';
import { unreadableSymbol } from '../../src/tags/prove.ts';
import { renderTag, renderTagPdf, renderTagRaster } from '../../src/tags/render-tag.ts';
import { type BatchProgress, type BatchTag, renderTags } from '../../src/tags/render-tags.ts';
import { dotDensities, symbolsOf } from '../../src/typesetting/primitive.ts';
import { binLabel, idLabel, quarantineTag, statusTag } from './sample-tags.ts';

const gathered = async (tags: AsyncIterable<BatchTag>): Promise<readonly BatchTag[]> => {
  const list: BatchTag[] = [];
  for await (const tag of tags) list.push(tag);
  return list;
};

describe('one half of a tag', () => {
  test('is the PDF or the raster that the whole tag has, to the byte', async () => {
    const content = quarantineTag(['en', 'es'], 3);
    const [both, pdf, raster] = [
      await renderTag(content),
      await renderTagPdf(content),
      await renderTagRaster(content),
    ];
    if (isRefusal(both) || isRefusal(pdf) || isRefusal(raster)) throw new Error('refused');
    expect(Buffer.from(pdf.pdf).equals(Buffer.from(both.pdf))).toBe(true);
    expect(Buffer.from(raster.png).equals(Buffer.from(both.png))).toBe(true);
    expect([pdf.proof, raster.proof]).toEqual(['symbols read back', 'read back']);
    expect('png' in pdf || 'pdf' in raster).toBe(false);
  });

  test('reads its symbols back one by one, upside down ones too, at every density', async () => {
    for (const dpi of dotDensities) {
      for (const content of [statusTag(['en']), idLabel, binLabel(['es'])]) {
        const form = { shape: 'flag', fold: 'level', sides: 'both', clearMm: 8 } as const;
        const stock = { widthMm: millimetres(100), heightMm: millimetres(108) };
        const tag = await renderTagPdf(content, { dpi, form, stock });
        if (isRefusal(tag)) throw new Error(JSON.stringify(tag));
        expect(tag.symbols.length).toBe(content.kind === 'id' ? 2 : 4);
      }
    }
  });

  test('is refused where a symbol does not say its text', async () => {
    const laid = layOutTag(statusTag(['en']), { widthMm: 100, heightMm: 50 }, 300);
    if (!laid.fits) throw new Error(laid.missing);
    const symbols = symbolsOf(laid.layout);
    expect(await unreadableSymbol(symbols)).toBeUndefined();
    const [bars] = symbols;
    const other = { ...bars!, text: `${bars!.text}X` };
    expect(await unreadableSymbol([...symbols, other])).toBe('Code 128');
  });

  test('is refused as the whole tag is', async () => {
    const options = { stock: { widthMm: millimetres(40), heightMm: millimetres(20) } };
    const refused = await renderTag(statusTag(['en']), options);
    expect(isRefusal(refused)).toBe(true);
    expect(await renderTagPdf(statusTag(['en']), options)).toEqual(refused);
    expect(await renderTagRaster(statusTag(['en']), options)).toEqual(refused);
  });
});

describe('a batch of tags', () => {
  const contents = [
    statusTag(['en']),
    statusTag(['en'], { serial: 'N'.repeat(900) }),
    quarantineTag(['es'], 1),
    idLabel,
  ];

  test('hands on every tag in order, goes on after a refusal and tells how far it is', async () => {
    const told: BatchProgress[] = [];
    const tags = await gathered(renderTags(contents, {}, { onProgress: (progress) => told.push(progress) }));
    expect(tags.map(({ index }) => index)).toEqual([0, 1, 2, 3]);
    expect(tags.map(({ tag }) => isRefusal(tag))).toEqual([false, true, false, false]);
    expect(told).toEqual([
      { done: 1, total: 4, refused: 0 },
      { done: 2, total: 4, refused: 1 },
      { done: 3, total: 4, refused: 1 },
      { done: 4, total: 4, refused: 1 },
    ]);
  });

  test('makes PDFs alone, or rasters alone', async () => {
    const [pdf] = await gathered(renderTags([idLabel]));
    expect(pdf?.tag).toHaveProperty('pdf');
    expect(pdf?.tag).not.toHaveProperty('png');
    const [raster] = await gathered(renderTags([idLabel], { as: 'raster', ink: 'monochrome' }));
    expect(raster?.tag).toHaveProperty('png');
    expect(raster?.tag).not.toHaveProperty('pdf');
  });

  test('stops at the tag at which it is cancelled, with the reason that was given', async () => {
    const controller = new AbortController();
    const made: number[] = [];
    const run = async (): Promise<void> => {
      for await (const { index } of renderTags(contents, {}, { signal: controller.signal })) {
        made.push(index);
        if (index === 1) controller.abort(new Error('the person cancelled'));
      }
    };
    await expect(run()).rejects.toThrow('the person cancelled');
    expect(made).toEqual([0, 1]);
  });

  test('makes nothing where it was cancelled before it began', async () => {
    const told: BatchProgress[] = [];
    const control = { signal: AbortSignal.abort(), onProgress: (at: BatchProgress) => told.push(at) };
    await expect(gathered(renderTags(contents, {}, control))).rejects.toThrow();
    expect(told).toEqual([]);
  });
});
