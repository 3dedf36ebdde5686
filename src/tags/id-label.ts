/** The layout of the ID label: a Data Matrix and the bench ID, nothing else. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { IdLabel } from '../domain/tag-content.ts';
import { sizeForCapHeight } from '../typesetting/paragraph.ts';
import { encodeSymbol, moduleDots } from '../typesetting/symbol.ts';
import { type Arranged, type Face, oneArrangement } from './arrange.ts';
import { halves, identityHeadline, identityLines } from './identity-headline.ts';
import { matrixAt, matrixSideMm, type Stock } from './tag-layout.ts';

export const idLabelStock: Stock = { widthMm: 50, heightMm: 25 };

const marginMm = 2;

/** The symbol at the left of the letters, or over them on portrait stock. */
export const layOutIdLabel = (label: IdLabel, face: Face): Arranged =>
  face.widthMm >= face.heightMm ? besideOneAnother(label, face) : underOneAnother(label, face);

const besideOneAnother = (label: IdLabel, face: Face): Arranged => {
  const { widthMm, heightMm, dotsPerInch } = face;
  const modules = encodeSymbol('Data Matrix', label.benchId);
  const availableMm = Math.min(heightMm - 2 * marginMm, (widthMm - 3 * marginMm) * 0.48);
  const dots = moduleDots(modules, availableMm - 0.2, 3, dotsPerInch);
  if (dots === undefined) return { fits: false, missing: 'dataMatrix' };
  const sideMm = matrixSideMm(modules, dots, dotsPerInch);
  const symbol = matrixAt(modules, dots, marginMm, (heightMm - sideMm) / 2, dotsPerInch);

  const textLeftMm = marginMm + sideMm + marginMm;
  const textMm = widthMm - marginMm - textLeftMm;
  const lines = identityLines(
    halves(formatBenchId(label.benchId)),
    textMm,
    sizeForCapHeight((heightMm - 2 * marginMm) * 0.4),
  );
  if (lines === undefined || lines.heightMm > heightMm - 2 * marginMm)
    return { fits: false, missing: 'benchId' };
  return oneArrangement('wide', [symbol, ...lines.draw(textLeftMm, (heightMm - lines.heightMm) / 2)]);
};

const underOneAnother = (label: IdLabel, face: Face): Arranged => {
  const { widthMm, heightMm, dotsPerInch } = face;
  const innerMm = widthMm - 2 * marginMm;
  const lines = identityHeadline(label.benchId, innerMm, sizeForCapHeight(heightMm * 0.2));
  if (lines === undefined) return { fits: false, missing: 'benchId' };
  const modules = encodeSymbol('Data Matrix', label.benchId);
  const roomMm = heightMm - 2 * marginMm - lines.heightMm - 1;
  const dots = moduleDots(modules, Math.min(innerMm, roomMm) - 0.2, 3, dotsPerInch);
  if (dots === undefined) return { fits: false, missing: 'dataMatrix' };
  const sideMm = matrixSideMm(modules, dots, dotsPerInch);
  const gapMm = (heightMm - sideMm - lines.heightMm) / 3;
  const symbol = matrixAt(modules, dots, (widthMm - sideMm) / 2, gapMm, dotsPerInch);
  return oneArrangement('tall', [symbol, ...lines.draw(marginMm, 2 * gapMm + sideMm)]);
};
