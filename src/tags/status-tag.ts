/** The layout of the status tag: the bench ID and the month of the next inspection first, all else around them. */
import type { StatusTag } from '../domain/tag-content.ts';
import { type Arranged, arrange, type Face } from './arrange.ts';
import { statusCompact, statusTall } from './status-narrow.ts';
import { statusDroppable } from './status-parts.ts';
import { statusWide } from './status-wide.ts';
import { barsFitAcross, type Stock } from './tag-layout.ts';

export const statusTagStock: Stock = { widthMm: 100, heightMm: 50 };

/** Without Code 128 only where the stock is narrower than the bars at their least module: the QR Code carries the ID too. */
export const layOutStatusTag = (tag: StatusTag, face: Face): Arranged => {
  const wide = statusWide(tag, face);
  const tall = statusTall(tag, face);
  const compact = statusCompact(tag, face);
  const landscape = face.widthMm > 1.2 * face.heightMm;
  return arrange(landscape ? [wide, tall, compact] : [tall, wide, compact], {
    tooWide: barsFitAcross(tag.benchId, face) ? [] : ['code128'],
    inTurn: statusDroppable,
  });
};
