/** A tag ready to print: laid out, drawn as PDF and PNG from one list of marks, and read back from its own raster. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { Millimetres } from '../domain/brand.ts';
import { type Refusal, refusal } from '../domain/refusal.ts';
import type { TagContent } from '../domain/tag-content.ts';
import { defaultStock, layOutTag, smallestStock } from './lay-out-tag.ts';
import { toPdf } from './pdf.ts';
import { toPng } from './png.ts';
import { type DotDensity, type Layout, symbolsOf } from './primitive.ts';
import { expectedSymbols, type TagSymbol, unreadable } from './prove.ts';
import type { Stock } from './tag-layout.ts';
import { word } from './words.ts';

export interface TagOptions {
  /** 100×50 mm for a status tag, 100×150 mm for a quarantine tag, 50×25 mm for an ID label where it is absent. */
  readonly stock?: {
    readonly widthMm: Millimetres;
    readonly heightMm: Millimetres;
  };
  /** Printer dots per inch; 300 where it is absent. */
  readonly dpi?: DotDensity;
}

export interface RenderedTag {
  readonly pdf: Uint8Array;
  /** At `dpi`, with its density inside. */
  readonly png: Uint8Array;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly dpi: DotDensity;
  readonly symbols: readonly TagSymbol[];
  /** The raster was decoded and gave exactly `symbols`. */
  readonly proof: 'read back';
}

/** The longest side that is drawn: A3 (ISO 216). */
const longestSideMm = 420;

/**
 * Refuses with `tag-does-not-fit` where a part cannot stand on the stock at its legible minimum, with `tag-too-long`
 * where it cannot on any stock up to A3, with `tag-not-readable` where a symbol does not read back from the raster, and
 * with `input-invalid` where the stock is beyond A3.
 */
export const renderTag = async (
  content: TagContent,
  options: TagOptions = {},
): Promise<RenderedTag | Refusal> => {
  const dpi = options.dpi ?? 300;
  const laidOut = layOutOrRefuse(content, options.stock ?? defaultStock[content.kind], dpi);
  if ('refused' in laidOut) return laidOut;
  const symbols = expectedSymbols(symbolsOf(laidOut));
  const [pdf, png] = await Promise.all([toPdf([laidOut], titleOf(content)), toPng(laidOut)]);
  const symbology = await unreadable(png, symbols);
  if (symbology !== undefined) return refusal('tag-not-readable', { symbology });
  return {
    pdf,
    png,
    widthMm: laidOut.widthMm,
    heightMm: laidOut.heightMm,
    dpi,
    symbols,
    proof: 'read back',
  };
};

const layOutOrRefuse = (content: TagContent, stock: Stock, dpi: DotDensity): Layout | Refusal => {
  if (Math.max(stock.widthMm, stock.heightMm) > longestSideMm) {
    return refusal(
      'input-invalid',
      { field: 'stock', why: `no side may be longer than ${longestSideMm} mm` },
      'stock',
    );
  }
  const laidOut = layOutTag(content, stock, dpi);
  if (laidOut.fits) return laidOut.layout;
  const language = content.kind === 'id' ? 'en' : (content.languages[0] ?? 'en');
  const missing = word(`part-${laidOut.missing}`)[language];
  const enough = smallestStock(content, dpi);
  return enough === undefined
    ? refusal('tag-too-long', { missing }, 'stock')
    : refusal('tag-does-not-fit', { missing, ...enough }, 'stock');
};

const titles: Record<TagContent['kind'], string> = {
  status: 'Status tag',
  quarantine: 'Quarantine tag',
  id: 'ID label',
};

const titleOf = (content: TagContent): string => {
  const head = `${titles[content.kind]} ${formatBenchId(content.benchId)}`;
  return content.kind === 'id' ? head : `${head}, tag ${content.tagNumber}`;
};
