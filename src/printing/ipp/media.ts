/** Sizes of media as a printer lists them, and which of them a stock is. */
import { sizeToleranceMm } from '../job-fit.ts';
import {
  type Attributes,
  collection,
  collectionsOf,
  type IppValue,
  integer,
  textsOf,
} from './ipp-message.ts';

/** Hundredths of a millimetre, as the protocol counts (PWG 5100.7 §6.3.1.12); a range where the printer cuts or feeds to any length. */
export interface MediaSize {
  readonly x: readonly [least: number, most: number];
  readonly y: readonly [least: number, most: number];
}

export interface Stock {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** `turned`: the printer knows the size only with its sides exchanged. */
export type MediaMatch = 'as it lies' | 'turned';

export const matchMedia = (stock: Stock, sizes: readonly MediaSize[]): MediaMatch | undefined => {
  const takes = (width: number, height: number) =>
    sizes.some((size) => within(width * 100, size.x) && within(height * 100, size.y));
  if (takes(stock.widthMm, stock.heightMm)) return 'as it lies';
  return takes(stock.heightMm, stock.widthMm) ? 'turned' : undefined;
};

const within = (value: number, [least, most]: readonly [number, number]): boolean =>
  value >= least - 100 * sizeToleranceMm && value <= most + 100 * sizeToleranceMm;

/** What the printer can be loaded with; empty where it does not say. */
export const supportedMedia = (printer: Attributes): MediaSize[] => {
  const sizes = collectionsOf(printer, 'media-size-supported').flatMap(sizeOf);
  return sizes.length > 0 ? sizes : namedSizes(textsOf(printer, 'media-supported'));
};

/** What is loaded; empty where the printer does not say. */
export const readyMedia = (printer: Attributes): MediaSize[] => {
  const sizes = collectionsOf(printer, 'media-col-ready')
    .flatMap((media) => collectionsOf(media, 'media-size'))
    .flatMap(sizeOf);
  return sizes.length > 0 ? sizes : namedSizes(textsOf(printer, 'media-ready'));
};

const sizeOf = (size: Attributes): MediaSize[] => {
  const x = extent(size.get('x-dimension')?.[0]);
  const y = extent(size.get('y-dimension')?.[0]);
  return x === undefined || y === undefined ? [] : [{ x, y }];
};

const extent = (value: IppValue | undefined): readonly [number, number] | undefined => {
  if (value?.kind === 'integer') return [value.value, value.value];
  return value?.kind === 'rangeOfInteger' ? [value.lower, value.upper] : undefined;
};

/** Self-describing names, `iso_a4_210x297mm` (PWG 5101.1 §5); `custom_min_…` and `custom_max_…` are the ends of a range. */
const namedSizes = (names: readonly string[]): MediaSize[] => {
  const exact = names.filter((name) => !/^(custom|roll)_(min|max)_/.test(name)).flatMap(namedSize);
  const [least] = names.filter((name) => /^(custom|roll)_min_/.test(name)).flatMap(namedSize);
  const [most] = names.filter((name) => /^(custom|roll)_max_/.test(name)).flatMap(namedSize);
  if (least === undefined || most === undefined) return exact;
  return [...exact, { x: [least.x[0], most.x[1]], y: [least.y[0], most.y[1]] }];
};

const namedSize = (name: string): MediaSize[] => {
  const [, width, height, unit] = /_([\d.]+)x([\d.]+)(mm|in)$/.exec(name) ?? [];
  if (width === undefined || height === undefined) return [];
  const hundredths = (length: string) => Math.round(Number(length) * (unit === 'in' ? 2_540 : 100));
  const x = hundredths(width);
  const y = hundredths(height);
  return [{ x: [x, x], y: [y, y] }];
};

/** `102 × 152 mm, 25–108 × 6–991 mm`, twelve at most. */
export const mediaText = (sizes: readonly MediaSize[]): string => {
  const side = ([least, most]: readonly [number, number]) =>
    least === most ? String(Math.round(least / 100)) : `${Math.round(least / 100)}–${Math.round(most / 100)}`;
  const texts = [...new Set(sizes.map((size) => `${side(size.x)} × ${side(size.y)} mm`))];
  return `${texts.slice(0, 12).join(', ')}${texts.length > 12 ? ' …' : ''}`;
};

/** `media-col` of the stock (PWG 5100.7 §6.3.1). */
export const mediaCollection = ({ widthMm, heightMm }: Stock): IppValue =>
  collection([
    'media-size',
    [
      collection(
        ['x-dimension', [integer(Math.round(widthMm * 100))]],
        ['y-dimension', [integer(Math.round(heightMm * 100))]],
      ),
    ],
  ]);
