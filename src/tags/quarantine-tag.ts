/** The layout of the quarantine tag: the signal word first, then every reason, then what a person needs to act on it. */
import type { QuarantineTag } from '../domain/tag-content.ts';
import { writeTagText } from '../domain/tag-text.ts';
import { type Arranged, type Arrangement, arrange, type Face } from './arrange.ts';
import { identityBlock } from './identity-block.ts';
import { quarantineCompact } from './quarantine-compact.ts';
import {
  beforeReturn,
  footer,
  quarantineDroppable,
  reasonParts,
  removalBeside,
  type Sheet,
} from './quarantine-parts.ts';
import { quarantineWide } from './quarantine-wide.ts';
import { headerParts } from './signal-header.ts';
import { stack } from './stack.ts';
import { barsFitAcross, edgeMm, type Stock } from './tag-layout.ts';

export const quarantineTagStock: Stock = { widthMm: 100, heightMm: 150 };

/** Without Code 128 only where the stock is narrower than the bars at their least module: the QR Code carries the ID too. */
export const layOutQuarantineTag = (tag: QuarantineTag, face: Face): Arranged => {
  const tall = quarantineTall(tag, face);
  const wide = quarantineWide(tag, face);
  const compact = quarantineCompact(tag, face);
  const landscape = face.widthMm > 1.1 * face.heightMm;
  return arrange(landscape ? [wide, tall, compact] : [tall, wide, compact], {
    tooWide: barsFitAcross(tag.benchId, face) ? [] : ['code128'],
    inTurn: quarantineDroppable,
  });
};

const marginMm = 3;

const quarantineTall = (tag: QuarantineTag, face: Face): Arrangement => ({
  name: 'tall',
  at: (tightness, dropped) => {
    const scale = Math.min(face.widthMm / 100, face.heightMm / 150);
    const widthMm = face.widthMm - 2 * marginMm;
    const sheet: Sheet = { tag, widthMm, scale, tightness };
    const identity = identityBlock(tag, writeTagText(tag), {
      widthMm,
      scale,
      dotsPerInch: face.dotsPerInch,
      besideMm: marginMm - edgeMm,
      bars: !dropped.has('code128'),
    });
    if (!identity.fits) return identity;
    return stack(
      [
        ...headerParts(tag.languages, { ...sheet, paddingMm: 2.8, signalWord: face.signalWord }),
        ...reasonParts(sheet),
        { part: 'beforeReturn', block: beforeReturn(sheet), gapMm: 2, gapShare: 2, claim: 3 },
        { part: 'removal', block: removalBeside(sheet), gapMm: 1.6, gapShare: 2, claim: 1 },
        { part: identity.missing, block: identity.at(tightness), gapMm: 1.6, gapShare: 2, claim: 0 },
        { part: 'removal', block: footer(sheet, dropped), gapMm: 0.8, gapShare: 0.5, claim: 1 },
      ],
      { xMm: marginMm, yMm: marginMm, heightMm: face.heightMm - 2 * marginMm },
    );
  },
});
