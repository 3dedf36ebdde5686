/** A tag ready to print: laid out, drawn as PDF and PNG from one list of marks, and read back from its own raster. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { Millimetres } from '../domain/brand.ts';
import { type Refusal, refusal } from '../domain/refusal.ts';
import type { PrintableTag } from '../domain/tag-content.ts';
import { toPdf } from '../typesetting/pdf.ts';
import { type DotDensity, symbolsOf } from '../typesetting/primitive.ts';
import type { ArrangementName } from './arrange.ts';
import type { TagForm } from './form.ts';
import type { Hole } from './hole.ts';
import type { Ink } from './ink.ts';
import { defaultStock, type LaidOut, type LayoutOptions, layOutTag } from './lay-out-tag.ts';
import { toPng } from './png.ts';
import { expectedSymbols, type TagSymbol, unreadable, unreadableSymbol } from './prove.ts';
import { longestSideMm, smallestStock } from './smallest-stock.ts';
import type { Stock } from './tag-layout.ts';
import { type TagPart, word } from './words.ts';

export interface TagOptions {
  /**
   * Of one face: 100×50 mm for a status tag and a bin label, 100×150 mm for a quarantine tag, 50×25 mm for an ID label
   * where it is absent.
   */
  readonly stock?: {
    readonly widthMm: Millimetres;
    readonly heightMm: Millimetres;
  };
  /** Printer dots per inch; 300 where it is absent. */
  readonly dpi?: DotDensity;
  /** Flat where it is absent. */
  readonly form?: TagForm;
  /** The hole for the tie, kept free of print. */
  readonly hole?: Hole;
  /** `colour` where it is absent. `monochrome` gives a raster of exactly two levels, and so does `pre-printed header`. */
  readonly ink?: Ink;
  /** Height of the pre-printed red header from the top of the stock, for `pre-printed header` alone; 30 mm where it is absent. */
  readonly headerMm?: number;
}

interface Rendered {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly dpi: DotDensity;
  readonly symbols: readonly TagSymbol[];
  readonly arrangement: ArrangementName;
  /** Parts that the tag can go without, left out for want of room. */
  readonly dropped: readonly TagPart[];
}

export interface TagPdf extends Rendered {
  readonly pdf: Uint8Array;
  /** Each symbol, drawn alone on the dots on which it stands, was decoded and gave its text. */
  readonly proof: 'symbols read back';
}

export interface TagRaster extends Rendered {
  /** At `dpi`, with its density inside. */
  readonly png: Uint8Array;
  /** The raster was decoded and gave exactly `symbols`. */
  readonly proof: 'read back';
}

export interface RenderedTag extends TagRaster {
  readonly pdf: Uint8Array;
}

/**
 * Refuses with `tag-does-not-fit` where a part cannot stand on the stock at its legible minimum, with `tag-too-long`
 * where it cannot on any stock up to A3, with `tag-not-readable` where a symbol does not read back from the raster, and
 * with `input-invalid` where the stock is beyond A3 or the options contradict one another.
 */
export const renderTag = async (
  content: PrintableTag,
  options: TagOptions = {},
): Promise<RenderedTag | Refusal> => {
  const plan = planTag(content, options);
  if ('refused' in plan) return plan;
  const [pdf, raster] = await Promise.all([
    toPdf([plan.laidOut.layout], titleOf(content)),
    provenRaster(plan, options.ink),
  ]);
  return 'refused' in raster ? raster : { ...raster, pdf };
};

/** The PDF alone, at a fraction of the time; its symbols are read back one by one. Refuses as `renderTag` does. */
export const renderTagPdf = async (
  content: PrintableTag,
  options: TagOptions = {},
): Promise<TagPdf | Refusal> => {
  const plan = planTag(content, options);
  if ('refused' in plan) return plan;
  const symbology = await unreadableSymbol(symbolsOf(plan.laidOut.layout));
  if (symbology !== undefined) return refusal('tag-not-readable', { symbology });
  const pdf = await toPdf([plan.laidOut.layout], titleOf(content));
  return { ...plan.rendered, pdf, proof: 'symbols read back' };
};

/** The raster alone, for a printer that takes dots. Refuses as `renderTag` does. */
export const renderTagRaster = async (
  content: PrintableTag,
  options: TagOptions = {},
): Promise<TagRaster | Refusal> => {
  const plan = planTag(content, options);
  return 'refused' in plan ? plan : provenRaster(plan, options.ink);
};

interface Plan {
  readonly laidOut: Extract<LaidOut, { fits: true }>;
  readonly rendered: Rendered;
}

const provenRaster = async (
  { laidOut, rendered }: Plan,
  ink: Ink = 'colour',
): Promise<TagRaster | Refusal> => {
  const png = await toPng(laidOut.layout, ink === 'colour' ? 'shades' : 'two levels');
  const symbology = await unreadable(png, rendered.symbols);
  if (symbology !== undefined) return refusal('tag-not-readable', { symbology });
  return { ...rendered, png, proof: 'read back' };
};

const defaultHeaderMm = 30;

const planTag = (content: PrintableTag, options: TagOptions): Plan | Refusal => {
  const { dpi = 300, ...others } = options;
  const layoutOptions = { ...others, headerMm: options.headerMm ?? defaultHeaderMm };
  const contradiction = contradictionIn(content, layoutOptions);
  if (contradiction !== undefined) return contradiction;
  const stock = options.stock ?? defaultStock[content.kind];
  if (Math.max(stock.widthMm, stock.heightMm) > longestSideMm)
    return invalid('stock', `no side may be longer than ${longestSideMm} mm`);
  const laidOut = layOutTag(content, stock, dpi, layoutOptions);
  if (!laidOut.fits) return tooSmall(content, laidOut.missing, dpi, layoutOptions);
  return {
    laidOut,
    rendered: {
      widthMm: stock.widthMm,
      heightMm: stock.heightMm,
      dpi,
      symbols: expectedSymbols(symbolsOf(laidOut.layout)),
      arrangement: laidOut.arrangement,
      dropped: laidOut.dropped,
    },
  };
};

const contradictionIn = (content: PrintableTag, options: LayoutOptions): Refusal | undefined => {
  if (options.ink !== 'pre-printed header') return undefined;
  if (content.kind !== 'quarantine')
    return invalid('ink', 'stock with a red DANGER header is for quarantine tags alone');
  if (options.form?.shape === 'flag' && options.form.fold === 'level')
    return invalid('form', 'a red header at the top of the stock is on one side only of a level fold');
  return undefined;
};

const invalid = (field: string, why: string): Refusal => refusal('input-invalid', { field, why }, field);

const tooSmall = (content: PrintableTag, part: TagPart, dpi: DotDensity, options: LayoutOptions): Refusal => {
  const language = content.kind === 'id' ? 'en' : (content.languages[0] ?? 'en');
  const missing = word(`part-${part}`)[language];
  const enough: Stock | undefined = smallestStock(content, dpi, options);
  return enough === undefined
    ? refusal('tag-too-long', { missing }, 'stock')
    : refusal('tag-does-not-fit', { missing, ...enough }, 'stock');
};

const titles: Record<PrintableTag['kind'], string> = {
  status: 'Status tag',
  quarantine: 'Quarantine tag',
  id: 'ID label',
  bin: 'Bin label',
};

const titleOf = (content: PrintableTag): string => {
  switch (content.kind) {
    case 'bin':
      return `${titles.bin} ${content.code}`;
    case 'id':
      return `${titles.id} ${formatBenchId(content.benchId)}`;
    default:
      return `${titles[content.kind]} ${formatBenchId(content.benchId)}, tag ${content.tagNumber}`;
  }
};
