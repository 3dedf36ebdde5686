/** The layout of the ID label: a Data Matrix and the bench ID in two lines, nothing else. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { IdLabel } from '../domain/tag-content.ts';
import { armsLengthCapMm } from './letter-height.ts';
import { headline, sizeForCapHeight, sizeForWidth } from './paragraph.ts';
import type { DotDensity } from './primitive.ts';
import { encodeSymbol, moduleDots } from './symbol.ts';
import { type LaidOut, matrixAt, matrixSideMm, misfit, pile, type Stock } from './tag-layout.ts';
import { capHeightEm } from './typeface.ts';

export const idLabelStock: Stock = { widthMm: 50, heightMm: 25 };

const marginMm = 2;

export const layOutIdLabel = (label: IdLabel, stock: Stock, dotsPerInch: DotDensity): LaidOut => {
  const modules = encodeSymbol('Data Matrix', label.benchId);
  const availableMm = Math.min(stock.heightMm - 2 * marginMm, (stock.widthMm - 3 * marginMm) * 0.48);
  const dots = moduleDots(modules, availableMm - 0.2, 3, dotsPerInch);
  if (dots === undefined) return misfit('dataMatrix');
  const sideMm = matrixSideMm(modules, dots, dotsPerInch);
  const symbol = matrixAt(modules, dots, marginMm, (stock.heightMm - sideMm) / 2, dotsPerInch);

  const textLeftMm = marginMm + sideMm + marginMm;
  const widthMm = stock.widthMm - marginMm - textLeftMm;
  const [first, second] = halves(formatBenchId(label.benchId));
  const preferredMm = sizeForCapHeight((stock.heightMm - 2 * marginMm) * 0.4);
  const sizeMm = Math.min(
    sizeForWidth(first, 'bold', widthMm, preferredMm),
    sizeForWidth(second, 'bold', widthMm, preferredMm),
  );
  if (sizeMm * capHeightEm < armsLengthCapMm) return misfit('benchId');
  const style = { role: 'bench ID', weight: 'bold', sizeMm } as const;
  const lines = pile([headline(first, style), headline(second, style)], sizeMm * capHeightEm * 0.55);
  const text = lines.draw(textLeftMm, (stock.heightMm - lines.heightMm) / 2);
  return {
    fits: true,
    layout: { ...stock, dotsPerInch, primitives: [symbol, ...text] },
  };
};

/** `K7M3X-` over `4Q9TD`: the hyphen says that the ID goes on. */
const halves = (shown: string): readonly [string, string] => {
  const cut = shown.indexOf('-') + 1;
  return [shown.slice(0, cut), shown.slice(cut)];
};
