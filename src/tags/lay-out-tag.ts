/** Where everything on a tag stands, for each kind of tag, and the smallest stock that would take it. */
import type { TagContent, TagKind } from '../domain/tag-content.ts';
import { idLabelStock, layOutIdLabel } from './id-label.ts';
import type { DotDensity } from './primitive.ts';
import { layOutQuarantineTag, quarantineTagStock } from './quarantine-tag.ts';
import { layOutStatusTag, statusTagStock } from './status-tag.ts';
import type { LaidOut, Stock } from './tag-layout.ts';

export const defaultStock: Record<TagKind, Stock> = {
  status: statusTagStock,
  quarantine: quarantineTagStock,
  id: idLabelStock,
};

/** Never clips: a part that does not fit at its legible minimum is named instead. */
export const layOutTag = (content: TagContent, stock: Stock, dotsPerInch: DotDensity): LaidOut => {
  switch (content.kind) {
    case 'status':
      return layOutStatusTag(content, stock, dotsPerInch);
    case 'quarantine':
      return layOutQuarantineTag(content, stock, dotsPerInch);
    case 'id':
      return layOutIdLabel(content, stock, dotsPerInch);
  }
};

/** Stocks that are easily had, by area; the last ones are A6 to A3 (ISO 216). */
const commonStocks: readonly Stock[] = [
  { widthMm: 40, heightMm: 20 },
  { widthMm: 50, heightMm: 25 },
  { widthMm: 75, heightMm: 50 },
  { widthMm: 100, heightMm: 50 },
  { widthMm: 100, heightMm: 75 },
  { widthMm: 100, heightMm: 100 },
  { widthMm: 100, heightMm: 150 },
  { widthMm: 105, heightMm: 148 },
  { widthMm: 100, heightMm: 200 },
  { widthMm: 148, heightMm: 210 },
  { widthMm: 210, heightMm: 297 },
  { widthMm: 297, heightMm: 420 },
];

/** The smallest common stock that takes the tag; `undefined` where not even A3 does. */
export const smallestStock = (content: TagContent, dotsPerInch: DotDensity): Stock | undefined =>
  [...commonStocks]
    .sort((a, b) => a.widthMm * a.heightMm - b.widthMm * b.heightMm)
    .find((stock) => layOutTag(content, stock, dotsPerInch).fits);
